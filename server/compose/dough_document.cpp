#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "server/bread/fermentation.h"
#include "server/bread/forecast.h"
#include "server/compose/bread_model.h"
#include "server/compose/documents.h"

namespace suppertide::compose {
namespace {

// A forecast minute is no promise: the plan's own rounding may be this far off.
constexpr int kToleranceMinutes = 5;

class DoughWriter {
 public:
  DoughWriter(const Composition& composition, const planning::Schedule& schedule, const DishInfo& dish,
              v1::Plan& plan)
      : composition_(composition),
        schedule_(schedule),
        dish_(dish),
        bread_(*dish.bread),
        model_(composition, dish, *dish.bread),
        out_(*plan.add_doughs()) {}

  std::vector<v1::Breach> run() {
    out_.set_dish_id(dish_.dish->id());
    describe(recipe(), out_);
    bread::Culture culture{0, bread::kPeakLevainLag, 1};
    if (bread_.levainStep >= 0) culture = bread::cultureOf(levain());
    std::vector<double> grown;
    for (int p = 0; p < recipe().prefermentCount(); ++p) grown.push_back(preferment(p));
    const auto mixed = model_.mixedDough(culture, grown);
    if (!mixed.ok()) return breaches_;
    bread::DoughState state = *mixed;
    int before = -1;
    for (const int step : bread_.doughSteps) {
      if (before >= 0) state = model_.handled(state, step, hours(placed(step).start - placed(before).end));
      state = stage(step, recipe().kind(), state);
      before = step;
    }
    return breaches_;
  }

 private:
  const BreadRecipe& recipe() const { return model_.recipe(); }
  void describe(const BreadRecipe& recipe, v1::DoughForecast& out) const {
    describeDough(recipe, out);
    const WaterWays water = model_.water();
    out.set_water_celsius(std::round(water.balance.waterCelsius));
    out.set_ice_g(std::round(water.balance.iceGrams));
    out.set_water_correction_k(water.correction.kelvin);
  }
  static double hours(int minutes) { return minutes / 60.0; }
  const planning::Placement& placed(int step) const {
    return schedule_.steps[static_cast<std::size_t>(step)];
  }
  const ModeInfo& meaning(int step) const {
    return composition_.steps[static_cast<std::size_t>(step)]
        .modes[static_cast<std::size_t>(placed(step).mode)];
  }

  bread::DoughState levain() {
    const double flour = meaning(bread_.levainStep).flourPerStarter;
    out_.set_levain_ratio(recipe().ratioText(flour));
    const auto fed = model_.fedLevain(flour);
    return fed.ok() ? stage(bread_.levainStep, recipe().levainKind(), *fed) : bread::DoughState{};
  }

  // How much the yeast of a preferment has grown when it is used.
  double preferment(int index) {
    const int step = bread_.preferments[static_cast<std::size_t>(index)].step;
    const auto mixed = model_.mixedPreferment(index);
    if (step < 0 || !mixed.ok()) return recipe().likelyGrowth(index);
    const double grown = stage(step, recipe().prefermentKind(index), *mixed).yeastFactor;
    out_.mutable_stages()->rbegin()->set_preferment_id(recipe().from().preferments(index).id());
    return grown;
  }

  // Writes one ferment and returns the dough at its planned end.
  bread::DoughState stage(int step, const bread::DoughKind& kind, const bread::DoughState& start) {
    const planning::Placement& at = placed(step);
    const int place = meaning(step).place;
    std::vector<bread::Stay> stays = model_.stays(place);
    const bread::Stage wanted = model_.stage(step, place);
    const double clock = hours(composition_.axis.clockAtZero());
    v1::FermentForecast& told = *out_.add_stages();
    told.set_step_id(composition_.stepId(step));
    told.set_stage(composition_.steps[static_cast<std::size_t>(step)].step->ferment().stage());
    told.set_place_id(composition_.documents.kitchen.places(place).id());
    *told.mutable_start_time() = composition_.axis.timeOf(at.start);
    *told.mutable_end_time() = composition_.axis.timeOf(at.end);
    told.set_low_rise(wanted.lowRise);
    told.set_wanted_rise(wanted.wantedRise);
    if (wanted.highRise < 100) told.set_high_rise(wanted.highRise);
    const bread::Uncertainty unsure = model_.uncertainty(step, place);
    const bread::ForecastBand band = bread::forecastBand(kind, start, hours(at.start), stays, wanted, unsure,
                                                         {clock, bread::kSearchHours, 0});
    setWindow(step, band, told);
    addSamples(kind, start, at, stays, clock, std::exp(unsure.logVigour), told);
    stays.front().hours = hours(at.end - at.start);
    const bread::DoughState end = bread::ferment(kind, start, hours(at.start), stays, clock);
    told.set_rise_at_end(bread::riseOf(kind, end));
    told.set_celsius_at_end(end.celsius);
    return end;
  }

