// What a remedy looks at, and what it answers: changes to the documents.
//
// To add a remedy: a file with one function of type RemedyIdea, and its line in
// catalogue.cpp. It only proposes; whether a change helps is found by planning
// and auditing it. No idea may touch a food-safety limit, an allergen or the
// time food needs to thaw.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <vector>

#include "server/compose/composition.h"
#include "server/planning/clash/wish_clash.h"
#include "suppertide/v1/remedy.pb.h"

namespace suppertide::compose {

// How big a change is to people, in points. Common practice, no source: a word
// with the baker is little, another serving time more, a dish less the most.
namespace change_size {
inline constexpr int kLevainRatio = 4;
inline constexpr int kRetard = 5;
inline constexpr int kUnpin = 6;
inline constexpr int kOtherOven = 6;
inline constexpr int kKeepLonger = 6;  // and 1 for each quarter of an hour
inline constexpr int kTemperature = 8;
inline constexpr int kOtherPan = 8;  // and 1 for each tenth that it is deeper
inline constexpr int kBorrow = 9;
inline constexpr int kOtherCook = 10;
inline constexpr int kBakeEarlier = 11;
inline constexpr int kLater = 12;  // and 2 for each quarter of an hour
inline constexpr int kBorrowPlace = 14;
inline constexpr int kBorrowOven = 25;
inline constexpr int kHours = 30;  // and 2 for each quarter of an hour
inline constexpr int kDropDish = 40;
}  // namespace change_size

struct Situation {
  const Documents& documents;
  const Composition& composition;
  const std::vector<planning::WishClash>& clashes;
  std::vector<bool> begun = {};  // by step, as Trial::begun()

  bool isOver(planning::WishKind kind, int index) const;
  // Of the clashes, ascending.
  std::set<int> dishes() const;
  // Steps of these dishes, ascending.
  std::vector<int> steps() const;
  bool isBegun(int step) const { return !begun.empty() && begun[static_cast<std::size_t>(step)]; }
};

struct Change {
  v1::Remedy what;                        // its size is set
  std::function<void(Documents&)> apply;  // names everything by id
  std::string group;                      // once one of a group helps, bigger ones are not tried
  bool biggerAllowsMore = false;          // what helps here is helped by a bigger one of the group, too
};

using RemedyIdea = std::vector<Change> (*)(const Situation&);

// The dish's recipe, made its own first so that no other event is changed: a
// copy called "<recipe>-<event>". Null when there is no such dish.
v1::Recipe* ownRecipe(Documents& documents, const std::string& dishId);
v1::Step* stepIn(v1::Recipe& recipe, const std::string& stepId);

}  // namespace suppertide::compose
