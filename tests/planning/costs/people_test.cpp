// Tier kPeople: minutes in unsocial hours, asking, shares of the work.
#include "server/planning/model/costs/people.h"

#include "gtest/gtest.h"
#include "server/planning/model/schedule.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

constexpr auto kPeople = static_cast<std::size_t>(Tier::kPeople);

// Soup is stirred for 20 minutes by Ana or Ben and served at 100.
ProblemBuilder soupByCooks() {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  kitchen.dish("soup", {.serve = 100, .holdLimit = 60, .lateLimit = 30});
  kitchen.step("stir").lasting(10, 20, 40).by({"Ana", "Ben"}, 50);
  return kitchen;
}

TEST(PeopleTierTest, UnsocialMinutesCostByTheMinuteWhateverTheAttention) {
  ProblemBuilder kitchen = soupByCooks();
  kitchen.problem().cooks[0].unsocial = {{{0, 85}, 2}, {{95, 200}, 3}};
  const Problem problem = kitchen.build();
  const auto people = [&](const char* cook) {
    return costOf(problem, ScheduleBuilder(problem).put("stir", 80, cook).until("stir", 100).done())
        .total[kPeople];
  };
  EXPECT_EQ(people("Ana"), 5 * 2 + 5 * 3);
  EXPECT_EQ(people("Ben"), 0);
}

TEST(PeopleTierTest, AskingACookCostsWhatTheOptionSays) {
  ProblemBuilder kitchen = soupByCooks();
  kitchen.problem().steps[0].modes[0].cooks[1].cost = 4;
  const Problem problem = kitchen.build();
  const auto people = [&](const char* cook) {
    return costOf(problem, ScheduleBuilder(problem).put("stir", 80, cook).until("stir", 100).done())
        .total[kPeople];
  };
  EXPECT_EQ(people("Ana"), 0);
  EXPECT_EQ(people("Ben"), 4);
}

// Ana does 40 weighted minutes alone: her fair half is 20, so 20 are beyond it.
TEST(PeopleTierTest, WorkBeyondTheFairShareCostsByTheStartedBlock) {
  ProblemBuilder kitchen = soupByCooks();
  kitchen.step("skim").lasting(60).by({"Ana"}, 50);
  kitchen.problem().dishes[0].lastStep = 0;
  kitchen.problem().shareBlockCost = 10;
  kitchen.problem().shareBlock = 15;
  const Problem problem = kitchen.build();
  const auto plan = [&](const char* stirrer) {
    return ScheduleBuilder(problem).put("stir", 80, stirrer).until("stir", 100).put("skim", 0, "Ana").done();
  };
  const CostBreakdown alone = costOf(problem, plan("Ana"));
  EXPECT_EQ(alone.overShareByCook[0], 2 * 10);
  EXPECT_EQ(alone.overShareByCook[1], 0);
  EXPECT_EQ(alone.total[kPeople], 20);
  // 30 and 10 minutes of 40: Ana is 10 beyond.
  EXPECT_EQ(costOf(problem, plan("Ben")).total[kPeople], 10);
}

TEST(PeopleTierTest, SharesAreMeasuredAgainstTheWantedOnes) {
  ProblemBuilder kitchen = soupByCooks();
  kitchen.problem().shareBlockCost = 10;
  kitchen.problem().shareBlock = 1;
  kitchen.problem().cooks[1].share = 0;
  const Problem problem = kitchen.build();
  const auto people = [&](const char* cook) {
    return costOf(problem, ScheduleBuilder(problem).put("stir", 80, cook).until("stir", 100).done())
        .total[kPeople];
  };
  EXPECT_EQ(people("Ana"), 0);
  EXPECT_EQ(people("Ben"), 10 * 10);
}

TEST(PeopleTierTest, UnservedDishesAskNobody) {
  ProblemBuilder kitchen = soupByCooks();
  kitchen.problem().cooks[0].unsocial = {{{0, 600}, 2}};
  kitchen.problem().shareBlockCost = 10;
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("stir", 80, "Ana");
  EXPECT_GT(costOf(problem, plan.done()).total[kPeople], 0);
  EXPECT_EQ(costOf(problem, ScheduleBuilder(plan).without("soup").done()).total[kPeople], 0);
}

}  // namespace
}  // namespace suppertide::planning
