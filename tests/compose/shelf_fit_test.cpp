// What is not sure about pans in an oven is said, and never counted on.
#include "server/compose/shelf_fit.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "server/compose/documents.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

v1::Step& bakeOf(v1::Bundle& bundle, int recipe) {
  for (v1::Step& step : *bundle.mutable_recipes(recipe)->mutable_steps())
    if (step.has_oven()) return step;
  throw std::runtime_error("no bake");
}

void setPan(v1::Step& bake, int width, int depth, int count) {
  v1::Pan& pan = *bake.mutable_oven()->mutable_pan();
  pan.set_width_mm(width);
  pan.set_depth_mm(depth);
  pan.set_height_mm(50);
  pan.set_count(count);
}

// Rolls and gratin in a dozen small tins on one shelf, with hardly a gap between them.
v1::Bundle crowded(int width) {
  v1::Bundle bundle = smallDinner();
  v1::Oven& oven = *bundle.mutable_kitchens(0)->mutable_ovens(0);
  oven.clear_rack_clear_height_mm();
  oven.add_rack_clear_height_mm(150);
  oven.set_shelf_width_mm(460);
  setPan(bakeOf(bundle, 0), width, 114, 7);
  setPan(bakeOf(bundle, 2), 129, 133, 5);
  return bundle;
}

std::vector<planning::Load> tins(int width) {
  return {{.widthMm = width, .depthMm = 114, .heightMm = 50, .panCount = 7},
          {.widthMm = 129, .depthMm = 133, .heightMm = 50, .panCount = 5}};
}

// All dishes served, each step at a time of its own; doughs stand outside the oven.
planning::Schedule anyPlan(const Composition& composition) {
  planning::Schedule schedule;
  planning::Minute next = 0;
  for (const planning::Step& step : composition.problem.steps) {
    int mode = 0;
    if (step.kind == planning::StepKind::kFerment)
      while (step.modes[static_cast<std::size_t>(mode)].oven) ++mode;
    schedule.steps.push_back({next, next + 10, mode, -1});
    next += 10;
  }
  schedule.unserved.assign(composition.problem.dishes.size(), false);
  return schedule;
}

TEST(ShelfFitTest, WhatIsNotSureIsNoFitAndIsSaidOfTheStepsItIsAbout) {
  const Documents documents = documentsOf(crowded(91));
  const auto composition = composeProblem(documents);
  ASSERT_TRUE(composition.ok()) << composition.status();
  EXPECT_FALSE(anyDoubts(*composition));
  EXPECT_FALSE(composition->problem.ovens[0].racks->fits(tins(91)));
  EXPECT_TRUE(anyDoubts(*composition));
  v1::Plan plan;
  addRackDoubts(*composition, anyPlan(*composition), plan);
  ASSERT_EQ(plan.rack_doubts_size(), 1);
  EXPECT_EQ(plan.rack_doubts(0).oven_id(), "large");
  EXPECT_THAT(plan.rack_doubts(0).step_ids(), ElementsAre("rolls/bake", "gratin/bake"));
  // Asked again it is said once.
  EXPECT_FALSE(composition->problem.ovens[0].racks->fits(tins(91)));
  plan.clear_rack_doubts();
  addRackDoubts(*composition, anyPlan(*composition), plan);
  EXPECT_EQ(plan.rack_doubts_size(), 1);
}

TEST(ShelfFitTest, ABreachAndAReasonSayThatItMayFit) {
  const Documents documents = documentsOf(crowded(91));
  const auto composition = composeProblem(documents);
  ASSERT_TRUE(composition.ok()) << composition.status();
  composition->problem.ovens[0].racks->fits(tins(91));
  int bake = -1;
  for (int i = 0; i < static_cast<int>(composition->steps.size()); ++i)
    if (composition->stepId(i) == "gratin/bake") bake = i;
  const planning::Breach breach{.rule = planning::Rule::kOvenRacks, .step = bake, .thing = 0};
  EXPECT_TRUE(breachesOf(*composition, {breach}).front().may_fit());
  EXPECT_TRUE(reasonOf(*composition, {planning::Cause::kOvenFull, bake, 0, 0}).may_fit());
  // A closed oven is closed.
  EXPECT_FALSE(reasonOf(*composition, {planning::Cause::kOvenFull, -1, 0, 0}).may_fit());
}

TEST(ShelfFitTest, WhatSurelyFitsOrSurelyDoesNotIsNotDoubted) {
  const Documents documents = documentsOf(crowded(70));
  const auto composition = composeProblem(documents);
  ASSERT_TRUE(composition.ok()) << composition.status();
  EXPECT_TRUE(composition->problem.ovens[0].racks->fits(tins(70)));
  EXPECT_FALSE(composition->problem.ovens[0].racks->fits(tins(130)));
  EXPECT_FALSE(anyDoubts(*composition));
  v1::Plan plan;
  addRackDoubts(*composition, anyPlan(*composition), plan);
  EXPECT_THAT(plan.rack_doubts(), IsEmpty());
}

}  // namespace
}  // namespace suppertide::compose
