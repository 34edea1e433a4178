#include "server/planning/clash/part.h"

#include <gtest/gtest.h>

#include "server/planning/solver/solver.h"
#include "tests/support/breach_text.h"
#include "tests/support/problem_builder.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

TEST(PartTest, KeepsADishWithItsStepsGapsAndOrder) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.dish("soup", {.serve = 300});
  kitchen.step("chop").lasting(20).by({"Ana"});
  kitchen.step("simmer").lasting(60).after("chop");
  kitchen.dish("loaf", {.serve = 400});
  kitchen.step("mix").lasting(20).by({"Ana"});
  kitchen.step("rise").lasting(90).after("mix", 5, 10);
  const Problem part = partOf(kitchen.build(), {1});
  ASSERT_EQ(part.dishes.size(), 1u);
  EXPECT_EQ(part.dishes[0].lastStep, stepIndex(part, "rise"));
  EXPECT_EQ(part.steps[0].dish, 0);
  ASSERT_EQ(part.gaps.size(), 1u);
  EXPECT_EQ(part.gaps[0].from, stepIndex(part, "mix"));
  EXPECT_EQ(part.gaps[0].to, stepIndex(part, "rise"));
  EXPECT_EQ(part.gaps[0].most, 10);
}

TEST(PartTest, LosesWhatNamesADishThatIsGone) {
  ProblemBuilder kitchen(600);
  kitchen.dish("nut cake", {.serve = 300});
  kitchen.step("nuts").lasting(20);
  kitchen.dish("soup", {.serve = 300});
  kitchen.step("chop").lasting(20);
  kitchen.separation("board", "chop", "nuts");
  kitchen.clock("room", 100, {{.from = "nuts"}});
  const Problem part = partOf(kitchen.build(), {1});
  EXPECT_TRUE(part.separations.empty());
  EXPECT_TRUE(part.clocks.empty());
}

TEST(PartTest, AnyHalfOfARandomDinnerIsAProblemThatCanBePlanned) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    SCOPED_TRACE(seed);
    const Problem dinner = randomDinner(seed, 8, DinnerLoad::kMiddling, DinnerExtras::all());
    Problem part = partOf(dinner, {0, 2, 5, 7});
    forgetCosts(part);
    ASSERT_TRUE(check(part).ok()) << check(part);
    const auto outcome = makePlan(part, {.seed = 1, .workLimit = 200});
    ASSERT_TRUE(outcome.ok());
    EXPECT_TRUE(breachTexts(part, outcome->schedule).empty());
  }
}

}  // namespace
}  // namespace suppertide::planning
