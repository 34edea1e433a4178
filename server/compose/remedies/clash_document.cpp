#include "server/compose/remedies/clash_document.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "server/base/index.h"
#include "server/compose/safety_view.h"
#include "server/compose/shelf_fit.h"
#include "server/kitchen/safety.h"
#include "server/planning/clash/best_broken.h"

namespace suppertide::compose {
namespace {

constexpr planning::Minute kGrid = 5;
constexpr std::int64_t kQuickConflicts = 500;
// About half a second's worth for a plan that nobody asked to explain.
constexpr std::int64_t kQuickSteps = 3'000;
constexpr int kTenthsOfALitre = 10;  // as places are counted

planning::Relaxing relaxingOf(const Composition& composition) {
  const SafetyView safety(composition);
  planning::Relaxing relaxing;
  for (int step = 0; step < static_cast<int>(composition.steps.size()); ++step) {
    const SafetyView::StepState& state = safety.state(step);
    const double least =
        state.cooks ? kitchen::leastRoastingCelsius(*state.food, safety.rules()).value_or(0) : 0;
    relaxing.leastCelsius.push_back(static_cast<int>(std::ceil(least)));
  }
  return relaxing;
}

// Leaves questions open once too many steps were asked about.
class LimitedFeasibility : public planning::Feasibility {
 public:
  LimitedFeasibility(planning::Feasibility& inner, std::int64_t steps) : inner_(inner), left_(steps) {}
  planning::Feasible decide(const planning::Problem& problem, planning::Schedule* schedule,
                            std::vector<int>* clashing) override {
    left_ -= static_cast<std::int64_t>(problem.steps.size());
    return left_ < 0 ? planning::Feasible::kUnknown : inner_.decide(problem, schedule, clashing);
  }

 private:
  planning::Feasibility& inner_;
  std::int64_t left_;
};

bool isPlace(const Composition& composition, int resource) {
  const auto& places = composition.placeResource;
  return std::find(places.begin(), places.end(), resource) != places.end();
}

class WishWriter {
 public:
  WishWriter(const Composition& composition, v1::Wish& out) : composition_(composition), out_(out) {}

  void write(const planning::Wish& wish) {
    switch (wish.kind) {
      case planning::WishKind::kServed:
        return served(wish.index);
      case planning::WishKind::kSetpoint:
        return setpoint(wish.index);
      case planning::WishKind::kOven:
        return counted(composition_.problem.ovens[at(wish.index)].id, 1);
      case planning::WishKind::kPinned:
        return pinned(wish.index);
      case planning::WishKind::kHours:
        return hours(wish.index);
      case planning::WishKind::kCount:
        return resource(wish.index);
      case planning::WishKind::kHands:
        out_.set_kind(v1::WISH_KIND_HANDS);
        out_.set_count(static_cast<int>(composition_.problem.cooks.size()));
        return;
      case planning::WishKind::kFresh:
        return fresh(wish.index);
    }
  }

 private:
  const std::string& dishId(int dish) const { return composition_.dishes[at(dish)].dish->id(); }

  void served(int dish) {
    out_.set_kind(v1::WISH_KIND_SERVED);
    out_.set_dish_id(dishId(dish));
    *out_.mutable_time() = composition_.axis.timeOf(composition_.problem.dishes[at(dish)].serve);
  }

  void ofStep(v1::WishKind kind, int step) {
    out_.set_kind(kind);
    out_.set_dish_id(dishId(composition_.steps[at(step)].dish));
    out_.set_step_id(composition_.stepId(step));
  }

  void setpoint(int step) {
    ofStep(v1::WISH_KIND_SETPOINT, step);
    out_.set_celsius(composition_.steps[at(step)].step->oven().setpoint_celsius());
    int least = 0;
    int most = 0;
    for (const ModeInfo& mode : composition_.steps[at(step)].modes) {
      if (mode.oven < 0) continue;
      least = least == 0 ? mode.setpointCelsius : std::min(least, mode.setpointCelsius);
      most = std::max(most, mode.setpointCelsius);
    }
    out_.set_min_celsius(least);
    out_.set_max_celsius(most);
  }

  void counted(const std::string& thing, int count) {
    out_.set_kind(v1::WISH_KIND_COUNT);
    out_.set_thing_id(thing);
    out_.set_count(count);
  }

  void resource(int resource) {
    const int capacity = composition_.problem.resources[at(resource)].capacity;
    counted(composition_.resourceIds[at(resource)],
            isPlace(composition_, resource) ? capacity / kTenthsOfALitre : capacity);
  }

  void pinned(int step) {
    ofStep(v1::WISH_KIND_PINNED, step);
    const planning::Pin& pin = composition_.problem.steps[at(step)].pin;
    if (pin.start) *out_.mutable_time() = composition_.axis.timeOf(*pin.start);
    if (pin.cook) out_.set_thing_id(composition_.problem.cooks[at(*pin.cook)].id);
  }

