// What is said about clashes, remedies, moves and how good a plan is.
#include <gtest/gtest.h>

#include <map>

#include "client/words/joined.h"
#include "client/words/move_words.h"
#include "client/words/quality_words.h"
#include "client/words/remedy_words.h"
#include "client/words/step_words.h"
#include "client/words/wish_words.h"
#include "tests/window/sample.h"

namespace suppertide {
namespace {

google::protobuf::Timestamp stamp(const std::string& text) {
  google::protobuf::Timestamp time;
  time.set_seconds(testing::secondsAt(text));
  return time;
}

class PlanWordsTest : public ::testing::Test {
 protected:
  PlanView view_{testing::sampleReplica(), testing::kSampleEvent};
};

TEST(JoinedTest, ListsAreReadAsASentence) {
  EXPECT_EQ(Joined::words({}).toStdString(), "");
  EXPECT_EQ(Joined::words({QStringLiteral("a"), QStringLiteral("b"), QStringLiteral("c")}).toStdString(),
            "a, b and c");
}

TEST_F(PlanWordsTest, AClashNamesEveryWishWithItsNumbers) {
  v1::Clash clash;
  v1::Wish* loaf = clash.add_wishes();
  loaf->set_kind(v1::WISH_KIND_SERVED);
  loaf->set_dish_id("loaf");
  *loaf->mutable_time() = stamp("2026-06-20T17:05:00+01:00");
  v1::Wish* setpoint = clash.add_wishes();
  setpoint->set_kind(v1::WISH_KIND_SETPOINT);
  setpoint->set_dish_id("loaf");
  setpoint->set_min_celsius(235);
  setpoint->set_max_celsius(245);
  v1::Wish* fresh = clash.add_wishes();
  fresh->set_kind(v1::WISH_KIND_FRESH);
  fresh->set_dish_id("loaf");
  fresh->mutable_duration()->set_seconds(3600);
  v1::Wish* oven = clash.add_wishes();
  oven->set_kind(v1::WISH_KIND_COUNT);
  oven->set_thing_id("large");
  oven->set_count(1);
  v1::Wish* hours = clash.add_wishes();
  hours->set_kind(v1::WISH_KIND_HOURS);
  hours->set_thing_id("ines");
  v1::KeptRule* rule = clash.add_kept_rules();
  rule->set_rule(v1::HARD_RULE_FOOD_SAFETY);
  rule->set_dish_id("chicken");
  rule->set_thing_id("SAFETY_LIMIT_KIND_THAWED");
  const WishWords words(view_);
  EXPECT_EQ(words.wishes(clash).join(QLatin1Char('|')).toStdString(),
            "Seeded sourdough at 235 °C to 245 °C, ready by Sat 17:05, kept at most 1 h|only one Large oven|"
            "Ines not asked outside their hours");
  EXPECT_EQ(
      words.keptRules(clash).join(QLatin1Char('|')).toStdString(),
      "Roast chickens also has the food-safety limit for the time from thawed to cooking to keep, and that "
      "is never given up.");
}

TEST_F(PlanWordsTest, ADishThatIsImpossibleSaysWhereAndWhy) {
  v1::Unserved left;
  left.set_dish_id("tart");
  left.set_impossible_alone(true);
  left.set_cause(v1::CAUSE_OVEN_SETPOINT);
  EXPECT_EQ(
      WishWords(view_).unserved(left, true).toStdString(),
      "Pear tart (Tart) cannot be made even with the whole kitchen to itself, because no oven is large and "
      "hot enough for it.");
  left.set_impossible_alone(false);
  EXPECT_EQ(WishWords(view_).unserved(left, true).toStdString(),
            "Pear tart (Tart) does not fit beside the other dishes.");
}

TEST_F(PlanWordsTest, EveryKindOfRemedyHasWords) {
  v1::Plan plan;
  for (int kind = 1; v1::RemedyKind_IsValid(kind); ++kind) {
    google::protobuf::RepeatedPtrField<v1::Remedy> changes;
    v1::Remedy* what = changes.Add();
    what->set_kind(static_cast<v1::RemedyKind>(kind));
    what->set_dish_id("loaf");
    what->set_step_id("loaf/bake");
    what->set_thing_id("large");
    what->set_course_id("main");
    what->set_count(1);
    what->mutable_duration()->set_seconds(1200);
    const QString words = RemedyWords(view_, view_.event(), plan).sentence(changes);
    EXPECT_FALSE(words.contains(QStringLiteral("no words"))) << v1::RemedyKind_Name(what->kind());
    EXPECT_FALSE(words.contains(QLatin1Char('%'))) << words.toStdString();
  }
}

TEST_F(PlanWordsTest, ASmallerPanSaysHowLargeAndBesideWhat) {
  google::protobuf::RepeatedPtrField<v1::Remedy> changes;
  v1::Remedy& what = *changes.Add();
  what.set_kind(v1::REMEDY_KIND_OTHER_PAN);
  what.set_dish_id("tart");
  what.set_step_id("tart/bake");
  what.set_thing_id("large");
  what.mutable_pan()->set_width_mm(345);
  what.mutable_pan()->set_depth_mm(231);
  what.mutable_pan()->set_height_mm(88);
  v1::Plan plan;
  const auto bake = [&](const std::string& dish, const std::string& from, const std::string& until) {
    v1::PlannedStep& step = *plan.add_steps();
    step.set_id(dish + "/bake");
    step.set_dish_id(dish);
    step.set_oven_id("large");
    *step.mutable_start_time() = stamp("2026-06-20T" + from + ":00+01:00");
    *step.mutable_end_time() = stamp("2026-06-20T" + until + ":00+01:00");
  };
  const auto words = [&] { return RemedyWords(view_, view_.event(), plan).sentence(changes).toStdString(); };
  const std::string start = "Bake " + view_.names().dish("tart").toStdString() +
                            " in a pan of at most 34 x 23 cm, about 9 cm high and filled deeper, for longer: "
                            "then it stands beside ";
  EXPECT_EQ(words(), start + "the others in the oven “Large oven”.");
  bake("tart", "16:00", "17:00");
  bake("loaf", "15:00", "16:00");
  bake("chicken", "15:30", "16:30");
  EXPECT_EQ(words(), start + view_.names().dish("chicken").toStdString() + " in the oven “Large oven”.");
}

TEST_F(PlanWordsTest, ARemedySaysWhatItCosts) {
  v1::Event event = view_.event();
  event.mutable_courses(1)->mutable_serving_time()->set_seconds(event.courses(1).serving_time().seconds() +
                                                                1200);
  v1::Plan plan;
  plan.mutable_quality()->mutable_costs()->set_quality(40);
  plan.add_courses()->set_on_time_chance(0.967);
  google::protobuf::RepeatedPtrField<v1::Remedy> changes;
  changes.Add()->set_kind(v1::REMEDY_KIND_LATER_COURSE);
  changes[0].set_course_id("main");
  changes[0].mutable_duration()->set_seconds(1200);
  const RemedyWords words(view_, event, plan);
  EXPECT_EQ(words.sentence(changes).toStdString(), "Serve Chicken 20 min later, at 18:25.");
  EXPECT_EQ(words.cost().toStdString(), "40 min waiting or off its best. In time in 96 of 100 evenings.");
  plan.mutable_courses(0)->set_on_time_chance(0.75);
  plan.mutable_courses(0)->set_late_step_id("rolls/shape");
  EXPECT_EQ(
      words.cost().toStdString(),
      "40 min waiting or off its best. In time in 75 of 100 evenings; when it is late, mostly because " +
          view_.quoted("rolls/shape").toStdString() + " takes longer.");
}

TEST_F(PlanWordsTest, AMoveSaysFromWhereToWhereAndWhy) {
  v1::MovedStep moved;
  moved.set_step_id("rolls/shape");
  *moved.mutable_old_start_time() = stamp("2026-06-20T15:05:00+01:00");
  *moved.mutable_old_end_time() = stamp("2026-06-20T15:30:00+01:00");
  *moved.mutable_new_start_time() = stamp("2026-06-20T15:20:00+01:00");
  *moved.mutable_new_end_time() = stamp("2026-06-20T15:45:00+01:00");
  moved.set_old_cook_member_id("ines");
  moved.set_new_cook_member_id("noor");
  moved.set_cause(v1::MOVE_CAUSE_COOK);
  moved.set_thing_id("ines");
  moved.set_cause_step_id("loaf/bake");
  const MoveWords words(view_);
  EXPECT_EQ(words.was(moved).toStdString(), "Sat 15:05");
  EXPECT_EQ(words.now(moved).toStdString(), "Sat 15:20");
  EXPECT_EQ(words.changes(moved).toStdString(), "15 min later, Noor instead of Ines");
  EXPECT_EQ(words.cause(moved).toStdString(), "Ines is busy then with “Bake the loaves” (Seeded sourdough).");
}

TEST_F(PlanWordsTest, EveryCauseOfAMoveHasASentence) {
  for (int cause = 1; v1::MoveCause_IsValid(cause); ++cause) {
    v1::MovedStep moved;
    moved.set_step_id("rolls/shape");
    moved.set_thing_id("ines");
    moved.set_cause(static_cast<v1::MoveCause>(cause));
    EXPECT_TRUE(MoveWords(view_).cause(moved).endsWith(QLatin1Char('.')))
        << v1::MoveCause_Name(moved.cause());
  }
}

TEST_F(PlanWordsTest, ProgressSaysWhatIsProvenAndWhatComesNext) {
  v1::Quality quality;
  EXPECT_EQ(QualityWords::proven(quality).toStdString(), "Now looking at how many dishes are served.");
  quality.set_proven_tier_count(2);
  EXPECT_EQ(QualityWords::proven(quality).toStdString(),
            "Proven best: how many dishes are served and lateness. Now looking at waiting and freshness.");
  quality.set_proven_tier_count(7);
  quality.set_optimal(true);
  EXPECT_EQ(QualityWords::proven(quality).toStdString(),
            "Proven best: no plan with these dishes, people and ovens is better.");
}

TEST_F(PlanWordsTest, WhatGetsWorseIsToldBeforeWhatGetsBetter) {
  v1::TierCosts before;
  v1::TierCosts after;
  before.set_quality(10);
  after.set_lateness(25);
  EXPECT_EQ(QualityWords::worse(before, after, view_.words()).join(QLatin1Char('|')).toStdString(),
            "25 min later in all.");
  EXPECT_EQ(QualityWords::better(before, after, view_.words()).join(QLatin1Char('|')).toStdString(),
            "10 min less waiting or off its best.");
  EXPECT_TRUE(QualityWords::worse(before, before, view_.words()).isEmpty());
}

TEST(StepSignsTest, EveryKindOfStepHasASignOfItsOwn) {
  std::map<int, std::string> kinds;
  for (int kind = 1; v1::StepKind_IsValid(kind); ++kind) {
    const auto step = static_cast<v1::StepKind>(kind);
    const int sign = StepWords::symbol(step);
    EXPECT_TRUE(kinds.emplace(sign, v1::StepKind_Name(step)).second)
        << v1::StepKind_Name(step) << " looks like " << kinds[sign];
  }
}

TEST_F(PlanWordsTest, OnlyWhatIsLateIsToldInTheColourOfLateness) {
  EXPECT_FALSE(StepWords(view_).details(*view_.step("rolls/shape")).late);
  bool any = false;
  for (const v1::PlannedStep& step : view_.plan()->steps()) {
    const StepDetails details = StepWords(view_).details(step);
    any = any || details.late;
    EXPECT_EQ(details.late, details.state.contains(QStringLiteral("Late"))) << step.id();
  }
  EXPECT_TRUE(any) << "the tart is late in the sample";
}

TEST_F(PlanWordsTest, ALoadIsPartOfTheTitleAndNothingToDoIsNoStep) {
  v1::PlannedStep step = *view_.step("rolls/bake");
  step.set_load(2);
  step.set_load_count(3);
  EXPECT_EQ(StepWords::title(step).toStdString(), step.title() + " (load 2 of 3)");
  EXPECT_TRUE(StepWords::isNeeded(step));
  step.clear_cook_member_id();
  *step.mutable_end_time() = step.start_time();
  EXPECT_FALSE(StepWords::isNeeded(step)) << "a wait of no time";
}

}  // namespace
}  // namespace suppertide
