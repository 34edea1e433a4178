// A mode that asks for another step's mode, or that does not exist.
#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

// Two waits of ten minutes, one after the other, in one dish served at 100.
ProblemBuilder twoLinkedSteps() {
  ProblemBuilder kitchen(200);
  kitchen.dish("stew", {.serve = 100});
  kitchen.step("soak").lasting(10).kind(StepKind::kWait);
  kitchen.step("rest").lasting(10).kind(StepKind::kWait);
  return kitchen;
}

TEST(ModeLinkRuleTest, AModeGetsTheOtherModeItAsksFor) {
  ProblemBuilder kitchen(200);
  kitchen.dish("loaf", {.serve = 200});
  kitchen.step("bulk").lasting(30).orMode("warm").lasting(20);
  kitchen.step("proof").lasting(30).linkedTo("bulk", {0}).orMode("fridge").lasting(60);
  const Problem problem = kitchen.build();
  const auto modes = [&](int bulk, int proof) {
    return breaches(problem, ScheduleBuilder(problem).put("bulk", 0, "", bulk).put("proof", 40, "", proof));
  };
  EXPECT_THAT(modes(0, 0), IsEmpty());
  EXPECT_THAT(modes(1, 1), IsEmpty());
  EXPECT_THAT(modes(1, 0), ElementsAre("kModeLink: proof (with bulk) at 40 by 1"));
}

TEST(ModeLinkRuleTest, AModeThatIsNotThereIsReported) {
  const Problem problem = twoLinkedSteps().build();
  Schedule schedule = ScheduleBuilder(problem).put("soak", 0).put("rest", 30).done();
  schedule.steps[0].mode = 5;
  EXPECT_THAT(breachTexts(problem, schedule), ElementsAre("kModeLink: soak at 0 by 1"));
}

TEST(ModeLinkRuleTest, UnservedDishesAskAndGiveNothing) {
  ProblemBuilder kitchen(200);
  kitchen.dish("loaf", {.serve = 200});
  kitchen.step("bulk").lasting(30).orMode("warm").lasting(20);
  kitchen.dish("rolls", {.serve = 200});
  kitchen.step("proof").lasting(30).linkedTo("bulk", {0});
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("bulk", 0, "", 1).put("proof", 40);
  EXPECT_THAT(wholeBreaches(problem, plan), ElementsAre(Breach{Rule::kModeLink, 1, 0, -1, 40, 1}));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("loaf")), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("rolls")), IsEmpty());
}

}  // namespace
}  // namespace suppertide::planning
