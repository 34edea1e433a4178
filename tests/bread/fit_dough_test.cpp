#include "server/bread/fit_dough.h"

#include <gtest/gtest.h>

#include "tests/bread/builders.h"

namespace suppertide::bread {
namespace {

// Rolls for 17:00 to 17:30 on the fourth day; work from 6:30 to 23:00.
BreadWish rolls() {
  BreadWish wish;
  wish.ready = {89, 89.5};
  wish.earliestHour = 17;
  for (int day = 0; day < 4; ++day) wish.workHours.push_back({day * 24 + 6.5, day * 24 + 23.0});
  wish.places = {{TemperatureByHour(22)}, {TemperatureByHour(28)}, {TemperatureByHour(4), true}};
  wish.levain.emplace().kind = halfWholeLevain();
  wish.kind = enriched();
  wish.mixing = {.inoculation = 0.185, .cultureShare = 0.19, .celsius = 26, .kilograms = 1.1};
  wish.doughCelsius = {26, 23};
  return wish;
}

bool isWork(double hour) {
  const double ofDay = hour - 24 * std::floor(hour / 24);
  return ofDay > 6.49 && ofDay < 23.01;
}

TEST(FitBreadTest, EveryWayHoldsWhenRunForward) {
  const BreadWish wish = rolls();
  const auto fit = fitBread(wish);
  ASSERT_TRUE(fit.ok()) << fit.status();
  ASSERT_GT(fit->ways.size(), 5u);
  EXPECT_FALSE(fit->nearest);
  for (const BreadWay& way : fit->ways) {
    for (const double hour :
         {way.levain->startHour, way.levain->endHour, way.bulk.endHour, way.proof.endHour})
      EXPECT_TRUE(isWork(hour)) << hour;
    EXPECT_EQ(way.levain->endHour, way.bulk.startHour);
    EXPECT_EQ(way.bulk.endHour, way.proof.startHour);
    EXPECT_GE(way.proof.endHour, wish.ready.start);
    EXPECT_LE(way.proof.endHour, wish.ready.limit);
    const std::vector<Stay> stays = {{kOpenEnded, wish.places[way.proof.place].air, kStillAir}};
    const DoughState end = stateAfter(wish.kind, way.proof.state, way.proof.startHour, stays,
                                      way.proof.endHour - way.proof.startHour);
    if (!way.retarded) {
      EXPECT_GE(riseOf(wish.kind, end), wish.proof.lowRise - 0.01);
      EXPECT_LE(riseOf(wish.kind, end), wish.proof.highRise + 0.01);
    } else {
      EXPECT_GE(way.proof.endHour - way.proof.startHour, wish.retard.leastHours - 1e-6);
    }
  }
}

TEST(FitBreadTest, RanksByPenaltyAndKnowsRetards) {
  const auto fit = fitBread(rolls());
  ASSERT_TRUE(fit.ok());
  bool anyRetard = false;
  for (std::size_t w = 0; w < fit->ways.size(); ++w) {
    anyRetard = anyRetard || fit->ways[w].retarded;
    if (w > 0) {
      EXPECT_LE(fit->ways[w - 1].penalty, fit->ways[w].penalty);
    }
  }
  EXPECT_TRUE(anyRetard);
  EXPECT_TRUE(fit->ways.front().readyWhenFast || fit->ways.front().readyWhenSlow);
}

TEST(FitBreadTest, GivesTheNearestWhenThereIsNoTime) {
  BreadWish wish = rolls();
  wish.earliestHour = 85;
  const auto fit = fitBread(wish);
  ASSERT_TRUE(fit.ok());
  EXPECT_TRUE(fit->ways.empty());
  ASSERT_TRUE(fit->nearest);
  EXPECT_GT(fit->nearest->miss, 0);
}

TEST(FitBreadTest, NothingIsNearWhereNothingRises) {
  BreadWish wish = rolls();
  wish.places = {{TemperatureByHour(3)}};
  wish.doughCelsius = {15};
  wish.levain->celsius = 5;
  const auto fit = fitBread(wish);
  ASSERT_TRUE(fit.ok());
  EXPECT_TRUE(fit->ways.empty());
  EXPECT_FALSE(fit->nearest);
}

TEST(FitBreadTest, RefusesAnEmptySpanAndADoughWithoutLeavening) {
  BreadWish wish = rolls();
  wish.ready = {5, 5};
  EXPECT_FALSE(fitBread(wish).ok());
  wish = rolls();
  wish.levain.reset();
  wish.kind.yeastPercent = 0;
  EXPECT_FALSE(fitBread(wish).ok());
}

TEST(FitBreadTest, StopsWhenNobodyWaits) {
  int asked = 0;
  const auto fit = fitBread(rolls(), [&] { return ++asked > 5; });
  EXPECT_EQ(fit.status().code(), absl::StatusCode::kCancelled);
  EXPECT_EQ(asked, 6);
}

}  // namespace
}  // namespace suppertide::bread
