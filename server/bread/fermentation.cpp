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
constexpr double kSlowWarmingHours = 1;

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

// Rates grow with vigour; baker's yeast wakes and fills the dough much faster than a culture.
double stepFor(const DoughKind& kind, const DoughState& state) {
  const double calm = kind.yeastPercent > 0 ? kStepHours / 4 : kStepHours;
  return calm / std::max(1.0, state.vigour);
}

}  // namespace

Fermentation::Fermentation(const DoughKind& kind, const DoughState& state, double startHour,
                           std::span<const Stay> stays, double hourOfDayAtZero)
    : kind_(kind),
      state_(state),
      hour_(startHour),
      stays_(stays),
      hourOfDayAtZero_(hourOfDayAtZero),
      stepHours_(stepFor(kind, state)),
      warmth_(warmthAt(state.celsius)) {
  enterStay();
}

double Fermentation::rise() const {
  return riseOf(kind_, state_);
}

void Fermentation::enterStay() {
  while (!done() && !(stays_[stay_].hours > kTinyHours)) ++stay_;
  if (done()) return;
  stayLimit_ = hour_ + stays_[stay_].hours;
  tau_ = Lump{.kilograms = state_.kilograms}.timeConstantHours(stays_[stay_].surfaceW);
}

double Fermentation::nextStep() const {
  const TemperatureByHour& air = stays_[stay_].air;
  const double hourOfDay = hour_ + hourOfDayAtZero_;
  double step = stepHours_;
  if (std::abs(air.at(hourOfDay) - state_.celsius) > kFastWarmingKelvin) {
    step *= std::min(1.0, tau_ / kSlowWarmingHours);
  }
  double limit = std::min(hour_ + step, stayLimit_);
  if (!air.isConstant()) {
    const double knot = std::floor(hourOfDay + kTinyHours) + 1 - hourOfDayAtZero_;
    limit = std::min(limit, knot);
  }
  return limit - hour_;
}

double Fermentation::celsiusAfter(double hours) const {
  const TemperatureByHour& air = stays_[stay_].air;
  const double now = air.at(hour_ + hourOfDayAtZero_);
  double slope = 0;
  if (!air.isConstant()) {
    const double knot = std::floor(hour_ + hourOfDayAtZero_ + kTinyHours);
    slope = air.at(knot + 1) - air.at(knot);
  }
  return lumpAfter(state_.celsius, now, slope, tau_, hours);
}

Fermentation::Warmth Fermentation::warmthAt(double celsius) const {
  const double culture = state_.vigour * sourdoughYeastActivity(celsius);
  Warmth warmth;
  warmth.celsius = celsius;
  warmth.growth = culture * kSourdoughYeastBestRate;
  warmth.cultureGas = culture * kGasRate * kind_.gasFactor;
  warmth.yeastGas = kind_.yeastPercent > 0 ? state_.vigour * kYeastGasRate * kind_.yeastPercent *
                                                 kBakersYeast.rate(celsius) * kind_.gasFactor
                                           : 0.0;
  warmth.expansion = (celsius + 273.15) / 298.15;
  warmth.air = kAirShare * warmth.expansion;
  warmth.dissolved = kind_.waterShare * carbonDioxideHeld(celsius);
  return warmth;
}

Fermentation::Flow Fermentation::flow(const DoughState& state, const Warmth& warmth, double awake) const {
  const double active = state.activeShare * state.ripeness;
  const double sugar = std::max(0.0, state.sugar);
  const double made =
      (warmth.cultureGas * active + warmth.yeastGas * awake) * sugar / (sugar + kHalfSugarVolumes);
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

DoughState Fermentation::peek(double hours) const {
  const double half = hours / 2;
  const double halfCelsius = celsiusAfter(half);
  const double fullCelsius = celsiusAfter(hours);
  const Warmth middle = halfCelsius == warmth_.celsius ? warmth_ : warmthAt(halfCelsius);
  const Warmth after = fullCelsius == warmth_.celsius ? warmth_ : warmthAt(fullCelsius);
  const bool yeasted = kind_.yeastPercent > 0;
  const double age = state_.hoursSinceMix;
  const double awakeMiddle = yeasted ? awakeShare(age + half) : 1;

  const Flow first = flow(state_, warmth_, yeasted ? awakeShare(age) : 1);
  const Flow second = flow(moved(state_, first, half), middle, awakeMiddle);
  const Flow third = flow(moved(state_, second, half), middle, awakeMiddle);
  const Flow fourth = flow(moved(state_, third, hours), after, yeasted ? awakeShare(age + hours) : 1);
  const auto mean = [](double a, double b, double c, double d) { return (a + 2 * b + 2 * c + d) / 6; };
  const Flow flows = {mean(first.ripeness, second.ripeness, third.ripeness, fourth.ripeness),
                      mean(first.activeShare, second.activeShare, third.activeShare, fourth.activeShare),
                      mean(first.gas, second.gas, third.gas, fourth.gas),
                      mean(first.sugar, second.sugar, third.sugar, fourth.sugar)};
  DoughState result = moved(state_, flows, hours);
  result.celsius = fullCelsius;
  result.hoursSinceMix += hours;
  return result;
}

void Fermentation::stepBy(double hours) {
  if (done()) return;
  state_ = peek(hours);
  hour_ += hours;
  if (state_.celsius != warmth_.celsius) warmth_ = warmthAt(state_.celsius);
  if (hour_ >= stayLimit_ - kTinyHours) {
    ++stay_;
    enterStay();
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
