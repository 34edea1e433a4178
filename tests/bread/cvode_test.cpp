// A thousand random doughs through random places, against CVODE.
#include <gtest/gtest.h>

#include <random>

#include "server/bread/fermentation.h"
#include "tests/bread/builders.h"
#include "tests/bread/cvode_fermentation.h"

namespace suppertide::bread {
namespace {

constexpr double kAllowed = 0.005;  // of the rise
constexpr int kPreferment = 3;      // leavened by yeast that grows

class RandomKitchen {
 public:
  explicit RandomKitchen(std::uint64_t seed) : random_(seed) {}

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  int oneOf(int count) { return std::uniform_int_distribution<int>(0, count - 1)(random_); }

  // Culture, baker's yeast or both, in a levain, an enriched or a lean dough; or a preferment.
  DoughKind kind(int leavening) {
    if (leavening == kPreferment)
      return prefermentKind(between(0.5, 1.3), between(0, 1), between(0.05, 2.5), between(0, 2));
    const DoughKind kinds[] = {kLevainKind, kEnrichedKind, kLeanKind};
    DoughKind kind = withComposition(kinds[oneOf(3)], between(0, 1), between(0, 2.2), between(0, 14));
    if (leavening != 0) kind.yeastPercent = between(0.1, 3);
    return kind;
  }

  DoughState mixed(const DoughKind& kind, int leavening) {
    const Culture culture = {between(0.4, 1), between(0, 2), between(0.4, 2.5)};
    const bool yeastAlone = leavening == 1 || leavening == kPreferment;
    const double inoculation = yeastAlone ? 0 : between(0.04, 0.4);
    return *mix(kind, culture, {inoculation, inoculation, between(16, 29), between(0.05, 2)});
  }

  // Counter, proofer, fridge, fan-moved cellar, or an oven whose lamp warms it and is put out.
  Stay stay() {
    const double hours = between(0.3, 9);
    switch (oneOf(5)) {
      case 0:
        return {hours, swinging(between(16, 27), between(0.5, 4)), kStillAir};
      case 1:
        return {hours, TemperatureByHour(between(24, 35)), kMovedAir};
      case 2:
        return {hours, TemperatureByHour(between(2, 6)), kCoveredBowl};
      case 3:
        return {hours, TemperatureByHour(between(10, 16)), kMovedAir};
      default:
        return {hours, ovenWithLamp(), kStillAir};
    }
  }

 private:
  TemperatureByHour ovenWithLamp() {
    std::array<double, 24> celsius;
    const int on = oneOf(24), lit = 2 + oneOf(6);
    double now = between(18, 22);
    const double cold = now, warm = between(26, 34);
    for (int h = 0; h < 24; ++h) {
      now += 0.5 * ((h < lit ? warm : cold) - now);
      celsius[static_cast<std::size_t>((on + h) % 24)] = now;
    }
    return TemperatureByHour(celsius);
  }

  std::mt19937_64 random_;
};

struct Difference {
  double rise = 0;  // relative
  double celsius = 0;
  bool solved = true;
};

// One dough through two to five stays, divided and shaped after the second; compared
// within and at the end of each.
Difference worstOf(std::uint64_t seed) {
  RandomKitchen kitchen(seed);
  const int leavening = static_cast<int>(seed % 4);
  const DoughKind kind = kitchen.kind(leavening);
  DoughState state = kitchen.mixed(kind, leavening);
  auto reference = std::make_unique<CvodeFermentation>(kind, state);
  const double hourOfDayAtZero = kitchen.between(0, 24);
  double hour = kitchen.between(-20, 20);
  Difference worst;
  const int stays = 2 + kitchen.oneOf(4);
  for (int s = 0; s < stays; ++s) {
    const Stay stay = kitchen.stay();
    reference->enter(stay.air, hour + hourOfDayAtZero,
                     Lump{.kilograms = state.kilograms}.timeConstantHours(stay.surfaceW));
    double before = 0;
    for (double share : {kitchen.between(0.1, 0.9), 1.0}) {
      const double hours = share * stay.hours;
      const DoughState now = stateAfter(kind, state, hour, {&stay, 1}, hours, hourOfDayAtZero);
      worst.solved = worst.solved && reference->run(hours - before);
      before = hours;
      worst.rise = std::max(worst.rise, std::abs(riseOf(kind, now) / reference->rise() - 1));
      worst.celsius = std::max(worst.celsius, std::abs(now.celsius - reference->celsius()));
    }
    state = ferment(kind, state, hour, {&stay, 1}, hourOfDayAtZero);
    hour += stay.hours;
    if (s == 1) {
      state = shape(kind, state, state.kilograms / (2 + kitchen.oneOf(10)));
      reference = std::make_unique<CvodeFermentation>(kind, state);
    }
  }
  return worst;
}

TEST(CvodeTest, AThousandRandomDoughsRiseAlikeInRandomPlaces) {
  double worstRise = 0, worstCelsius = 0;
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Difference difference = worstOf(seed);
    ASSERT_TRUE(difference.solved);
    EXPECT_LT(difference.rise, kAllowed);
    EXPECT_LT(difference.celsius, 1e-3);
    worstRise = std::max(worstRise, difference.rise);
    worstCelsius = std::max(worstCelsius, difference.celsius);
  }
  RecordProperty("worst_relative_rise", std::to_string(worstRise));
  std::printf("worst of 1,000: rise %.2g of itself, temperature %.2g K\n", worstRise, worstCelsius);
}

}  // namespace
}  // namespace suppertide::bread
