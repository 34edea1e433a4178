#include <algorithm>
#include <cmath>
#include <set>

#include "absl/strings/str_cat.h"
#include "server/compose/bake_notes.h"
#include "server/compose/loads.h"
#include "server/compose/parts.h"
#include "server/compose/safety_view.h"
#include "server/compose/spreads.h"

namespace suppertide::compose {
namespace {

constexpr int kGrid = 5;
// Dividing a bake that would fit at once is not for nothing.
constexpr int kLoadCost = 10;
// As bakeTimeAt() has it at a recipe's own setpoint.
const planning::Spread kUsualBakeSpread = {0.9, 1.1, {}};

kitchen::BakeClass classOf(v1::FoodClass food) {
  switch (food) {
    case v1::FOOD_CLASS_BREAD:
      return kitchen::BakeClass::kYeastBread;
    case v1::FOOD_CLASS_CUSTARD:
      return kitchen::BakeClass::kCustard;
    case v1::FOOD_CLASS_SPONGE:
      return kitchen::BakeClass::kSponge;
    case v1::FOOD_CLASS_PASTRY:
      return kitchen::BakeClass::kPastry;
    case v1::FOOD_CLASS_ROAST:
      return kitchen::BakeClass::kRoast;
    case v1::FOOD_CLASS_VEGETABLE:
      return kitchen::BakeClass::kVegetables;
    default:
      return kitchen::BakeClass::kCasserole;
  }
}

// Centre when done, for recipes that don't say. Common practice, no source; safety
// limits are the recipe's and the cook's to check.
double usualEndCelsius(v1::FoodClass food) {
  switch (food) {
    case v1::FOOD_CLASS_CUSTARD:
      return 80;
    case v1::FOOD_CLASS_ROAST:
      return 65;
    case v1::FOOD_CLASS_CASSEROLE:
      return 75;
    case v1::FOOD_CLASS_VEGETABLE:
      return 92;
    default:
      return 94;
  }
}

kitchen::Bake bakeOf(const v1::OvenNeed& need) {
  kitchen::Bake bake;
  bake.bakeClass = classOf(need.food_class());
  bake.setpointCelsius = need.setpoint_celsius();
  bake.minutes = static_cast<double>(minutesOf(need.duration().likely()));
  bake.startCelsius = need.has_start_core_celsius() ? need.start_core_celsius() : 20;
  bake.endCelsius =
      need.has_end_core_celsius() ? need.end_core_celsius() : usualEndCelsius(need.food_class());
  if (need.thickness_mm() > 0) bake.thicknessMm = need.thickness_mm();
  if (need.has_min_setpoint_celsius()) bake.leastCelsius = need.min_setpoint_celsius();
  if (need.has_max_setpoint_celsius()) bake.mostCelsius = need.max_setpoint_celsius();
  return bake;
}

// Below it this bake is not safe, in an oven without a fan; 0 for most food.
double leastSafeCelsius(const SafetyView& safety, int step) {
  const SafetyView::StepState& state = safety.state(step);
  if (!state.cooks) return 0;
  return kitchen::leastRoastingCelsius(*state.food, safety.rules()).value_or(0);
}

kitchen::SetpointRange rangeOf(const SafetyView& safety, int step, const kitchen::Bake& bake) {
  kitchen::SetpointRange range = kitchen::allowedSetpoints(bake);
  range.leastCelsius = std::max(range.leastCelsius, leastSafeCelsius(safety, step));
  return range;
}

// Setpoints worth trying for everybody: each dish's own and the ends of its range.
// The cost of being off is linear in the degrees, so a best shared setpoint is one of these.
std::set<int> candidates(const Composition& composition, const SafetyView& safety) {
  std::set<int> celsius;
  for (int step = 0; step < static_cast<int>(composition.steps.size()); ++step) {
    const StepInfo& info = composition.steps[static_cast<std::size_t>(step)];
    if (!info.step->has_oven()) continue;
    const kitchen::Bake bake = bakeOf(ovenNeedOf(composition, step));
    celsius.insert(info.step->oven().setpoint_celsius());
    if (info.step->oven().later_phases_size() > 0) continue;
    const kitchen::SetpointRange range = rangeOf(safety, step, bake);
    celsius.insert(static_cast<int>(std::ceil(range.leastCelsius / kGrid)) * kGrid);
    celsius.insert(static_cast<int>(std::floor(range.mostCelsius / kGrid)) * kGrid);
  }
  return celsius;
}

// The dial of an oven for a setpoint written for one without a fan; -1 when off its dial.
int dialOf(const kitchen::Oven& oven, int celsius) {
  const double set = kitchen::nearestSetting(oven, kitchen::fanCorrected(celsius, false, oven.fan));
  const double wanted = kitchen::fanCorrected(celsius, false, oven.fan);
  return std::abs(set - wanted) > oven.stepCelsius / 2 + 0.01 ? -1 : static_cast<int>(std::lround(set));
}

struct Use {
  int step = 0;
  int oven = 0;
  std::vector<std::pair<int, int>> phases;  // dial setting, minutes
  ModeInfo meaning;
  int degreesOff = 0;
  planning::Spread spread;
};

int planned(double minutes) {
  return static_cast<int>(std::ceil(minutes - 1e-9));
}

void addFixedPhases(const Composition& composition, const SafetyView& safety, int step, int oven,
                    std::vector<Use>& uses) {
  const v1::OvenNeed need = ovenNeedOf(composition, step);
  const kitchen::Oven& here = composition.ovens[static_cast<std::size_t>(oven)];
  Use use{step, oven, {}, {}, 0, {}};
  const double least = leastSafeCelsius(safety, step);
  const auto tooCool = [&](const v1::OvenPhase& phase) { return phase.setpoint_celsius() < least; };
  if (need.setpoint_celsius() < least ||
      std::any_of(need.later_phases().begin(), need.later_phases().end(), tooCool))
    return;
  const int first = dialOf(here, need.setpoint_celsius());
  use.phases.push_back({first, minutesOf(need.duration().likely())});
  for (const v1::OvenPhase& phase : need.later_phases())
    use.phases.push_back({dialOf(here, phase.setpoint_celsius()), minutesOf(phase.duration())});
  int total = 0;
  for (const auto& [dial, minutes] : use.phases) {
    if (dial < 0) return;
    total += minutes;
  }
  const int spread = minutesOf(need.duration().likely()) - minutesOf(need.duration().least());
  use.meaning.oven = oven;
  use.meaning.setpointCelsius = use.meaning.ownSetpointCelsius = first;
  use.meaning.checkFromMinutes = total - std::max(5, need.duration().has_least() ? spread : total / 10);
  // The recipe's spread is that of its first phase.
  const planning::Spread firstPhase = spreadOf(need.duration(), kUsualBakeSpread);
  const double share = total > 0 ? static_cast<double>(use.phases.front().second) / total : 0;
  use.spread = {1 - share * (1 - firstPhase.least), 1 + share * (firstPhase.most - 1), {}};
  uses.push_back(use);
}

void addSetpoints(const Composition& composition, const SafetyView& safety, int step, int oven,
                  const std::set<int>& tries, std::vector<Use>& uses) {
  const v1::OvenNeed need = ovenNeedOf(composition, step);
  const kitchen::Oven& here = composition.ovens[static_cast<std::size_t>(oven)];
  const kitchen::Bake bake = bakeOf(need);
  const kitchen::SetpointRange range = rangeOf(safety, step, bake);
  const double leastSafe = leastSafeCelsius(safety, step);
  for (const int celsius : tries) {
    const bool own = celsius == need.setpoint_celsius();
    if (celsius < leastSafe) continue;
    if (!own && (celsius < range.leastCelsius || celsius > range.mostCelsius)) continue;
    const int dial = dialOf(here, celsius);
    const auto time = kitchen::bakeTimeAt(bake, celsius);
    if (dial < 0 || !time.ok()) continue;
    Use use{step, oven, {{dial, planned(time->likely)}}, {}, 0, {}};
    use.spread = spreadOf(need.duration(), {time->checkFrom / time->likely, time->atMost / time->likely, {}});
    use.meaning.oven = oven;
    use.meaning.setpointCelsius = dial;
    use.meaning.ownSetpointCelsius = dialOf(here, need.setpoint_celsius());
    const double least = need.duration().has_least() ? static_cast<double>(minutesOf(need.duration().least()))
                                                     : bake.minutes * 0.9;
    use.meaning.checkFromMinutes =
        static_cast<int>(std::min(time->checkFrom, least * time->likely / std::max(1.0, bake.minutes)));
    use.degreesOff = static_cast<int>(std::lround(kitchen::degreesOff(bake, celsius)));
    uses.push_back(use);
  }
}

// Collects each oven's setpoints and asks the kitchen for its change times.
absl::Status setOvens(Composition& composition, const std::vector<Use>& uses) {
  for (std::size_t o = 0; o < composition.ovens.size(); ++o) {
    std::set<int> setpoints;
    std::set<int> stone;
    for (const Use& use : uses) {
      if (use.oven != static_cast<int>(o)) continue;
      for (const auto& [dial, minutes] : use.phases) setpoints.insert(dial);
      if (composition.steps[static_cast<std::size_t>(use.step)].step->oven().stone())
        stone.insert(use.phases.front().first);
    }
    if (const auto& light = composition.ovens[o].lightCelsius)
      setpoints.insert(static_cast<int>(std::lround(*light)));
    planning::Oven& oven = composition.problem.ovens[o];
    oven.setpoints.assign(setpoints.begin(), setpoints.end());
    const auto table = kitchen::changeTable(composition.ovens[o], oven.setpoints);
    if (!table.ok()) return table.status();
    oven.change = table->change;
    oven.heatFromCold = table->fromCold;
    const auto& from = composition.documents.kitchen.ovens(static_cast<int>(o));
    const int soak = from.has_stone_soak_duration()
                         ? minutesOf(from.stone_soak_duration())
                         : static_cast<int>(kitchen::extraSoakMinutes(kitchen::HeavyWare::kStone));
    for (std::size_t b = 0; b < oven.setpoints.size(); ++b) {
      if (stone.count(oven.setpoints[b]) == 0) continue;
      oven.heatFromCold[b] += soak;
      for (std::size_t a = 0; a < oven.setpoints.size(); ++a)
        if (a != b) oven.change[a][b] += soak;
    }
  }
  return absl::OkStatus();
}

// One load of `loads`.
void addMode(Composition& composition, const Use& use, LoadCount count, int loads) {
  const auto index = static_cast<std::size_t>(use.step);
  const StepInfo& info = composition.steps[index];
  const planning::Oven& oven = composition.problem.ovens[static_cast<std::size_t>(use.oven)];
  planning::Mode mode;
  mode.name = absl::StrCat(oven.id, " at ", use.meaning.setpointCelsius);
  planning::OvenNeed need;
  need.oven = use.oven;
  const int load = loadNumber(info.step->id());
  need.load = loadOf(info.step->oven(), load, loads);
  need.preheated = !info.step->oven().cold_start();
  int total = 0;
  for (const auto& [dial, minutes] : use.phases) {
    const auto at = std::find(oven.setpoints.begin(), oven.setpoints.end(), dial);
    need.phases.push_back({static_cast<int>(at - oven.setpoints.begin()), minutes});
    total += minutes;
  }
  if (!oven.racks->fits({need.load})) return;
  mode.length = planning::LengthTable::fixed(total);
  mode.oven = std::move(need);
  mode.qualityCost = use.degreesOff;
  if (load == 1) mode.qualityCost += (loads - count.least) * kLoadCost;
  mode.spread = use.spread;
  setWork(composition, *info.step, *composition.dishes[static_cast<std::size_t>(info.dish)].dish, mode);
  if (mode.attention > 0 && mode.cooks.empty()) return;
  composition.problem.steps[index].modes.push_back(std::move(mode));
  composition.steps[index].modes.push_back(use.meaning);
  if (count.most > 1) {
    absl::StrAppend(&composition.problem.steps[index].modes.back().name, ", in ", loads);
    composition.steps[index].modes.back().loads = loads;
  }
}

void addModes(Composition& composition, const Use& use) {
  const v1::Step& step = *composition.steps[static_cast<std::size_t>(use.step)].step;
  const LoadCount count = loadsOf(step.oven(), composition.problem);
  for (int loads = std::max(count.least, loadNumber(step.id())); loads <= count.most; ++loads)
    addMode(composition, use, count, loads);
}

// The modes in which a bake is divided into so many loads, or in which a later load is not needed then.
std::vector<int> modesFor(const StepInfo& step, int loads) {
  std::vector<int> modes;
  for (std::size_t m = 0; m < step.modes.size(); ++m)
    if (step.modes[m].loads == loads || (step.modes[m].leftOut && loadNumber(step.step->id()) > loads))
      modes.push_back(static_cast<int>(m));
  return modes;
}

// A bake's later loads follow what its first one was divided into; those not needed are left out.
void linkLoads(Composition& composition, std::size_t first) {
  const StepInfo& bake = composition.steps[first];
  const LoadCount count = loadsOf(bake.step->oven(), composition.problem);
  for (int load = 2; load <= count.most; ++load) {
    const std::size_t later = first + static_cast<std::size_t>(load - 1);
    if (load > count.least) addLeftOut(composition, static_cast<int>(later), 0);
    auto& modes = composition.problem.steps[first].modes;
    for (std::size_t m = 0; m < modes.size(); ++m)
      modes[m].links.push_back(
          {static_cast<int>(later), modesFor(composition.steps[later], bake.modes[m].loads)});
  }
}

}  // namespace

absl::Status addBakes(Composition& composition) {
  const SafetyView safety(composition);
  const std::set<int> tries = candidates(composition, safety);
  std::vector<Use> uses;
  for (std::size_t i = 0; i < composition.steps.size(); ++i) {
    const v1::Step& step = *composition.steps[i].step;
    if (!step.has_oven()) continue;
    for (std::size_t o = 0; o < composition.ovens.size(); ++o) {
      if (step.oven().later_phases_size() > 0)
        addFixedPhases(composition, safety, static_cast<int>(i), static_cast<int>(o), uses);
      else
        addSetpoints(composition, safety, static_cast<int>(i), static_cast<int>(o), tries, uses);
    }
  }
  if (auto status = setOvens(composition, uses); !status.ok()) return status;
  for (const Use& use : uses) addModes(composition, use);
  for (std::size_t i = 0; i < composition.steps.size(); ++i)
    if (composition.steps[i].step->has_oven() && composition.problem.steps[i].modes.empty())
      makeImpossible(composition, static_cast<int>(i));
  for (std::size_t i = 0; i < composition.steps.size(); ++i)
    if (composition.steps[i].step->has_oven() && !composition.steps[i].impossible &&
        loadNumber(composition.steps[i].step->id()) == 1)
      linkLoads(composition, i);
  return absl::OkStatus();
}

}  // namespace suppertide::compose
