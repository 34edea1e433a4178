#include <algorithm>
#include <map>

#include "absl/strings/str_cat.h"
#include "server/compose/documents.h"
#include "server/compose/fetch_steps.h"
#include "server/compose/shelf_fit.h"

namespace suppertide::compose {
namespace {

// The mode that the planned step tells, or -1. Proofs also have to agree with
// where the bulk stood, which `placeBefore` says.
int modeOf(const Composition& composition, int step, const v1::PlannedStep& planned, int placeBefore) {
  const v1::Kitchen& kitchen = composition.documents.kitchen;
  const StepInfo& info = composition.steps[static_cast<std::size_t>(step)];
  for (std::size_t m = 0; m < info.modes.size(); ++m) {
    const ModeInfo& mode = info.modes[m];
    const std::string oven = mode.oven >= 0 ? kitchen.ovens(mode.oven).id() : "";
    const std::string place = mode.place >= 0 ? kitchen.places(mode.place).id() : "";
    if (planned.oven_id() != oven || planned.place_id() != place) continue;
    if (planned.setpoint_celsius() != mode.setpointCelsius || planned.left_out() != mode.leftOut) continue;
    if (mode.loads > 0 && std::max(1, planned.load_count()) != mode.loads) continue;
    if (mode.placeBefore >= 0 && mode.placeBefore != placeBefore) continue;
    if (mode.flourPerStarter > 0 &&
        planned.levain_ratio().rfind(absl::StrCat("1:", mode.flourPerStarter, ":"), 0) != 0)
      continue;
    return static_cast<int>(m);
  }
  return -1;
}

// Where the plan puts the step, in so far as it says: " in range-oven at 200 °C".
std::string whereabouts(const v1::PlannedStep& planned) {
  std::string where;
  if (!planned.oven_id().empty()) absl::StrAppend(&where, " in ", planned.oven_id());
  if (!planned.place_id().empty()) absl::StrAppend(&where, " in ", planned.place_id());
  if (planned.setpoint_celsius() > 0) absl::StrAppend(&where, " at ", planned.setpoint_celsius(), " °C");
  return where.empty() ? " without an oven or place" : where;
}

class Reader {
 public:
  Reader(const Composition& composition, const v1::Plan& plan) : composition_(composition) {
    for (const v1::PlannedStep& step : plan.steps()) byId_[step.id()] = &step;
    schedule_.steps.resize(composition.steps.size());
    schedule_.unserved.assign(composition.dishes.size(), false);
    for (std::size_t d = 0; d < composition.dishes.size(); ++d)
      for (const v1::Unserved& left : plan.unserved())
        if (left.dish_id() == composition.dishes[d].dish->id()) schedule_.unserved[d] = true;
  }

  // What the event still has; dishes that the plan lacks are unserved and listed.
  planning::Schedule knownPart(std::vector<int>& added) {
    lenient_ = true;
    for (std::size_t d = 0; d < composition_.dishes.size(); ++d) {
      const auto& steps = composition_.dishes[d].steps;
      const bool known = std::all_of(steps.begin(), steps.end(), [&](int i) {
        return byId_.count(composition_.stepId(i)) > 0 || leftOutFetch(i) >= 0;
      });
      if (known || schedule_.unserved[d]) continue;
      schedule_.unserved[d] = true;
      added.push_back(static_cast<int>(d));
    }
    for (std::size_t i = 0; i < composition_.steps.size(); ++i) {
      const auto found = byId_.find(composition_.stepId(static_cast<int>(i)));
      if (found != byId_.end()) place(static_cast<int>(i), *found->second).IgnoreError();
    }
    leaveOutUntoldFetches();
    return schedule_;
  }

  absl::StatusOr<planning::Schedule> run() {
    std::size_t used = 0;
    for (std::size_t i = 0; i < composition_.steps.size(); ++i) {
      const auto found = byId_.find(composition_.stepId(static_cast<int>(i)));
      const bool served = !schedule_.unserved[static_cast<std::size_t>(composition_.steps[i].dish)];
      if (found == byId_.end()) {
        if (served && leftOutFetch(static_cast<int>(i)) < 0)
          return wrong(composition_.stepId(static_cast<int>(i)), "is not in the plan");
        continue;
      }
      ++used;
      if (auto status = place(static_cast<int>(i), *found->second); !status.ok()) return status;
    }
    leaveOutUntoldFetches();
    if (used != byId_.size())
      return absl::InvalidArgumentError("the plan has steps that the event does not have");
    return schedule_;
  }

 private:
  // The mode in which something is not taken out ahead; -1 for every other step.
  int leftOutFetch(int step) const {
    const StepInfo& info = composition_.steps[static_cast<std::size_t>(step)];
    const auto out =
        std::find_if(info.modes.begin(), info.modes.end(), [](const ModeInfo& mode) { return mode.leftOut; });
    return isFetchId(info.step->id()) && out != info.modes.end() ? static_cast<int>(out - info.modes.begin())
                                                                 : -1;
  }

  // Plans made before these steps were do not have them.
  void leaveOutUntoldFetches() {
    for (const planning::Gap& gap : composition_.problem.gaps) {
      if (leftOutFetch(gap.from) < 0 || byId_.count(composition_.stepId(gap.from)) > 0) continue;
      planning::Placement& at = schedule_.steps[static_cast<std::size_t>(gap.from)];
      at.start = at.end = schedule_.steps[static_cast<std::size_t>(gap.to)].start - gap.least;
      at.mode = leftOutFetch(gap.from);
    }
  }

