#include <algorithm>
#include <cmath>
#include <map>

#include "absl/strings/str_cat.h"
#include "server/compose/fetch_steps.h"
#include "server/compose/loads.h"
#include "server/compose/menu/servings.h"
#include "server/compose/parts.h"
#include "server/compose/safety_view.h"
#include "server/compose/spreads.h"
#include "server/kitchen/safety.h"

namespace suppertide::compose {
namespace {

constexpr int kLevainGap = 30;  // what has ripened waits so long at most; common practice, no source
constexpr int kServedAtOnce = 5;
constexpr int kOtherCookCost = 5;  // tier 4: asking someone else than who wished to make the dish
constexpr int kHotMinuteCost = 2;  // tier 3: a minute of waiting hot beyond its best
constexpr int kUsualHotBest = 10;

planning::StepKind kindOf(v1::StepKind kind) {
  switch (kind) {
    case v1::STEP_KIND_WAIT:
      return planning::StepKind::kWait;
    case v1::STEP_KIND_FERMENT:
      return planning::StepKind::kFerment;
    case v1::STEP_KIND_OVEN:
      return planning::StepKind::kBake;
    case v1::STEP_KIND_BURNER:
      return planning::StepKind::kCook;
    case v1::STEP_KIND_CHILL:
      return planning::StepKind::kChill;
    case v1::STEP_KIND_THAW:
      return planning::StepKind::kThaw;
    case v1::STEP_KIND_REST:
      return planning::StepKind::kRest;
    case v1::STEP_KIND_HOLD:
      return planning::StepKind::kHold;
    default:
      return planning::StepKind::kHandsOn;
  }
}

int attentionOf(const v1::Step& step) {
  if (step.has_attention_percent()) return step.attention_percent();
  if (step.kind() == v1::STEP_KIND_HANDS_ON || step.kind() == v1::STEP_KIND_FETCH) return 100;
  return step.kind() == v1::STEP_KIND_BURNER ? 25 : 0;
}

// Thawing without a length takes the slow end for its mass, and may end up to a day later.
planning::LengthTable lengthOf(const v1::Step& step) {
  int shortest = minutesOf(step.duration().likely());
  int longest = step.has_longest_duration() ? minutesOf(step.longest_duration()) : shortest;
  if (step.kind() == v1::STEP_KIND_THAW && step.mass_g() > 0) {
    const double hours = kitchen::thawHours(step.mass_g() / 1000, thawWayOf(step)).most;
    shortest = std::max(shortest, static_cast<int>(std::ceil(hours * 60)));
    // In the fridge it may lie on; out of water or a microwave it is cooked at once.
    const bool fridge = thawWayOf(step) == kitchen::ThawWay::kFridge;
    if (!step.has_longest_duration()) longest = shortest + (fridge ? 24 * 60 : 0);
  }
  return planning::LengthTable::range(shortest, shortest, std::max(shortest, longest));
}

bool needsFridge(const v1::Step& step) {
  if (step.kind() == v1::STEP_KIND_THAW) return thawWayOf(step) == kitchen::ThawWay::kFridge;
  return step.kind() == v1::STEP_KIND_CHILL;
}

std::vector<int> placesFor(const Composition& composition, const v1::Step& step) {
  std::vector<v1::PlaceKind> kinds;
  for (const int kind : step.place_kinds()) kinds.push_back(static_cast<v1::PlaceKind>(kind));
  if (kinds.empty() && needsFridge(step)) kinds.push_back(v1::PLACE_KIND_FRIDGE);
  std::vector<int> places;
  const auto& all = composition.documents.kitchen.places();
  for (int p = 0; p < all.size(); ++p)
    if (std::find(kinds.begin(), kinds.end(), all[p].kind()) != kinds.end() &&
        all[p].kind() != v1::PLACE_KIND_OVEN_LIGHT)
      places.push_back(p);
  return places;
}

// Burners and equipment; false when the kitchen has not that many.
bool useThings(const Composition& composition, const v1::Step& step, planning::Mode& mode) {
  const int usualBurners = step.kind() == v1::STEP_KIND_BURNER ? 1 : 0;
  const int burners = step.has_burner_count() ? step.burner_count() : usualBurners;
  const auto capacity = [&](int r) {
    return composition.problem.resources[static_cast<std::size_t>(r)].capacity;
  };
  if (burners > 0) mode.uses.push_back({composition.burnerResource, burners});
  if (burners > capacity(composition.burnerResource)) return false;
  for (const v1::EquipmentUse& use : step.equipment()) {
    const auto& ids = composition.resourceIds;
    const auto found = std::find(ids.begin(), ids.end(), use.equipment_id());
    const int count = std::max(1, use.count());
    if (found == ids.end()) return false;
    const int resource = static_cast<int>(found - ids.begin());
    if (count > capacity(resource)) return false;
    mode.uses.push_back({resource, count});
  }
  return true;
}

void addPlainModes(Composition& composition, int step) {
  const StepInfo& info = composition.steps[static_cast<std::size_t>(step)];
  const DishInfo& dish = composition.dishes[static_cast<std::size_t>(info.dish)];
  planning::Mode base;
  base.name = "here";
  base.length = lengthOf(*info.step);
  base.spread = spreadOf(info.step->duration(), usualSpread(info.step->kind()));
  setWork(composition, *info.step, *dish.dish, base);
  const bool doable =
      useThings(composition, *info.step, base) && (base.attention == 0 || !base.cooks.empty());
  if (!doable) return makeImpossible(composition, step);
  auto& planned = composition.problem.steps[static_cast<std::size_t>(step)];
  auto& modes = composition.steps[static_cast<std::size_t>(step)].modes;
  const std::vector<int> places = placesFor(composition, *info.step);
  for (const int place : places) {
    planning::Mode mode = base;
    mode.name = composition.documents.kitchen.places(place).id();
    if (!usePlace(composition, place, info.step->volume_l() * dish.scale, mode)) continue;
    ModeInfo meaning;
    meaning.place = place;
    planned.modes.push_back(std::move(mode));
    modes.push_back(meaning);
  }
  if (!planned.modes.empty()) return;
  if (info.step->place_kinds_size() > 0 || needsFridge(*info.step)) return makeImpossible(composition, step);
  planned.modes.push_back(std::move(base));
  modes.push_back({});
}

int addStep(Composition& composition, int dish, const v1::Step& step) {
  const int index = static_cast<int>(composition.steps.size());
  const DishInfo& info = composition.dishes[static_cast<std::size_t>(dish)];
  const planning::Minute serve = composition.axis.minuteOf(info.course->serving_time());
  planning::Step planned;
  planned.id = absl::StrCat(info.dish->id(), "/", step.id());
  planned.kind = kindOf(step.kind());
  planned.dish = dish;
  if (step.has_earliest_before_serving())
    planned.earliest = std::max(0, serve - minutesOf(step.earliest_before_serving()));
  if (step.has_latest_before_serving()) planned.latest = serve - minutesOf(step.latest_before_serving());
  composition.problem.steps.push_back(std::move(planned));
  StepInfo meaning;
  meaning.dish = dish;
  meaning.step = &step;
  composition.steps.push_back(meaning);
  if (!step.has_oven() && !step.has_ferment()) addPlainModes(composition, index);
  return index;
}

int usualMost(const v1::Step& before, const v1::Step& after, bool fromStart) {
  if (fromStart) return planning::kNoLimit;
  const v1::FermentStage ripening = before.ferment().stage();
  if (ripening == v1::FERMENT_STAGE_LEVAIN || ripening == v1::FERMENT_STAGE_PREFERMENT) return kLevainGap;
  return before.has_ferment() || after.has_ferment() ? kFermentGap : planning::kNoLimit;
}

class GapMaker {
 public:
  GapMaker(Composition& composition, const DishInfo& dish) : composition_(composition), dish_(dish) {
    for (std::size_t k = 0; k < dish.steps.size(); ++k)
      byId_[dish.recipe->steps(static_cast<int>(k)).id()] = dish.steps[k];
  }

