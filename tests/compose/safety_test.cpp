// Food safety from the recipes' classes to the plan: limits as clocks, lengths
// and oven bounds, what the plan tells, and what no plan can mend.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

#include "server/compose/composition.h"
#include "server/compose/planner.h"
#include "tests/compose/planned.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

using testing::IsEmpty;

// The small dinner's pork alone, with limits.
v1::Bundle porkDinner(const std::function<void(v1::Recipe&)>& change = nullptr) {
  v1::Bundle bundle = smallDinner();
  v1::Recipe& pork = *bundle.mutable_recipes(1);
  pork.set_safety_class(v1::SAFETY_CLASS_WHOLE_MEAT);
  if (change) change(pork);
  auto& dishes = *bundle.mutable_events(0)->mutable_dishes();
  dishes.DeleteSubrange(2, 1);
  dishes.DeleteSubrange(0, 1);
  return bundle;
}

v1::Step& stepIn(v1::Recipe& recipe, const std::string& id) {
  for (v1::Step& step : *recipe.mutable_steps())
    if (step.id() == id) return step;
  throw std::out_of_range(id);
}

const v1::SafetyLimit* limitAt(const v1::PlannedStep& step, v1::SafetyLimitKind kind) {
  for (const auto& limit : step.safety_limits())
    if (limit.kind() == kind) return &limit;
  return nullptr;
}

int minutesFrom(const google::protobuf::Duration& duration) {
  return static_cast<int>(duration.seconds() / 60);
}

planning::Minute clockMost(const v1::Bundle& bundle, v1::SafetyLimitKind kind) {
  const Documents documents = documentsOf(bundle);
  const auto composition = composeProblem(documents);
  EXPECT_TRUE(composition.ok()) << composition.status();
  if (!composition.ok()) return -1;
  for (const planning::Clock& clock : composition->problem.clocks)
    if (clock.id == v1::SafetyLimitKind_Name(kind)) return clock.most;
  return -1;
}

TEST(PlannedSafetyTest, StepsWithoutAClassHaveNoLimits) {
  const v1::Plan plan = planOf(smallDinner());
  for (const auto& step : plan.steps()) EXPECT_THAT(step.safety_limits(), IsEmpty()) << step.id();
  EXPECT_EQ(plan.breaches_size(), 0);
}

TEST(PlannedSafetyTest, ARoastTellsItsEndTemperatureRestAndOven) {
  const v1::Plan plan = planOf(porkDinner());
  EXPECT_EQ(plan.breaches_size(), 0);
  const v1::PlannedStep& roast = stepOf(plan, "roast/roast");
  const auto* end = limitAt(roast, v1::SAFETY_LIMIT_KIND_END_TEMPERATURE);
  ASSERT_NE(end, nullptr);
  EXPECT_NEAR(end->celsius(), 62.78, 0.01);
  EXPECT_THAT(end->source(), testing::HasSubstr("Safe Minimum Internal Temperature"));
  EXPECT_EQ(end->rules(), v1::SAFETY_RULES_CONSUMER);
  const auto* rest = limitAt(roast, v1::SAFETY_LIMIT_KIND_REST);
  ASSERT_NE(rest, nullptr);
  EXPECT_EQ(minutesFrom(rest->duration()), 3);
  EXPECT_NE(limitAt(roast, v1::SAFETY_LIMIT_KIND_ROASTING_OVEN), nullptr);
  EXPECT_THAT(roast.cautions(), testing::Contains(v1::CAUTION_CORE_TEMPERATURE));
  EXPECT_THAT(stepOf(plan, "roast/season").cautions(), testing::Contains(v1::CAUTION_RAW_MEAT));
}

// Baked, settled and then put into the fridge: the cooling clock runs from the oven on.
TEST(PlannedSafetyTest, CoolingCountsFromTheHeatThroughTheWorkBetween) {
  v1::Bundle bundle = smallDinner();
  for (v1::Recipe& recipe : *bundle.mutable_recipes()) {
    if (recipe.id() != "gratin") continue;
    recipe.set_safety_class(v1::SAFETY_CLASS_EGG_DISH);
    recipe.mutable_holding()->set_kind(v1::HOLDING_KIND_COLD);
    v1::Step chill = recipe.steps(1);
    chill.set_id("cold");
    chill.clear_after();
    chill.mutable_duration()->mutable_likely()->set_seconds(3600);
    *recipe.add_steps() = chill;
  }
  const v1::Plan plan = planOf(bundle);
  const v1::PlannedStep& cold = stepOf(plan, "gratin/cold");
  const auto* first = limitAt(cold, v1::SAFETY_LIMIT_KIND_FIRST_COOLING);
  ASSERT_NE(first, nullptr);
  EXPECT_EQ(minutesFrom(first->duration()), 120);
  EXPECT_EQ(first->planned_duration().seconds(),
            cold.start_time().seconds() - stepOf(plan, "gratin/bake").end_time().seconds());
  EXPECT_GE(minutesFrom(first->planned_duration()), 10) << "it settles for ten minutes";
  EXPECT_EQ(limitAt(stepOf(plan, "gratin/chill"), v1::SAFETY_LIMIT_KIND_COOLING), nullptr) << "raw still";
  EXPECT_THAT(cold.cautions(), testing::Contains(v1::CAUTION_COOL_QUICKLY));
}

