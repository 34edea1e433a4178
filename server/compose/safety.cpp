#include <algorithm>
#include <cmath>

#include "server/base/index.h"
#include "server/compose/documents.h"
#include "server/compose/parts.h"
#include "server/compose/safety_view.h"
#include "server/planning/solver/side_rules.h"

namespace suppertide::compose {
namespace {

using kitchen::FoodClass;
using kitchen::LimitKind;

bool isMeat(FoodClass food) {
  return food != FoodClass::kEggDish && food != FoodClass::kHotHeldPlants && food != FoodClass::kColdDish &&
         food != FoodClass::kLeftovers;
}

// Whether a bake of raw whole meat may end below the end temperature when it is held there.
bool mayBeHeld(FoodClass food, double celsius, kitchen::RuleSet rules) {
  return rules == kitchen::RuleSet::kFoodService && food == FoodClass::kWholeMeat &&
         celsius >= kitchen::roastTable().front().celsius;
}

// Writes the limits and cautions of one planned step.
class StepSafety {
 public:
  StepSafety(const Composition& composition, const planning::Schedule& schedule, const SafetyView& view,
             int step, v1::PlannedStep& out)
      : composition_(composition), schedule_(schedule), view_(view), step_(step), out_(out) {}

  void write() {
    const SafetyView::StepState& state = view_.state(step_);
    if (!state.food) return;
    food_ = *state.food;
    const v1::StepKind kind = composition_.steps[at(step_)].step->kind();
    if (kind == v1::STEP_KIND_THAW)
      thaw();
    else if (state.cooks)
      cook();
    else if (state.heats)
      reheat();
    if (kind == v1::STEP_KIND_CHILL) chill();
    if (!state.cooked && kind == v1::STEP_KIND_HANDS_ON && isMeat(food_)) caution(v1::CAUTION_RAW_MEAT);
    if (!state.cooked && kind == v1::STEP_KIND_HANDS_ON && food_ == FoodClass::kEggDish)
      caution(v1::CAUTION_RAW_EGG);
    for (const SafetyClock& clock : view_.clocks()) counted(clock, kind);
  }

 private:
  v1::SafetyLimit& limit(v1::SafetyLimitKind kind, const kitchen::Source& source) {
    v1::SafetyLimit& limit = *out_.add_safety_limits();
    limit.set_kind(kind);
    limit.set_rules(rulesOf(view_.rules()));
    limit.set_safety_class(safetyClassOf(food_));
    limit.set_source(std::string(source.title));
    return limit;
  }

  void caution(v1::Caution caution) {
    const auto& told = out_.cautions();
    if (std::find(told.begin(), told.end(), caution) == told.end()) out_.add_cautions(caution);
  }

  void degrees(v1::SafetyLimitKind kind, const kitchen::Limit& row) {
    limit(kind, row.source).set_celsius(row.value);
  }

  void thaw() {
    const v1::Step& told = *composition_.steps[at(step_)].step;
    const kitchen::ThawWay way = thawWayOf(told);
    const double hours = kitchen::thawHours(told.mass_g() / 1000, way).most;
    if (hours > 0)
      *limit(v1::SAFETY_LIMIT_KIND_THAW, kitchen::thawSource()).mutable_duration() =
          durationOf(static_cast<int>(std::ceil(hours * 60)));
    if (way == kitchen::ThawWay::kFridge) caution(v1::CAUTION_THAW_IN_FRIDGE);
    if (isMeat(food_)) caution(v1::CAUTION_RAW_MEAT);
  }

  void cook() {
    if (food_ == FoodClass::kColdDish || (food_ == FoodClass::kHotHeldPlants && !bakedToHold())) return;
    const kitchen::EndTemperature& end = kitchen::endTemperature(food_, view_.rules());
    v1::SafetyLimit& done = limit(v1::SAFETY_LIMIT_KIND_END_TEMPERATURE, end.source);
    done.set_celsius(end.celsius);
    if (end.heldSeconds > 0) done.mutable_duration()->set_seconds(std::lround(end.heldSeconds));
    if (end.restMinutes > 0)
      *limit(v1::SAFETY_LIMIT_KIND_REST, end.source).mutable_duration() =
          durationOf(static_cast<int>(end.restMinutes));
    const bool oven = composition_.steps[at(step_)].step->has_oven();
    if (oven && kitchen::leastRoastingCelsius(food_, view_.rules()))
      degrees(v1::SAFETY_LIMIT_KIND_ROASTING_OVEN, kitchen::limit(LimitKind::kRoastingOven, view_.rules()));
    caution(v1::CAUTION_CORE_TEMPERATURE);
  }

