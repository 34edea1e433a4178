#include "server/service/dough_answers.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/time/time.h"
#include "server/bread/fit_dough.h"
#include "server/bread/published_checks.h"
#include "server/bread/water_temperature.h"
#include "server/compose/axis.h"
#include "server/compose/bread_model.h"
#include "server/service/validate_doughs.h"

namespace suppertide::compose {
namespace {

constexpr double kUsualDoughCelsius = 25;
constexpr double kLeastFedCelsius = 22;  // a levain is fed with warm water in a cold room; assumed
constexpr double kStandMixerRiseK = 4;   // actual rise by mixing
constexpr double kUsualSpread = 0.2;
constexpr int kMostSamples = 144;

bread::TemperatureByHour airOf(const v1::TemperatureByHour& from) {
  if (from.celsius_size() != 24) return bread::TemperatureByHour(from.celsius(0));
  std::array<double, 24> hours{};
  std::copy(from.celsius().begin(), from.celsius().end(), hours.begin());
  return bread::TemperatureByHour(hours);
}

// A formula and its starter in the bread engine's terms.
struct Dough {
  const v1::BreadFormula& from;
  const v1::Starter& starter;
  bread::Formula formula;
  bread::DoughKind kind;
  double grams = 0;

  bool enriched() const { return from.dough_class() == v1::DOUGH_CLASS_ENRICHED; }
  bool hasLevain() const { return from.has_levain(); }
  double celsius() const { return from.dough_celsius() > 0 ? from.dough_celsius() : kUsualDoughCelsius; }
  double starterHydration() const {
    return starter.hydration_percent() > 0 ? starter.hydration_percent() / 100 : 1;
  }
  double levainHydration() const {
    return from.levain().hydration_percent() > 0 ? from.levain().hydration_percent() / 100 : 1;
  }
  double spread() const { return starter.vigour_spread() > 0 ? starter.vigour_spread() : kUsualSpread; }
  double levainKilograms() const { return grams * formula.levainShare() / 1000 / (1 - bread::kJarLossShare); }
  bread::DoughKind levainKind() const {
    return bread::withComposition(bread::kLevainKind, from.levain().whole_grain_percent() / 100, 0, 0);
  }
  bread::Culture culture() const {
    bread::Culture culture;
    culture.vigour = starter.vigour() > 0 ? starter.vigour() : 1;
    if (starter.condition() == v1::STARTER_CONDITION_AT_PEAK) culture.lag = bread::kPeakLevainLag;
    if (starter.condition() == v1::STARTER_CONDITION_FROM_FRIDGE) culture.lag = bread::kFridgeStarterLag;
    return culture;
  }
  // Starter : flour : water that gives the levain's hydration.
  bread::LevainRatio ratio(double flourPerStarter) const {
    const double flourInStarter = 1 / (1 + starterHydration());
    const double water =
        levainHydration() * (flourInStarter + flourPerStarter) - starterHydration() * flourInStarter;
    return {1, flourPerStarter, std::max(0.0, water)};
  }
  std::vector<double> flourPerStarter() const {
    const auto& given = from.levain().flour_per_starter();
    return given.empty() ? std::vector<double>{1, 2, 5, 10} : std::vector<double>(given.begin(), given.end());
  }
  bread::Mixing mixing(double mixedCelsius) const {
    return {formula.prefermentedFlourShare(), formula.levainShare(), mixedCelsius, grams / 1000};
  }
  bread::Stage bulk() const { return enriched() ? bread::kEnrichedBulk : bread::kLeanBulk; }
  bread::Stage proof() const { return enriched() ? bread::kEnrichedProof : bread::kLeanProof; }
};

absl::StatusOr<Dough> doughOf(const v1::BreadFormula& from, const v1::Starter& starter) {
  auto formula = formulaOf(from);
  if (!formula.ok()) return formula.status();
  const bread::DoughKind kind = bread::doughKindOf(*formula);
  const double grams = from.piece_count() * from.piece_mass_g() / (1 - from.handling_loss_percent() / 100);
  return Dough{from, starter, *std::move(formula), kind, grams};
}

// What is poured, apart from the rest of the mix at `roomCelsius`.
struct Mix {
  std::vector<bread::MixPart> others;
  double waterGrams = 0;
};
Mix mixOf(const Dough& dough, double roomCelsius) {
  Mix mix;
  const auto weighed = dough.formula.gramsForDough(dough.grams);
  if (!weighed.ok()) return mix;
  for (const bread::Weighed& part : *weighed) {
    const bread::Ingredient& i = part.ingredient;
    if (i.role == bread::Role::kLiquid && i.waterShare >= 0.8) {
      mix.waterGrams += part.grams;
      continue;
    }
    const double share = i.role == bread::Role::kLevain ? i.hydration / (1 + i.hydration) : i.waterShare;
    if (part.grams > 0) mix.others.push_back({i.name, part.grams, roomCelsius, share});
  }
  return mix;
}
double mixerRise(const Dough& dough) {
  return dough.from.has_friction_k() ? dough.from.friction_k() / 3 : kStandMixerRiseK;
}
double waterFor(const Dough& dough, double doughCelsius, double roomCelsius) {
  const Mix mix = mixOf(dough, roomCelsius);
  if (mix.waterGrams <= 0) return roomCelsius;
  const auto plan =
      bread::waterByHeatBalance(mix.others, mix.waterGrams, doughCelsius, mixerRise(dough), roomCelsius);
  return plan.ok() ? plan->waterCelsius : roomCelsius;
}
double doughWith(const Dough& dough, double waterCelsius, double roomCelsius) {
  Mix mix = mixOf(dough, roomCelsius);
  if (mix.waterGrams <= 0) return dough.celsius();
  mix.others.push_back({"water", mix.waterGrams, waterCelsius, 1});
  return bread::mixedCelsius(mix.others, mixerRise(dough), roomCelsius);
}

class Forecaster {
 public:
  Forecaster(const v1::ForecastDoughRequest& request, const Dough& dough, const absl::TimeZone& zone)
      : request_(request), dough_(dough), axis_(request.start_time(), zone) {
    for (const v1::PlaceStay& stay : request.stays()) {
      stays_.push_back({minutesOf(stay.duration()) / 60.0, airOf(stay.temperature()), bread::kStillAir});
      hours_ += stays_.back().hours;
    }
    start_ = axis_.minuteOf(request.start_time()) / 60.0;
    clock_ = axis_.clockAtZero() / 60.0;
    room_ = stays_.front().air.at(clock_ + start_);
  }