TEST(PlannedSafetyTest, VegetablesHaveACoreTemperatureOnlyToBeHeldHot) {
  v1::Bundle bundle = smallDinner();
  v1::Recipe* gratin = nullptr;
  for (v1::Recipe& recipe : *bundle.mutable_recipes())
    if (recipe.id() == "gratin") gratin = &recipe;
  gratin->set_safety_class(v1::SAFETY_CLASS_PLANTS);
  EXPECT_NE(limitAt(stepOf(planOf(bundle), "gratin/bake"), v1::SAFETY_LIMIT_KIND_END_TEMPERATURE), nullptr);
  gratin->mutable_holding()->set_kind(v1::HOLDING_KIND_ROOM);
  EXPECT_EQ(limitAt(stepOf(planOf(bundle), "gratin/bake"), v1::SAFETY_LIMIT_KIND_END_TEMPERATURE), nullptr);
}

TEST(PlannedSafetyTest, TemperingCountsWithTheWorkBeforeIt) {
  const v1::Plan plan = planOf(porkDinner());
  const auto* room = limitAt(stepOf(plan, "roast/temper"), v1::SAFETY_LIMIT_KIND_ROOM_TIME);
  ASSERT_NE(room, nullptr);
  EXPECT_EQ(minutesFrom(room->duration()), 120);
  const auto out = stepOf(plan, "roast/roast").start_time().seconds() -
                   stepOf(plan, "roast/season").start_time().seconds();
  EXPECT_EQ(minutesFrom(room->planned_duration()), out / 60);
  EXPECT_LE(minutesFrom(room->planned_duration()), 120);
}

TEST(PlannedSafetyTest, ARoomTimeIsNeverStretchedToMakeAPlanFit) {
  const auto longTemper = [](v1::Recipe& pork) {
    stepIn(pork, "temper").mutable_duration()->mutable_likely()->set_seconds(110 * 60);
    stepIn(pork, "temper").mutable_longest_duration()->set_seconds(120 * 60);
  };
  v1::Bundle bundle = porkDinner(longTemper);
  EXPECT_EQ(planOf(bundle).unserved_size(), 1);
  bundle.mutable_household()->set_safety_rules(v1::SAFETY_RULES_FOOD_SERVICE);
  EXPECT_EQ(planOf(bundle).unserved_size(), 0);
}

TEST(PlannedSafetyTest, AVeryWarmKitchenHalvesTheRoomTime) {
  v1::Bundle bundle = porkDinner();
  EXPECT_EQ(clockMost(bundle, v1::SAFETY_LIMIT_KIND_ROOM_TIME), 120);
  bundle.mutable_kitchens(0)->mutable_places(0)->mutable_temperature()->set_celsius(0, 33);
  EXPECT_EQ(clockMost(bundle, v1::SAFETY_LIMIT_KIND_ROOM_TIME), 60);
}

void thawFirst(v1::Recipe& pork, v1::ThawWay way) {
  v1::Step thaw;
  thaw.set_id("thaw");
  thaw.set_title("Thaw");
  thaw.set_kind(v1::STEP_KIND_THAW);
  thaw.set_mass_g(1000);
  thaw.set_thaw_way(way);
  *pork.add_steps() = thaw;
  for (int i = pork.steps_size() - 1; i > 0; --i) pork.mutable_steps()->SwapElements(i, i - 1);
}

