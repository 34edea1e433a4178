// What a sensible cook does, one promise at a time, and what the chances say of it.
#include "server/planning/chance/chances.h"

#include <cmath>
#include <string>

#include "gtest/gtest.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

EveningOptions evenings(int count = 4'000) {
  EveningOptions options;
  options.evenings = count;
  options.grace = 0;
  options.courses = {{0}};
  return options;
}

double chance(const Problem& problem, const ScheduleBuilder& plan, EveningOptions options = evenings()) {
  return chancesOf(problem, plan.done(), options).byCourse[0];
}

// Chopping takes 10 to 30 minutes, likely 20; frying then 20.
ProblemBuilder supper(Minute serve) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  kitchen.dish("supper", {.serve = serve});
  kitchen.step("chop").lasting(20).by({"Ana"}).spread(0.5, 1.5);
  kitchen.step("fry").lasting(20).by({"Ben"}).after("chop");
  return kitchen;
}

TEST(ChancesTest, WithoutSpreadsAllHappensAsPlanned) {
  ProblemBuilder kitchen = supper(140);
  kitchen.problem().steps[0].modes[0].spread = {};
  const Problem problem = kitchen.build();
  const Chances chances = chancesOf(
      problem, ScheduleBuilder(problem).put("chop", 100, "Ana").put("fry", 120, "Ben").done(), evenings(10));
  EXPECT_EQ(chances.byDish[0], 1);
  EXPECT_EQ(chances.byCourse[0], 1);
  EXPECT_EQ(chances.blame[0].step, -1);
  EXPECT_EQ(chances.starts[1], (Band{120, 120}));
  EXPECT_EQ(chances.ends[1], (Band{140, 140}));
}

TEST(ChancesTest, AnEvenSpreadWithoutSlackIsInTimeEveryOtherEvening) {
  const Problem problem = supper(140).build();
  EXPECT_NEAR(chance(problem, ScheduleBuilder(problem).put("chop", 100, "Ana").put("fry", 120, "Ben")), 0.5,
              0.03);
}

TEST(ChancesTest, SlackBetweenStepsTakesUpWhatIsLate) {
  const Problem problem = supper(150).build();
  const auto plan = [&](Minute chop) {
    return ScheduleBuilder(problem).put("chop", chop, "Ana").put("fry", 130, "Ben");
  };
  EXPECT_EQ(chance(problem, plan(100)), 1);
  EXPECT_LT(chance(problem, plan(105)), 1);
  EXPECT_GT(chance(problem, plan(105)), chance(problem, plan(109)));
}

TEST(ChancesTest, NothingStartsBeforeItsPlannedTime) {
  const Problem problem = supper(140).build();
  const Chances chances = chancesOf(
      problem, ScheduleBuilder(problem).put("chop", 100, "Ana").put("fry", 120, "Ben").done(), evenings());
  EXPECT_EQ(chances.starts[0], (Band{100, 100}));
  EXPECT_EQ(chances.starts[1].early, 120);
  EXPECT_GT(chances.starts[1].late, 122);
  EXPECT_LT(chances.ends[0].early, 117);
}

TEST(ChancesTest, AFewMinutesOfGraceCount) {
  const Problem problem = supper(140).build();
  const auto plan = ScheduleBuilder(problem).put("chop", 100, "Ana").put("fry", 120, "Ben");
  EveningOptions options = evenings();
  options.grace = 10;
  EXPECT_EQ(chance(problem, plan, options), 1);
}

TEST(ChancesTest, ACookIsBusyUntilTheStepBeforeIsDone) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.dish("salad", {.serve = 600});
  kitchen.step("wash").lasting(20).by({"Ana"}, 60).spread(0.5, 1.5);
  kitchen.dish("soup", {.serve = 140});
  kitchen.step("stir").lasting(20).by({"Ana"}, 60);
  const Problem problem = kitchen.build();
  EveningOptions options = evenings();
  options.courses = {{1}};
  const Chances chances = chancesOf(
      problem, ScheduleBuilder(problem).put("wash", 100, "Ana").put("stir", 120, "Ana").done(), options);
  EXPECT_NEAR(chances.byCourse[0], 0.5, 0.03);
  EXPECT_EQ(chances.blame[0].step, 0);
  EXPECT_EQ(chances.blame[0].share, 1);
}

TEST(ChancesTest, WhoHasAttentionLeftWaitsForNobody) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.dish("supper", {.serve = 140});
  kitchen.step("wash").lasting(20).by({"Ana"}, 50).spread(0.5, 1.5);
  kitchen.step("stir").lasting(20).by({"Ana"}, 50);
  const Problem problem = kitchen.build();
  EXPECT_EQ(chance(problem, ScheduleBuilder(problem).put("wash", 100, "Ana").put("stir", 120, "Ana")), 1);
}

