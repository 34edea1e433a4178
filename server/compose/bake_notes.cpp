#include "server/compose/bake_notes.h"

#include <algorithm>
#include <cmath>

#include "server/bread/baking.h"

namespace suppertide::compose {
namespace {

constexpr double kFarFromRecipe = 1.5;  // times the recipe's own minutes, or that part of them

// Times the recipe's own minutes; 1 where the recipe doesn't say for what mass it is written.
double timesByMass(const v1::OvenNeed& need, const v1::Recipe& recipe) {
  const double own = recipe.formula().piece_mass_g();
  if (need.piece_mass_g() <= 0 || own <= 0 || need.piece_mass_g() == own) return 1;
  const auto time = bread::bakeTime(1, need.piece_mass_g(), own);
  return time.ok() ? time->minutes : 1;
}

void scale(google::protobuf::Duration& duration, double times) {
  duration = durationOf(std::max<std::int64_t>(1, std::lround(minutesOf(duration) * times)));
}

const v1::Recipe& recipeOf(const Composition& composition, int step) {
  const StepInfo& info = composition.steps[static_cast<std::size_t>(step)];
  return *composition.dishes[static_cast<std::size_t>(info.dish)].recipe;
}

// The recipe's own end belongs to the range of its class of dough, wherever it lies.
void setCore(const v1::OvenNeed& need, const v1::BreadFormula& formula, v1::BakeNotes& notes) {
  const auto crumb = formula.dough_class() == v1::DOUGH_CLASS_ENRICHED ? bread::CrumbClass::kEnriched
                                                                       : bread::CrumbClass::kLean;
  Interval<double> core = bread::coreEndCelsius(crumb);
  if (need.has_end_core_celsius())
    core = {std::min(core.start, need.end_core_celsius()), std::max(core.limit, need.end_core_celsius())};
  notes.set_least_core_celsius(core.start);
  notes.set_most_core_celsius(core.limit);
}

}  // namespace

v1::OvenNeed ovenNeedOf(const Composition& composition, int step) {
  v1::OvenNeed need = composition.steps[static_cast<std::size_t>(step)].step->oven();
  const double times = timesByMass(need, recipeOf(composition, step));
  if (times == 1) return need;
  v1::Spread& duration = *need.mutable_duration();
  if (duration.has_least()) scale(*duration.mutable_least(), times);
  scale(*duration.mutable_likely(), times);
  if (duration.has_most()) scale(*duration.mutable_most(), times);
  for (v1::OvenPhase& phase : *need.mutable_later_phases()) scale(*phase.mutable_duration(), times);
  if (need.has_steam_duration()) scale(*need.mutable_steam_duration(), times);
  if (need.has_lid_duration()) scale(*need.mutable_lid_duration(), times);
  return need;
}

void addBakeNotes(const Composition& composition, int step, const planning::Placement& placement,
                  v1::PlannedStep& out) {
  const v1::Step& told = *composition.steps[static_cast<std::size_t>(step)].step;
  const v1::Recipe& recipe = recipeOf(composition, step);
  if (!told.has_oven() || !recipe.has_formula()) return;
  const v1::OvenNeed need = ovenNeedOf(composition, step);
  v1::BakeNotes& notes = *out.mutable_bake_notes();
  const int length = placement.end - placement.start;
  const auto after = [&](int minutes) {
    return composition.axis.timeOf(placement.start + std::min(minutes, std::max(0, length - 1)));
  };
  if (need.steam()) {
    const int steam = need.has_steam_duration()
                          ? minutesOf(need.steam_duration())
                          : static_cast<int>(std::lround(bread::usualSteamMinutes(length)));
    *notes.mutable_steam_out_time() = after(steam);
  }
  if (need.has_lid_duration()) *notes.mutable_lid_off_time() = after(minutesOf(need.lid_duration()));
  setCore(need, recipe.formula(), notes);
  const double times = timesByMass(told.oven(), recipe);
  notes.set_scaled_by_mass(times != 1);
  notes.set_far_from_recipe(times > kFarFromRecipe || times < 1 / kFarFromRecipe);
}

}  // namespace suppertide::compose
