#include "server/compose/bread_model.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "server/bread/fermentation.h"
#include "server/compose/parts.h"

namespace suppertide::compose {
namespace {

constexpr double kJarMm = 120;
constexpr double kLitresPerKilogram = 2.2;  // risen dough with its bowl

// The hands-on step listed last before `step` that it comes after.
int workBefore(const Composition& composition, const DishInfo& dish, int step) {
  int found = -1;
  for (const planning::Gap& gap : composition.problem.gaps) {
    if (gap.to != step || gap.toEdge != planning::Edge::kStart || gap.fromEdge != planning::Edge::kEnd)
      continue;
    if (composition.steps[static_cast<std::size_t>(gap.from)].dish !=
        composition.steps[static_cast<std::size_t>(dish.steps[0])].dish)
      continue;
    if (composition.steps[static_cast<std::size_t>(gap.from)].step->kind() == v1::STEP_KIND_HANDS_ON)
      found = std::max(found, gap.from);
  }
  return found;
}

// Sorts the dish's ferments into levain, preferments and the dough's own.
void findFerments(const Composition& composition, const DishInfo& dish, BreadInfo& bread) {
  const v1::BreadFormula& formula = dish.recipe->formula();
  bread.preferments.resize(static_cast<std::size_t>(formula.preferments_size()));
  for (const int step : dish.steps) {
    const v1::Step& told = *composition.steps[static_cast<std::size_t>(step)].step;
    if (!told.has_ferment()) continue;
    if (told.ferment().stage() == v1::FERMENT_STAGE_LEVAIN) {
      bread.levainStep = step;
    } else if (told.ferment().stage() == v1::FERMENT_STAGE_PREFERMENT) {
      for (int p = 0; p < formula.preferments_size(); ++p)
        if (formula.preferments(p).id() == told.ferment().preferment_id())
          bread.preferments[static_cast<std::size_t>(p)].step = step;
    } else {
      bread.doughSteps.push_back(step);
    }
  }
}

}  // namespace

absl::StatusOr<BreadInfo> breadInfoOf(const Composition& composition, const DishInfo& dish) {
  const v1::BreadFormula& from = dish.recipe->formula();
  BreadInfo bread;
  bread.pieces = static_cast<int>(std::ceil(from.piece_count() * dish.scale - 1e-9));
  for (const v1::Starter& starter : composition.documents.starters)
    if (from.has_levain() && starter.id() == from.levain().starter_id()) bread.starter = &starter;
  if (from.has_levain() && bread.starter == nullptr)
    return absl::InvalidArgumentError(
        absl::StrCat("recipe ", dish.recipe->display_name(), ": its starter is missing"));
  auto recipe = BreadRecipe::of(
      from, bread.starter, bread.pieces * from.piece_mass_g() / (1 - from.handling_loss_percent() / 100));
  if (!recipe.ok())
    return absl::InvalidArgumentError(
        absl::StrCat("recipe ", dish.recipe->display_name(), ": ", std::string(recipe.status().message())));
  bread.recipe = *std::move(recipe);
  findFerments(composition, dish, bread);
  if (bread.levainStep >= 0) bread.feedStep = workBefore(composition, dish, bread.levainStep);
  for (PrefermentSteps& steps : bread.preferments)
    if (steps.step >= 0) steps.mixStep = workBefore(composition, dish, steps.step);
  if (!bread.doughSteps.empty()) bread.mixStep = workBefore(composition, dish, bread.doughSteps.front());
  return bread;
}

absl::StatusOr<bread::DoughState> BreadModel::fedLevain(double flourPerStarter) const {
  return recipe().fedLevain(flourPerStarter, BreadRecipe::fedCelsius(roomCelsius()));
}

absl::StatusOr<bread::DoughState> BreadModel::mixedPreferment(int index) const {
  return recipe().mixedPreferment(index, BreadRecipe::fedCelsius(roomCelsius()));
}

absl::StatusOr<bread::DoughState> BreadModel::mixedDough(const bread::Culture& levain,
                                                         const std::vector<double>& grown) const {
  return recipe().mixedDough(levain, recipe().doughCelsius(), recipe().yeastFactor(grown));
}

double BreadModel::workHoursBefore(int step) const {
  const auto& all = bread_.doughSteps;
  const auto here = std::find(all.begin(), all.end(), step);
  if (here == all.end() || here == all.begin()) return 0;
  double minutes = 0;
  for (int k = *std::prev(here) + 1; k < step; ++k) {
    const v1::Step& between = *composition_.steps[static_cast<std::size_t>(k)].step;
    const bool during = std::any_of(between.after().begin(), between.after().end(),
                                    [](const v1::After& a) { return a.from_start(); });
    if (!during && !between.has_oven()) minutes += minutesOf(between.duration().likely());
  }
  return minutes / 60;
}

bread::DoughState BreadModel::handled(const bread::DoughState& state, int nextStep, double workHours) const {
  const v1::Step& next = *composition_.steps[static_cast<std::size_t>(nextStep)].step;
  bread::DoughState after = state;
  if (next.ferment().stage() == v1::FERMENT_STAGE_PROOF)
    after = bread::shape(kind(), state, pieceKilograms());
  if (workHours <= 0) return after;
  const std::vector<bread::Stay> room = {
      {workHours, bread::TemperatureByHour(roomCelsius()), bread::kStillAir}};
  return bread::ferment(kind(), after, 0, room);
}

bread::Stage BreadModel::stage(int step, int place) const {
  const v1::FermentNeed& need = composition_.steps[static_cast<std::size_t>(step)].step->ferment();
  const bool ownDough = need.stage() == v1::FERMENT_STAGE_BULK || need.stage() == v1::FERMENT_STAGE_PROOF;
  bread::Stage stage = bread::kLevainStage;
  if (need.stage() == v1::FERMENT_STAGE_BULK) stage = recipe().bulk();
  if (need.stage() == v1::FERMENT_STAGE_PROOF) stage = recipe().proof();
  for (std::size_t p = 0; p < bread_.preferments.size(); ++p)
    if (bread_.preferments[p].step == step) stage = recipe().prefermentStage(static_cast<int>(p));
  if (need.low_rise() > 0) stage.lowRise = need.low_rise();
  if (need.wanted_rise() > 0) stage.wantedRise = need.wanted_rise();
  if (need.high_rise() > 0) stage.highRise = need.high_rise();
  if (!isRetard(place) || !ownDough) return stage;
  bread::Stage retard = bread::kRetard;
  if (need.has_least_retard()) retard.leastHours = minutesOf(need.least_retard()) / 60.0;
  if (need.has_most_retard()) retard.mostHours = minutesOf(need.most_retard()) / 60.0;
  return retard;
}

std::vector<bread::Stay> BreadModel::stays(int place) const {
  return {{bread::kOpenEnded, airOf(composition_.documents.kitchen.places(place)), bread::kStillAir}};
}

bread::Uncertainty BreadModel::uncertainty(int step, int place) const {
  const v1::LearnedEffect& warmth = composition_.documents.kitchen.places(place).learned_warmth();
  return isPreferment(step) ? BreadRecipe::yeastUncertainty(warmth) : recipe().uncertainty(warmth);
}

bool BreadModel::isPreferment(int step) const {
  return std::any_of(bread_.preferments.begin(), bread_.preferments.end(),
                     [&](const PrefermentSteps& steps) { return steps.step == step; });
}

double BreadModel::roomCelsius() const {
  const auto& places = composition_.documents.kitchen.places();
  for (int p = 0; p < places.size(); ++p)
    if (places[p].kind() == v1::PLACE_KIND_COUNTER) return composition_.placeCelsius(p);
  return kUsualRoomCelsius;
}

bool BreadModel::isRetard(int place) const {
  return composition_.documents.kitchen.places(place).kind() == v1::PLACE_KIND_FRIDGE;
}

std::vector<int> BreadModel::places(int step) const {
  const v1::Step& told = *composition_.steps[static_cast<std::size_t>(step)].step;
  const auto& all = composition_.documents.kitchen.places();
  std::vector<int> places;
  for (int p = 0; p < all.size(); ++p) {
    const v1::PlaceKind kind = all[p].kind();
    const auto& kinds = told.place_kinds();
    const bool wanted = std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
    const bool usual =
        kind != v1::PLACE_KIND_FREEZER && kind != v1::PLACE_KIND_WARMER && kind != v1::PLACE_KIND_FRIDGE;
    if (kinds.empty() ? usual : wanted) places.push_back(p);
  }
  return places;
}

double BreadModel::litres(int step) const {
  const v1::Step& told = *composition_.steps[static_cast<std::size_t>(step)].step;
  if (told.volume_l() > 0) return told.volume_l() * dish_.scale;
  double grams = recipe().doughGrams();
  if (step == bread_.levainStep) grams = recipe().levainBuildGrams();
  for (std::size_t p = 0; p < bread_.preferments.size(); ++p)
    if (bread_.preferments[p].step == step) grams = recipe().prefermentGrams(static_cast<int>(p));
  return grams / 1000 * kLitresPerKilogram;
}

planning::Load BreadModel::load(int step) const {
  const v1::Step& told = *composition_.steps[static_cast<std::size_t>(step)].step;
  planning::Load load;
  if (told.ferment().stage() == v1::FERMENT_STAGE_PROOF) {
    for (const int other : dish_.steps) {
      const v1::Step& bake = *composition_.steps[static_cast<std::size_t>(other)].step;
      if (!bake.has_oven()) continue;
      load.widthMm = bake.oven().pan().width_mm();
      load.depthMm = bake.oven().pan().depth_mm();
      load.heightMm = bake.oven().pan().height_mm();
      load.panCount = std::max(1, bake.oven().pan().count());
      return load;
    }
  }
  const double diameter = std::clamp(std::cbrt(litres(step)) * 150, kJarMm, 380.0);
  load.widthMm = load.depthMm = static_cast<int>(diameter);
  load.heightMm = static_cast<int>(diameter * 0.55);
  return load;
}

WaterWays BreadModel::water() const {
  const double room = roomCelsius();
  return recipe().water({room, room, room, room, recipe().doughCelsius()});
}

}  // namespace suppertide::compose
