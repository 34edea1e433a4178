// How fast a dough's forecast and the planner's tables are.
#include <benchmark/benchmark.h>

#include <array>
#include <chrono>
#include <cmath>

#include "server/bread/calibration.h"
#include "server/bread/levain_choice.h"
#include "server/bread/readiness_table.h"
#include "tests/bread/cvode_fermentation.h"

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

// Every start minute of three days, in three places, at each usual ratio.
void plannerTable(benchmark::State& state) {
  const DoughKind kind = withComposition(kLevainKind, 0.5, 0, 0);
  std::array<double, 24> lamp;
  lamp.fill(20);
  for (std::size_t hour = 8; hour < 20; ++hour) lamp[hour] = 27;
  const Stay places[] = {{kOpenEnded, kitchen(), kStillAir},
                         {kOpenEnded, TemperatureByHour(lamp), kStillAir},
                         {kOpenEnded, TemperatureByHour(26), kMovedAir}};
  for (auto _ : state) {
    for (const Stay& place : places) {
      for (const LevainRatio& ratio : kUsualRatios) {
        const DoughState levain = *mixLevain(kind, {}, ratio, 22, 0.2);
        benchmark::DoNotOptimize(readinessTable(kind, levain, {&place, 1}, kLevainStage, {0, 1, 4320}));
      }
    }
  }
}
BENCHMARK(plannerTable)->Unit(benchmark::kMillisecond);

// A day of one dough, counter and then fridge, by our solver and by CVODE in turn; CVODE with a
// relative tolerance of 10^-range, 4 being about our own error. No readiness is looked for.
void dayAgainstCvode(benchmark::State& state) {
  using Watch = std::chrono::steady_clock;
  const Stay stays[] = {{2, kitchen(), kStillAir}, {22, TemperatureByHour(4), kStillAir}};
  const DoughKind kind = enriched();
  const DoughState start = mixedDough();
  const double tau = Lump{.kilograms = start.kilograms}.timeConstantHours(kStillAir);
  std::chrono::duration<double> ours{}, theirs{};
  double difference = 0;
  for (auto _ : state) {
    const auto first = Watch::now();
    const double rise = riseOf(kind, ferment(kind, start, 9, stays));
    const auto second = Watch::now();
    CvodeFermentation cvode(kind, start, std::pow(10.0, -static_cast<double>(state.range(0))));
    cvode.enter(stays[0].air, 9, tau);
    cvode.run(2);
    cvode.enter(stays[1].air, 11, tau);
    cvode.run(22);
    theirs += Watch::now() - second;
    ours += second - first;
    difference = rise - cvode.rise();
  }
  const double runs = static_cast<double>(state.iterations());
  state.counters["ours_us"] = 1e6 * ours.count() / runs;
  state.counters["cvode_us"] = 1e6 * theirs.count() / runs;
  state.counters["times_faster"] = theirs / ours;
  state.counters["rise_difference"] = difference;
}
BENCHMARK(dayAgainstCvode)->Arg(4)->Arg(6)->Arg(8)->Unit(benchmark::kMicrosecond);

void learningFromThreeReadings(benchmark::State& state) {
  const DoughKind kind = withComposition(kLevainKind, 0.5, 0, 0);
  Observation jar{.kind = kind,
                  .start = *mixLevain(kind, {}, {1, 2, 2}, 22, 0.2),
                  .startHour = 9,
                  .stays = {{kOpenEnded, kitchen(), kStillAir}},
                  .hours = 7,
                  .value = 1.7};
  std::vector<Observation> seen(3, jar);
  seen[1].hours = 9;
  seen[2].hours = 8;
  seen[1].value = seen[2].value = 2.1;
  for (auto _ : state) benchmark::DoNotOptimize(learn({}, seen));
}
BENCHMARK(learningFromThreeReadings)->Unit(benchmark::kMillisecond);

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
