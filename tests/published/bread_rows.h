// Rows of checks that say where each value is from, and the bread runs they ask for.
//
// Marks: "read" in the source itself; "abstract"; "second-hand", quoted by another
// text; "memory"; "computed" from the model or by arithmetic, a regression row;
// "common practice", no source.
#pragma once

#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "server/bread/forecast.h"

namespace suppertide::bread {

struct Row {
  std::string claim;
  std::string source;
  std::string mark;
  std::function<double()> value;
  double low;
  double high;
};

inline Row near(std::string claim, std::string source, std::string mark, double expected, double tolerance,
                std::function<double()> value) {
  return {std::move(claim), std::move(source),    std::move(mark),
          std::move(value), expected - tolerance, expected + tolerance};
}

inline Row within(std::string claim, std::string source, std::string mark, double low, double high,
                  std::function<double()> value) {
  return {std::move(claim), std::move(source), std::move(mark), std::move(value), low, high};
}

inline void checkRows(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    const double value = row.value();
    EXPECT_TRUE(value >= row.low && value <= row.high)
        << row.claim << ": " << value << " is not within " << row.low << " to " << row.high
        << "\n  source: " << row.source << " (" << row.mark << ")";
  }
}

inline constexpr const char* kModel = "the model's own equations, run independently";

inline constexpr double kNever = 1e6;

inline Stay always(double celsius) {
  return {kOpenEnded, TemperatureByHour(celsius), kStillAir};
}

// Forecast of a levain fed 1:parts:parts and kept at one temperature.
inline Forecast levain(double parts, double celsius, double wholeGrain = 0.5, const Culture& starter = {}) {
  const DoughKind kind = withComposition(kLevainKind, wholeGrain, 0, 0);
  const Stay stay = always(celsius);
  return forecast(kind, *mixLevain(kind, starter, {1, parts, parts}, celsius, 0.2), 0, {&stay, 1},
                  kLevainStage);
}

inline double doubles(double parts, double celsius, double wholeGrain = 0.5, const Culture& starter = {}) {
  return levain(parts, celsius, wholeGrain, starter).lowHour.value_or(kNever);
}

inline double levainRise(double hours) {
  const DoughKind kind = withComposition(kLevainKind, 0.5, 0, 0);
  const Stay stay = always(22);
  return riseOf(kind, stateAfter(kind, *mixLevain(kind, {}, {1, 1, 1}, 22, 0.2), 0, {&stay, 1}, hours));
}

// The enriched dough of the model's runs: 19 % levain used at 7 h.
inline DoughKind enriched() {
  DoughKind kind = kEnrichedKind;
  kind.gasFactor = 0.80;
  kind.growthFactor = 0.85;
  return kind;
}

inline DoughState enrichedMixed(double celsius, double kilograms = 1) {
  return *mix(enriched(), {.ripeness = 0.583, .lag = kPeakLevainLag},
              {.inoculation = 0.185, .cultureShare = 0.19, .celsius = celsius, .kilograms = kilograms});
}

inline double enrichedBulkHours(double celsius, double rise) {
  const Stay stay = always(celsius);
  return forecast(enriched(), enrichedMixed(celsius), 0, {&stay, 1}, {rise, rise, rise + 0.5})
      .lowHour.value_or(kNever);
}

// After an hour and a half at 28 degrees, then this long in a fridge at 4.
inline DoughState chilled(double kilograms, double hours) {
  const Stay stays[] = {{1.5, TemperatureByHour(28.0), kStillAir}, always(4)};
  return stateAfter(enriched(), enrichedMixed(28, kilograms), 0, stays, 1.5 + hours);
}

inline DoughState shapedAtTwoAndAHalf() {
  const Stay stay = always(28);
  return shape(enriched(), stateAfter(enriched(), enrichedMixed(28), 0, {&stay, 1}, 2.5), 0.06);
}

inline double proofRise(double hours) {
  const Stay stay = always(28);
  return riseOf(enriched(), stateAfter(enriched(), shapedAtTwoAndAHalf(), 0, {&stay, 1}, hours));
}

inline double yeastedDoubles(double percent, double celsius) {
  DoughKind kind = kLeanKind;
  kind.gasFactor = 0.9;
  kind.yeastPercent = percent;
  const Stay stay = always(celsius);
  return forecast(kind, *mix(kind, {}, {.celsius = celsius}), 0, {&stay, 1}, {2, 2, 3})
      .lowHour.value_or(kNever);
}

}  // namespace suppertide::bread