  void run() {
    for (int k = 0; k < dish_.recipe->steps_size(); ++k) addFor(k);
    finishBeforeReady();
  }

 private:
  void addFor(int k) {
    const v1::Step& step = dish_.recipe->steps(k);
    const int here = dish_.steps[static_cast<std::size_t>(k)];
    if (step.after().empty() && k > 0 && !step.starts_free()) {
      v1::After before;
      before.set_step_id(dish_.recipe->steps(k - 1).id());
      add(before, step, here);
    }
    for (const v1::After& after : step.after()) add(after, step, here);
  }

  void add(const v1::After& after, const v1::Step& step, int here) {
    const auto found = byId_.find(after.step_id());
    if (found == byId_.end()) return;
    const v1::Step& before = *composition_.steps[static_cast<std::size_t>(found->second)].step;
    planning::Gap gap;
    gap.from = found->second;
    gap.fromEdge = after.from_start() ? planning::Edge::kStart : planning::Edge::kEnd;
    gap.to = here;
    gap.least = minutesOf(after.least_gap());
    gap.most =
        after.has_most_gap() ? minutesOf(after.most_gap()) : usualMost(before, step, after.from_start());
    if (!after.from_start()) followed_[gap.from] = true;
    composition_.problem.gaps.push_back(gap);
    // Work counted from a ferment's start is work on the dough: it ends before the ferment does.
    if (after.from_start() && before.has_ferment())
      composition_.problem.gaps.push_back(
          {here, planning::Edge::kEnd, gap.from, planning::Edge::kEnd, 0, planning::kNoLimit});
  }