  // The stretch, when the cook is away only before or only after one.
  void hours(int cook) {
    out_.set_kind(v1::WISH_KIND_HOURS);
    out_.set_thing_id(composition_.problem.cooks[at(cook)].id);
    const auto& there = composition_.problem.cooks[at(cook)].available;
    if (there.size() != 1) return;
    *out_.mutable_time() = composition_.axis.timeOf(there.front().start);
    *out_.mutable_until_time() = composition_.axis.timeOf(there.front().limit);
  }

  void fresh(int dish) {
    out_.set_kind(v1::WISH_KIND_FRESH);
    out_.set_dish_id(dishId(dish));
    *out_.mutable_duration() = durationOf(composition_.problem.dishes[at(dish)].holdLimit);
  }

  const Composition& composition_;
  v1::Wish& out_;
};

void addKeptRule(const Composition& composition, const planning::KeptRule& rule, v1::Clash& document) {
  const auto dishIdOf = [&](int step) {
    return composition.dishes[at(composition.steps[at(step)].dish)].dish->id();
  };
  v1::KeptRule told;
  if (rule.kind == planning::KeptRule::Kind::kClock) {
    const planning::Clock& clock = composition.problem.clocks[at(rule.index)];
    told.set_rule(v1::HARD_RULE_FOOD_SAFETY);
    told.set_dish_id(dishIdOf(clock.spans.front().from));
    told.set_thing_id(clock.id);
  } else {
    const planning::Separation& separation = composition.problem.separations[at(rule.index)];
    told.set_rule(v1::HARD_RULE_ALLERGEN);
    told.set_dish_id(dishIdOf(separation.clean));
    told.set_other_dish_id(dishIdOf(separation.other));
    told.set_thing_id(separation.id);
  }
  *document.add_kept_rules() = told;
}

bool isDoubtfulFor(const Composition& composition, const v1::Clash& clash) {
  std::set<std::string> dishes;
  for (const v1::Wish& wish : clash.wishes()) dishes.insert(wish.dish_id());
  for (int oven = 0; oven < static_cast<int>(composition.problem.ovens.size()); ++oven)
    for (int step = 0; step < static_cast<int>(composition.steps.size()); ++step)
      if (dishes.count(composition.dishes[at(composition.steps[at(step)].dish)].dish->id()) > 0 &&
          isDoubted(composition, oven, step))
        return true;
  return false;
}

}  // namespace

std::vector<planning::WishClash> findWishClashes(const Composition& composition,
                                                 const ClashSearchOptions& options) {
  planning::EngineFeasibility engine(kGrid, options.conflicts, options.stop);
  LimitedFeasibility limited(engine, options.steps);
  planning::Feasibility& feasibility =
      options.steps > 0 ? static_cast<planning::Feasibility&>(limited) : engine;
  planning::WishClashOptions search;
  search.most = options.most;
  search.suspects = options.suspects;
  search.clashing = options.clashing;
  search.found = options.found;
  search.relaxing = relaxingOf(composition);
  search.relaxing.begun = options.begun;
  search.stop = options.stop;
  return planning::wishClashes(composition.problem, search, feasibility);
}

std::vector<int> suspectsOf(const Composition& composition, const planning::Schedule& schedule) {
  auto broken = planning::brokenBy(composition.problem, schedule);
  std::stable_sort(broken.begin(), broken.end(),
                   [](const auto& a, const auto& b) { return a.unserved > b.unserved; });
  std::vector<int> dishes;
  for (const planning::BrokenWish& wish : broken) dishes.push_back(wish.dish);
  return dishes;
}

void addWishClashes(const Composition& composition, const planning::Schedule& schedule, v1::Plan& plan,
                    const std::vector<bool>& begun, const std::function<bool()>& stop) {
  ClashSearchOptions options;
  options.stop = stop;
  options.begun = begun;
  options.suspects = suspectsOf(composition, schedule);
  if (options.suspects.empty()) return;
  options.conflicts = kQuickConflicts;
  options.steps = kQuickSteps;
  for (const planning::WishClash& clash : findWishClashes(composition, options))
    *plan.add_clashes() = clashDocument(composition, clash);
}

v1::Clash clashDocument(const Composition& composition, const planning::WishClash& clash) {
  v1::Clash document;
  document.set_smallest(clash.irreducible);
  for (const planning::Wish& wish : clash.wishes) WishWriter(composition, *document.add_wishes()).write(wish);
  for (const planning::KeptRule& rule : clash.rules) addKeptRule(composition, rule, document);
  document.set_racks_unproven(isDoubtfulFor(composition, document));
  return document;
}

}  // namespace suppertide::compose
