// What must leave freezer or fridge in time, as documents.
#include <algorithm>

#include "server/compose/documents.h"
#include "server/compose/fetch_steps.h"
#include "server/compose/menu/amounts.h"
#include "server/compose/menu/servings.h"
#include "server/compose/menu/uses.h"

namespace suppertide::compose {
namespace {

constexpr int kLookPitch = 5;          // minutes between the moments tried
constexpr int kEarlierOnCounter = 45;  // at most; with the lead below the two hours that food may stand out
constexpr int kEarlierInFridge = 24 * 60;

const v1::PlannedStep* stepOf(const v1::Plan& plan, const std::string& dishId, const std::string& stepId) {
  for (const v1::PlannedStep& step : plan.steps())
    if (step.dish_id() == dishId && step.step_id() == stepId && !step.left_out()) return &step;
  return nullptr;
}

v1::Fetch fetchOf(const v1::Dish& dish, const FetchNeed& need) {
  v1::Fetch fetch;
  fetch.set_dish_id(dish.id());
  fetch.set_name(need.name);
  *fetch.mutable_amount() = amountOf(need.amount);
  fetch.set_from(need.from);
  fetch.set_to(need.to);
  fetch.set_source(need.source);
  fetch.set_own_step(need.own != nullptr);
  fetch.mutable_lead_duration()->set_seconds(need.leadMinutes * 60);
  return fetch;
}

class Taker {
 public:
  explicit Taker(const std::vector<Hands>& hands) : hands_(hands) {}

  // The latest moment in time, then earlier ones: whoever is to use it, else anyone who is there.
  void place(const v1::PlannedStep& step, v1::Fetch& fetch) const {
    const std::int64_t latest = step.start_time().seconds() - fetch.lead_duration().seconds();
    const int earlier = fetch.to() == v1::PLACE_KIND_COUNTER ? kEarlierOnCounter : kEarlierInFridge;
    fetch.set_for_step_id(step.id());
    fetch.mutable_take_out_time()->set_seconds(latest);
    for (int before = 0; before <= earlier; before += kLookPitch) {
      const Hands* taker = whoIsThere(latest - before * 60, step.cook_member_id());
      if (taker == nullptr) continue;
      fetch.mutable_take_out_time()->set_seconds(latest - before * 60);
      fetch.set_cook_member_id(taker->memberId);
      return;
    }
  }

 private:
  const Hands* whoIsThere(std::int64_t time, const std::string& rather) const {
    const Hands* anyone = nullptr;
    for (const Hands& one : hands_) {
      const bool there = std::any_of(one.there.begin(), one.there.end(),
                                     [&](const auto& span) { return span.contains(time); });
      if (there && one.memberId == rather) return &one;
      if (there && anyone == nullptr) anyone = &one;
    }
    return anyone;
  }

  const std::vector<Hands>& hands_;
};

// Where the plan has it: in a step of its own, or for lack of one at the latest moment.
void place(const Menu& menu, const FetchNeed& need, const Taker& taker, v1::Fetch& fetch) {
  const v1::PlannedStep* user = stepOf(*menu.plan, fetch.dish_id(), need.user->id());
  if (user != nullptr) fetch.set_for_step_id(user->id());
  if (const v1::PlannedStep* step = stepOf(*menu.plan, fetch.dish_id(), fetchStepId(need))) {
    *fetch.mutable_take_out_time() = step->start_time();
    fetch.set_step_id(step->id());
    fetch.set_cook_member_id(step->cook_member_id());
  } else if (user != nullptr) {
    taker.place(*user, fetch);
  }
}

}  // namespace

std::vector<v1::Fetch> fetchesOf(const Menu& menu, const std::vector<Hands>& hands) {
  std::vector<v1::Fetch> fetches;
  const Taker taker(hands);
  for (const v1::Dish& dish : menu.event->dishes()) {
    const v1::Recipe& recipe = *menu.recipes.at(dish.recipe_id());
    const auto lines = ingredientsOf(dish, recipe, scaleOf(*menu.event, dish, recipe));
    for (const FetchNeed& need : fetchNeeds(recipe, lines)) {
      v1::Fetch fetch = fetchOf(dish, need);
      if (menu.plan != nullptr) place(menu, need, taker, fetch);
      fetches.push_back(std::move(fetch));
    }
  }
  std::stable_sort(fetches.begin(), fetches.end(), [](const v1::Fetch& a, const v1::Fetch& b) {
    if (a.has_take_out_time() != b.has_take_out_time()) return a.has_take_out_time();
    return a.take_out_time().seconds() < b.take_out_time().seconds();
  });
  return fetches;
}

void addFetches(const Composition& composition, v1::Plan& plan) {
  const Documents& documents = composition.documents;
  Menu menu{&documents.household, &documents.event, {}, &plan};
  for (const v1::Recipe& recipe : documents.recipes) menu.recipes[recipe.id()] = &recipe;
  for (v1::Fetch& fetch : fetchesOf(menu, handsOf(menu)))
    if (fetch.has_take_out_time()) *plan.add_fetches() = std::move(fetch);
}

}  // namespace suppertide::compose
