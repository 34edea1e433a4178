#include "server/compose/safety_view.h"

#include <algorithm>

#include "server/base/index.h"
#include "server/compose/parts.h"

namespace suppertide::compose {
namespace {

using kitchen::FoodClass;
using planning::Edge;
using planning::kNoLimit;
using planning::Minute;

constexpr std::size_t kMostPaths = 64;  // of one dish and phase; recipes have a handful
constexpr int kMinutesInHour = 60;
constexpr int kDay = 24 * kMinutesInHour;
constexpr int kGridMinutes = 5;

double warmestOf(const v1::Place& place) {
  const auto& hours = place.temperature().celsius();
  return hours.empty() ? 21.0 : *std::max_element(hours.begin(), hours.end());
}

double coldestOf(const v1::Place& place) {
  const auto& hours = place.temperature().celsius();
  return hours.empty() ? 21.0 : *std::min_element(hours.begin(), hours.end());
}

// A fridge that is warmer than it should be is told as such, not counted as a room.
bool isFridge(const v1::Place& place) {
  return place.kind() == v1::PLACE_KIND_FRIDGE || place.kind() == v1::PLACE_KIND_FREEZER;
}

Minute longestOf(const planning::Step& step) {
  Minute longest = 0;
  for (const planning::Mode& mode : step.modes)
    for (const planning::Length& row : mode.length.rows) longest = std::max(longest, row.longest);
  return longest;
}

Minute shortestOf(const planning::Step& step) {
  Minute shortest = kNoLimit;
  for (const planning::Mode& mode : step.modes)
    for (const planning::Length& row : mode.length.rows)
      if (row.possible()) shortest = std::min(shortest, row.shortest);
  return shortest == kNoLimit ? 0 : shortest;
}

Minute sum(Minute a, Minute b) {
  return a >= kNoLimit || b >= kNoLimit ? kNoLimit : a + b;
}

bool heldCold(const DishInfo& dish) {
  return dish.recipe->holding().kind() == v1::HOLDING_KIND_COLD;
}
bool heldHot(const DishInfo& dish) {
  return dish.recipe->holding().kind() == v1::HOLDING_KIND_HOT;
}

std::optional<FoodClass> classOf(v1::SafetyClass given) {
  switch (given) {
    case v1::SAFETY_CLASS_WHOLE_MEAT:
      return FoodClass::kWholeMeat;
    case v1::SAFETY_CLASS_GROUND_MEAT:
      return FoodClass::kGroundMeat;
    case v1::SAFETY_CLASS_POULTRY:
      return FoodClass::kPoultry;
    case v1::SAFETY_CLASS_GROUND_POULTRY:
      return FoodClass::kGroundPoultry;
    case v1::SAFETY_CLASS_STUFFING:
      return FoodClass::kStuffing;
    case v1::SAFETY_CLASS_RAW_HAM:
      return FoodClass::kRawHam;
    case v1::SAFETY_CLASS_PACKED_HAM:
      return FoodClass::kPackedHam;
    case v1::SAFETY_CLASS_OTHER_COOKED_HAM:
      return FoodClass::kOtherCookedHam;
    case v1::SAFETY_CLASS_EGG_DISH:
      return FoodClass::kEggDish;
    case v1::SAFETY_CLASS_LEFTOVERS:
      return FoodClass::kLeftovers;
    case v1::SAFETY_CLASS_FISH:
      return FoodClass::kFish;
    case v1::SAFETY_CLASS_PLANTS:
      return FoodClass::kHotHeldPlants;
    case v1::SAFETY_CLASS_COLD_DISH:
      return FoodClass::kColdDish;
    default:
      return std::nullopt;
  }
}

}  // namespace

v1::SafetyClass safetyClassOf(FoodClass food) {
  switch (food) {
    case FoodClass::kWholeMeat:
      return v1::SAFETY_CLASS_WHOLE_MEAT;
    case FoodClass::kGroundMeat:
      return v1::SAFETY_CLASS_GROUND_MEAT;
    case FoodClass::kPoultry:
      return v1::SAFETY_CLASS_POULTRY;
    case FoodClass::kGroundPoultry:
      return v1::SAFETY_CLASS_GROUND_POULTRY;
    case FoodClass::kStuffing:
      return v1::SAFETY_CLASS_STUFFING;
    case FoodClass::kRawHam:
      return v1::SAFETY_CLASS_RAW_HAM;
    case FoodClass::kPackedHam:
      return v1::SAFETY_CLASS_PACKED_HAM;
    case FoodClass::kOtherCookedHam:
      return v1::SAFETY_CLASS_OTHER_COOKED_HAM;
    case FoodClass::kEggDish:
      return v1::SAFETY_CLASS_EGG_DISH;
    case FoodClass::kLeftovers:
      return v1::SAFETY_CLASS_LEFTOVERS;
    case FoodClass::kFish:
      return v1::SAFETY_CLASS_FISH;
    case FoodClass::kHotHeldPlants:
      return v1::SAFETY_CLASS_PLANTS;
    case FoodClass::kColdDish:
      return v1::SAFETY_CLASS_COLD_DISH;
  }
  return v1::SAFETY_CLASS_UNSPECIFIED;
}

kitchen::RuleSet rulesOf(const v1::Household& household) {
  switch (household.safety_rules()) {
    case v1::SAFETY_RULES_FOOD_SERVICE:
      return kitchen::RuleSet::kFoodService;
    case v1::SAFETY_RULES_UK:
      return kitchen::RuleSet::kUnitedKingdom;
    default:
      return kitchen::RuleSet::kConsumer;
  }
}

v1::SafetyRules rulesOf(kitchen::RuleSet rules) {
  switch (rules) {
    case kitchen::RuleSet::kFoodService:
      return v1::SAFETY_RULES_FOOD_SERVICE;
    case kitchen::RuleSet::kUnitedKingdom:
      return v1::SAFETY_RULES_UK;
    case kitchen::RuleSet::kConsumer:
      break;
  }
  return v1::SAFETY_RULES_CONSUMER;
}

std::optional<FoodClass> foodOf(const v1::Recipe& recipe, const v1::Step& step) {
  // A dough is no such food, whatever else the recipe handles.
  if (step.has_ferment()) return std::nullopt;
  return classOf(step.safety_class() != v1::SAFETY_CLASS_UNSPECIFIED ? step.safety_class()
                                                                     : recipe.safety_class());
}

kitchen::ThawWay thawWayOf(const v1::Step& step) {
  switch (step.thaw_way()) {
    case v1::THAW_WAY_COLD_WATER:
      return kitchen::ThawWay::kColdWater;
    case v1::THAW_WAY_MICROWAVE:
      return kitchen::ThawWay::kMicrowave;
    default:
      return kitchen::ThawWay::kFridge;
  }
}

SafetyView::SafetyView(const Composition& composition)
    : composition_(composition), rules_(rulesOf(composition.documents.household)) {
  readStates();
  markCooked();
  for (const DishInfo& dish : composition.dishes) addClocks(dish);
}

void SafetyView::readStates() {
  states_.resize(composition_.steps.size());
  for (const DishInfo& dish : composition_.dishes)
    for (const int step : dish.steps) {
      const v1::Step& told = *composition_.steps[at(step)].step;
      StepState& state = states_[at(step)];
      state.food = foodOf(*dish.recipe, told);
      state.heats = told.kind() == v1::STEP_KIND_OVEN || told.kind() == v1::STEP_KIND_BURNER;
    }
  for (const planning::Gap& gap : composition_.problem.gaps) {
    if (gap.toEdge != Edge::kStart || gap.fromEdge != Edge::kEnd) continue;
    StepState& from = states_[at(gap.from)];
    StepState& to = states_[at(gap.to)];
    const bool sameDish = composition_.steps[at(gap.from)].dish == composition_.steps[at(gap.to)].dish;
    if (!sameDish || !from.food || !to.food) continue;
    from.after.push_back(gap.to);
    to.before.push_back(gap.from);
  }
}

// Recipes are told in order, but a step may come after one listed later; so until nothing changes.
void SafetyView::markCooked() {
  for (StepState& state : states_) state.cooked = state.food && kitchen::isReadyToEat(*state.food);
  for (bool changed = true; changed;) {
    changed = false;
    for (StepState& state : states_) {
      if (!state.food || state.cooked) continue;
      state.cooked = std::any_of(state.before.begin(), state.before.end(), [&](int before) {
        return states_[at(before)].cooked || states_[at(before)].heats;
      });
      changed = changed || state.cooked;
    }
  }
  for (StepState& state : states_) state.cooks = state.food && state.heats && !state.cooked;
}

bool SafetyView::keepsCold(int step, int mode) const {
  const int place = composition_.steps[at(step)].modes[at(mode)].place;
  if (place < 0) return false;
  const v1::Place& where = composition_.documents.kitchen.places(place);
  return isFridge(where) || kitchen::keepsCold(warmestOf(where), rules_);
}

bool SafetyView::keepsHot(int step, int mode) const {
  const StepState& state = states_[at(step)];
  const int place = composition_.steps[at(step)].modes[at(mode)].place;
  if (place < 0 || !state.food || !state.cooked) return false;
  return kitchen::keepsHot(coldestOf(composition_.documents.kitchen.places(place)), *state.food, rules_);
}

std::vector<int> SafetyView::warmModes(int step) const {
  std::vector<int> modes;
  const v1::Step& told = *composition_.steps[at(step)].step;
  // Thawing in water or a microwave is its own rule, not standing out.
  if (states_[at(step)].heats ||
      (told.kind() == v1::STEP_KIND_THAW && thawWayOf(told) != kitchen::ThawWay::kFridge))
    return modes;
  const int count = static_cast<int>(composition_.problem.steps[at(step)].modes.size());
  for (int m = 0; m < count; ++m)
    if (!keepsCold(step, m) && !keepsHot(step, m) && !composition_.steps[at(step)].modes[at(m)].leftOut)
      modes.push_back(m);
  return modes;
}

std::vector<int> SafetyView::hotModes(int step) const {
  std::vector<int> modes;
  const int count = static_cast<int>(composition_.problem.steps[at(step)].modes.size());
  for (int m = 0; m < count; ++m)
    if (keepsHot(step, m)) modes.push_back(m);
  return modes;
}

double SafetyView::warmestCelsius(int step) const {
  const v1::Kitchen& kitchen = composition_.documents.kitchen;
  double warmest = -300;
  for (const int mode : warmModes(step))
    if (const int place = composition_.steps[at(step)].modes[at(mode)].place; place >= 0)
      warmest = std::max(warmest, warmestOf(kitchen.places(place)));
  if (warmest > -300) return warmest;
  for (const v1::Place& place : kitchen.places())
    if (place.kind() == v1::PLACE_KIND_COUNTER) return warmestOf(place);
  return 21;
}

Minute SafetyView::longestStay(const DishInfo& dish, int step, int next, bool fromEnd) const {
  const planning::Problem& problem = composition_.problem;
  const planning::Dish& planned = problem.dishes[at(problem.steps[at(step)].dish)];
  const Minute own = fromEnd ? 0 : longestOf(problem.steps[at(step)]);
  if (next < 0) return step == dish.steps.back() ? own + planned.holdLimit : kNoLimit;
  Minute gap = kNoLimit;
  for (const planning::Gap& asked : problem.gaps)
    if (asked.from == step && asked.to == next && asked.fromEdge == Edge::kEnd &&
        asked.toEdge == Edge::kStart)
      gap = std::min(gap, asked.most);
  return sum(own, gap);
}

void SafetyView::extend(Path& path, bool raw, std::vector<Path>& paths) const {
  if (paths.size() >= kMostPaths) return;
  const StepState& last = state(path.back());
  // A raw path ends with the cooking; a cooked one begins with it.
  const bool done = raw && last.cooks;
  if (done || last.after.empty()) {
    paths.push_back(path);
    return;
  }
  for (const int next : last.after) {
    path.push_back(next);
    extend(path, raw, paths);
    path.pop_back();
  }
}

std::vector<SafetyView::Path> SafetyView::paths(const DishInfo& dish, bool raw) const {
  std::vector<Path> found;
  for (const int step : dish.steps) {
    const StepState& here = state(step);
    if (!here.food) continue;
    const bool begins = raw ? here.before.empty() && !here.cooked && !here.cooks
                            : here.cooks || (here.cooked && here.before.empty());
    if (!begins) continue;
    Path path = {step};
    extend(path, raw, found);
  }
  return found;
}

void SafetyView::add(SafetyClock clock) {
  if (clock.clock.spans.empty()) return;
  const auto same = [&](const SafetyClock& other) {
    return other.kind == clock.kind && other.steps == clock.steps;
  };
  if (std::any_of(clocks_.begin(), clocks_.end(), same)) return;
  clock.clock.id = v1::SafetyLimitKind_Name(clock.kind);
  clocks_.push_back(std::move(clock));
}

void SafetyView::addClocks(const DishInfo& dish) {
  for (const Path& path : paths(dish, true)) addRawClocks(dish, path);
  for (const Path& path : paths(dish, false)) addCookedClocks(dish, path);
}

// Time out of fridge and heat along one path. Between two steps food stays where
// the earlier one left it.
void SafetyView::addRoomClock(const DishInfo& dish, const Path& path, bool raw) {
  SafetyClock clock;
  clock.kind = v1::SAFETY_LIMIT_KIND_ROOM_TIME;
  clock.food = *state(path.front()).food;
  double warmest = -300;
  bool fromCold = clock.food == FoodClass::kColdDish;
  Minute longest = 0;
  int begun = -1;  // where the span under way begins, all of whose steps are out in any mode
  Edge edge = Edge::kStart;
  for (std::size_t i = 0; i < path.size(); ++i) {
    const int step = path[i];
    const int next = i + 1 < path.size() ? path[i + 1] : -1;
    const auto modes = static_cast<int>(composition_.problem.steps[at(step)].modes.size());
    const std::vector<int> warm = warmModes(step);
    const bool heats = state(step).heats;
    if (raw && state(step).cooks) break;
    if (warm.empty() && !heats) continue;
    // Kept hot or cold until it is served, it is out no longer than the step.
    const bool ends = next < 0 && step == dish.steps.back() && (heldCold(dish) || heldHot(dish));
    if (heats && ends) continue;
    if (!heats) warmest = std::max(warmest, warmestCelsius(step));
    if (begun < 0) edge = heats ? Edge::kEnd : Edge::kStart;
    if (begun < 0) begun = step;
    clock.steps.push_back(step);
    longest = sum(longest, ends ? longestOf(composition_.problem.steps[at(step)])
                                : longestStay(dish, step, next, heats));
    const bool mixed = !heats && static_cast<int>(warm.size()) < modes;
    const bool nextMixed = next >= 0 && !state(next).heats &&
                           static_cast<int>(warmModes(next).size()) <
                               static_cast<int>(composition_.problem.steps[at(next)].modes.size());
    const bool goesOn = next >= 0 && !mixed && !nextMixed && !state(next).heats;
    if (goesOn) continue;
    planning::Clock::Span span{begun, edge, ends ? step : next, ends ? Edge::kEnd : Edge::kStart, {}};
    if (mixed) span.modes = warm;
    clock.clock.spans.push_back(span);
    begun = -1;
  }
  if (clock.steps.empty()) return;
  if (warmest < -273) warmest = warmestCelsius(path.front());
  const kitchen::Limit& row = kitchen::roomLimit(warmest, fromCold, rules_);
  clock.clock.most = static_cast<Minute>(row.value);
  clock.source = row.source;
  clock.canBind = longest > clock.clock.most;
  add(std::move(clock));
}

void SafetyView::addRawClocks(const DishInfo& dish, const Path& path) {
  addRoomClock(dish, path, true);
  const int last = path.back();
  if (!state(last).cooks) return;
  const auto kindOf = [&](int step) { return composition_.steps[at(step)].step->kind(); };
  const FoodClass food = *state(last).food;
  const auto thaw =
      std::find_if(path.begin(), path.end(), [&](int step) { return kindOf(step) == v1::STEP_KIND_THAW; });
  SafetyClock clock;
  clock.food = food;
  if (thaw != path.end()) {
    const kitchen::ThawWay way = thawWayOf(*composition_.steps[at(*thaw)].step);
    clock.kind = v1::SAFETY_LIMIT_KIND_THAWED;
    clock.source = kitchen::thawSource();
    clock.steps.assign(thaw, path.end());
    clock.clock.spans = {{*thaw, Edge::kEnd, last, Edge::kStart, {}}};
    clock.clock.most = kitchen::thawedDays(kitchen::rawClassOf(food), way).most * kDay;
    // In the fridge it may be thawed as soon as at its quickest, long before the step ends.
    const double kilograms = composition_.steps[at(*thaw)].step->mass_g() / 1000;
    if (way == kitchen::ThawWay::kFridge && kilograms > 0) {
      clock.before = static_cast<Minute>(kitchen::thawHours(kilograms, way).least * kMinutesInHour);
      clock.clock.spans = {{*thaw, Edge::kStart, last, Edge::kStart, {}}};
      clock.clock.most += clock.before;
    }
    // Cooked at once: nothing but the work between, to the grid that plans are made on.
    if (clock.clock.most == 0)
      for (auto step = thaw + 1; step != path.end(); ++step) {
        const bool work = kindOf(*step) == v1::STEP_KIND_HANDS_ON;
        clock.clock.most += kGridMinutes + (work ? shortestOf(composition_.problem.steps[at(*step)]) : 0);
      }
    return add(std::move(clock));
  }
  const bool chilled =
      std::any_of(path.begin(), path.end(), [&](int step) { return kindOf(step) == v1::STEP_KIND_CHILL; });
  if (!chilled) return;
  const kitchen::FridgeLife& row = kitchen::fridgeLife(food, false, rules_);
  clock.kind = v1::SAFETY_LIMIT_KIND_RAW_FRIDGE;
  clock.source = row.source;
  clock.steps = path;
  clock.clock.spans = {{path.front(), Edge::kStart, last, Edge::kStart, {}}};
  clock.clock.most = static_cast<Minute>(row.days * kDay);
  add(std::move(clock));
}

void SafetyView::addCookedClocks(const DishInfo& dish, const Path& path) {
  addRoomClock(dish, path, false);
  addHotClock(dish, path);
  const bool chilled = std::any_of(path.begin(), path.end(), [&](int step) {
    return composition_.steps[at(step)].step->kind() == v1::STEP_KIND_CHILL;
  });
  if (!chilled) return;
  SafetyClock clock;
  clock.food = *state(path.front()).food;
  const kitchen::FridgeLife& row = kitchen::fridgeLife(clock.food, true, rules_);
  clock.kind = v1::SAFETY_LIMIT_KIND_COOKED_FRIDGE;
  clock.source = row.source;
  clock.steps = path;
  const bool cooks = state(path.front()).cooks;
  clock.clock.spans = {{path.front(), cooks ? Edge::kEnd : Edge::kStart, -1, Edge::kEnd, {}}};
  clock.clock.most = static_cast<Minute>(row.days * kDay);
  add(std::move(clock));
}

void SafetyView::addHotClock(const DishInfo& dish, const Path& path) {
  const kitchen::Limit& row = kitchen::limit(kitchen::LimitKind::kWholeDinnerHot, rules_);
  SafetyClock clock;
  clock.kind = v1::SAFETY_LIMIT_KIND_HOT_HOLD;
  clock.food = *state(path.front()).food;
  clock.source = row.source;
  clock.clock.most = static_cast<Minute>(row.value);
  Minute longest = 0;
  for (const int step : path) {
    const std::vector<int> hot = hotModes(step);
    if (hot.empty()) continue;
    clock.steps.push_back(step);
    clock.clock.spans.push_back({step, Edge::kStart, step, Edge::kEnd, hot});
    longest = sum(longest, longestOf(composition_.problem.steps[at(step)]));
  }
  const int last = path.back();
  if (heldHot(dish) && last == dish.steps.back()) {
    if (clock.steps.empty() || clock.steps.back() != last) clock.steps.push_back(last);
    clock.clock.spans.push_back({last, Edge::kEnd, -1, Edge::kEnd, {}});
    longest = sum(longest, longestStay(dish, last, -1, true));
  }
  clock.isAdvice = row.weight != kitchen::Weight::kBreach;
  clock.canBind = longest > clock.clock.most && !clock.isAdvice;
  if (!clock.steps.empty()) add(std::move(clock));
}

}  // namespace suppertide::compose