  absl::StatusOr<v1::ForecastDoughResponse> run() {
    const bool levain = request_.stage() == v1::FERMENT_STAGE_LEVAIN;
    const auto state = levain ? fed(room_) : request_.stage() == v1::FERMENT_STAGE_BULK ? mixed() : shaped();
    if (!state.ok()) return state.status();
    const bread::DoughKind kind = levain ? dough_.levainKind() : dough_.kind;
    const bread::Stage stage = levain                                       ? bread::kLevainStage
                               : request_.stage() == v1::FERMENT_STAGE_BULK ? dough_.bulk()
                                                                            : dough_.proof();
    v1::ForecastDoughResponse answer;
    write(kind, *state, stage, *answer.mutable_forecast());
    return answer;
  }

 private:
  double flourPerStarter() const {
    return request_.flour_per_starter() > 0 ? request_.flour_per_starter() : dough_.flourPerStarter().front();
  }

  absl::StatusOr<bread::DoughState> fed(double celsius) const {
    return bread::mixLevain(dough_.levainKind(), dough_.culture(), dough_.ratio(flourPerStarter()),
                            std::max(celsius, kLeastFedCelsius), dough_.levainKilograms(),
                            dough_.starterHydration());
  }

  // The state at the best moment in a steady place at the dough's own temperature.
  bread::DoughState atBest(const bread::DoughKind& kind, const bread::DoughState& state,
                           const bread::Stage& stage) const {
    const std::vector<bread::Stay> steady = {
        {bread::kOpenEnded, bread::TemperatureByHour(dough_.celsius()), bread::kStillAir}};
    const bread::Forecast found = bread::forecast(kind, state, 0, steady, stage);
    return bread::stateAfter(kind, state, 0, steady, found.window ? found.window->best : found.peakHour);
  }

