#include "client/terminal/plan_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "client/terminal/clash_text.h"
#include "client/terminal/dough_text.h"
#include "client/terminal/headline.h"
#include "client/terminal/oven_text.h"
#include "client/terminal/run_sheet.h"
#include "tests/terminal/sample.h"

namespace suppertide::terminal {
namespace {

using namespace testing;
using ::testing::HasSubstr;
using ::testing::Not;

PlanView view(int width = 80, bool colour = false, const v1::Plan& plan = samplePlan()) {
  const v1::Bundle bundle = sampleBundle();
  return PlanView(bundle, bundle.events(0), plan, width, colour);
}

class WidthTest : public ::testing::TestWithParam<int> {};

TEST_P(WidthTest, NoLineIsWiderThanTheTerminal) {
  std::istringstream text(planText(view(GetParam()), {}));
  for (std::string line; std::getline(text, line);) EXPECT_LE(displayWidth(line), GetParam()) << line;
}

INSTANTIATE_TEST_SUITE_P(Terminals, WidthTest, ::testing::Values(60, 72, 80, 100, 120, 200));

TEST(PlanTextTest, IsNeverNarrowerThanSixtyColumns) {
  EXPECT_EQ(view(20).width(), 60);
}

TEST(PlanTextTest, HasNoColourUnlessItIsWanted) {
  EXPECT_THAT(planText(view(80, false), {}), Not(HasSubstr("\x1b")));
  EXPECT_THAT(planText(view(80, true), {}), HasSubstr("\x1b[1m"));
}

TEST(PlanTextTest, SaysTheSameWithAndWithoutColour) {
  std::string coloured = planText(view(80, true), {});
  for (const char* code : {"\x1b[1m", "\x1b[2m", "\x1b[1;33m", "\x1b[0m"}) {
    for (std::size_t found = 0; (found = coloured.find(code)) != std::string::npos;) {
      coloured.erase(found, std::string(code).size());
    }
  }
  EXPECT_EQ(coloured, planText(view(80, false), {}));
}

TEST(HeadlineTest, SaysWhatIsServedWhenAndHowGoodThePlanIs) {
  EXPECT_EQ(headlineText(view()),
            "Midsummer supper\n"
            "Saturday 20 June 2026, Calçada 9\n"
            "All times are in the time zone Europe/Lisbon.\n"
            "\n"
            "19:00  Main course  ready 18:50, slack 10 min\n"
            "\n"
            "Every dish is served on time. Good, not proven best: a better plan might save\n"
            "waiting and staleness, at most 38 min over all dishes.\n");
}

TEST(HeadlineTest, PutsWhatIsNotServedBeforeEverythingElse) {
  v1::Plan plan = samplePlan();
  v1::Unserved& unserved = *plan.add_unserved();
  unserved.set_dish_id("gratin");
  unserved.set_impossible_alone(true);
  unserved.set_step_id("gratin/bake");
  unserved.set_cause(v1::CAUSE_OVEN_FULL);
  const std::string text = headlineText(view(200, false, plan));
  EXPECT_THAT(
      text,
      HasSubstr("NOT SERVED: 1 dish\n• Leek gratin (Main course) cannot be made even with the whole kitchen "
                "to itself: nothing works for “Bake the gratin”, because no oven is large and hot enough "
                "for it.\n"));
  EXPECT_THAT(text, HasSubstr("2 of 3 dishes are served."));
}

TEST(HeadlineTest, TellsWhatCannotFitFromWhatWasNotFittedYet) {
  v1::Plan plan = samplePlan();
  plan.add_unserved()->set_dish_id("gratin");
  EXPECT_THAT(headlineText(view(120, false, plan)), HasSubstr("does not fit beside the other dishes."));
  plan.mutable_quality()->set_proven_tier_count(0);
  plan.mutable_quality()->mutable_costs()->set_unserved(1);
  const std::string text = headlineText(view(120, false, plan));
  EXPECT_THAT(text, HasSubstr("was not fitted in before the search ended"));
  EXPECT_THAT(text, HasSubstr("a longer search might serve up to 1 dish more."));
}

TEST(HeadlineTest, NamesALateCourse) {
  v1::Plan plan = samplePlan();
  *plan.mutable_courses(0)->mutable_ready_time() = at("2026-06-20T19:20:00+01:00");
  *plan.mutable_courses(0)->mutable_late_duration() = minutes(20);
  plan.mutable_courses(0)->clear_slack_duration();
  plan.mutable_quality()->mutable_costs()->set_lateness(20);
  const std::string text = headlineText(view(120, false, plan));
  EXPECT_THAT(text, HasSubstr("LATE by 20 min: ready at 19:20, no slack: "));
  EXPECT_THAT(text, HasSubstr("Every dish is served, but not all on time."));
}

TEST(HeadlineTest, ACourseWithoutSlackNamesTheStepThatMayNotRunLate) {
  v1::Plan plan = samplePlan();
  plan.mutable_courses(0)->clear_slack_duration();
  for (v1::PlannedStep& step : *plan.mutable_steps()) *step.mutable_slack_duration() = minutes(30);
  plan.mutable_steps(0)->clear_slack_duration();
  const std::string title = plan.steps(0).title();
  EXPECT_THAT(headlineText(view(200, false, plan)), HasSubstr("no slack: “" + title + "”, "));
  plan.mutable_steps(1)->clear_slack_duration();
  EXPECT_THAT(headlineText(view(200, false, plan)), HasSubstr(" and 1 more, may not run late"));
}

TEST(HeadlineTest, NeverHidesABrokenRule) {
  v1::Plan plan = samplePlan();
  v1::Breach& breach = *plan.add_breaches();
  breach.set_rule(v1::HARD_RULE_OVEN_RACKS);
  breach.set_step_id("gratin/bake");
  breach.set_thing_id("big");
  *breach.mutable_time() = at("2026-06-20T17:40:00+01:00");
  EXPECT_THAT(
      headlineText(view(120, false, plan)),
      HasSubstr(
          "THIS PLAN BREAKS 1 RULE\n• “Bake the gratin · Leek gratin” does not fit on the racks of Large "
          "oven (Sat 17:40).\n"));
}

TEST(HeadlineTest, ABreachThatIsNotSureIsNotCalledOne) {
  v1::Plan plan = samplePlan();
  v1::Breach& breach = *plan.add_breaches();
  breach.set_rule(v1::HARD_RULE_OVEN_RACKS);
  breach.set_step_id("gratin/bake");
  breach.set_thing_id("big");
  breach.set_may_fit(true);
  EXPECT_THAT(headlineText(view(160, false, plan)),
              HasSubstr("is not known to fit on the racks of Large oven; it may fit: try it with the cold "
                        "pans first.\n"));
}

TEST(OvenTextTest, WhatMayFitIsToBeTriedWithTheColdPans) {
  v1::Plan plan = samplePlan();
  v1::RackDoubt& doubt = *plan.add_rack_doubts();
  doubt.set_oven_id("big");
  doubt.add_step_ids("gratin/bake");
  doubt.add_step_ids("rye/bake");
  for (v1::OvenProgram& program : *plan.mutable_oven_programs())
    for (v1::OvenSegment& segment : *program.mutable_segments())
      for (v1::RackUse& use : *segment.mutable_racks()) {
        use.clear_positions();
        use.set_may_fit(true);
      }
  const std::string text = ovensText(view(200, false, plan));
  EXPECT_THAT(text, HasSubstr(", may fit: try it with the cold pans first, until "));
  EXPECT_THAT(
      text, HasSubstr("together: may fit: try it with the cold pans first. The plan does not count on it."));
  EXPECT_THAT(ovensText(view(200, false, samplePlan())), Not(HasSubstr("cold pans")));
}

TEST(HeadlineTest, SaysHowSureACourseIsInOneSentence) {
  v1::Plan plan = samplePlan();
  v1::PlannedCourse& course = *plan.mutable_courses(0);
  course.set_on_time_chance(0.874);
  course.set_late_step_id("gratin/bake");
  course.set_late_step_share(0.6);
  EXPECT_THAT(
      headlineText(view(200, false, plan)),
      HasSubstr("slack 10 min\n• Main course is ready in time on 87 of 100 such evenings; when it is "
                "late, most often (60 of 100 times) because “Bake the gratin · Leek gratin” took longer.\n"));
  course.set_late_step_share(0.99);
  EXPECT_THAT(headlineText(view(200, false, plan)),
              HasSubstr("when it is late, nearly always because “Bake"));
  course.set_on_time_chance(0.999);
  EXPECT_THAT(headlineText(view(200, false, plan)),
              HasSubstr("• Main course is ready in time on practically every evening.\n"));
  course.set_on_time_chance(0.001);
  EXPECT_THAT(headlineText(view(200, false, plan)), HasSubstr("will hardly ever be ready in time."));
  course.clear_on_time_chance();
  EXPECT_THAT(headlineText(view(200, false, plan)), Not(HasSubstr("in time on")));
}

TEST(HeadlineTest, SaysWhichFoodSafetyLimitIsMissedAndByHowMuch) {
  v1::Breach breach;
  breach.set_rule(v1::HARD_RULE_FOOD_SAFETY);
  breach.set_step_id("gratin/bake");
  breach.set_amount(25);
  EXPECT_THAT(breachText(view(), breach), HasSubstr("misses a food-safety limit."));
  breach.set_thing_id("SAFETY_LIMIT_KIND_ROOM_TIME");
  EXPECT_THAT(breachText(view(), breach),
              HasSubstr("misses a food-safety limit for the time out of fridge and heat by 25 min."));
  breach.set_thing_id("SAFETY_LIMIT_KIND_END_TEMPERATURE");
  EXPECT_THAT(breachText(view(), breach), HasSubstr("for the heat in its middle by 25 °C."));
  for (int kind = v1::SAFETY_LIMIT_KIND_END_TEMPERATURE; kind <= v1::SafetyLimitKind_MAX; ++kind) {
    breach.set_thing_id(v1::SafetyLimitKind_Name(static_cast<v1::SafetyLimitKind>(kind)));
    EXPECT_THAT(breachText(view(), breach), HasSubstr("limit for "));
  }
}

TEST(HeadlineTest, SaysWhatAnAllergenIsSharedThrough) {
  v1::Breach breach;
  breach.set_rule(v1::HARD_RULE_ALLERGEN);
  breach.set_step_id("gratin/bake");
  breach.set_thing_id("big");
  EXPECT_THAT(breachText(view(), breach), HasSubstr("both use Large oven: it has to go first"));
}

TEST(HeadlineTest, EveryRuleHasItsWords) {
  for (int rule = v1::HARD_RULE_GAP; rule <= v1::HardRule_MAX; ++rule) {
    v1::Breach breach;
    breach.set_rule(static_cast<v1::HardRule>(rule));
    EXPECT_THAT(breachText(view(), breach), Not(HasSubstr("breaks a rule"))) << v1::HardRule_Name(rule);
  }
}

TEST(HeadlineTest, SaysTheProofInWords) {
  v1::Quality quality;
  quality.set_optimal(true);
  quality.set_proven_tier_count(7);
  EXPECT_THAT(proofText(quality), HasSubstr("Proven best"));
  quality.set_optimal(false);
  quality.set_proven_tier_count(1);
  quality.mutable_costs()->set_lateness(25);
  EXPECT_EQ(proofText(quality),
            "Good, not proven best: a better plan might be less late, by at most 25 min.");
  quality.set_proven_tier_count(4);
  quality.mutable_costs()->set_people(30);
  EXPECT_THAT(proofText(quality), HasSubstr("none can be less late and nothing can wait less (proven), but"));
}

TEST(RunSheetTest, IsABlockAStepOnAUsualTerminal) {
  EXPECT_THAT(runSheetText(view(), {}), HasSubstr(R"(
── Friday 19 June 2026 ─────────────────────────────────────────────────────────
21:00–21:10      Ana     Feed the levain · Rye loaf
                         Weigh: 8.2 g starter, 41 g flour
                         Starter : flour : water 1:5:5 by weight
                         slack 45 min · “Levain ripens” is ready then
21:10–Sat 07:00  no one  Levain ripens · Rye loaf
                         Counter by the window
                         no slack · after “Feed the levain”

── Saturday 20 June 2026 ───────────────────────────────────────────────────────
Still going on:
  until 07:00  Levain ripens · Rye loaf

07:00–07:20      Ana     Mix the dough · Rye loaf
                         with Stand mixer
                         Water at 27 °C
                         Take care: raw flour
                         slack 30 min · “Levain ripens” is ready then
16:00–16:45      Ana     Bake the loaves · Rye loaf
                         Large oven at 230 °C, rack 2 from below, look from
                         16:38, look in now and then
                         slack 10 min · before “Bake the gratin · Leek gratin”,
                         which needs 190 °C in Large oven
17:40–18:50      Benoît  Bake the gratin · Leek gratin
                         Large oven at 190 instead of 180 °C
                         Take care: hot oven
                         no slack · in time for Main course
)"));
}

TEST(RunSheetTest, IsATableWhereThereIsRoom) {
  EXPECT_THAT(runSheetText(view(120), {}), HasSubstr(R"(
16:00–16:45      Ana     Bake the loaves · Rye loaf      Large oven at 230 °C,     10 min      before “Bake the gratin
                                                         rack 2 from below, look               · Leek gratin”, which
                                                         from 16:38, look in now               needs 190 °C in Large
                                                         and then                              oven
)"));
}

TEST(RunSheetTest, TellsWhatIsLeftOutOnceAndNothingOfLoadsThatAreNotNeeded) {
  v1::Plan plan = samplePlan();
  const std::string title = plan.steps(0).title();
  plan.mutable_steps(0)->set_left_out(true);
  plan.mutable_steps(1)->set_left_out(true);
  plan.mutable_steps(1)->set_load(2);
  plan.mutable_steps(2)->set_load(1);
  plan.mutable_steps(2)->set_load_count(2);
  const std::string text = runSheetText(view(80, false, plan), {});
  EXPECT_THAT(text, HasSubstr("Left out, as the day has no room for it: " + title));
  EXPECT_THAT(text, Not(HasSubstr(": " + plan.steps(1).title()))) << "a load that is not needed";
  EXPECT_THAT(text, Not(HasSubstr("  " + plan.steps(1).title())));
  EXPECT_THAT(text, HasSubstr(plan.steps(2).title() + " (load 1 of 2)"));
}

TEST(RunSheetTest, SaysNothingOfAWaitThatLastsNoTime) {
  v1::Plan plan = samplePlan();
  v1::PlannedStep& levain = *plan.mutable_steps(1);
  ASSERT_TRUE(levain.cook_member_id().empty());
  *levain.mutable_end_time() = levain.start_time();
  EXPECT_THAT(runSheetText(view(80, false, plan), {}), Not(HasSubstr("  " + levain.title())));
}

TEST(RunSheetTest, ShowsOneCooksWorkAlone) {
  const std::string text = runSheetText(view(), {.cookId = "ben"});
  EXPECT_THAT(text, HasSubstr("Run sheet of Benoît"));
  EXPECT_THAT(text, HasSubstr("Bake the gratin"));
  EXPECT_THAT(text, Not(HasSubstr("Bake the loaves")));
  EXPECT_THAT(text, Not(HasSubstr("no one")));
}

TEST(RunSheetTest, ShowsNoIdWhereThereIsAName) {
  const std::string text = planText(view(120), {});
  for (const char* id : {"rye/", "gratin/", "big ", "counter "}) EXPECT_THAT(text, Not(HasSubstr(id))) << id;
}

TEST(RunSheetTest, EveryCauseHasItsWords) {
  for (int cause = v1::CAUSE_SERVING; cause <= v1::Cause_MAX; ++cause) {
    v1::PlannedStep step = samplePlan().steps(3);
    step.mutable_reason()->set_cause(static_cast<v1::Cause>(cause));
    EXPECT_FALSE(reasonText(view(), step).empty()) << v1::Cause_Name(cause);
    step.mutable_reason()->clear_blocking_step_id();
    step.mutable_reason()->clear_thing_id();
    EXPECT_FALSE(reasonText(view(), step).empty()) << v1::Cause_Name(cause) << " with nothing known";
  }
}

v1::PlannedStep stepWith(int index, v1::Cause cause, const std::string& blocker) {
  v1::PlannedStep step = samplePlan().steps(index);
  step.mutable_reason()->set_cause(cause);
  step.mutable_reason()->set_blocking_step_id(blocker);
  return step;
}

TEST(RunSheetTest, LeavesNoBakeToNobody) {
  v1::Plan plan = samplePlan();
  plan.mutable_steps(3)->set_kind(v1::STEP_KIND_OVEN);
  plan.mutable_steps(3)->clear_cook_member_id();
  const std::string text = runSheetText(view(80, false, plan), {});
  EXPECT_THAT(text, HasSubstr("16:00–16:45      anyone  Bake the loaves"));
  EXPECT_THAT(text, HasSubstr("whoever is nearest puts it in and takes it out"));
}

TEST(OvenTextTest, TakesTheFoodOutBeforeTheDoorStandsOpen) {
  v1::Plan plan = samplePlan();
  v1::OvenSegment& cooling = *plan.mutable_oven_programs(0)->mutable_segments(2);
  cooling.set_kind(v1::OVEN_SEGMENT_KIND_COOLING);
  cooling.set_setpoint_celsius(27);
  *cooling.mutable_start_time() = at("2026-06-20T16:45:00+01:00");
  EXPECT_THAT(ovensText(view(80, false, plan)),
              HasSubstr("16:45  off                 out: Bake the loaves · Rye loaf\n"
                        "                                open the door a little, cooler by 17:40\n"));
}

TEST(RunSheetTest, SaysWhichOfTwoStepsMustFollow) {
  EXPECT_EQ(reasonText(view(), stepWith(0, v1::CAUSE_MUST_FOLLOW, "rye/levain")),
            "“Levain ripens” must follow soon");
  EXPECT_EQ(reasonText(view(), stepWith(2, v1::CAUSE_MUST_FOLLOW, "rye/levain")),
            "must soon follow “Levain ripens”");
}

TEST(RunSheetTest, CallsOnlyFermentsReady) {
  EXPECT_EQ(reasonText(view(), stepWith(2, v1::CAUSE_READINESS, "rye/levain")),
            "“Levain ripens” is ready then");
  v1::PlannedStep cold = stepWith(2, v1::CAUSE_READINESS, "");
  cold.set_kind(v1::STEP_KIND_CHILL);
  EXPECT_EQ(reasonText(view(), cold), "may only last so long");
}

TEST(OvenTextTest, HeatsNothingForADoughUnderTheLight) {
  v1::Plan plan = samplePlan();
  v1::OvenProgram& program = *plan.mutable_oven_programs(0);
  program.mutable_segments(0)->set_setpoint_celsius(27);
  program.mutable_segments(1)->set_setpoint_celsius(27);
  program.mutable_segments(1)->set_kind(v1::OVEN_SEGMENT_KIND_PROOFING);
  *program.mutable_segments(2)->mutable_start_time() = at("2026-06-20T16:46:00+01:00");
  const std::string text = ovensText(view(80, false, plan));
  EXPECT_THAT(text, HasSubstr("Sat  15:30  light only              light on, warm at 16:00\n"));
  EXPECT_THAT(text, HasSubstr("16:46  190 °C                  heats up, hot at 17:40\n"));
  EXPECT_THAT(text, Not(HasSubstr("27 °C"))) << "nobody sets an oven to 27 degrees";
  EXPECT_THAT(text, Not(HasSubstr("16:45  off"))) << "for one minute";
}

TEST(OvenTextTest, TellsTheDialAndTheFood) {
  EXPECT_EQ(ovensText(view()), R"(
━━ Ovens ━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━

── Large oven ──────────────────────────────────────────────────────────────────
Day  At     Set to  Oven about  What
Sat  15:30  230 °C              switch on, hot at 16:00
     16:00          224 °C      in: Bake the loaves · Rye loaf, rack 2, until
                                16:45
     16:45  off                 out: Bake the loaves · Rye loaf
     17:20  190 °C              switch on, hot at 17:40
     17:40                      in: Bake the gratin · Leek gratin, until 18:50
     18:50  off                 out: Bake the gratin · Leek gratin
Not used: Small oven.
)");
}

TEST(ClashTextTest, NamesBothDishesAndWhoGaveWay) {
  EXPECT_EQ(clashText(view(), samplePlan().oven_clashes(0)),
            "Rye loaf (230 °C) and Leek gratin (180 °C) both wanted Large oven on Sat 17:40. "
            "Settled: Rye loaf 1 h 10 min earlier; Leek gratin at 190 instead of 180 °C.");
}

TEST(ClashTextTest, LeavesOutMovesThatDecidedNothing) {
  v1::OvenClash clash = samplePlan().oven_clashes(0);
  *clash.mutable_moved_b() = minutes(5);
  EXPECT_THAT(clashText(view(), clash), Not(HasSubstr("5 min later")));
  clash.clear_moved_a();
  clash.clear_degrees_b();
  EXPECT_THAT(clashText(view(), clash), HasSubstr("Settled: Leek gratin 5 min later."));
}

TEST(ClashTextTest, AsksForLightNotForHeatUnderADough) {
  v1::OvenClash clash = samplePlan().oven_clashes(0);
  clash.set_naive_setpoint_a_celsius(27);
  EXPECT_THAT(clashText(view(), clash), HasSubstr("Rye loaf (light only) and"));
}

TEST(ClashTextTest, NamesTheOtherOven) {
  v1::Plan plan = samplePlan();
  plan.mutable_steps(4)->set_oven_id("small");
  v1::OvenClash clash = plan.oven_clashes(0);
  clash.clear_moved_a();
  clash.clear_degrees_b();
  EXPECT_THAT(clashText(view(80, false, plan), clash),
              HasSubstr(". Settled: Leek gratin in Small oven instead."));
}

TEST(DoughTextTest, TellsPlaceWindowAndRise) {
  const std::string text = doughsText(view());
  EXPECT_THAT(text, HasSubstr("  Levain: Fri 21:10–Sat 07:00 (9 h 50 min), Counter by the window\n"
                              "    Ready from about Sat 05:40 to Sat 08:30, best at Sat 06:50; best at Sat\n"
                              "    05:30 if the starter is quick, at Sat 08:40 if it is slow.\n"));
  EXPECT_THAT(text, HasSubstr("▁"));
  EXPECT_THAT(text, HasSubstr("┤ ready\n"));
}

TEST(DoughTextTest, CallsMilkNoWater) {
  v1::Plan plan = samplePlan();
  v1::Weighing& milk = *plan.mutable_steps(2)->add_weighings();
  milk.set_name("milk");
  milk.set_mass_g(172);
  EXPECT_THAT(doughsText(view(80, false, plan)), HasSubstr("liquid at 27 °C"));
  EXPECT_THAT(runSheetText(view(80, false, plan), {}), HasSubstr("Liquid at 27 °C"));
}

TEST(DoughTextTest, SaysWhenItIsNeverReady) {
  v1::Plan plan = samplePlan();
  plan.mutable_doughs(0)->mutable_stages(0)->clear_ready_from_time();
  EXPECT_THAT(doughsText(view(80, false, plan)), HasSubstr("Never ready at this place"));
}

TEST(DoughTextTest, LeavesTheCurveOutWhereItDoesNotFit) {
  EXPECT_EQ(riseCurve(samplePlan().doughs(0).stages(0), 25, 0), "");
  v1::FermentForecast bare;
  EXPECT_EQ(riseCurve(bare, 80, 0), "");
}

TEST(PlanTextTest, ShowsOnlyThePartsAskedFor) {
  const std::string text = planText(view(), {.cookId = "", .clashes = true});
  EXPECT_THAT(text, HasSubstr("Oven clashes"));
  EXPECT_THAT(text, Not(HasSubstr("Run sheet")));
}

TEST(PlanTextTest, SaysOnceThatLocalRulesComeFirst) {
  const std::string text = planText(view(200), {});
  const std::size_t first = text.find("local food-safety code");
  ASSERT_NE(first, std::string::npos);
  EXPECT_EQ(text.find("local food-safety code", first + 1), std::string::npos);
  EXPECT_THAT(text, HasSubstr("Ask every guest about allergies and read the labels"));
}

TEST(RunSheetTest, TellsTheFoodSafetyLimitsOfAStepAndTheirSourcesOnce) {
  v1::Plan plan = samplePlan();
  v1::SafetyLimit end;
  end.set_kind(v1::SAFETY_LIMIT_KIND_END_TEMPERATURE);
  end.set_celsius(71.11);
  end.set_source("USDA FSIS");
  v1::SafetyLimit room;
  room.set_kind(v1::SAFETY_LIMIT_KIND_ROOM_TIME);
  room.mutable_duration()->set_seconds(7200);
  room.mutable_planned_duration()->set_seconds(3900);
  room.set_source("USDA FSIS");
  *plan.mutable_steps(0)->add_safety_limits() = end;
  *plan.mutable_steps(0)->add_safety_limits() = room;
  const std::string text = planText(view(200, false, plan), {});
  EXPECT_THAT(text, HasSubstr("Food safety: at least 72 °C in the middle, out of fridge and"));
  EXPECT_THAT(text, HasSubstr("1 h 5 min of at most 2 h"));
  EXPECT_THAT(text, HasSubstr("Food-safety limits are those told to home cooks, from: USDA FSIS."));
}

TEST(RunSheetTest, TellsOfFoodThatWaitsInTheRoomForItsNextStep) {
  v1::Plan plan;
  const auto add = [&](const std::string& id, const std::string& start, const std::string& end) {
    v1::PlannedStep& step = *plan.add_steps();
    step.set_id("roots/" + id);
    step.set_dish_id("roots");
    step.set_step_id(id);
    step.set_title("Step " + id);
    *step.mutable_start_time() = at("2026-06-20T" + start + ":00+01:00");
    *step.mutable_end_time() = at("2026-06-20T" + end + ":00+01:00");
    v1::SafetyLimit& room = *step.add_safety_limits();
    room.set_kind(v1::SAFETY_LIMIT_KIND_ROOM_TIME);
    room.mutable_duration()->set_seconds(7200);
    room.mutable_planned_duration()->set_seconds(6900);
    return &step;
  };
  add("keep", "17:15", "17:40")->set_place_id("cellar");
  v1::PlannedStep* const oil = add("oil", "18:10", "18:20");
  const auto text = [&] { return planText(view(200, false, plan), {}); };
  EXPECT_THAT(text(), HasSubstr("wait in the room from 17:40 to 18:10"));
  *oil->mutable_start_time() = at("2026-06-20T17:45:00+01:00");
  EXPECT_THAT(text(), Not(HasSubstr("wait in the room"))) << "at once, nearly";
  *oil->mutable_start_time() = at("2026-06-20T18:10:00+01:00");
  oil->mutable_safety_limits(0)->mutable_planned_duration()->set_seconds(600);
  EXPECT_THAT(text(), Not(HasSubstr("wait in the room"))) << "another clock";
}

}  // namespace
}  // namespace suppertide::terminal
