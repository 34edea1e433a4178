#include "server/kitchen/units.h"

#include <gtest/gtest.h>

namespace suppertide::kitchen {
namespace {

TEST(UnitsTest, TemperaturesConvertThereAndBack) {
  for (double celsius = -40; celsius <= 300; celsius += 7.3) {
    EXPECT_NEAR(celsiusFromFahrenheit(fahrenheitFromCelsius(celsius)), celsius, 1e-9);
  }
}

TEST(UnitsTest, ADifferenceConvertsWithoutTheOffset) {
  EXPECT_NEAR(kelvinFromFahrenheitDifference(25), 13.8889, 1e-4);
  EXPECT_NEAR(fahrenheitDifferenceFromKelvin(10), 18, 1e-12);
}

TEST(UnitsTest, GasMarksAreKnownOnlyWhereTheyExist) {
  EXPECT_EQ(*fahrenheitFromGasMark(6), 400);
  EXPECT_EQ(*fahrenheitFromGasMark(0.25), 225);
  EXPECT_FALSE(fahrenheitFromGasMark(3.5).ok());
  EXPECT_EQ(*gasMarkFromCelsius(180), 4);
  EXPECT_EQ(*gasMarkFromCelsius(230), 8);
  EXPECT_EQ(gasMarkFromCelsius(60).status().code(), absl::StatusCode::kOutOfRange);
}

TEST(UnitsTest, DialsRoundToTheirOwnSteps) {
  EXPECT_EQ(dialCelsius(176.7), 175);
  EXPECT_EQ(dialCelsius(177.5), 180);
  EXPECT_EQ(dialFahrenheit(356), 350);
  EXPECT_EQ(dialFahrenheit(362.5), 375);
}

TEST(UnitsTest, ShownSafetyLimitsAreNeverOnTheUnsafeSide) {
  for (int tenths = -200; tenths < 2200; ++tenths) {
    const double limit = tenths / 10.0 + 0.03;
    EXPECT_GE(shownAtLeast(limit), limit);
    EXPECT_LE(shownAtMost(limit), limit);
  }
  EXPECT_EQ(shownAtLeast(celsiusFromFahrenheit(165)), 74);
  EXPECT_EQ(shownAtLeast(celsiusFromFahrenheit(140)), 60);
  EXPECT_EQ(shownAtMost(celsiusFromFahrenheit(40)), 4);
  EXPECT_EQ(shownAtMost(celsiusFromFahrenheit(41)), 5);
}

TEST(UnitsTest, MeasuresOfOneSystemAddUp) {
  EXPECT_NEAR(convertVolume(1, VolumeUnit::kUsGallon, VolumeUnit::kUsTeaspoon), 768, 1e-9);
  EXPECT_NEAR(convertVolume(1, VolumeUnit::kImperialPint, VolumeUnit::kImperialFluidOunce), 20, 1e-12);
  EXPECT_NEAR(convertMass(1, MassUnit::kPound, MassUnit::kOunce), 16, 1e-12);
  EXPECT_NEAR(convertMass(2.5, MassUnit::kKilogram, MassUnit::kMilligram), 2.5e6, 1e-6);
}

TEST(UnitsTest, SpoonAmountsTakeTheNearestFraction) {
  EXPECT_EQ(spoonAmount(1.3), (MixedNumber{1, 1, 3}));
  EXPECT_EQ(spoonAmount(2.97), (MixedNumber{3, 0, 1}));
  EXPECT_EQ(spoonAmount(0.52), (MixedNumber{0, 1, 2}));
  EXPECT_EQ(spoonAmount(0), (MixedNumber{0, 0, 1}));
}

TEST(UnitsTest, ASpoonAmountAboveNothingNeverBecomesNothing) {
  EXPECT_EQ(spoonAmount(0.01), (MixedNumber{0, 1, 8}));
}

TEST(UnitsTest, GramsRoundByTheirSize) {
  EXPECT_DOUBLE_EQ(scaleGrams(3.249), 3.2);
  EXPECT_DOUBLE_EQ(scaleGrams(281.25), 281);
  EXPECT_DOUBLE_EQ(labelGrams(1.26), 1.3);
  EXPECT_DOUBLE_EQ(labelGrams(3.3), 3.5);
  EXPECT_DOUBLE_EQ(labelGrams(28.35), 28);
}

}  // namespace
}  // namespace suppertide::kitchen
