#include "client/terminal/moved_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "client/terminal/wish_text.h"
#include "tests/terminal/sample.h"

namespace suppertide::terminal {
namespace {

using namespace testing;
using ::testing::HasSubstr;
using ::testing::Not;

class MovedTextTest : public ::testing::Test {
 protected:
  MovedTextTest() : view_(sampleBundle(), sampleBundle().events(0), samplePlan(), 80, false) {
    v1::MovedStep& moved = *answer_.mutable_plan()->add_moved_steps();
    moved.set_step_id("gratin/bake");
    *moved.mutable_old_start_time() = at("2026-06-20T17:40:00+01:00");
    *moved.mutable_new_start_time() = at("2026-06-20T17:55:00+01:00");
    moved.set_old_cook_member_id("ben");
    moved.set_new_cook_member_id("ana");
    moved.set_cause(v1::MOVE_CAUSE_OVEN);
    moved.set_thing_id("big");
    moved.set_cause_step_id("rye/bake");
  }
  v1::MovedStep& moved() { return *answer_.mutable_plan()->mutable_moved_steps(0); }
  PlanView view_;
  v1::MakePlanResponse answer_;
};

TEST_F(MovedTextTest, TellsOldAndNewTimesWithWhoAndWhy) {
  const std::string text = replanText(view_, answer_);
  EXPECT_THAT(text, HasSubstr("1 step moves; all others stay where they are."));
  EXPECT_THAT(text, HasSubstr("Sat 17:40"));
  EXPECT_THAT(text, HasSubstr("Sat 17:55"));
  EXPECT_THAT(text, HasSubstr("Bake the gratin"));
  EXPECT_THAT(text, HasSubstr("Ana instead of Ben"));
  const std::string why = moveCauseText(view_, moved());
  EXPECT_THAT(why, HasSubstr(view_.names().oven("big") + " is taken then"));
  EXPECT_THAT(why, HasSubstr("Bake the loaves"));
}

TEST_F(MovedTextTest, SaysWhatWaitsLongerThanItsRecipeAllows) {
  v1::Plan plan = samplePlan();
  v1::Breach& breach = *plan.add_breaches();
  breach.set_rule(v1::HARD_RULE_GAP);
  breach.set_step_id("rye/bake");
  breach.set_other_step_id("rye/mix");
  breach.set_amount(40);
  const PlanView late(sampleBundle(), sampleBundle().events(0), plan, 200, false);
  EXPECT_THAT(
      replanText(late, answer_),
      HasSubstr(
          "“Bake the loaves · Rye loaf” comes 40 min later after “Mix the dough” than its recipe allows"));
}

TEST_F(MovedTextTest, TellsWhatCannotAllBeHadAnyMore) {
  v1::Plan plan = samplePlan();
  v1::Wish& served = *plan.add_clashes()->add_wishes();
  served.set_kind(v1::WISH_KIND_SERVED);
  served.set_dish_id("gratin");
  plan.mutable_clashes(0)->set_smallest(true);
  const PlanView view(sampleBundle(), sampleBundle().events(0), plan, 200, false);
  EXPECT_THAT(replanText(view, answer_), HasSubstr(wishClashText(view, plan.clashes(0))));
  EXPECT_THAT(replanText(view_, answer_), Not(HasSubstr("What cannot all be had")));
}

TEST_F(MovedTextTest, SaysThatNothingNeedsToMove) {
  answer_.mutable_plan()->clear_moved_steps();
  answer_.set_nothing_moves(true);
  EXPECT_THAT(replanText(view_, answer_), HasSubstr("Nothing needs to move: the plan still fits."));
}

TEST_F(MovedTextTest, ADishLeftOutHasNoNewTime) {
  moved().clear_new_start_time();
  moved().clear_new_cook_member_id();
  moved().set_cause(v1::MOVE_CAUSE_DISH);
  EXPECT_EQ(moveCauseText(view_, moved()), "its dish is left out");
  EXPECT_THAT(movedText(view_, answer_.plan().moved_steps()), HasSubstr("–"));
}

TEST_F(MovedTextTest, EveryCauseHasWords) {
  for (int cause = v1::MOVE_CAUSE_REPORTED; cause <= v1::MOVE_CAUSE_MADE_ROOM; ++cause) {
    moved().set_cause(static_cast<v1::MoveCause>(cause));
    EXPECT_NE(moveCauseText(view_, moved()), "") << cause;
  }
}

TEST_F(MovedTextTest, WhyTellsObstaclesAndCosts) {
  v1::ExplainStepResponse told;
  *told.mutable_step() = *view_.step("gratin/bake");
  told.mutable_dish_costs()->set_quality(12);
  v1::Reason& reason = *told.add_obstacles();
  reason.set_cause(v1::CAUSE_OVEN_SETPOINT);
  reason.set_thing_id("big");
  reason.set_blocking_step_id("rye/bake");
  told.set_possible(true);
  told.mutable_costs_then()->set_lateness(5);
  *told.mutable_moved_steps() = answer_.plan().moved_steps();
  const std::string text = whyText(view_, told, -30);
  EXPECT_THAT(text, HasSubstr("Its dish costs: quality 12."));
  EXPECT_THAT(text, HasSubstr("30 min earlier"));
  EXPECT_THAT(text, HasSubstr("is at another temperature"));
  EXPECT_THAT(text, HasSubstr("nothing now; then 5 min late"));
  EXPECT_THAT(text, HasSubstr("Sat 17:55"));
  told.set_possible(false);
  EXPECT_THAT(whyText(view_, told, -30), HasSubstr("No plan with it there was found"));
  EXPECT_THAT(whyText(view_, told, 0), Not(HasSubstr("earlier")));
}

}  // namespace
}  // namespace suppertide::terminal
