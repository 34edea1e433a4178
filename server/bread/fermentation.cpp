#include "server/bread/fermentation.h"

#include <algorithm>
#include <cmath>

#include "server/bread/temperature_response.h"

namespace suppertide::bread {
namespace {

constexpr double kTinyHours = 1e-9;  // below it, two hours are the same

// Far from the air's temperature a light piece runs through the yeast's steep curve fast: its
// steps shrink with its time constant.
constexpr double kFastWarmingKelvin = 1;
constexpr double kFastWarmingPerHour = 1;
constexpr double kSlowWarmingHours = 1;

// A dough this near to still air has its temperature: the difference is worth 1e-5 of a rate.
constexpr double kSettledKelvin = 1e-4;

// A dough at its air's temperature is stepped by its own pace: never longer than this.
constexpr double kSlowestPace = 0.25;

DoughState moved(DoughState state, const auto& flow, double hours) {
  state.ripeness += flow.ripeness * hours;
  state.activeShare += flow.activeShare * hours;
  state.gas += flow.gas * hours;
  state.sugar += flow.sugar * hours;
  return state;
}

// Share of baker's yeast that has woken; exactly 1 when that can't be told apart any more.
double awakeShare(double hoursSinceMix) {
  return hoursSinceMix > 40 * kYeastWakingHours ? 1 : 1 - std::exp(-hoursSinceMix / kYeastWakingHours);
}

// Baker's yeast wakes and fills the dough much faster than a culture.
double stepFor(const DoughKind& kind) {
  return kind.yeastPercent > 0 ? kStepHours / 4 : kStepHours;
}

}  // namespace

Fermentation::Fermentation(const DoughKind& kind, const DoughState& state, double startHour,
                           std::span<const Stay> stays, double hourOfDayAtZero)
    : kind_(kind),
      state_(state),
      hour_(startHour),
      stays_(stays),
      hourOfDayAtZero_(hourOfDayAtZero),
      stepHours_(stepFor(kind)),
      warmth_(warmthAt(state.celsius)) {
  enterStay();
}

double Fermentation::rise() const {
  return riseOf(state_);
}

void Fermentation::enterStay() {
  while (!done() && !(stays_[stay_].hours > kTinyHours)) ++stay_;
  if (done()) return;
  stayLimit_ = hour_ + stays_[stay_].hours;
  tau_ = Lump{.kilograms = state_.kilograms}.timeConstantHours(stays_[stay_].surfaceW);
  enterAirPiece();
}

void Fermentation::enterAirPiece() {
  const TemperatureByHour& air = stays_[stay_].air;
  const double hourOfDay = hour_ + hourOfDayAtZero_;
  air_ = {air.at(hourOfDay), 0, stayLimit_};
  if (air.isConstant()) return;
  const double knot = std::floor(hourOfDay + kTinyHours);
  air_.slope = air.at(knot + 1) - air.at(knot);
  air_.limit = std::min(stayLimit_, knot + 1 - hourOfDayAtZero_);
}

double Fermentation::nextStep() const {
  const double vigour = std::max(1.0, state_.vigour);
  double step = stepHours_ / vigour;
  if (std::abs(air_.celsius - state_.celsius) > kFastWarmingKelvin) {
    step *= std::min(1.0, tau_ / kSlowWarmingHours);
  } else if (std::abs(air_.slope) < kFastWarmingPerHour) {
    step = stepHours_ / std::max(kSlowestPace, warmth_.pace);
  }
  return std::min(step, air_.limit - hour_);
}

double Fermentation::celsiusAfter(double hours, double decay) const {
  const double lag = air_.slope * tau_;
  const double settling = state_.celsius - air_.celsius + lag;
  if (air_.slope == 0 && std::abs(settling) < kSettledKelvin) return air_.celsius;
  return air_.celsius + air_.slope * hours - lag + settling * decay;
}

Fermentation::Warmth Fermentation::warmthAt(double celsius) const {
  const double culture = state_.vigour * sourdoughYeastActivity(celsius);
  const double yeast = kind_.yeastPercent > 0 ? state_.vigour * kBakersYeast.rate(celsius) : 0;
  Warmth warmth;
  // Past its optimum the culture's curve falls so steeply that a rate says little of the next hour's.
  const bool steep = celsius > kSourdoughYeastOptimumCelsius;
  warmth.pace = std::max({culture, yeast, steep ? state_.vigour : 0.0});
  warmth.celsius = celsius;
  warmth.growth = culture * kSourdoughYeastBestRate;
  warmth.cultureGas = culture * kGasRate * kind_.gasFactor;
  warmth.yeastGas = yeast * kYeastGasRate * kind_.yeastPercent * kind_.gasFactor;
  static const double kGasThere = kBakersYeast.rate(kYeastGrowthCelsius);
  warmth.yeastGrowth = yeast * kind_.yeastGrowth / kGasThere;
  warmth.expansion = (celsius + 273.15) / 298.15;
  warmth.air = kAirShare * warmth.expansion;
  warmth.dissolved = kind_.waterShare * carbonDioxideHeld(celsius);
  return warmth;
}

Fermentation::Flow Fermentation::flow(const DoughState& state, const Warmth& warmth,
                                      double yeastAtWork) const {
  const double active = state.activeShare * state.ripeness;
  const double sugar = std::max(0.0, state.sugar);
  const double made =
      (warmth.cultureGas * active + warmth.yeastGas * yeastAtWork) * sugar / (sugar + kHalfSugarVolumes);
  const double surplus = state.gas * warmth.expansion - warmth.air - warmth.dissolved;
  const double freeGas =
      (surplus + std::sqrt(surplus * surplus + 4 * state.gas * warmth.expansion * warmth.air)) / 2;
  const double fullness = freeGas / kind_.gasLimit;
  const double squared = fullness * fullness;
  Flow result;
  result.ripeness = warmth.growth * kind_.growthFactor * active * (1 - state.ripeness);
  result.activeShare = warmth.growth * state.activeShare * (1 - state.activeShare);
  result.gas = made * kind_.retention * std::max(0.0, 1 - squared * squared) - kind_.leakPerHour * freeGas;
  result.sugar = -made;
  return result;
}

// Logistic growth has this closed form whatever the temperature did meanwhile.
double Fermentation::yeastAfter(double growth) const {
  if (kind_.yeastGrowth <= 0 || kind_.yeastPercent <= 0) return state_.yeastFactor;
  const double most = kYeastCapacityPercent / kind_.yeastPercent;
  return most / (1 + (most / state_.yeastFactor - 1) * std::exp(-growth));
}

DoughState Fermentation::peek(double hours) const {
  const double half = hours / 2;
  const double decay = std::exp(-half / tau_);
  const double halfCelsius = celsiusAfter(half, decay);
  const double fullCelsius = celsiusAfter(hours, decay * decay);
  const Warmth middle = halfCelsius == warmth_.celsius ? warmth_ : warmthAt(halfCelsius);
  const Warmth after = fullCelsius == warmth_.celsius ? warmth_ : warmthAt(fullCelsius);
  const bool yeasted = kind_.yeastPercent > 0;
  const double age = state_.hoursSinceMix;
  // The integrals of the growth over half and all of the step, by the parabola through its three points.
  const double growthHalf =
      half * (5 * warmth_.yeastGrowth + 8 * middle.yeastGrowth - after.yeastGrowth) / 12;
  const double growthFull = hours * (warmth_.yeastGrowth + 4 * middle.yeastGrowth + after.yeastGrowth) / 6;
  const double yeastFull = yeastAfter(growthFull);
  const double atWorkMiddle = yeasted ? awakeShare(age + half) * yeastAfter(growthHalf) : 1;

  const Flow first = flow(state_, warmth_, yeasted ? awakeShare(age) * state_.yeastFactor : 1);
  const Flow second = flow(moved(state_, first, half), middle, atWorkMiddle);
  const Flow third = flow(moved(state_, second, half), middle, atWorkMiddle);
  const Flow fourth =
      flow(moved(state_, third, hours), after, yeasted ? awakeShare(age + hours) * yeastFull : 1);
  const auto mean = [](double a, double b, double c, double d) { return (a + 2 * b + 2 * c + d) / 6; };
  const Flow flows = {mean(first.ripeness, second.ripeness, third.ripeness, fourth.ripeness),
                      mean(first.activeShare, second.activeShare, third.activeShare, fourth.activeShare),
                      mean(first.gas, second.gas, third.gas, fourth.gas),
                      mean(first.sugar, second.sugar, third.sugar, fourth.sugar)};
  DoughState result = moved(state_, flows, hours);
  result.celsius = fullCelsius;
  result.hoursSinceMix += hours;
  result.yeastFactor = yeastFull;
  return result;
}

void Fermentation::stepBy(double hours) {
  if (!done()) moveTo(peek(hours), hours);
}

void Fermentation::moveTo(const DoughState& peeked, double hours) {
  if (done()) return;
  state_ = peeked;
  hour_ += hours;
  if (state_.celsius != warmth_.celsius) warmth_ = warmthAt(state_.celsius);
  if (hour_ >= stayLimit_ - kTinyHours) {
    ++stay_;
    enterStay();
  } else if (hour_ >= air_.limit - kTinyHours) {
    enterAirPiece();
  } else {
    air_.celsius += air_.slope * hours;
  }
}

void Fermentation::step() {
  if (!done()) stepBy(nextStep());
}

DoughState stateAfter(const DoughKind& kind, const DoughState& state, double startHour,
                      std::span<const Stay> stays, double hours, double hourOfDayAtZero) {
  Fermentation run(kind, state, startHour, stays, hourOfDayAtZero);
  const double limit = startHour + hours;
  while (!run.done() && run.hour() < limit - kTinyHours) {
    run.stepBy(std::min(run.nextStep(), limit - run.hour()));
  }
  return run.state();
}

DoughState ferment(const DoughKind& kind, const DoughState& state, double startHour,
                   std::span<const Stay> stays, double hourOfDayAtZero) {
  double hours = 0;
  for (const Stay& stay : stays) {
    if (stay.hours == kOpenEnded) break;
    hours += std::max(0.0, stay.hours);
  }
  return stateAfter(kind, state, startHour, stays, hours, hourOfDayAtZero);
}

}  // namespace suppertide::bread
