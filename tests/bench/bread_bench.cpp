// How fast a dough's forecast and the planner's tables are.
#include <benchmark/benchmark.h>

#include <array>

#include "server/bread/levain_choice.h"
#include "server/bread/readiness_table.h"

namespace suppertide::bread {
namespace {

// A kitchen between 19 at night and 23 in the afternoon.
TemperatureByHour kitchen() {
  return TemperatureByHour(std::array<double, 24>{20, 20, 19, 19, 19, 19, 19, 20, 20, 21, 21, 22,
                                                  22, 23, 23, 23, 23, 23, 22, 22, 22, 21, 21, 20});
}

DoughKind enriched() {
  return withComposition(kEnrichedKind, 0, 2, 10);
}

DoughState mixedDough() {
  return *mix(enriched(), {.ripeness = 0.6, .lag = kPeakLevainLag},
              {.inoculation = 0.185, .cultureShare = 0.19, .celsius = 25});
}

void forecastOfADay(benchmark::State& state) {
  const Stay stays[] = {{2, kitchen(), kStillAir}, {kOpenEnded, TemperatureByHour(4), kStillAir}};
  const Stage stage = {1.0, 1.3, kNoHighRise, 1.0};  // stays open for the whole search
  for (auto _ : state) {
    benchmark::DoNotOptimize(forecast(enriched(), mixedDough(), 9, stays, stage, {0, 24, 0}));
  }
}
BENCHMARK(forecastOfADay)->Unit(benchmark::kMicrosecond);

void bandOfALevain(benchmark::State& state) {
  const DoughKind kind = withComposition(kLevainKind, 0.5, 0, 0);
  const DoughState levain = *mixLevain(kind, {}, {1, 5, 5}, 22, 0.2);
  const Stay stay = {kOpenEnded, kitchen(), kStillAir};
  for (auto _ : state) benchmark::DoNotOptimize(forecastBand(kind, levain, 9, {&stay, 1}, kLevainStage));
}
BENCHMARK(bandOfALevain)->Unit(benchmark::kMicrosecond);

void tableOfThreeDays(benchmark::State& state) {
  const Stay stay = {kOpenEnded, kitchen(), kStillAir};
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        readinessTable(enriched(), mixedDough(), {&stay, 1}, kEnrichedBulk, {0, 10, 432}));
  }
}
BENCHMARK(tableOfThreeDays)->Unit(benchmark::kMillisecond);

void levainTableOfThreeDays(benchmark::State& state) {
  const DoughKind kind = withComposition(kLevainKind, 0.5, 0, 0);
  const DoughState levain = *mixLevain(kind, {}, {1, 5, 5}, 22, 0.2);
  const Stay stay = {kOpenEnded, kitchen(), kStillAir};
  for (auto _ : state) {
    benchmark::DoNotOptimize(readinessTable(kind, levain, {&stay, 1}, kLevainStage, {0, 10, 432}));
  }
}
BENCHMARK(levainTableOfThreeDays)->Unit(benchmark::kMillisecond);

void choicesOfALevain(benchmark::State& state) {
  LevainWish wish;
  wish.ready = {32, 33};
  wish.places = {{"counter", kitchen(), kStillAir, {}}, {"proofer", TemperatureByHour(26), kStillAir, {}}};
  wish.workHours = {{7, 22}, {31, 46}};
  for (auto _ : state) benchmark::DoNotOptimize(levainChoices(wish));
}
BENCHMARK(choicesOfALevain)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace suppertide::bread