  absl::StatusOr<bread::DoughState> mixed() const {
    bread::Culture culture{0, bread::kPeakLevainLag, 1};
    if (dough_.hasLevain()) {
      const auto levain = fed(dough_.celsius());
      if (!levain.ok()) return levain.status();
      culture = bread::cultureOf(atBest(dough_.levainKind(), *levain, bread::kLevainStage));
    }
    const double celsius =
        request_.has_water_celsius() ? doughWith(dough_, request_.water_celsius(), room_) : dough_.celsius();
    return bread::mix(dough_.kind, culture, dough_.mixing(celsius));
  }

  absl::StatusOr<bread::DoughState> shaped() const {
    const auto bulk = mixed();
    if (!bulk.ok()) return bulk.status();
    return bread::shape(dough_.kind, atBest(dough_.kind, *bulk, dough_.bulk()),
                        dough_.from.piece_mass_g() / 1000);
  }

  google::protobuf::Timestamp timeOf(double hour) const {
    return axis_.timeOf(static_cast<int>(std::lround(hour * 60)));
  }

  void write(const bread::DoughKind& kind, const bread::DoughState& state, const bread::Stage& stage,
             v1::FermentForecast& told) const {
    const bread::ForecastOptions options{clock_, hours_, 0};
    told.set_stage(request_.stage());
    *told.mutable_start_time() = timeOf(start_);
    *told.mutable_end_time() = timeOf(start_ + hours_);
    told.set_low_rise(stage.lowRise);
    told.set_wanted_rise(stage.wantedRise);
    if (stage.highRise < bread::kNoHighRise) told.set_high_rise(stage.highRise);
    bread::Uncertainty uncertainty;
    uncertainty.logVigour = dough_.spread();
    const auto band = bread::forecastBand(kind, state, start_, stays_, stage, uncertainty, options);
    if (band.likely.window) {
      *told.mutable_ready_from_time() = timeOf(band.likely.window->hours.start);
      *told.mutable_best_time() = timeOf(band.likely.window->best);
      *told.mutable_ready_until_time() = timeOf(band.likely.window->hours.limit);
    }
    if (band.fast) *told.mutable_fast_time() = timeOf(band.fast->best);
    if (band.slow) *told.mutable_slow_time() = timeOf(band.slow->best);
    addSamples(kind, state, told);
    const auto end = bread::stateAfter(kind, state, start_, stays_, hours_, clock_);
    told.set_rise_at_end(bread::riseOf(kind, end));
    told.set_celsius_at_end(end.celsius);
  }

  void addSamples(const bread::DoughKind& kind, const bread::DoughState& state,
                  v1::FermentForecast& told) const {
    const bread::ForecastOptions options{clock_, hours_, std::max(hours_ / kMostSamples, 1.0 / 12)};
    const bread::Stage endless{bread::kNoHighRise, bread::kNoHighRise, bread::kNoHighRise, 1.0};
    const auto run = [&](double spreads) {
      bread::DoughState one = state;
      one.vigour *= std::exp(spreads * dough_.spread());
      return bread::forecast(kind, one, start_, stays_, endless, options).samples;
    };
    const auto likely = run(0), slow = run(-1), fast = run(1);
    for (std::size_t k = 0; k < likely.size(); ++k) {
      v1::RiseSample& sample = *told.add_samples();
      *sample.mutable_time() = timeOf(likely[k].hour);
      sample.set_rise(likely[k].rise);
      sample.set_celsius(likely[k].celsius);
      if (k < slow.size()) sample.set_slow_rise(slow[k].rise);
      if (k < fast.size()) sample.set_fast_rise(fast[k].rise);
    }
  }

  const v1::ForecastDoughRequest& request_;
  const Dough& dough_;
  TimeAxis axis_;
  std::vector<bread::Stay> stays_;
  double hours_ = 0;
  double start_ = 0;
  double clock_ = 0;
  double room_ = 21;
};

class Fitter {
 public:
  Fitter(const v1::FitDoughRequest& request, const Dough& dough, const absl::TimeZone& zone)
      : request_(request), dough_(dough), axis_(originOf(request), zone) {}