  // Whatever nothing follows is done before the dish counts as ready.
  void finishBeforeReady() {
    const int last = dish_.steps.back();
    for (const int step : dish_.steps)
      if (step != last && !followed_[step])
        composition_.problem.gaps.push_back(
            {step, planning::Edge::kEnd, last, planning::Edge::kEnd, 0, planning::kNoLimit});
  }

  Composition& composition_;
  const DishInfo& dish_;
  std::map<std::string, int> byId_;
  std::map<int, bool> followed_;
};

planning::CostCurve waitCost(const v1::Holding& holding, int longest) {
  const int from = minutesOf(holding.best_from());
  const bool hot = holding.kind() == v1::HOLDING_KIND_HOT || holding.kind() == v1::HOLDING_KIND_WARM;
  const int usualUntil = hot ? std::max(from, kUsualHotBest) : longest;
  const int until =
      std::min(longest, holding.has_best_until() ? minutesOf(holding.best_until()) : usualUntil);
  planning::CostCurve curve;
  if (from > 0) curve.knots.push_back({0, from * kHotMinuteCost});
  curve.knots.push_back({from, 0});
  if (until > from) curve.knots.push_back({until, 0});
  // A long wait costs no more than an hour of hot waiting, spread over it.
  if (longest > until) curve.knots.push_back({longest, std::min(longest - until, 60) * kHotMinuteCost});
  return curve;
}

// Which of two dishes is missed more where only one can be served: the roast that the dinner is cooked
// around, then the bread, then what had an oven. An assumption.
int missedBy(const v1::Recipe& recipe) {
  const auto isBaked = [&](v1::FoodClass food) {
    return std::any_of(recipe.steps().begin(), recipe.steps().end(), [&](const v1::Step& step) {
      return step.has_oven() && (food == v1::FOOD_CLASS_UNSPECIFIED || step.oven().food_class() == food);
    });
  };
  if (isBaked(v1::FOOD_CLASS_ROAST)) return 3;
  if (recipe.has_formula()) return 2;
  return isBaked(v1::FOOD_CLASS_UNSPECIFIED) ? 1 : 0;
}

planning::Dish plannedDish(const Composition& composition, const DishInfo& info) {
  planning::Dish dish;
  dish.id = info.dish->id();
  dish.lastStep = info.steps.back();
  dish.serve = composition.axis.minuteOf(info.course->serving_time());
  dish.lateLimit = lateLimit(*info.course);
  dish.holdLimit = std::max(kServedAtOnce, minutesOf(info.recipe->holding().longest()));
  dish.waitCost = waitCost(info.recipe->holding(), dish.holdLimit);
  dish.unservedCost = kOneDish + missedBy(*info.recipe);
  return dish;
}

template <typename List>
auto* findById(const List& list, const std::string& id) {
  const auto found =
      std::find_if(list.begin(), list.end(), [&](const auto& entry) { return entry.id() == id; });
  return found == list.end() ? nullptr : &*found;
}

}  // namespace

void setWork(const Composition& composition, const v1::Step& step, const v1::Dish& dish,
             planning::Mode& mode) {
  mode.attention = attentionOf(step);
  if (mode.attention == 0) return;
  for (std::size_t c = 0; c < composition.cooks.size(); ++c) {
    const v1::Member& member = *composition.cooks[c];
    const auto& skills = member.skills();
    if (!step.skill().empty() && std::find(skills.begin(), skills.end(), step.skill()) == skills.end())
      continue;
    const bool wished = dish.cook_member_id().empty() || dish.cook_member_id() == member.id();
    mode.cooks.push_back({static_cast<int>(c), wished ? 0 : kOtherCookCost});
  }
}

absl::Status addDishes(Composition& composition) {
  const Documents& documents = composition.documents;
  for (const v1::Dish& from : documents.event.dishes()) {
    DishInfo info;
    info.dish = &from;
    info.recipe = findById(documents.recipes, from.recipe_id());
    info.course = findById(documents.event.courses(), from.course_id());
    if (info.recipe == nullptr || info.recipe->steps().empty())
      return absl::InvalidArgumentError(
          absl::StrCat("dish ", from.id(), ": recipe ", from.recipe_id(), " is missing or empty"));
    if (info.course == nullptr)
      return absl::InvalidArgumentError(
          absl::StrCat("dish ", from.id(), ": course ", from.course_id(), " is not in the event"));
    info.scale = scaleOf(documents.event, from, *info.recipe);
    if (auto sized = withPansFor(*info.recipe, info.scale)) {
      info.recipe = sized.get();
      composition.divided.push_back(std::move(sized));
    }
    const auto needs = fetchNeeds(*info.recipe, ingredientsOf(from, *info.recipe, info.scale));
    if (auto fetched = withFetches(*info.recipe, needs, documents.kitchen)) {
      info.recipe = fetched.get();
      composition.divided.push_back(std::move(fetched));
    }
    if (auto divided = inLoads(*info.recipe, composition.problem)) {
      info.recipe = divided.get();
      composition.divided.push_back(std::move(divided));
    }
    const int dish = static_cast<int>(composition.dishes.size());
    composition.dishes.push_back(info);
    for (const v1::Step& step : info.recipe->steps()) {
      const int index = addStep(composition, dish, step);
      composition.dishes.back().steps.push_back(index);
    }
    composition.problem.dishes.push_back(plannedDish(composition, composition.dishes.back()));
    GapMaker(composition, composition.dishes.back()).run();
  }
  return absl::OkStatus();
}

namespace {

// Whether a mode is in the oven or place that a pin asks for.
bool keepsPin(const v1::Kitchen& kitchen, const v1::StepPin& pin, const ModeInfo& mode) {
  const bool ovenKept =
      pin.oven_id().empty() || (mode.oven >= 0 && kitchen.ovens(mode.oven).id() == pin.oven_id());
  const bool placeKept =
      pin.place_id().empty() || (mode.place >= 0 && kitchen.places(mode.place).id() == pin.place_id());
  return ovenKept && placeKept;
}

// Modes elsewhere stay in their place, since others are linked to them by index, but cannot be chosen.
absl::Status pinStep(Composition& composition, const v1::StepPin& pin, std::size_t index) {
  planning::Step& step = composition.problem.steps[index];
  if (pin.has_start_time()) step.pin.start = composition.axis.minuteOf(pin.start_time());
  for (std::size_t c = 0; c < composition.cooks.size(); ++c)
    if (composition.cooks[c]->id() == pin.cook_member_id()) step.pin.cook = static_cast<int>(c);
  bool possible = false;
  for (std::size_t m = 0; m < step.modes.size(); ++m) {
    const bool kept = keepsPin(composition.documents.kitchen, pin, composition.steps[index].modes[m]);
    if (!kept) {
      step.modes[m].length = {0, 0, {{1, 1, 0}}};
      step.modes[m].anyHour.reset();
    }
    possible |= kept;
  }
  if (possible) return absl::OkStatus();
  return absl::InvalidArgumentError(absl::StrCat("step ", step.id, " cannot be where it is pinned"));
}

}  // namespace

absl::Status addPins(Composition& composition) {
  for (const v1::StepPin& pin : composition.documents.event.pins())
    for (std::size_t i = 0; i < composition.steps.size(); ++i)
      if (composition.problem.steps[i].id == absl::StrCat(pin.dish_id(), "/", pin.step_id()))
        if (auto status = pinStep(composition, pin, i); !status.ok()) return status;
  return absl::OkStatus();
}

}  // namespace suppertide::compose