// Ana mixes a dough when its levain is ripe, as planned at 160, then makes soup.
ProblemBuilder mixThenSoup(Minute soup) {
  ProblemBuilder kitchen(900);
  kitchen.cook("Ana");
  kitchen.unknown("starter", 0.5);
  kitchen.dish("loaf", {.serve = 900});
  kitchen.step("levain").kind(StepKind::kFerment).lasting(60).follows("starter");
  kitchen.step("mix").lasting(20).by({"Ana"}).after("levain");
  kitchen.dish("soup", {.serve = 180 + soup});
  kitchen.step("simmer").lasting(soup).by({"Ana"});
  return kitchen;
}

TEST(ChancesTest, WhatIsDoneBeforeASlowDoughIsReadyDoesNotWaitForIt) {
  const auto soupInTime = [](Minute soup) {
    const Problem problem = mixThenSoup(soup).build();
    EveningOptions options = evenings();
    options.courses = {{1}};
    const auto plan =
        ScheduleBuilder(problem).put("levain", 100).put("mix", 160, "Ana").put("simmer", 180, "Ana");
    return chancesOf(problem, plan.done(), options).byCourse[0];
  };
  // In time when mixing is done by 180, or begins after the soup is done: at 190, ln(90 / 60) / 0.5 = 0.811
  // deviations, or at 240, 1.695.
  EXPECT_NEAR(soupInTime(10), 0.5 + (1 - 0.7913), 0.03);
  EXPECT_NEAR(soupInTime(60), 0.5 + (1 - 0.9550), 0.03);
}

TEST(ChancesTest, AThingIsHandedOverInThePlansOrder) {
  ProblemBuilder kitchen(600);
  kitchen.resource("burners", 2);
  kitchen.dish("supper", {.serve = 160});
  kitchen.step("rice").lasting(30).using_("burners").spread(0.9, 1.1);
  kitchen.step("beans").lasting(20).using_("burners").spread(0.5, 1.5);
  kitchen.step("peas").lasting(40).using_("burners");
  const Problem problem = kitchen.build();
  const Chances chances =
      chancesOf(problem, ScheduleBuilder(problem).put("rice", 100).put("beans", 100).put("peas", 120).done(),
                evenings());
  EXPECT_NEAR(chances.byCourse[0], 0.5, 0.03);
  EXPECT_EQ(chances.blame[0].step, 1);
}

TEST(ChancesTest, AnOvenChangesOnlyOnceItIsEmpty) {
  ProblemBuilder kitchen(600);
  kitchen.oven("oven", {170, 240}, {.racks = 2, .changeMinutes = 15});
  kitchen.dish("supper", {.serve = 215});
  kitchen.step("roast").lasting(60).in("oven", 170).spread(0.9, 1.1);
  kitchen.step("loaf").lasting(40).in("oven", 240);
  const Problem problem = kitchen.build();
  const auto loafAt = [&](Minute start) {
    return chance(problem, ScheduleBuilder(problem).put("roast", 100).put("loaf", start));
  };
  EXPECT_NEAR(loafAt(175), 0.5, 0.03);
}

TEST(ChancesTest, ARackIsFreeWhenWhatStoodThereIsOut) {
  ProblemBuilder kitchen(600);
  kitchen.oven("oven", {170}, {.racks = 1});
  kitchen.dish("supper", {.serve = 200});
  kitchen.step("roast").lasting(60).in("oven", 170).spread(0.9, 1.1);
  kitchen.step("gratin").lasting(40).in("oven", 170);
  const Problem problem = kitchen.build();
  EXPECT_NEAR(chance(problem, ScheduleBuilder(problem).put("roast", 100).put("gratin", 160)), 0.5, 0.03);
}

// A dough that is ready between 60 and 100 minutes in an average evening.
ProblemBuilder loaf(Minute serve) {
  ProblemBuilder kitchen(900);
  kitchen.cook("Ana");
  kitchen.unknown("starter", 0.2);
  kitchen.dish("loaf", {.serve = serve});
  kitchen.step("proof").kind(StepKind::kFerment).lasting(60, 80, 100).follows("starter");
  kitchen.step("bake").lasting(40).after("proof", 0, 10);
  return kitchen;
}