  google::protobuf::Timestamp timeOf(double hour) const {
    return composition_.axis.timeOf(static_cast<int>(std::lround(hour * 60)));
  }

  void setWindow(int step, const bread::ForecastBand& band, v1::FermentForecast& told) {
    if (band.slow) *told.mutable_slow_time() = timeOf(band.slow->best);
    if (band.fast) *told.mutable_fast_time() = timeOf(band.fast->best);
    const planning::Minute end = placed(step).end;
    int off = planning::kNoLimit;
    if (const auto& window = band.likely.window) {
      *told.mutable_ready_from_time() = timeOf(window->hours.start);
      *told.mutable_best_time() = timeOf(window->best);
      *told.mutable_ready_until_time() = timeOf(window->hours.limit);
      off = std::max(static_cast<int>(std::floor(window->hours.start * 60)) - end,
                     end - static_cast<int>(std::ceil(window->hours.limit * 60)));
    }
    if (off <= kToleranceMinutes) return;
    v1::Breach breach;
    breach.set_rule(v1::HARD_RULE_READINESS);
    breach.set_step_id(composition_.stepId(step));
    *breach.mutable_time() = composition_.axis.timeOf(end);
    breach.set_amount(off == planning::kNoLimit ? 0 : off);
    breaches_.push_back(breach);
  }

  void addSamples(const bread::DoughKind& kind, const bread::DoughState& start, const planning::Placement& at,
                  const std::vector<bread::Stay>& stays, double clock, double spread,
                  v1::FermentForecast& told) {
    const double length = hours(at.end - at.start) * 1.25 + 0.5;
    bread::ForecastOptions options{clock, length, std::max(length / 30, 1.0 / 12)};
    const bread::Stage endless{bread::kNoHighRise, bread::kNoHighRise, bread::kNoHighRise, 1.0};
    bread::DoughState slow = start;
    bread::DoughState fast = start;
    slow.vigour /= spread;
    fast.vigour *= spread;
    const auto likely = bread::forecast(kind, start, hours(at.start), stays, endless, options).samples;
    const auto later = bread::forecast(kind, slow, hours(at.start), stays, endless, options).samples;
    const auto sooner = bread::forecast(kind, fast, hours(at.start), stays, endless, options).samples;
    for (std::size_t k = 0; k < likely.size(); ++k) {
      v1::RiseSample& sample = *told.add_samples();
      *sample.mutable_time() = timeOf(likely[k].hour);
      sample.set_rise(likely[k].rise);
      sample.set_celsius(likely[k].celsius);
      if (k < later.size()) sample.set_slow_rise(later[k].rise);
      if (k < sooner.size()) sample.set_fast_rise(sooner[k].rise);
    }
  }

  const Composition& composition_;
  const planning::Schedule& schedule_;
  const DishInfo& dish_;
  const BreadInfo& bread_;
  BreadModel model_;
  v1::DoughForecast& out_;
  std::vector<v1::Breach> breaches_;
};

}  // namespace

void describeDough(const BreadRecipe& recipe, v1::DoughForecast& out) {
  out.set_dough_mass_g(std::round(recipe.doughGrams()));
  out.set_levain_mass_g(std::round(recipe.levainGrams()));
  const double hydration = recipe.mix().hydration() * 100;
  out.set_hydration_percent(hydration);
  if (recipe.from().soakers_size() > 0)
    out.set_free_hydration_percent(hydration - recipe.mix().soakedWaterPercent());
  out.set_prefermented_flour_percent(recipe.mix().prefermentedFlourShare() * 100);
  for (int p = 0; p < recipe.prefermentCount(); ++p) {
    const v1::Preferment& told = recipe.from().preferments(p);
    v1::PrefermentPart& part = *out.add_preferments();
    part.set_preferment_id(told.id());
    part.set_name(nameOf(told));
    part.set_mass_g(std::round(recipe.prefermentGrams(p)));
    part.set_flour_percent(told.flour_percent());
  }
}

std::vector<v1::Breach> addDoughs(const Composition& composition, const planning::Schedule& schedule,
                                  v1::Plan& plan) {
  std::vector<v1::Breach> breaches;
  for (std::size_t d = 0; d < composition.dishes.size(); ++d) {
    if (!composition.dishes[d].bread || schedule.unserved[d]) continue;
    const auto found = DoughWriter(composition, schedule, composition.dishes[d], plan).run();
    breaches.insert(breaches.end(), found.begin(), found.end());
  }
  return breaches;
}

}  // namespace suppertide::compose
