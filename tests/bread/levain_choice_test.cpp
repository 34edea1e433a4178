#include "server/bread/levain_choice.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/bread/builders.h"

namespace suppertide::bread {
namespace {

// A levain for eight to nine in the morning; the cook is up from 7:00 to 22:00.
LevainWish morningWish() {
  LevainWish wish;
  wish.ready = {32, 33};
  wish.places = {{"counter", swinging(20, 1.5), kStillAir, {}},
                 {"proofer", TemperatureByHour(26), kStillAir, {}}};
  wish.workHours = {{7, 22}, {31, 46}};
  return wish;
}

TEST(LevainChoicesTest, EveryOptionIsFedInWorkHoursAndReadyWhenWanted) {
  const LevainWish wish = morningWish();
  const auto options = levainChoices(wish);
  ASSERT_TRUE(options.ok()) << options.status();
  ASSERT_FALSE(options->empty());
  for (const LevainOption& option : *options) {
    EXPECT_TRUE(wish.workHours[0].contains(option.feedHour) || wish.workHours[1].contains(option.feedHour));
    EXPECT_TRUE(option.window.hours.overlaps(wish.ready));
    const auto state = *mixLevain(halfWholeLevain(), {}, option.ratio, wish.mixedCelsius, wish.kilograms);
    const Stay stay = {kOpenEnded, wish.places[option.place].air, kStillAir};
    const auto again = forecast(halfWholeLevain(), state, option.feedHour, {&stay, 1}, kLevainStage);
    ASSERT_TRUE(again.window);
    EXPECT_NEAR(again.window->best, option.window.best, 0.02);
    EXPECT_NEAR(option.reasons.hoursToBest, option.window.best - option.feedHour, 1e-9);
  }
}

TEST(LevainChoicesTest, OvernightTheLeanFeedingOnTheCounterWins) {
  const auto options = *levainChoices(morningWish());
  ASSERT_FALSE(options.empty());
  EXPECT_GE(options[0].ratio.flour, 3);
  EXPECT_EQ(options[0].reasons.coveredShare, 1);
  EXPECT_GT(options[0].reasons.readyBefore, 0);
  EXPECT_GT(options[0].reasons.readyAfter, 0);
  for (const LevainOption& option : options) {
    const bool equalPartsWarm = option.ratio.flour == 1 && option.place == 1;
    EXPECT_FALSE(equalPartsWarm) << "10 h after the latest feeding it has long fallen";
  }
}

TEST(LevainChoicesTest, RanksByCoverThenSafetyThenCentre) {
  const auto options = *levainChoices(morningWish());
  for (std::size_t i = 1; i < options.size(); ++i) {
    EXPECT_GE(options[i - 1].reasons.coveredShare, options[i].reasons.coveredShare - 0.051);
  }
}

TEST(LevainChoicesTest, NothingFitsIsAnEmptyList) {
  LevainWish wish = morningWish();
  wish.places = {{"fridge", TemperatureByHour(4), kStillAir, {}}};
  EXPECT_TRUE(levainChoices(wish)->empty());
}

TEST(LevainChoicesTest, RefusesAWishWithoutHoursPlaceOrStarter) {
  LevainWish wish = morningWish();
  wish.ready = {33, 33};
  EXPECT_FALSE(levainChoices(wish).ok());
  wish = morningWish();
  wish.places.clear();
  EXPECT_FALSE(levainChoices(wish).ok());
  wish = morningWish();
  wish.ratios = {{0, 1, 1}};
  EXPECT_FALSE(levainChoices(wish).ok());
}

TEST(DoughChoicesTest, FindsThePlaceInWhichAFixedStartIsReadyInTime) {
  DoughWish wish;
  wish.kind = enriched();
  wish.state = enrichedMixed(24);
  wish.startHours = {{9, 9.1}};
  wish.ready = {11.3, 11.8};
  wish.places = {{"cold room", TemperatureByHour(17), kStillAir, {}},
                 {"counter", TemperatureByHour(22), kStillAir, {}},
                 {"proofer", TemperatureByHour(28), kStillAir, {}}};
  const auto options = *doughChoices(wish);
  ASSERT_FALSE(options.empty());
  EXPECT_EQ(options[0].place, 2u);
  EXPECT_NEAR(options[0].reasons.meanAirCelsius, 28, 1e-9);
  for (const DoughOption& option : options) EXPECT_NE(option.place, 0u);
}

TEST(DoughChoicesTest, FindsTheRetardThatBridgesANight) {
  // Shaped between 20:00 and 21:00, wanted between 9:30 and 11:00 of the next day.
  DoughWish wish;
  wish.kind = enriched();
  wish.state = shape(enriched(), enrichedMixed(24), 0.06);
  wish.stage = kEnrichedProof;
  wish.startHours = {{20, 21}};
  wish.ready = {33.5, 35};
  const FermentPlace counter = {"counter", TemperatureByHour(22), kStillAir, {}};
  const FermentPlace fridge = {"fridge", TemperatureByHour(4), kStillAir, {}};
  wish.places = retardsOf(counter, 1, fridge, 8, 16, counter);
  ASSERT_EQ(wish.places.size(), 9u);
  const auto options = *doughChoices(wish);
  ASSERT_FALSE(options.empty());
  const FermentPlace& chosen = wish.places[options[0].place];
  EXPECT_GE(chosen.first[1].hours, 8);
  EXPECT_TRUE(options[0].window.hours.overlaps(wish.ready));
  EXPECT_GT(options[0].reasons.meanAirCelsius, 5);
  EXPECT_LT(options[0].reasons.meanAirCelsius, 15);
  std::vector<Stay> stays = chosen.first;
  stays.push_back({kOpenEnded, chosen.air, chosen.surfaceW});
  const auto again = forecast(enriched(), wish.state, options[0].startHour, stays, wish.stage);
  ASSERT_TRUE(again.window);
  EXPECT_NEAR(again.window->best, options[0].window.best, 0.02);
  wish.places = {counter};
  EXPECT_TRUE(doughChoices(wish)->empty()) << "without the fridge it is ready in the night";
}

}  // namespace
}  // namespace suppertide::bread