  static absl::Status wrong(const std::string& step, const std::string& what) {
    return absl::InvalidArgumentError(absl::StrCat("step ", step, ": ", what));
  }

  absl::Status place(int step, const v1::PlannedStep& planned) {
    planning::Placement& at = schedule_.steps[static_cast<std::size_t>(step)];
    at.start = composition_.axis.minuteOf(planned.start_time());
    at.end = composition_.axis.minuteOf(planned.end_time());
    const int dish = composition_.steps[static_cast<std::size_t>(step)].dish;
    // Of a dish that is left out a plan has what had begun.
    if (schedule_.unserved[static_cast<std::size_t>(dish)] && !lenient_) return absl::OkStatus();
    at.mode = modeOf(composition_, step, planned, lastPlace_.count(dish) > 0 ? lastPlace_[dish] : -1);
    if (at.mode < 0 && lenient_) at.mode = 0;
    if (at.mode < 0) return wrong(planned.id(), absl::StrCat("cannot be done", whereabouts(planned)));
    const auto& meaning =
        composition_.steps[static_cast<std::size_t>(step)].modes[static_cast<std::size_t>(at.mode)];
    const v1::Step& told = *composition_.steps[static_cast<std::size_t>(step)].step;
    const v1::FermentStage stage = told.ferment().stage();
    if (stage == v1::FERMENT_STAGE_BULK || stage == v1::FERMENT_STAGE_PROOF) lastPlace_[dish] = meaning.place;
    if (planned.cook_member_id().empty()) return absl::OkStatus();
    const auto& cooks = composition_.problem.cooks;
    const auto cook = std::find_if(cooks.begin(), cooks.end(),
                                   [&](const auto& c) { return c.id == planned.cook_member_id(); });
    if (cook == cooks.end())
      return wrong(planned.id(),
                   absl::StrCat("its cook ", planned.cook_member_id(), " does not cook at this event"));
    at.cook = static_cast<int>(cook - cooks.begin());
    return absl::OkStatus();
  }

  const Composition& composition_;
  std::map<std::string, const v1::PlannedStep*> byId_;
  std::map<int, int> lastPlace_;
  planning::Schedule schedule_;
  bool lenient_ = false;
};

v1::HardRule ruleOf(planning::Rule rule) {
  switch (rule) {
    case planning::Rule::kGap:
      return v1::HARD_RULE_GAP;
    case planning::Rule::kServing:
      return v1::HARD_RULE_SERVING;
    case planning::Rule::kCook:
      return v1::HARD_RULE_COOK;
    case planning::Rule::kCapacity:
      return v1::HARD_RULE_CAPACITY;
    case planning::Rule::kOvenTemperature:
      return v1::HARD_RULE_OVEN_TEMPERATURE;
    case planning::Rule::kOvenRacks:
      return v1::HARD_RULE_OVEN_RACKS;
    case planning::Rule::kOvenProofing:
      return v1::HARD_RULE_OVEN_PROOFING;
    case planning::Rule::kReadiness:
      return v1::HARD_RULE_READINESS;
    case planning::Rule::kFoodSafety:
      return v1::HARD_RULE_FOOD_SAFETY;
    case planning::Rule::kAllergen:
      return v1::HARD_RULE_ALLERGEN;
    case planning::Rule::kPinned:
      return v1::HARD_RULE_PINNED;
    case planning::Rule::kModeLink:
      return v1::HARD_RULE_MODE_LINK;
  }
  return v1::HARD_RULE_UNSPECIFIED;
}

std::string thingOf(const Composition& composition, const planning::Breach& breach) {
  if (breach.thing < 0) return "";
  const auto index = static_cast<std::size_t>(breach.thing);
  switch (breach.rule) {
    case planning::Rule::kCook:
      return composition.problem.cooks[index].id;
    case planning::Rule::kCapacity:
      return composition.resourceIds[index];
    case planning::Rule::kOvenTemperature:
    case planning::Rule::kOvenRacks:
    case planning::Rule::kOvenProofing:
      return composition.problem.ovens[index].id;
    case planning::Rule::kFoodSafety:
      return composition.problem.clocks[index].id;
    case planning::Rule::kAllergen:
      return composition.problem.separations[index].id;
    default:
      return "";
  }
}

}  // namespace

absl::StatusOr<planning::Schedule> scheduleOf(const Composition& composition, const v1::Plan& plan) {
  return Reader(composition, plan).run();
}

planning::Schedule knownPartOf(const Composition& composition, const v1::Plan& plan,
                               std::vector<int>& added) {
  return Reader(composition, plan).knownPart(added);
}

std::vector<v1::Breach> breachesOf(const Composition& composition,
                                   const std::vector<planning::Breach>& breaches) {
  std::vector<v1::Breach> out;
  for (const planning::Breach& breach : breaches) {
    v1::Breach told;
    told.set_rule(ruleOf(breach.rule));
    if (breach.step >= 0) told.set_step_id(composition.stepId(breach.step));
    if (breach.otherStep >= 0) told.set_other_step_id(composition.stepId(breach.otherStep));
    told.set_thing_id(thingOf(composition, breach));
    *told.mutable_time() = composition.axis.timeOf(breach.minute);
    told.set_amount(breach.amount);
    told.set_may_fit(breach.rule == planning::Rule::kOvenRacks && breach.step >= 0 &&
                     isDoubted(composition, breach.thing, breach.step));
    out.push_back(told);
  }
  return out;
}

}  // namespace suppertide::compose