TEST(PlannedSafetyTest, ThawsForItsMassAndIsRoastedWithinItsDays) {
  const v1::Bundle bundle = porkDinner([](v1::Recipe& pork) { thawFirst(pork, v1::THAW_WAY_UNSPECIFIED); });
  const v1::Plan plan = planOf(bundle);
  EXPECT_EQ(plan.unserved_size(), 0);
  const v1::PlannedStep& thaw = stepOf(plan, "roast/thaw");
  // 24 hours for 4 pounds: 13.2 hours a kilogram.
  EXPECT_GE(thaw.end_time().seconds() - thaw.start_time().seconds(), 793 * 60);
  EXPECT_EQ(thaw.place_id(), "fridge");
  EXPECT_EQ(minutesFrom(limitAt(thaw, v1::SAFETY_LIMIT_KIND_THAW)->duration()), 794);
  EXPECT_EQ(minutesFrom(limitAt(thaw, v1::SAFETY_LIMIT_KIND_THAWED)->duration()), 5 * 1440);
  // Counted from the freezer on: thawed at its quickest, 24 hours for 5 pounds.
  EXPECT_EQ(clockMost(bundle, v1::SAFETY_LIMIT_KIND_THAWED), 634 + 5 * 1440);
}

TEST(PlannedSafetyTest, PoultryWaitsTwoDaysAtMostAfterThawing) {
  EXPECT_EQ(clockMost(porkDinner([](v1::Recipe& bird) {
                        thawFirst(bird, v1::THAW_WAY_FRIDGE);
                        bird.set_safety_class(v1::SAFETY_CLASS_POULTRY);
                      }),
                      v1::SAFETY_LIMIT_KIND_THAWED),
            634 + 2 * 1440);
}

TEST(PlannedSafetyTest, WhatThawsInWaterIsCookedAtOnce) {
  // Tempering after thawing in water is waiting: that dish cannot be.
  EXPECT_EQ(
      planOf(porkDinner([](v1::Recipe& pork) { thawFirst(pork, v1::THAW_WAY_COLD_WATER); })).unserved_size(),
      1);
  const v1::Plan plan = planOf(porkDinner([](v1::Recipe& pork) {
    thawFirst(pork, v1::THAW_WAY_COLD_WATER);
    pork.mutable_steps()->DeleteSubrange(2, 1);
    stepIn(pork, "roast").clear_after();
  }));
  ASSERT_EQ(plan.unserved_size(), 0);
  const v1::PlannedStep& thaw = stepOf(plan, "roast/thaw");
  EXPECT_EQ(thaw.end_time().seconds() - thaw.start_time().seconds(), 67 * 60);
  EXPECT_LE(stepOf(plan, "roast/roast").start_time().seconds() - thaw.end_time().seconds(), 25 * 60);
}

TEST(PlannedSafetyTest, ARoastIsNotBakedBelowTheLeastOven) {
  const auto at = [](int celsius) {
    return porkDinner(
        [celsius](v1::Recipe& pork) { stepIn(pork, "roast").mutable_oven()->set_setpoint_celsius(celsius); });
  };
  EXPECT_EQ(stepOf(planOf(at(160)), "roast/roast").setpoint_celsius(), 165);
  // Too far from the recipe's own, so nothing is left at home; food service may go down to 121.
  v1::Bundle slow = at(130);
  EXPECT_EQ(planOf(slow).unserved_size(), 1);
  slow.mutable_household()->set_safety_rules(v1::SAFETY_RULES_FOOD_SERVICE);
  EXPECT_EQ(stepOf(planOf(slow), "roast/roast").setpoint_celsius(), 130);
}

TEST(PlannedSafetyTest, AnEndTemperatureBelowTheFoodsIsABreachInThePlan) {
  v1::Bundle bundle =
      porkDinner([](v1::Recipe& pork) { stepIn(pork, "roast").mutable_oven()->set_end_core_celsius(56); });
  const v1::Plan plan = planOf(bundle);
  ASSERT_EQ(plan.breaches_size(), 1);
  EXPECT_EQ(plan.breaches(0).rule(), v1::HARD_RULE_FOOD_SAFETY);
  EXPECT_EQ(plan.breaches(0).step_id(), "roast/roast");
  EXPECT_EQ(plan.breaches(0).thing_id(), "SAFETY_LIMIT_KIND_END_TEMPERATURE");
  EXPECT_EQ(plan.breaches(0).amount(), 7);
  bundle.mutable_household()->set_safety_rules(v1::SAFETY_RULES_FOOD_SERVICE);
  EXPECT_EQ(planOf(bundle).breaches_size(), 0);
}

