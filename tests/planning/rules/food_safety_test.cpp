// Rule 8: minutes that count together stay below their limit.
#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

// Cream is whipped, stands, is chilled or not, and may be out for 60 minutes until it is served at 200.
ProblemBuilder cream() {
  ProblemBuilder kitchen(300);
  kitchen.dish("cream", {.serve = 200, .lateLimit = 60});
  kitchen.step("whip").lasting(10);
  kitchen.step("chill").lasting(0, 60, 150);
  kitchen.step("pipe").lasting(10);
  kitchen.clock(
      "out of the fridge", 60,
      {{.from = "whip", .to = "chill", .toEdge = Edge::kStart}, {.from = "chill", .fromEdge = Edge::kEnd}});
  return kitchen;
}

ScheduleBuilder chilled(const Problem& problem, Minute start, Minute end) {
  return ScheduleBuilder(problem).put("whip", 20).put("chill", start).until("chill", end).put("pipe", 190);
}

TEST(FoodSafetyRuleTest, TheMinutesOfAllSpansTogetherAreCounted) {
  const Problem problem = cream().build();
  EXPECT_THAT(breaches(problem, chilled(problem, 40, 160)), IsEmpty());
  EXPECT_THAT(breaches(problem, chilled(problem, 60, 180)), IsEmpty());
  EXPECT_THAT(wholeBreaches(problem, chilled(problem, 40, 155)),
              ElementsAre(Breach{Rule::kFoodSafety, 1, -1, 0, 195, 5}));
  EXPECT_THAT(breaches(problem, chilled(problem, 90, 190)),
              ElementsAre("kFoodSafety: whip (with chill) at 80 by 20"));
}

TEST(FoodSafetyRuleTest, UnservedDishesSpoilNothing) {
  const Problem problem = cream().build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(chilled(problem, 40, 155)).without("cream")), IsEmpty());
}

TEST(FoodSafetyRuleTest, ADishThatIsLateCountsUntilItIsReady) {
  const Problem problem = cream().build();
  EXPECT_THAT(breaches(problem, chilled(problem, 40, 180).put("pipe", 202)), IsEmpty());
  EXPECT_THAT(breaches(problem, chilled(problem, 40, 180).put("pipe", 215)),
              ElementsAre("kFoodSafety: chill at 220 by 5"));
}

TEST(FoodSafetyRuleTest, ASpanThatEndsBeforeItStartsCountsNothing) {
  ProblemBuilder kitchen = cream();
  kitchen.clock("apart", 0, {{.from = "pipe", .to = "whip"}});
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, chilled(problem, 40, 160)), IsEmpty());
}

TEST(FoodSafetyRuleTest, ASpanWithModesCountsOnlyInThose) {
  ProblemBuilder kitchen(300);
  kitchen.dish("dip", {.serve = 300});
  kitchen.step("stand").lasting(90).orMode("fridge").lasting(90);
  kitchen.clock("room", 60, {{.from = "stand", .to = "stand", .modes = {0}}});
  const Problem problem = kitchen.build();
  EXPECT_THAT(wholeBreaches(problem, ScheduleBuilder(problem).put("stand", 100)),
              ElementsAre(Breach{Rule::kFoodSafety, 0, 0, 0, 160, 30}));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stand", 100, "", 1)), IsEmpty());
}

TEST(FoodSafetyRuleTest, MinutesCoveredTwiceCountTwice) {
  ProblemBuilder kitchen(300);
  kitchen.dish("dip", {.serve = 300});
  kitchen.step("stand").lasting(40);
  kitchen.clock("room", 60, {{.from = "stand", .to = "stand"}, {.from = "stand", .to = "stand"}});
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stand", 100)),
              ElementsAre("kFoodSafety: stand (with stand) at 130 by 20"));
}

}  // namespace
}  // namespace suppertide::planning
