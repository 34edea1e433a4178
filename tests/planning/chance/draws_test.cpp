// The shapes of what is drawn.
#include "server/planning/chance/draws.h"

#include <cmath>

#include "gtest/gtest.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

TEST(SpreadQuantilesTest, LieBetweenTheEndsAndNeverFall) {
  const SpreadQuantiles spread(0.8, 1.5);
  EXPECT_FLOAT_EQ(spread.at(0), 0.8F);
  EXPECT_NEAR(spread.at(1 - 1e-12), 1.5, 1e-3);
  for (int k = 1; k < 1'000; ++k) EXPECT_GE(spread.at(k / 1'000.0), spread.at((k - 1) / 1'000.0));
}

// The mean of a PERT distribution is (least + 4 likely + most) / 6, its median lies between mean and likely.
TEST(SpreadQuantilesTest, HaveTheMeanOfAPertDistribution) {
  for (const auto& [least, most] : {std::pair(0.8, 1.5), std::pair(0.5, 1.0), std::pair(1.0, 3.0)}) {
    const SpreadQuantiles spread(least, most);
    double sum = 0;
    for (int k = 0; k < 10'000; ++k) sum += spread.at((k + 0.5) / 10'000);
    EXPECT_NEAR(sum / 10'000, (least + 4 + most) / 6, 2e-3);
  }
  EXPECT_GT(SpreadQuantiles(0.8, 1.5).at(0.5), 1);
  EXPECT_LT(SpreadQuantiles(0.8, 1.5).at(0.5), (0.8 + 4 + 1.5) / 6);
}

Problem twoFerments() {
  ProblemBuilder kitchen(900);
  kitchen.unknown("starter", 0.2);
  kitchen.dish("loaf", {.serve = 900});
  kitchen.step("bulk").kind(StepKind::kFerment).lasting(80).follows("starter");
  kitchen.step("proof").kind(StepKind::kFerment).lasting(80).follows("starter", 0.5);
  kitchen.step("bake").lasting(40);
  return kitchen.build();
}

TEST(DrawsTest, AnUnknownIsSharedAndLogNormal) {
  const Problem problem = twoFerments();
  const Schedule plan = ScheduleBuilder(problem).put("bulk", 0).put("proof", 100).put("bake", 200).done();
  Draws draws(problem, plan, 5);
  double sum = 0;
  double squares = 0;
  constexpr int kBlocks = 4'000;
  for (int block = 0; block < kBlocks; ++block) {
    draws.beginBlock(block * kLanes);
    const Lanes bulk = draws.factors(0);
    const Lanes proof = draws.factors(1);
    for (std::size_t lane = 0; lane < kLanes; ++lane) {
      const double log = std::log(static_cast<double>(bulk[lane]));
      EXPECT_NEAR(std::log(static_cast<double>(proof[lane])), log / 2, 1e-5);
      sum += log;
      squares += log * log;
    }
  }
  const double count = kBlocks * kLanes;
  EXPECT_NEAR(sum / count, 0, 0.005);
  EXPECT_NEAR(std::sqrt(squares / count), 0.2, 0.005);
}

TEST(DrawsTest, AnEveningIsTheSameInWhateverBlockOrder) {
  const Problem problem = twoFerments();
  const Schedule plan = ScheduleBuilder(problem).put("bulk", 0).put("proof", 100).put("bake", 200).done();
  Draws forward(problem, plan, 5);
  forward.beginBlock(0);
  forward.beginBlock(16);
  const Lanes later = forward.factors(1);
  Draws alone(problem, plan, 5);
  alone.beginBlock(16);
  EXPECT_EQ(alone.factors(0), forward.factors(0));
  EXPECT_EQ(alone.factors(1), later);
}

TEST(DrawsTest, OnlyWhatHasASpreadVaries) {
  const Problem problem = twoFerments();
  const Schedule plan = ScheduleBuilder(problem).put("bulk", 0).put("proof", 100).put("bake", 200).done();
  const Draws draws(problem, plan, 5);
  EXPECT_TRUE(draws.varies(0));
  EXPECT_FALSE(draws.varies(2));
  const Draws nothing(problem, ScheduleBuilder(problem).without("loaf").done(), 5);
  EXPECT_FALSE(nothing.varies(0));
}

}  // namespace
}  // namespace suppertide::planning