  absl::StatusOr<v1::FitDoughResponse> run() {
    const bread::BreadWish wish = wishOf();
    const auto fit = bread::fitBread(wish);
    if (!fit.ok()) return fit.status();
    v1::FitDoughResponse answer;
    for (const bread::BreadWay& way : fit->ways) write(wish, way, *answer.add_ways(), *answer.add_reasons());
    if (fit->nearest)
      write(wish, *fit->nearest, *answer.mutable_nearest(), *answer.mutable_nearest_reasons());
    return answer;
  }

 private:
  static google::protobuf::Timestamp originOf(const v1::FitDoughRequest& request) {
    if (request.has_earliest_start_time()) return request.earliest_start_time();
    google::protobuf::Timestamp origin = request.ready().start();
    origin.set_seconds(origin.seconds() - kMostDoughHours * 3600);
    return origin;
  }

  double hourOf(const google::protobuf::Timestamp& time) const { return axis_.minuteOf(time) / 60.0; }
  double roomCelsius() const {
    for (const v1::PlaceStay& place : request_.places())
      if (place.kind() == v1::PLACE_KIND_COUNTER) return airOf(place.temperature()).at(12);
    return 21;
  }

  bread::BreadWish wishOf() const {
    bread::BreadWish wish;
    wish.ready = {hourOf(request_.ready().start()), hourOf(request_.ready().limit())};
    wish.hourOfDayAtZero = axis_.clockAtZero() / 60.0;
    wish.workHours = workHours();
    for (const v1::PlaceStay& place : request_.places())
      wish.places.push_back(
          {airOf(place.temperature()), place.kind() == v1::PLACE_KIND_FRIDGE, bread::kStillAir});
    if (dough_.hasLevain()) wish.levain = levain();
    wish.kind = dough_.kind;
    wish.mixing = dough_.mixing(dough_.celsius());
    wish.doughCelsius = {dough_.celsius(), dough_.celsius() - 3, dough_.celsius() + 2};
    wish.pieceKilograms = dough_.from.piece_mass_g() / 1000;
    wish.bulk = dough_.bulk();
    wish.proof = dough_.proof();
    wish.logVigourSpread = dough_.spread();
    return wish;
  }

  bread::LevainChoice levain() const {
    bread::LevainChoice levain;
    levain.kind = dough_.levainKind();
    levain.starter = dough_.culture();
    levain.ratios.clear();
    for (const double flour : dough_.flourPerStarter()) levain.ratios.push_back(dough_.ratio(flour));
    levain.celsius = std::max(roomCelsius(), kLeastFedCelsius);
    levain.kilograms = dough_.levainKilograms();
    levain.starterHydration = dough_.starterHydration();
    return levain;
  }

  std::vector<Interval<double>> workHours() const {
    std::vector<Interval<double>> spans;
    if (!request_.has_work()) return spans;
    const int limit = axis_.minuteOf(request_.ready().limit());
    const std::string from = request_.work().start(), until = request_.work().limit();
    for (int day = -1; day < axis_.daysUpTo(limit); ++day)
      spans.push_back({axis_.minuteOfClock(day, from) / 60.0,
                       axis_.minuteOfClock(until < from ? day + 1 : day, until) / 60.0});
    return spans;
  }

  google::protobuf::Timestamp timeOf(double hour) const {
    return axis_.timeOf(static_cast<int>(std::lround(hour * 60)));
  }

  void writeStage(v1::FermentStage kind, const bread::BreadStage& stage, const bread::Stage& wanted,
                  v1::DoughForecast& told) const {
    v1::FermentForecast& one = *told.add_stages();
    one.set_stage(kind);
    one.set_place_id(absl::StrCat("places[", stage.place, "]"));
    *one.mutable_start_time() = timeOf(stage.startHour);
    *one.mutable_end_time() = timeOf(stage.endHour);
    *one.mutable_ready_from_time() = timeOf(stage.window.hours.start);
    *one.mutable_best_time() = timeOf(stage.window.best);
    *one.mutable_ready_until_time() = timeOf(stage.window.hours.limit);
    one.set_low_rise(wanted.lowRise);
    one.set_wanted_rise(wanted.wantedRise);
    if (wanted.highRise < bread::kNoHighRise) one.set_high_rise(wanted.highRise);
  }

