#include "server/compose/loads.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "server/compose/planner.h"
#include "tests/compose/planned.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

using testing::ElementsAre;

const v1::PlannedStep* find(const v1::Plan& plan, const std::string& id) {
  for (const v1::PlannedStep& step : plan.steps())
    if (step.id() == id) return &step;
  return nullptr;
}

// So many trays of gratin: the one oven takes a few at once.
v1::Bundle gratins(int pans, int mostLoads) {
  v1::Bundle bundle = smallDinner();
  v1::OvenNeed& oven = *stepOf(bundle, 2, "bake").mutable_oven();
  oven.mutable_pan()->set_count(pans);
  oven.set_most_loads(mostLoads);
  // The first load waits for the others.
  v1::Step& stand = stepOf(bundle, 2, "stand");
  stand.mutable_after(0)->mutable_most_gap()->set_seconds(3600);
  bundle.mutable_recipes(2)->mutable_holding()->mutable_longest()->set_seconds(3600);
  return bundle;
}

TEST(LoadIdTest, TheFirstLoadKeepsTheRecipesId) {
  EXPECT_EQ(loadId("bake", 1), "bake");
  EXPECT_EQ(loadId("bake", 3), "bake.load-3");
  EXPECT_EQ(loadNumber("bake"), 1);
  EXPECT_EQ(loadNumber("bake.load-3"), 3);
  EXPECT_EQ(loadNumber("bake.load-x"), 1);
}

TEST(LoadIdTest, PansAreSharedOutEvenly) {
  EXPECT_THAT((std::vector<int>{pansIn(7, 1, 3), pansIn(7, 2, 3), pansIn(7, 3, 3)}), ElementsAre(3, 2, 2));
  EXPECT_EQ(pansIn(1, 1, 1), 1);
}

TEST(LoadsTest, WhatFitsAtOnceIsNotDivided) {
  const v1::Plan plan = soundPlanOf(gratins(1, 0));
  ASSERT_NE(find(plan, "gratin/bake"), nullptr);
  EXPECT_EQ(find(plan, "gratin/bake")->load_count(), 0);
  EXPECT_EQ(find(plan, "gratin/bake.load-2"), nullptr);
}

TEST(LoadsTest, WhatTheOvenCannotTakeAtOnceGoesInOneLoadAfterTheOther) {
  const v1::Plan plan = soundPlanOf(gratins(6, 0));
  ASSERT_EQ(plan.unserved_size(), 0);
  const v1::PlannedStep* first = find(plan, "gratin/bake");
  const v1::PlannedStep* second = find(plan, "gratin/bake.load-2");
  ASSERT_NE(first, nullptr);
  ASSERT_NE(second, nullptr);
  EXPECT_EQ(first->load(), 1);
  EXPECT_EQ(second->load(), 2);
  EXPECT_EQ(second->load_count(), first->load_count());
  EXPECT_GE(second->start_time().seconds(), first->end_time().seconds());
  EXPECT_GE(find(plan, "gratin/stand")->start_time().seconds(), second->end_time().seconds());
}

TEST(LoadsTest, OneLoadIsEnoughWhereMoreAreOnlyAllowed) {
  const v1::Plan plan = soundPlanOf(gratins(2, 2));
  const v1::PlannedStep* second = find(plan, "gratin/bake.load-2");
  ASSERT_NE(second, nullptr);
  EXPECT_TRUE(second->left_out());
  EXPECT_EQ(second->start_time().seconds(), second->end_time().seconds());
  EXPECT_FALSE(find(plan, "gratin/bake")->left_out());
  EXPECT_EQ(find(plan, "gratin/bake")->load_count(), 0);
}

TEST(LoadsTest, TooManyForTheLoadsAllowedIsUnserved) {
  const v1::Plan plan = soundPlanOf(gratins(40, 2));
  ASSERT_EQ(plan.unserved_size(), 1);
  EXPECT_EQ(plan.unserved(0).dish_id(), "gratin");
}

// Warming the rolls again, which takes `minutes` of the only oven.
v1::Bundle warmedRolls(int minutes) {
  v1::Bundle bundle = smallDinner();
  v1::Step& warm = *bundle.mutable_recipes(0)->add_steps();
  warm.set_id("warm");
  warm.set_title("Warm the rolls again");
  warm.set_kind(v1::STEP_KIND_OVEN);
  warm.mutable_oven()->set_setpoint_celsius(205);
  warm.mutable_oven()->set_min_setpoint_celsius(205);
  warm.mutable_oven()->set_max_setpoint_celsius(205);
  warm.mutable_oven()->mutable_duration()->mutable_likely()->set_seconds(minutes * 60);
  warm.mutable_oven()->set_food_class(v1::FOOD_CLASS_BREAD);
  warm.set_may_be_left_out(true);
  return bundle;
}

TEST(OptionalStepTest, IsDoneWhereThereIsRoom) {
  const v1::Plan plan = soundPlanOf(warmedRolls(5));
  ASSERT_NE(find(plan, "rolls/warm"), nullptr);
  EXPECT_FALSE(find(plan, "rolls/warm")->left_out());
  EXPECT_EQ(plan.unserved_size(), 0);
}

TEST(OptionalStepTest, IsLeftOutWhereThereIsNone) {
  v1::Bundle bundle = warmedRolls(15);
  stepOf(bundle, 0, "warm").mutable_earliest_before_serving()->set_seconds(900);
  v1::OvenNeed& gratin = *stepOf(bundle, 2, "bake").mutable_oven();
  gratin.set_min_setpoint_celsius(185);
  gratin.set_max_setpoint_celsius(185);
  bundle.mutable_recipes(2)->mutable_holding()->mutable_longest()->set_seconds(300);
  bundle.mutable_events(0)->mutable_courses(0)->mutable_late_limit()->set_seconds(0);
  const v1::Plan plan = soundPlanOf(bundle);
  EXPECT_EQ(plan.unserved_size(), 0);
  ASSERT_NE(find(plan, "rolls/warm"), nullptr);
  EXPECT_TRUE(find(plan, "rolls/warm")->left_out());
  EXPECT_TRUE(find(plan, "rolls/warm")->oven_id().empty());
}

TEST(OptionalStepTest, OneThatNoOvenCanDoIsLeftOut) {
  v1::Bundle bundle = warmedRolls(5);
  stepOf(bundle, 0, "warm").mutable_oven()->mutable_pan()->set_width_mm(900);
  const v1::Plan plan = soundPlanOf(bundle);
  EXPECT_EQ(plan.unserved_size(), 0);
  EXPECT_TRUE(find(plan, "rolls/warm")->left_out());
}

}  // namespace
}  // namespace suppertide::compose
