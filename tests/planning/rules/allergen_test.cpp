// Rule 10: free of an allergen first, or cleaning between.
#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

// Rice without gluten and dough with it, in one mixer; cleaning takes 15 minutes when that is enough.
ProblemBuilder mixer(Minute cleaning) {
  ProblemBuilder kitchen(300);
  kitchen.dish("rice", {.serve = 300});
  kitchen.step("stir").lasting(20).orMode("by hand").lasting(20);
  kitchen.dish("loaf", {.serve = 300});
  kitchen.step("knead").lasting(30).orMode("by hand").lasting(30);
  kitchen.separation("mixer", "stir", "knead", cleaning);
  return kitchen;
}

ScheduleBuilder plan(const Problem& problem, Minute stir, Minute knead) {
  return ScheduleBuilder(problem).put("stir", stir).put("knead", knead);
}

TEST(AllergenRuleTest, TheCleanStepGoesFirst) {
  const Problem problem = mixer(kNoLimit).build();
  EXPECT_THAT(breaches(problem, plan(problem, 0, 20)), IsEmpty());
  EXPECT_THAT(wholeBreaches(problem, plan(problem, 0, 18)),
              ElementsAre(Breach{Rule::kAllergen, 0, 1, 0, 18, 2}));
  EXPECT_THAT(breaches(problem, plan(problem, 200, 20)),
              ElementsAre("kAllergen: stir (with knead) at 200 by 200"));
}

TEST(AllergenRuleTest, OrCleaningComesBetween) {
  const Problem problem = mixer(15).build();
  EXPECT_THAT(breaches(problem, plan(problem, 100, 55)), IsEmpty());
  EXPECT_THAT(breaches(problem, plan(problem, 95, 55)),
              ElementsAre("kAllergen: stir (with knead) at 95 by 5"));
  EXPECT_THAT(breaches(problem, plan(problem, 60, 55)),
              ElementsAre("kAllergen: stir (with knead) at 60 by 25"));
}

TEST(AllergenRuleTest, OnlyTheModesItNamesAreAsked) {
  ProblemBuilder kitchen = mixer(kNoLimit);
  kitchen.problem().separations[0].cleanModes = {0};
  kitchen.problem().separations[0].otherModes = {0};
  const Problem problem = kitchen.build();
  EXPECT_EQ(breaches(problem, plan(problem, 50, 20)).size(), 1u);
  EXPECT_THAT(breaches(problem, plan(problem, 50, 20).put("stir", 50, "", 1)), IsEmpty());
  EXPECT_THAT(breaches(problem, plan(problem, 50, 20).put("knead", 20, "", 1)), IsEmpty());
}

TEST(AllergenRuleTest, AStepWithoutLengthTouchesNothing) {
  ProblemBuilder kitchen = mixer(kNoLimit);
  kitchen.problem().steps[1].modes[0].length = LengthTable::range(0, 0, 30);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, plan(problem, 50, 20)), IsEmpty());
}

TEST(AllergenRuleTest, UnservedDishesTouchNothing) {
  const Problem problem = mixer(kNoLimit).build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan(problem, 50, 20)).without("rice")), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan(problem, 50, 20)).without("loaf")), IsEmpty());
}

}  // namespace
}  // namespace suppertide::planning
