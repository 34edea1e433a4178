// A menu's documents against the kitchen's arithmetic: lines of text, who can
// eat what, what to buy, what to fetch, and how much there is of each. Pure; documents valid by validate().
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "server/base/interval.h"
#include "server/kitchen/ingredients/line.h"
#include "suppertide/v1/bundle.pb.h"
#include "suppertide/v1/menu.pb.h"

namespace suppertide::compose {

// What a menu is read from; everything outlives it.
struct Menu {
  const v1::Household* household;
  const v1::Event* event;
  std::map<std::string, const v1::Recipe*> recipes;  // by id, every one that the event names
  const v1::Plan* plan = nullptr;                    // of the event, if there is one
};

// With a plan of the event when the bundle has one. `event` need not be the bundle's.
Menu menuOf(const v1::Bundle& bundle, const v1::Event& event);

// UNSPECIFIED is the household's.
kitchen::Measures measuresOf(v1::KitchenMeasures asked, const v1::Household& household);

v1::ParsedIngredient parsedIngredient(const std::string& line, kitchen::Measures measures,
                                      kitchen::Measures shownIn);

struct MenuTable {
  std::vector<v1::GuestCourse> cells;
  std::vector<v1::MenuWarning> warnings;
};
MenuTable checkMenu(const Menu& menu);

// By day, section and name, then lines of the household's own; less what `notes` has at hand, in
// its packets, with its buyers and ticks.
std::vector<v1::ShoppingItem> shoppingItems(const Menu& menu, const v1::Shopping& notes,
                                            kitchen::Measures shownIn);
// Ticks of lines that are not among `items`, or need not be bought.
std::vector<v1::Tick> needlessTicks(const std::vector<v1::ShoppingItem>& items, const v1::Shopping& notes);
// ShoppingItem.id of a line of the household's own.
std::string ownItemId(const std::string& id);
// What `after` buys otherwise than `before`, both less what is at hand.
std::vector<v1::ShoppingChange> shoppingChanges(const Menu& before, const Menu& after,
                                                const v1::Shopping& notes);
// Who may take things out, and when they are up and in the house: unix seconds.
struct Hands {
  std::string memberId;
  std::vector<Interval<std::int64_t>> there;
};

// The event's cooks, over the days of its plan; none without a plan.
std::vector<Hands> handsOf(const Menu& menu);

// What must leave freezer or fridge before its step. By time, those without one last. With
// hands, at an hour when one of them is there, the step's cook if that is possible.
std::vector<v1::Fetch> fetchesOf(const Menu& menu, const std::vector<Hands>& hands);

// A dish each, in the event's order; `warnings` gets those far from their guides.
std::vector<v1::DishPortion> portionsOf(const Menu& menu, std::vector<v1::MenuWarning>& warnings);

}  // namespace suppertide::compose
