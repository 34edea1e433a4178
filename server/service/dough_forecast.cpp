#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "server/service/dough_reading.h"
#include "server/service/validate_doughs.h"

namespace suppertide::compose {
namespace {

constexpr int kMostSamples = 144;

class Forecaster {
 public:
  Forecaster(const v1::ForecastDoughRequest& request, BreadRecipe recipe, const absl::TimeZone& zone)
      : request_(request), recipe_(std::move(recipe)), axis_(request.start_time(), zone) {
    for (const v1::PlaceStay& stay : request.stays()) {
      stays_.push_back({minutesOf(stay.duration()) / 60.0, airOf(stay.temperature(), stay.learned_warmth()),
                        bread::kStillAir});
      hours_ += stays_.back().hours;
    }
    for (int p = 0; p < recipe_.prefermentCount(); ++p)
      if (request.formula().preferments(p).id() == request.preferment_id()) preferment_ = p;
    start_ = axis_.minuteOf(request.start_time()) / 60.0;
    clock_ = axis_.clockAtZero() / 60.0;
    room_ = stays_.front().air.at(clock_ + start_);
  }

  absl::StatusOr<v1::ForecastDoughResponse> run() {
    const auto state = stateAtStart();
    if (!state.ok()) return state.status();
    v1::ForecastDoughResponse answer;
    write(*state, answer);
    return answer;
  }

 private:
  double flourPerStarter() const {
    return request_.flour_per_starter() > 0 ? request_.flour_per_starter()
                                            : recipe_.flourPerStarter().front();
  }

  absl::StatusOr<bread::DoughState> stateAtStart() const {
    switch (request_.stage()) {
      case v1::FERMENT_STAGE_LEVAIN:
        return recipe_.fedLevain(flourPerStarter(), BreadRecipe::fedCelsius(room_));
      case v1::FERMENT_STAGE_PREFERMENT:
        return recipe_.mixedPreferment(preferment_, BreadRecipe::fedCelsius(room_));
      case v1::FERMENT_STAGE_PROOF:
        return recipe_.shapedAtBest(mixedCelsius(), request_.flour_per_starter());
      default:
        return recipe_.mixedAtBest(mixedCelsius(), request_.flour_per_starter());
    }
  }

  bread::DoughKind kind() const {
    if (request_.stage() == v1::FERMENT_STAGE_LEVAIN) return recipe_.levainKind();
    return request_.stage() == v1::FERMENT_STAGE_PREFERMENT ? recipe_.prefermentKind(preferment_)
                                                            : recipe_.kind();
  }

  bread::Stage stage() const {
    switch (request_.stage()) {
      case v1::FERMENT_STAGE_LEVAIN:
        return bread::kLevainStage;
      case v1::FERMENT_STAGE_PREFERMENT:
        return recipe_.prefermentStage(preferment_);
      case v1::FERMENT_STAGE_PROOF:
        return recipe_.proof();
      default:
        return recipe_.bulk();
    }
  }

  double mixedCelsius() const {
    if (!request_.has_water_celsius()) return recipe_.doughCelsius();
    return recipe_.doughWith({room_, room_, request_.water_celsius(), room_, 0});
  }

  google::protobuf::Timestamp timeOf(double hour) const {
    return axis_.timeOf(static_cast<int>(std::lround(hour * 60)));
  }

  void write(const bread::DoughState& state, v1::ForecastDoughResponse& answer) const {
    const bread::ForecastOptions options{clock_, hours_, 0};
    const bread::Stage wanted = stage();
    v1::FermentForecast& told = *answer.mutable_forecast();
    told.set_stage(request_.stage());
    told.set_preferment_id(request_.preferment_id());
    *told.mutable_start_time() = timeOf(start_);
    *told.mutable_end_time() = timeOf(start_ + hours_);
    told.set_low_rise(wanted.lowRise);
    told.set_wanted_rise(wanted.wantedRise);
    if (wanted.highRise < bread::kNoHighRise) told.set_high_rise(wanted.highRise);
    const auto unsure = unsureness();
    const auto band = bread::forecastBand(kind(), state, start_, stays_, wanted, unsure, options);
    if (band.likely.window) {
      *told.mutable_ready_from_time() = timeOf(band.likely.window->hours.start);
      *told.mutable_best_time() = timeOf(band.likely.window->best);
      *told.mutable_ready_until_time() = timeOf(band.likely.window->hours.limit);
    } else {
      tellWhenLeft(state, answer);
    }
    if (band.fast) *told.mutable_fast_time() = timeOf(band.fast->best);
    if (band.slow) *told.mutable_slow_time() = timeOf(band.slow->best);
    addSamples(kind(), state, told);
    const auto end = bread::stateAfter(kind(), state, start_, stays_, hours_, clock_);
    told.set_rise_at_end(bread::riseOf(kind(), end));
    told.set_celsius_at_end(end.celsius);
  }

  bread::Uncertainty unsureness() const {
    const v1::LearnedEffect& warmth = request_.stays(0).learned_warmth();
    return request_.stage() == v1::FERMENT_STAGE_PREFERMENT ? BreadRecipe::yeastUncertainty(warmth)
                                                            : recipe_.uncertainty(warmth);
  }

  // When it would be ready, left in the last place.
  void tellWhenLeft(const bread::DoughState& state, v1::ForecastDoughResponse& answer) const {
    auto longer = stays_;
    longer.back().hours = bread::kOpenEnded;
    const bread::ForecastOptions options{clock_, kMostDoughHours, 0};
    const auto found = bread::forecast(kind(), state, start_, longer, stage(), options);
    if (found.window) *answer.mutable_ready_if_left_time() = timeOf(found.window->hours.start);
  }

  void addSamples(const bread::DoughKind& kind, const bread::DoughState& state,
                  v1::FermentForecast& told) const {
    const bread::ForecastOptions options{clock_, hours_, std::max(hours_ / kMostSamples, 1.0 / 12)};
    const bread::Stage endless{bread::kNoHighRise, bread::kNoHighRise, bread::kNoHighRise, 1.0};
    const double spread = unsureness().logVigour;
    const auto run = [&](double spreads) {
      bread::DoughState one = state;
      one.vigour *= std::exp(spreads * spread);
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
  BreadRecipe recipe_;
  TimeAxis axis_;
  std::vector<bread::Stay> stays_;
  double hours_ = 0;
  double start_ = 0;
  double clock_ = 0;
  double room_ = kUsualRoomCelsius;
  int preferment_ = 0;
};

}  // namespace

absl::StatusOr<v1::ForecastDoughResponse> forecastDough(const v1::ForecastDoughRequest& request,
                                                        const StopAsked&) {
  const auto zone = zoneOf(request.time_zone());
  if (!zone.ok()) return zone.status();
  auto recipe = BreadRecipe::of(request.formula(), &request.starter());
  if (!recipe.ok()) return recipe.status();
  return Forecaster(request, *std::move(recipe), *zone).run();
}

}  // namespace suppertide::compose