  // The temperature of vegetables is a rule for their hot hold; what boils is beyond it.
  bool bakedToHold() const {
    const StepInfo& info = composition_.steps[at(step_)];
    const v1::Recipe& recipe = *composition_.dishes[at(info.dish)].recipe;
    return info.step->has_oven() && recipe.holding().kind() == v1::HOLDING_KIND_HOT;
  }

  void reheat() {
    if (food_ == FoodClass::kColdDish) return;
    if (food_ == FoodClass::kPackedHam) {
      const kitchen::EndTemperature& end = kitchen::endTemperature(food_, view_.rules());
      limit(v1::SAFETY_LIMIT_KIND_REHEAT, end.source).set_celsius(end.celsius);
    } else if (cameFromCold()) {
      degrees(v1::SAFETY_LIMIT_KIND_REHEAT, kitchen::limit(LimitKind::kReheat, view_.rules()));
    } else {
      return;
    }
    caution(v1::CAUTION_REHEAT_THROUGH);
  }

  // What is still hot is not heated again.
  bool cameFromCold() const {
    const auto& before = view_.state(step_).before;
    return before.empty() || std::any_of(before.begin(), before.end(), [&](int other) {
             return view_.keepsCold(other, schedule_.steps[at(other)].mode);
           });
  }

  void chill() {
    degrees(v1::SAFETY_LIMIT_KIND_COLD_HOLD, kitchen::limit(LimitKind::kColdHold, view_.rules()));
    const int heat = heatBefore(step_);
    if (heat < 0) return;
    const auto& placed = schedule_.steps;
    const int gone = placed[at(step_)].start - placed[at(heat)].end;
    cooling(v1::SAFETY_LIMIT_KIND_FIRST_COOLING, LimitKind::kCoolFirstTime, gone)
        .set_celsius(kitchen::limit(LimitKind::kCoolFirstTo, view_.rules()).value);
    cooling(v1::SAFETY_LIMIT_KIND_COOLING, LimitKind::kCoolTotalTime, gone)
        .set_celsius(kitchen::limit(LimitKind::kColdHold, view_.rules()).value);
    caution(v1::CAUTION_COOL_QUICKLY);
  }

  // The clock runs from the heat on; the plan tells what of it is gone before the fridge.
  v1::SafetyLimit& cooling(v1::SafetyLimitKind kind, LimitKind row, int gone) {
    const kitchen::Limit& most = kitchen::limit(row, view_.rules());
    v1::SafetyLimit& told = limit(kind, most.source);
    *told.mutable_duration() = durationOf(static_cast<int>(most.value));
    *told.mutable_planned_duration() = durationOf(std::max(0, gone));
    return told;
  }

  // The last step on the heat with nothing cold between it and `step`; -1 when there is none.
  int heatBefore(int step) const {
    int last = -1;
    for (const int other : view_.state(step).before) {
      if (view_.keepsCold(other, schedule_.steps[at(other)].mode)) continue;
      const int heat = view_.state(other).heats ? other : heatBefore(other);
      if (last < 0 || (heat >= 0 && schedule_.steps[at(heat)].start > schedule_.steps[at(last)].start))
        last = heat;
    }
    return last;
  }

  // A count is told where it stands and where it ends, not at every step of it.
  void counted(const SafetyClock& clock, v1::StepKind kind) {
    const auto found = std::find(clock.steps.begin(), clock.steps.end(), step_);
    if (found == clock.steps.end()) return;
    const bool stands = kind == v1::STEP_KIND_WAIT || kind == v1::STEP_KIND_HOLD;
    const bool first = found == clock.steps.begin();
    const bool last = found + 1 == clock.steps.end();
    const bool room = clock.kind == v1::SAFETY_LIMIT_KIND_ROOM_TIME;
    const bool chills = kind == v1::STEP_KIND_CHILL;
    if (clock.kind == v1::SAFETY_LIMIT_KIND_THAWED && !first) return;
    if (room && !stands && !last) return;
    const bool kept =
        clock.kind == v1::SAFETY_LIMIT_KIND_RAW_FRIDGE || clock.kind == v1::SAFETY_LIMIT_KIND_COOKED_FRIDGE;
    if (kept && !chills) return;
    for (const v1::SafetyLimit& told : out_.safety_limits())
      if (told.kind() == clock.kind) return;
    v1::SafetyLimit& told = limit(clock.kind, clock.source);
    const planning::Minute planned = planning::clockMinutes(composition_.problem, clock.clock, schedule_);
    *told.mutable_duration() = durationOf(clock.clock.most - clock.before);
    *told.mutable_planned_duration() = durationOf(std::max(0, planned - clock.before));
    if (clock.kind == v1::SAFETY_LIMIT_KIND_HOT_HOLD)
      told.set_celsius(kitchen::hotHoldLimit(food_, view_.rules()).value);
    if (room) caution(v1::CAUTION_ROOM_TEMPERATURE_LIMIT);
  }