TEST(PlannedSafetyTest, PlansKeepTheLimitsOfTheUnitedKingdomWhereTheHouseholdDoes) {
  const auto fridgeAt = [](double celsius) {
    v1::Bundle bundle = porkDinner([](v1::Recipe& pork) { thawFirst(pork, v1::THAW_WAY_FRIDGE); });
    bundle.mutable_kitchens(0)->mutable_places(2)->mutable_temperature()->set_celsius(0, celsius);
    bundle.mutable_household()->set_safety_rules(v1::SAFETY_RULES_UK);
    return bundle;
  };
  EXPECT_EQ(planOf(fridgeAt(7.5)).breaches_size(), 0);
  EXPECT_EQ(planOf(fridgeAt(9)).breaches_size(), 1);
  const v1::Bundle bundle = fridgeAt(4);
  EXPECT_EQ(clockMost(bundle, v1::SAFETY_LIMIT_KIND_ROOM_TIME), 120);
  const v1::Plan plan = planOf(bundle);
  const v1::PlannedStep& roast = stepOf(plan, "roast/roast");
  ASSERT_GT(roast.safety_limits_size(), 0);
  EXPECT_EQ(roast.safety_limits(0).rules(), v1::SAFETY_RULES_UK);
  EXPECT_NEAR(roast.safety_limits(0).celsius(), 62.78, 0.01) << "whole meat has no row there: as at home";
}

TEST(PlannedSafetyTest, AWarmFridgeIsABreachWhereFoodStandsInIt) {
  v1::Bundle bundle = porkDinner([](v1::Recipe& pork) { thawFirst(pork, v1::THAW_WAY_FRIDGE); });
  bundle.mutable_kitchens(0)->mutable_places(2)->mutable_temperature()->set_celsius(0, 5);
  const v1::Plan plan = planOf(bundle);
  ASSERT_EQ(plan.breaches_size(), 1);
  EXPECT_EQ(plan.breaches(0).thing_id(), "SAFETY_LIMIT_KIND_COLD_HOLD");
  bundle.mutable_household()->set_safety_rules(v1::SAFETY_RULES_FOOD_SERVICE);
  EXPECT_EQ(planOf(bundle).breaches_size(), 0);
}

TEST(PlannedSafetyTest, ColdDishesCountTheirTimeOutUntilTheyAreServed) {
  v1::Bundle bundle = porkDinner([](v1::Recipe& salad) {
    salad.set_safety_class(v1::SAFETY_CLASS_COLD_DISH);
    salad.mutable_steps()->DeleteSubrange(1, salad.steps_size() - 1);
    salad.mutable_holding()->set_kind(v1::HOLDING_KIND_ROOM);
    salad.mutable_holding()->mutable_longest()->set_seconds(5 * 3600);
  });
  EXPECT_EQ(clockMost(bundle, v1::SAFETY_LIMIT_KIND_ROOM_TIME), 120);
  bundle.mutable_household()->set_safety_rules(v1::SAFETY_RULES_FOOD_SERVICE);
  // Six hours would do for what never gets above 21 degrees; this kitchen has 22.
  EXPECT_EQ(clockMost(bundle, v1::SAFETY_LIMIT_KIND_ROOM_TIME), 240);
  bundle.mutable_kitchens(0)->mutable_places(0)->mutable_temperature()->set_celsius(0, 20);
  // Kept by the holding time alone.
  EXPECT_EQ(clockMost(bundle, v1::SAFETY_LIMIT_KIND_ROOM_TIME), -1);
  bundle.mutable_household()->set_safety_rules(v1::SAFETY_RULES_CONSUMER);
  bundle.mutable_recipes(1)->mutable_holding()->set_kind(v1::HOLDING_KIND_COLD);
  EXPECT_EQ(clockMost(bundle, v1::SAFETY_LIMIT_KIND_ROOM_TIME), -1);
}

TEST(PlannedSafetyTest, WhatIsHeatedAgainFromTheColdIsHeatedThrough) {
  v1::Bundle bundle = smallDinner();
  bundle.mutable_recipes(2)->set_safety_class(v1::SAFETY_CLASS_LEFTOVERS);
  const v1::Plan plan = planOf(bundle);
  const v1::PlannedStep& bake = stepOf(plan, "gratin/bake");
  const auto* reheat = limitAt(bake, v1::SAFETY_LIMIT_KIND_REHEAT);
  ASSERT_NE(reheat, nullptr);
  EXPECT_NEAR(reheat->celsius(), 73.89, 0.01);
  EXPECT_THAT(bake.cautions(), testing::Contains(v1::CAUTION_REHEAT_THROUGH));
  const auto* kept = limitAt(stepOf(plan, "gratin/chill"), v1::SAFETY_LIMIT_KIND_COOKED_FRIDGE);
  ASSERT_NE(kept, nullptr);
  EXPECT_EQ(minutesFrom(kept->duration()), 4 * 1440);
}

}  // namespace
}  // namespace suppertide::compose
