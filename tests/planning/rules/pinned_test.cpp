// Rule 9: what happened or was pinned is kept.
#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

// Ana may stir and whisk, Ben may only whisk; he comes at 50.
ProblemBuilder twoCooks() {
  ProblemBuilder kitchen(200);
  kitchen.cook("Ana");
  kitchen.cook("Ben", 50, 200);
  kitchen.dish("sauce", {.serve = 200});
  kitchen.step("stir").lasting(20).by({"Ana"}, 60);
  kitchen.step("whisk").lasting(20).by({"Ana", "Ben"}, 50);
  return kitchen;
}

TEST(PinnedRuleTest, EachPinnedPartIsKept) {
  ProblemBuilder kitchen = twoCooks();
  kitchen.step("plate").lasting(10, 10, 20).by({"Ana", "Ben"}).orMode("on a board").lasting(10).by({"Ana"});
  kitchen.problem().steps[2].pin = {.start = 100, .end = 110, .mode = 0, .cook = 1};
  const Problem problem = kitchen.build();
  const auto plan = [&](Minute start, Minute end, const char* cook, int mode) {
    return breaches(problem, ScheduleBuilder(problem)
                                 .put("stir", 0, "Ana")
                                 .put("whisk", 60, "Ana")
                                 .put("plate", start, cook, mode)
                                 .until("plate", end));
  };
  EXPECT_THAT(plan(100, 110, "Ben", 0), IsEmpty());
  EXPECT_THAT(plan(97, 110, "Ben", 0), ElementsAre("kPinned: plate at 100 by 3"));
  EXPECT_THAT(plan(100, 112, "Ben", 0), ElementsAre("kPinned: plate at 110 by 2"));
  EXPECT_THAT(plan(100, 110, "Ana", 0), ElementsAre("kPinned: plate at 100 by 1"));
  EXPECT_THAT(plan(100, 110, "Ana", 1),
              ElementsAre("kPinned: plate at 100 by 1", "kPinned: plate at 100 by 1"));
}

TEST(PinnedRuleTest, ABreachNamesTheStepAloneAndUnservedOnesAreNotLookedAt) {
  ProblemBuilder kitchen = twoCooks();
  kitchen.problem().steps[1].pin = {.start = 60, .end = {}, .mode = {}, .cook = {}};
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("stir", 0, "Ana").put("whisk", 67, "Ana");
  EXPECT_THAT(wholeBreaches(problem, plan), ElementsAre(Breach{Rule::kPinned, 1, -1, -1, 60, 7}));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("sauce")), IsEmpty());
}

}  // namespace
}  // namespace suppertide::planning
