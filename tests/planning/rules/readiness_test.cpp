// Rule 7: a ferment ends inside its window.
#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

TEST(ReadinessRuleTest, AFermentEndsInTheWindowOfItsStart) {
  ProblemBuilder kitchen(300);
  kitchen.dish("loaf", {.serve = 300});
  kitchen.step("proof").kind(StepKind::kFerment).lasting({0, 60, {{90, 100, 120}, {60, 70, 80}}});
  const Problem problem = kitchen.build();
  const auto proof = [&](Minute start, Minute end) {
    return breaches(problem, ScheduleBuilder(problem).put("proof", start).until("proof", end));
  };
  EXPECT_THAT(proof(59, 149), IsEmpty());
  EXPECT_THAT(proof(60, 140), IsEmpty());
  EXPECT_THAT(proof(59, 139), ElementsAre("kReadiness: proof at 139 by 10"));
  EXPECT_THAT(proof(60, 149), ElementsAre("kReadiness: proof at 140 by 9"));
}

TEST(ReadinessRuleTest, AFermentCannotStartWhereItNeverGetsReady) {
  ProblemBuilder kitchen(300);
  kitchen.dish("loaf", {.serve = 300});
  kitchen.step("proof").kind(StepKind::kFerment).lasting({0, 60, {{90, 100, 120}, {1, 1, 0}}});
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("proof", 60).until("proof", 150)),
              ElementsAre("kReadiness: proof at 60 by 90"));
}

TEST(ReadinessRuleTest, ABreachNamesTheFermentAloneAndUnservedOnesAreNotLookedAt) {
  ProblemBuilder kitchen(300);
  kitchen.dish("loaf", {.serve = 300});
  kitchen.step("proof").kind(StepKind::kFerment).lasting(60, 70, 80);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("proof", 10).until("proof", 95);
  EXPECT_THAT(wholeBreaches(problem, plan), ElementsAre(Breach{Rule::kReadiness, 0, -1, -1, 90, 5}));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("loaf")), IsEmpty());
}

}  // namespace
}  // namespace suppertide::planning
