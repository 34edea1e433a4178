// Amounts in the reader's measures.
#include <gtest/gtest.h>

#include "client/words/amount_words.h"

namespace suppertide {
namespace {

constexpr auto kMetric = v1::MEASURE_SYSTEM_METRIC;
constexpr auto kUs = v1::MEASURE_SYSTEM_US;

v1::Amount grams(double mass) {
  v1::Amount amount;
  amount.set_mass_g(mass);
  return amount;
}

TEST(AmountWordsTest, MetricMassesAreGramsAndFromAThousandKilograms) {
  EXPECT_EQ(AmountWords::mass(2.5, kMetric).toStdString(), "2.5 g");
  EXPECT_EQ(AmountWords::mass(450.4, kMetric).toStdString(), "450 g");
  EXPECT_EQ(AmountWords::mass(1250, kMetric).toStdString(), "1.25 kg");
  EXPECT_EQ(AmountWords::volume(1500, kMetric).toStdString(), "1.5 l");
}

TEST(AmountWordsTest, UsMassesAreOuncesAndPounds) {
  EXPECT_EQ(AmountWords::mass(28.35, kUs).toStdString(), "1 oz");
  EXPECT_EQ(AmountWords::mass(100, kUs).toStdString(), "3½ oz");
  EXPECT_EQ(AmountWords::mass(453.6, kUs).toStdString(), "1 lb");
  EXPECT_EQ(AmountWords::mass(900, kUs).toStdString(), "2 lb");
  EXPECT_EQ(AmountWords::mass(1250, kUs).toStdString(), "2 lb 12 oz");
}

TEST(AmountWordsTest, UsVolumesAreCupsAndSpoons) {
  EXPECT_EQ(AmountWords::volume(236.6, kUs).toStdString(), "1 cup");
  EXPECT_EQ(AmountWords::volume(355, kUs).toStdString(), "1½ cups");
  EXPECT_EQ(AmountWords::volume(15, kUs).toStdString(), "1 tbsp");
  EXPECT_EQ(AmountWords::volume(2.5, kUs).toStdString(), "½ tsp");
}

TEST(AmountWordsTest, WhatIsBoughtIsRoundedUp) {
  EXPECT_EQ(AmountWords::toBuy(grams(441), kMetric).toStdString(), "450 g");
  EXPECT_EQ(AmountWords::toBuy(grams(1210), kMetric).toStdString(), "1.25 kg");
  v1::Amount eggs;
  eggs.set_count(6);
  EXPECT_EQ(AmountWords::toBuy(eggs, kUs).toStdString(), "6");
  EXPECT_TRUE(AmountWords::toBuy({}, kMetric).isEmpty());
}

}  // namespace
}  // namespace suppertide
