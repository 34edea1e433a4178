#include "server/bread/readiness_table.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/bread/builders.h"

namespace suppertide::bread {
namespace {

TEST(ReadinessTableTest, EachRowIsItsOwnForecast) {
  const Stay stay = {kOpenEnded, swinging(21, 3), kStillAir};
  const StartGrid grid = {-300, 10, 432};
  const auto rows = readinessTable(halfWholeLevain(), fed(2, 22), {&stay, 1}, kLevainStage, grid, {390, 48});
  ASSERT_EQ(rows.size(), 432u);
  for (std::size_t k = 0; k < rows.size(); k += 37) {
    const double start = (-300 + 10 * static_cast<double>(k)) / 60;
    const auto window =
        forecast(halfWholeLevain(), fed(2, 22), start, {&stay, 1}, kLevainStage, {6.5, 48, 0}).window;
    ASSERT_TRUE(window && rows[k].ready) << k;
    EXPECT_NEAR(rows[k].earliest, (window->hours.start - start) * 60, 1.01);
    EXPECT_GE(rows[k].earliest + 0.001, (window->hours.start - start) * 60);
    EXPECT_NEAR(rows[k].best, (window->best - start) * 60, 0.51);
    EXPECT_LT(rows[k].latest, (window->hours.limit - start) * 60);
  }
}

TEST(ReadinessTableTest, RepeatsDailyAndChangesThroughTheDay) {
  const Stay stay = {kOpenEnded, swinging(21, 3), kStillAir};
  const auto rows = readinessTable(enriched(), enrichedMixed(24), {&stay, 1}, kEnrichedBulk, {0, 5, 864});
  EXPECT_EQ(rows[0], rows[288]);
  EXPECT_EQ(rows[100], rows[676]);
  EXPECT_GT(rows[0].best, rows[144].best + 20) << "midnight is colder than noon";
}

TEST(ReadinessTableTest, AnOddPitchIsComputedStartByStart) {
  const Stay stay = {kOpenEnded, swinging(21, 3), kStillAir};
  const auto odd = readinessTable(enriched(), enrichedMixed(24), {&stay, 1}, kEnrichedBulk, {0, 11, 300});
  const auto even = readinessTable(enriched(), enrichedMixed(24), {&stay, 1}, kEnrichedBulk, {0, 110, 30});
  EXPECT_EQ(odd[250], even[25]);
}

TEST(ReadinessTableTest, EveryMinuteIsWithinAMinuteOfItsOwnForecast) {
  const Stay counter[] = {{kOpenEnded, swinging(21, 3), kStillAir}};
  std::array<double, 24> lamp;
  lamp.fill(20);
  for (std::size_t hour = 8; hour < 14; ++hour) lamp[hour] = 29;
  const Stay oven[] = {{kOpenEnded, TemperatureByHour(lamp), kStillAir}};
  const Stay retarded[] = {{1, swinging(21, 3), kStillAir}, {9, TemperatureByHour(4), kStillAir}, counter[0]};
  for (const std::span<const Stay>& stays : {std::span<const Stay>(counter), {oven}, {retarded}}) {
    for (const Stage& stage : {kEnrichedBulk, Stage{1.35, 1.5, 1.7, 0.05, 3, 3.5, 5}}) {
      const auto rows =
          readinessTable(enriched(), enrichedMixed(24), stays, stage, {-100, 1, 1440}, {30, 48});
      for (std::size_t k = 0; k < rows.size(); k += 7) {
        const auto own = readinessTable(enriched(), enrichedMixed(24), stays, stage,
                                        {static_cast<int>(k) - 100, 10, 1}, {30, 48})[0];
        ASSERT_EQ(rows[k].ready, own.ready) << k;
        ASSERT_NEAR(rows[k].earliest, own.earliest, 1) << k;
        ASSERT_NEAR(rows[k].best, own.best, 1) << k;
        ASSERT_NEAR(rows[k].latest, own.latest, 1) << k;
      }
    }
  }
}

TEST(ReadinessTableTest, NeverReadyRowsSaySo) {
  const Stay stay = always(35);
  for (const ReadinessRow& row :
       readinessTable(halfWholeLevain(), fed(1, 35), {&stay, 1}, kLevainStage, {0, 10, 20})) {
    EXPECT_FALSE(row.ready);
  }
  EXPECT_TRUE(readinessTable(halfWholeLevain(), fed(1, 35), {&stay, 1}, kLevainStage, {0, 10, 0}).empty());
}

// Dough shaped after bulks of these hours at 28 degrees.
std::vector<DoughState> shapedAfter(std::initializer_list<double> hours) {
  std::vector<DoughState> states;
  for (double hour : hours) {
    const Stay bulk[] = {always(28, hour)};
    states.push_back(shape(enriched(), ferment(enriched(), enrichedMixed(28), 0, bulk), 0.06));
  }
  return states;
}

TEST(RobustReadinessTableTest, HoldsWhatSuitsEveryState) {
  const auto states = shapedAfter({2.3, 2.5, 2.7});
  const Stay stay = always(28);
  const StartGrid grid = {0, 10, 6};
  const auto robust = robustReadinessTable(enriched(), states, 1, {&stay, 1}, kEnrichedProof, grid);
  const auto early = readinessTable(enriched(), states[0], {&stay, 1}, kEnrichedProof, grid);
  const auto late = readinessTable(enriched(), states[2], {&stay, 1}, kEnrichedProof, grid);
  ASSERT_TRUE(robust[0].ready);
  EXPECT_FALSE(robust[0].compromised);
  EXPECT_EQ(robust[0].earliest, early[0].earliest) << "the least fermented needs longest";
  EXPECT_EQ(robust[0].latest, late[0].latest);
  EXPECT_LE(robust[0].earliest, robust[0].best);
  EXPECT_LE(robust[0].best, robust[0].latest);
}

TEST(RobustReadinessTableTest, FallsBackToTheLikelyStateWithAFlag) {
  const auto states = shapedAfter({0.3, 2.5, 5});
  const Stay stay = always(28);
  const auto robust = robustReadinessTable(enriched(), states, 1, {&stay, 1}, kEnrichedProof, {0, 10, 1});
  auto likely = readinessTable(enriched(), states[1], {&stay, 1}, kEnrichedProof, {0, 10, 1})[0];
  likely.compromised = true;
  EXPECT_EQ(robust[0], likely);
}

TEST(RobustReadinessTableTest, FallsBackToTheWholeWindowAlsoAfterNarrowingIt) {
  const auto states = shapedAfter({2.2, 2.5, 0.3});
  const Stay stay = always(28);
  const auto robust = robustReadinessTable(enriched(), states, 1, {&stay, 1}, kEnrichedProof, {0, 10, 1});
  auto likely = readinessTable(enriched(), states[1], {&stay, 1}, kEnrichedProof, {0, 10, 1})[0];
  likely.compromised = true;
  EXPECT_EQ(robust[0], likely);
}

TEST(RobustReadinessTableTest, AStateThatIsNeverReadyCompromisesAndTheLikelyOneDecides) {
  auto states = shapedAfter({2.5, 2.5});
  states[0].volumeAtStart *= 10;
  const Stay stay = always(28);
  Stage stage = kEnrichedProof;
  stage.lowRise = 1;  // ready at once
  const auto robust = robustReadinessTable(enriched(), states, 1, {&stay, 1}, stage, {0, 10, 1});
  EXPECT_TRUE(robust[0].ready && robust[0].compromised);
  EXPECT_FALSE(robustReadinessTable(enriched(), states, 0, {&stay, 1}, stage, {0, 10, 1})[0].ready);
}

TEST(StatesAtReadinessTest, AreTheStagesEarliestBestAndLatest) {
  const Stay stay = always(26);
  const auto states = statesAtReadiness(enriched(), enrichedMixed(26), 4, {&stay, 1}, kEnrichedBulk);
  ASSERT_EQ(states.size(), 3u);
  EXPECT_NEAR(riseOf(enriched(), states[0]), kEnrichedBulk.lowRise, 3e-4);
  EXPECT_NEAR(riseOf(enriched(), states[1]), kEnrichedBulk.wantedRise, 3e-4);
  EXPECT_NEAR(riseOf(enriched(), states[2]), kEnrichedBulk.highRise, 3e-4);
  const Stay hot = always(36);
  EXPECT_TRUE(statesAtReadiness(enriched(), enrichedMixed(36), 4, {&hot, 1}, kEnrichedBulk).empty());
}

}  // namespace
}  // namespace suppertide::bread