  void write(const bread::BreadWish& wish, const bread::BreadWay& way, v1::DoughForecast& told,
             v1::DoughWayReasons& reasons) const {
    if (way.levain) writeStage(v1::FERMENT_STAGE_LEVAIN, *way.levain, wish.levain->stage, told);
    writeStage(v1::FERMENT_STAGE_BULK, way.bulk, wish.bulk, told);
    writeStage(v1::FERMENT_STAGE_PROOF, way.proof, way.retarded ? wish.retard : wish.proof, told);
    if (way.ratio)
      told.set_levain_ratio(absl::StrCat("1:", rounded(way.ratio->flour), ":", rounded(way.ratio->water)));
    told.set_dough_mass_g(std::round(dough_.grams));
    told.set_levain_mass_g(std::round(dough_.grams * dough_.formula.levainShare()));
    told.set_hydration_percent(dough_.formula.hydration() * 100);
    told.set_prefermented_flour_percent(dough_.formula.prefermentedFlourShare() * 100);
    told.set_water_celsius(std::round(waterFor(dough_, way.doughCelsius, roomCelsius())));
    const double start = way.levain ? way.levain->startHour : way.bulk.startHour;
    *reasons.mutable_best_from_middle() = durationOf(std::lround(way.bestFromMiddle * 60));
    *reasons.mutable_miss() = durationOf(std::lround(way.miss * 60));
    reasons.set_covered_share(way.coveredShare);
    reasons.set_ready_when_fast(way.readyWhenFast);
    reasons.set_ready_when_slow(way.readyWhenSlow);
    *reasons.mutable_whole() = durationOf(std::lround((way.proof.endHour - start) * 60));
    if (way.retarded)
      *reasons.mutable_retard() = durationOf(std::lround((way.proof.endHour - way.proof.startHour) * 60));
    reasons.set_dough_celsius(way.doughCelsius);
  }

  static double rounded(double value) { return std::round(value * 10) / 10; }

  const v1::FitDoughRequest& request_;
  const Dough& dough_;
  TimeAxis axis_;
};

template <typename Answerer, typename Request>
auto answered(const Request& request) -> decltype(std::declval<Answerer>().run()) {
  absl::TimeZone zone;
  if (!absl::LoadTimeZone(request.time_zone(), &zone))
    return absl::InvalidArgumentError(absl::StrCat("time zone ", request.time_zone(), " is not known"));
  const auto dough = doughOf(request.formula(), request.starter());
  if (!dough.ok()) return dough.status();
  return Answerer(request, *dough, zone).run();
}

}  // namespace

absl::StatusOr<v1::ForecastDoughResponse> forecastDough(const v1::ForecastDoughRequest& request) {
  return answered<Forecaster>(request);
}

absl::StatusOr<v1::FitDoughResponse> fitDough(const v1::FitDoughRequest& request) {
  return answered<Fitter>(request);
}

v1::CheckModelResponse checkModel() {
  v1::CheckModelResponse answer;
  for (const bread::PublishedCheck& row : bread::publishedChecks()) {
    v1::ModelCheck& told = *answer.add_checks();
    told.set_topic(row.topic);
    told.set_claim(row.claim);
    told.set_source(row.source);
    told.set_reading(std::string(bread::nameOf(row.reading)));
    told.set_basis(std::string(bread::nameOf(row.basis)));
    told.set_unit(row.unit);
    told.set_low(row.low);
    told.set_high(row.high);
    if (row.model < bread::kNeverHours) told.set_model(row.model);
    told.set_passes(row.passes);
    told.set_known_miss(row.knownMiss);
  }
  return answer;
}

}  // namespace suppertide::compose