  const Composition& composition_;
  const planning::Schedule& schedule_;
  const SafetyView& view_;
  const int step_;
  v1::PlannedStep& out_;
  FoodClass food_ = FoodClass::kWholeMeat;
};

v1::Breach breach(const Composition& composition, const planning::Schedule& schedule, int step,
                  v1::SafetyLimitKind kind, double amount) {
  v1::Breach out;
  out.set_rule(v1::HARD_RULE_FOOD_SAFETY);
  out.set_step_id(composition.stepId(step));
  out.set_thing_id(v1::SafetyLimitKind_Name(kind));
  *out.mutable_time() = composition.axis.timeOf(schedule.steps[at(step)].start);
  out.set_amount(static_cast<int>(std::ceil(amount - 1e-6)));
  return out;
}

}  // namespace

absl::Status addSafety(Composition& composition) {
  const SafetyView view(composition);
  for (const SafetyClock& clock : view.clocks())
    if (clock.canBind) composition.problem.clocks.push_back(clock.clock);
  return absl::OkStatus();
}

std::vector<bool> addSafetyUnderWay(Composition& composition) {
  const SafetyView view(composition);
  for (const SafetyClock& clock : view.clocks())
    if (!clock.canBind && !clock.isAdvice) composition.problem.clocks.push_back(clock.clock);
  // What its recipe calls no kind of food may be any: there the recipe's own limits are all there is.
  const auto isKnown = [&](int step) {
    const StepInfo& info = composition.steps[at(step)];
    return info.step->has_ferment() || info.step->safety_class() != v1::SAFETY_CLASS_UNSPECIFIED ||
           composition.dishes[at(info.dish)].recipe->safety_class() != v1::SAFETY_CLASS_UNSPECIFIED;
  };
  std::vector<bool> patient;
  for (const planning::Gap& gap : composition.problem.gaps) {
    const bool isDough = composition.steps[at(gap.from)].step->has_ferment() ||
                         composition.steps[at(gap.to)].step->has_ferment();
    patient.push_back(isDough || (isKnown(gap.from) && isKnown(gap.to)));
  }
  return patient;
}

void addSafetyLimits(const Composition& composition, const planning::Schedule& schedule, v1::Plan& plan) {
  const SafetyView view(composition);
  for (v1::PlannedStep& out : *plan.mutable_steps())
    for (int step = 0; step < static_cast<int>(composition.steps.size()); ++step)
      if (view.state(step).food && composition.stepId(step) == out.id())
        StepSafety(composition, schedule, view, step, out).write();
}

std::vector<v1::Breach> safetyBreaches(const Composition& composition, const planning::Schedule& schedule) {
  const SafetyView view(composition);
  std::vector<v1::Breach> breaches;
  const auto add = [&](int step, v1::SafetyLimitKind kind, double amount) {
    if (amount > 1e-6) breaches.push_back(breach(composition, schedule, step, kind, amount));
  };
  for (int step = 0; step < static_cast<int>(composition.steps.size()); ++step) {
    const SafetyView::StepState& state = view.state(step);
    const StepInfo& info = composition.steps[at(step)];
    if (!state.food || schedule.unserved[at(info.dish)]) continue;
    const v1::OvenNeed& oven = info.step->oven();
    if (state.cooks && oven.has_end_core_celsius() && *state.food != FoodClass::kColdDish &&
        !mayBeHeld(*state.food, oven.end_core_celsius(), view.rules()))
      add(step, v1::SAFETY_LIMIT_KIND_END_TEMPERATURE,
          kitchen::endTemperature(*state.food, view.rules()).celsius - oven.end_core_celsius());
    const int place = info.modes[at(schedule.steps[at(step)].mode)].place;
    if (place < 0) continue;
    const v1::Place& where = composition.documents.kitchen.places(place);
    if (where.kind() == v1::PLACE_KIND_FRIDGE)
      add(step, v1::SAFETY_LIMIT_KIND_COLD_HOLD,
          composition.placeCelsius(place) - kitchen::limit(LimitKind::kColdHold, view.rules()).value);
  }
  return breaches;
}

}  // namespace suppertide::compose