TEST(ChancesTest, ADoughInsideItsWindowGoesInWhenPlanned) {
  const Problem problem = loaf(220).build();
  const auto plan = ScheduleBuilder(problem).put("proof", 100).until("proof", 180).put("bake", 180);
  const Chances chances = chancesOf(problem, plan.done(), evenings());
  // Late only when 60 minutes times the factor is above 80: ln(80 / 60) / 0.2 = 1.438 deviations, 7.5 %.
  EXPECT_NEAR(chances.byCourse[0], 0.925, 0.015);
  EXPECT_EQ(chances.ends[0].late, 180);
}

TEST(ChancesTest, ADoughPlannedForTheStartOfItsWindowIsOftenLate) {
  const Problem problem = loaf(200).build();
  const auto plan = ScheduleBuilder(problem).put("proof", 100).until("proof", 160).put("bake", 160);
  EXPECT_NEAR(chance(problem, plan), 0.5, 0.03);
}

TEST(ChancesTest, AQuickDoughIsNotLeftWaitingBeyondItsGap) {
  const Problem problem = loaf(240).build();
  const auto plan = ScheduleBuilder(problem).put("proof", 100).until("proof", 200).put("bake", 200);
  const Chances chances = chancesOf(problem, plan.done(), evenings());
  EXPECT_LT(chances.ends[0].early, 180);
  EXPECT_EQ(chances.starts[1].early, chances.ends[0].early + 10);
}

TEST(ChancesTest, StepsThatFollowOneUnknownAreLateTogether) {
  ProblemBuilder kitchen(900);
  kitchen.unknown("starter", 0.2);
  for (const char* id : {"rye", "wheat", "rolls"}) {
    kitchen.dish(id, {.serve = 180});
    kitchen.step(std::string(id) + " proof").kind(StepKind::kFerment).lasting(80).follows("starter");
  }
  const Problem problem = kitchen.build();
  EveningOptions options = evenings();
  options.courses = {{0}, {0, 1, 2}};
  const auto plan =
      ScheduleBuilder(problem).put("rye proof", 100).put("wheat proof", 100).put("rolls proof", 100);
  const Chances chances = chancesOf(problem, plan.done(), options);
  EXPECT_NEAR(chances.byCourse[0], 0.5, 0.03);
  EXPECT_EQ(chances.byCourse[0], chances.byCourse[1]);
}

TEST(ChancesTest, WhatHasHappenedDoesNotVary) {
  ProblemBuilder kitchen = supper(140);
  kitchen.problem().steps[0].pin.start = 100;
  kitchen.problem().steps[0].pin.end = 120;
  const Problem problem = kitchen.build();
  EXPECT_EQ(chance(problem, ScheduleBuilder(problem).put("chop", 100, "Ana").put("fry", 120, "Ben")), 1);
}

TEST(ChancesTest, ACourseIsInTimeWhenAllItsDishesAre) {
  ProblemBuilder kitchen(600);
  kitchen.dish("peas", {.serve = 120});
  kitchen.step("peas").lasting(20).spread(0.5, 1.5);
  kitchen.dish("rice", {.serve = 120});
  kitchen.step("rice").lasting(20).spread(0.5, 1.5);
  const Problem problem = kitchen.build();
  EveningOptions options = evenings();
  options.courses = {{0, 1}, {1}, {}};
  const auto plan = ScheduleBuilder(problem).put("peas", 100).put("rice", 100);
  const Chances both = chancesOf(problem, plan.done(), options);
  EXPECT_NEAR(both.byCourse[0], 0.25, 0.03);
  EXPECT_NEAR(both.byCourse[1], 0.5, 0.03);
  EXPECT_EQ(both.byCourse[2], 0);
  const Chances one = chancesOf(problem, ScheduleBuilder(plan).without("peas").done(), options);
  EXPECT_EQ(one.byDish[0], 0);
  EXPECT_EQ(one.byCourse[0], one.byCourse[1]);
}

TEST(ChancesTest, EveningsDependOnTheSeedAndNotOnHowManyThereAre) {
  const Problem problem = supper(140).build();
  const Schedule plan = ScheduleBuilder(problem).put("chop", 100, "Ana").put("fry", 120, "Ben").done();
  const auto lateEvenings = [&](int count, std::uint64_t seed) {
    EveningOptions options = evenings(count);
    options.seed = seed;
    return std::lround((1 - chancesOf(problem, plan, options).byCourse[0]) * count);
  };
  EXPECT_EQ(lateEvenings(997, 1), lateEvenings(997, 1));
  EXPECT_NE(lateEvenings(997, 1), lateEvenings(997, 2));
  // One evening more adds one late evening or none.
  for (int count = 1; count < 60; ++count) {
    const auto more = lateEvenings(count + 1, 1) - lateEvenings(count, 1);
    EXPECT_TRUE(more == 0 || more == 1) << count;
  }
}

}  // namespace
}  // namespace suppertide::planning
