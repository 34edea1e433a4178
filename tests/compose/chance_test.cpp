// The chance of a planned event: what recipes, starters and places leave open.
#include <gtest/gtest.h>

#include <algorithm>

#include "server/compose/composition.h"
#include "server/compose/planner.h"
#include "server/compose/spreads.h"
#include "tests/compose/planned.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

const planning::Step& planningStep(const Composition& composition, const std::string& id) {
  const auto& steps = composition.problem.steps;
  return *std::find_if(steps.begin(), steps.end(), [&](const auto& step) { return step.id == id; });
}

TEST(PlanChanceTest, CoursesDishesAndStepsHaveTheirs) {
  const v1::Plan made = planOf(smallDinner());
  ASSERT_EQ(made.courses_size(), 1);
  const double course = made.courses(0).on_time_chance();
  EXPECT_GT(course, 0);
  EXPECT_LT(course, 1);
  EXPECT_FALSE(made.courses(0).late_step_id().empty());
  EXPECT_GT(made.courses(0).late_step_share(), 0);
  for (const auto& dish : made.dishes()) {
    EXPECT_TRUE(dish.has_on_time_chance());
    EXPECT_GE(dish.on_time_chance(), course);
  }
  for (const auto& step : made.steps()) {
    EXPECT_LE(step.start_band().early().seconds(), step.start_time().seconds()) << step.id();
    EXPECT_LE(step.start_band().early().seconds(), step.start_band().late().seconds()) << step.id();
    EXPECT_LE(step.end_band().early().seconds(), step.end_band().late().seconds()) << step.id();
  }
  EXPECT_EQ(made.search().simulated_evening_count(), 10'000);
}

TEST(PlanChanceTest, AnUnservedDishHasNoPartInIt) {
  v1::Bundle bundle = smallDinner();
  bundle.mutable_recipes(1)->mutable_steps(2)->mutable_oven()->mutable_pan()->set_width_mm(900);
  const v1::Plan made = planOf(bundle);
  ASSERT_EQ(made.unserved_size(), 1);
  EXPECT_GT(made.courses(0).on_time_chance(), 0);
}

TEST(PlanChanceTest, ARoastThatMayTakeMuchLongerMakesTheCourseLessSure) {
  v1::Bundle unsure = smallDinner();
  auto& duration = *unsure.mutable_recipes(1)->mutable_steps(2)->mutable_oven()->mutable_duration();
  duration.mutable_most()->set_seconds(3 * 7200);
  v1::Bundle sure = smallDinner();
  auto& exact = *sure.mutable_recipes(1)->mutable_steps(2)->mutable_oven()->mutable_duration();
  exact.mutable_most()->set_seconds(7200);
  exact.mutable_least()->set_seconds(7200);
  EXPECT_LT(planOf(unsure).courses(0).on_time_chance() + 0.1, planOf(sure).courses(0).on_time_chance());
  EXPECT_EQ(planOf(unsure).courses(0).late_step_id(), "roast/roast");
}

TEST(PlanChanceTest, FermentsFollowTheStarterAndTheirPlaces) {
  const v1::Bundle bundle = smallDinner();
  const Documents documents = documentsOf(bundle);
  const auto composition = composeProblem(documents);
  ASSERT_TRUE(composition.ok()) << composition.status();
  std::vector<std::string> unknowns;
  for (const auto& unknown : composition->problem.unknowns) unknowns.push_back(unknown.id);
  EXPECT_EQ(std::count(unknowns.begin(), unknowns.end(), "starter s: vigour"), 1);
  EXPECT_EQ(std::count(unknowns.begin(), unknowns.end(), "warmth of counter"), 1);
  for (const planning::Mode& mode : planningStep(*composition, "rolls/bulk").modes) {
    double effect = 0;
    for (const auto& follows : mode.spread.follows)
      effect +=
          follows.power * composition->problem.unknowns[static_cast<std::size_t>(follows.unknown)].sigma;
    // A slower starter takes the longer, though no longer than in proportion; a retard ends by the clock.
    EXPECT_LT(effect, 0.6) << mode.name;
    if (mode.name.rfind("counter", 0) == 0) {
      EXPECT_GT(effect, 0.1) << mode.name;
    }
  }
}

TEST(PlanChanceTest, ASurerStarterHasTheSmallerSpread) {
  v1::Bundle bundle = smallDinner();
  bundle.mutable_starters(0)->set_vigour_spread(0.05);
  const Documents documents = documentsOf(bundle);
  const auto composition = composeProblem(documents);
  ASSERT_TRUE(composition.ok());
  for (const auto& unknown : composition->problem.unknowns)
    if (unknown.id == "starter s: vigour") {
      EXPECT_DOUBLE_EQ(unknown.sigma, 0.05);
    }
}

TEST(SpreadTest, WhatARecipeSaysIsTakenAsRatios) {
  v1::Spread told;
  told.mutable_likely()->set_seconds(20 * 60);
  const planning::Spread usual{0.8, 1.5, {}};
  EXPECT_EQ(spreadOf(told, usual).least, 0.8);
  told.mutable_most()->set_seconds(30 * 60);
  EXPECT_EQ(spreadOf(told, usual).least, 1);
  EXPECT_EQ(spreadOf(told, usual).most, 1.5);
  told.mutable_least()->set_seconds(15 * 60);
  EXPECT_EQ(spreadOf(told, usual).least, 0.75);
}

TEST(SpreadTest, ALengthOfNothingVariesByNothing) {
  v1::Spread told;
  told.mutable_likely()->set_seconds(0);
  told.mutable_most()->set_seconds(600);
  EXPECT_EQ(spreadOf(told, {0.8, 1.5, {}}).most, 1);
}

}  // namespace
}  // namespace suppertide::compose
