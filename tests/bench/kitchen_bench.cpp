// How fast pans are fitted into an oven, on average and at worst over many ovens full of unlike pans.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <functional>
#include <iterator>
#include <vector>

#include "server/kitchen/oven_fit.h"
#include "server/kitchen/rack_answer.h"
#include "tests/bench/cpu_time.h"
#include "tests/kitchen/dice.h"

namespace suppertide::kitchen {
namespace {

constexpr unsigned kOvens = 200;

Oven oven(std::vector<int> heights) {
  Oven made;
  made.clearHeightsMm = std::move(heights);
  made.shelfWidthMm = 460;
  made.shelfDepthMm = 370;
  return made;
}

std::vector<Pan> unlike(Dice& dice, int count, int least, int most, int height) {
  std::vector<Pan> pans;
  for (int i = 0; i < count; ++i)
    pans.push_back({dice.upTo(least, most), dice.upTo(least, most), dice.upTo(30, height)});
  return pans;
}

// One shelf cut into `count` pans by straight cuts, each shrunk by up to `slack` mm: they just fit.
std::vector<Pan> tiles(Dice& dice, int count, int slack) {
  std::vector<Pan> parts = {{460, 370, 50}};
  while (static_cast<int>(parts.size()) < count) {
    const auto largest = std::max_element(parts.begin(), parts.end(), [](const Pan& a, const Pan& b) {
      return a.widthMm * a.depthMm < b.widthMm * b.depthMm;
    });
    Pan other = *largest;
    const bool across = largest->widthMm >= largest->depthMm;
    int& side = across ? largest->widthMm : largest->depthMm;
    const int cut = dice.upTo(side * 3 / 10, side * 7 / 10);
    (across ? other.widthMm : other.depthMm) = side - cut;
    side = cut;
    parts.push_back(other);
  }
  for (Pan& part : parts) {
    part.widthMm -= dice.upTo(0, slack);
    part.depthMm -= dice.upTo(0, slack);
  }
  return parts;
}

// Runs every oven once an iteration; tells the slowest, how many fit, and of how many that is not sure.
void runAll(benchmark::State& state, const Oven& in, const std::function<std::vector<Pan>(Dice&)>& pansOf) {
  std::vector<std::vector<Pan>> sets;
  for (unsigned seed = 1; seed <= kOvens; ++seed) {
    Dice dice(seed);
    sets.push_back(pansOf(dice));
  }
  double worst = 0;
  int fitting = 0;
  int unproven = 0;
  for (auto _ : state) {
    fitting = unproven = 0;
    for (const std::vector<Pan>& pans : sets) {
      const CpuWatch watch;
      const RackAnswer answer = rackAnswer(in, pans);
      fitting += answer == RackAnswer::kYes ? 1 : 0;
      unproven += answer == RackAnswer::kUnproven ? 1 : 0;
      worst = std::max(worst, 1000 * watch.seconds());
    }
  }
  state.counters["worst_ms"] = worst;
  state.counters["fitting"] = fitting;
  state.counters["unproven"] = unproven;
  state.SetItemsProcessed(static_cast<int64_t>(state.iterations()) * kOvens);
}

void fourPans(benchmark::State& state) {
  runAll(state, oven({80, 80, 80, 80}), [](Dice& dice) { return unlike(dice, 4, 150, 360, 150); });
}
BENCHMARK(fourPans)->Unit(benchmark::kMillisecond);

void dozenUnlikeOnFivePositions(benchmark::State& state) {
  runAll(state, oven({70, 70, 70, 70, 90}), [](Dice& dice) { return unlike(dice, 12, 110, 260, 80); });
}
BENCHMARK(dozenUnlikeOnFivePositions)->Unit(benchmark::kMillisecond);

void dozenUnlikeAndTall(benchmark::State& state) {
  runAll(state, oven({70, 70, 70, 70, 90}), [](Dice& dice) { return unlike(dice, 12, 80, 230, 180); });
}
BENCHMARK(dozenUnlikeAndTall)->Unit(benchmark::kMillisecond);

void dozenSmallOnOneShelf(benchmark::State& state) {
  runAll(state, oven({100}), [](Dice& dice) { return unlike(dice, 12, 80, 140, 80); });
}
BENCHMARK(dozenSmallOnOneShelf)->Unit(benchmark::kMillisecond);

void dozenThatTileOneShelf(benchmark::State& state) {
  const int slack = static_cast<int>(state.range(0));
  runAll(state, oven({100}), [slack](Dice& dice) { return tiles(dice, 12, slack); });
}
BENCHMARK(dozenThatTileOneShelf)->Arg(0)->Arg(5)->Arg(15)->Unit(benchmark::kMillisecond);

void dozenThatTileTwoShelves(benchmark::State& state) {
  runAll(state, oven({100, 100}), [](Dice& dice) {
    std::vector<Pan> both = tiles(dice, 6, 5);
    const std::vector<Pan> upper = tiles(dice, 6, 5);
    both.insert(both.end(), upper.begin(), upper.end());
    return both;
  });
}
BENCHMARK(dozenThatTileTwoShelves)->Unit(benchmark::kMillisecond);

// One of them is grown until they most likely cannot lie there.
void dozenThatTiledTwoShelves(benchmark::State& state) {
  runAll(state, oven({100, 100}), [](Dice& dice) {
    std::vector<Pan> both = tiles(dice, 6, 5);
    const std::vector<Pan> upper = tiles(dice, 6, 5);
    both.insert(both.end(), upper.begin(), upper.end());
    both.front().widthMm += 6;
    return both;
  });
}
BENCHMARK(dozenThatTiledTwoShelves)->Unit(benchmark::kMillisecond);

void tenMiddlingOnOneShelf(benchmark::State& state) {
  runAll(state, oven({100}), [](Dice& dice) { return unlike(dice, 10, 90, 170, 80); });
}
BENCHMARK(tenMiddlingOnOneShelf)->Unit(benchmark::kMillisecond);

// Sold in these outer sizes: rectangular, square, round and loaf pans, sheets, and those of EN 631-1.
constexpr Pan kPansOfTheTrade[] = {{330, 230, 50}, {200, 200, 50},  {230, 230, 50}, {250, 250, 50},
                                   {230, 230, 80}, {250, 250, 100}, {220, 110, 60}, {230, 130, 80},
                                   {230, 230, 30}, {230, 230, 40},  {390, 270, 25}, {330, 240, 25},
                                   {460, 330, 25}, {354, 325, 40},  {325, 265, 65}, {325, 176, 65},
                                   {325, 176, 40}, {265, 162, 65},  {176, 162, 65}};

void upToADozenOfTheTrade(benchmark::State& state, const Oven& in) {
  runAll(state, in, [&in](Dice& dice) {
    const std::size_t count = static_cast<std::size_t>(dice.upTo(2, kMostPans));
    std::vector<Pan> load;
    while (load.size() < count) {
      const Pan& next = kPansOfTheTrade[dice.upTo(0, static_cast<int>(std::size(kPansOfTheTrade)) - 1)];
      if (fitsRacks(in, {next})) load.push_back(next);
    }
    return load;
  });
}

void ofTheTradeInABuiltInOven(benchmark::State& state) {
  upToADozenOfTheTrade(state, oven({70, 70, 70, 70, 70}));
}
BENCHMARK(ofTheTradeInABuiltInOven)->Unit(benchmark::kMillisecond);

void ofTheTradeOnThreeShelvesOfARange(benchmark::State& state) {
  Oven range = oven({80, 80, 80, 80, 80});
  range.shelfWidthMm = 610;
  range.shelfDepthMm = 430;
  range.shelfCount = 3;
  upToADozenOfTheTrade(state, range);
}
BENCHMARK(ofTheTradeOnThreeShelvesOfARange)->Unit(benchmark::kMillisecond);

void fitsACurveWithAMisreadReading(benchmark::State& state) {
  std::vector<OvenReading> readings;
  const ThermalCurve curve{.maximumCelsius = 330, .heatMinutes = 20};
  for (int minute = 0; minute < 24; minute += 2)
    readings.push_back({static_cast<double>(minute),
                        temperatureAfter(curve, curve.roomCelsius, 1000, Door::kClosed, minute)});
  readings[6].celsius -= 12;
  for (auto _ : state) benchmark::DoNotOptimize(fitHeating({}, readings));
}
BENCHMARK(fitsACurveWithAMisreadReading)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace suppertide::kitchen
