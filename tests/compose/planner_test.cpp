#include "server/compose/planner.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>

#include "server/compose/composition.h"
#include "tests/compose/planned.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

TEST(PlanEventTest, ServesEveryDishAndKeepsEveryRule) {
  const v1::Plan made = planOf(smallDinner());
  EXPECT_EQ(made.unserved_size(), 0);
  EXPECT_EQ(made.breaches_size(), 0) << made.breaches(0).ShortDebugString();
  EXPECT_EQ(made.steps_size(), 18);
  EXPECT_EQ(made.quality().costs().lateness(), 0);
}

TEST(PlanEventTest, BreadEndsEachFermentInsideItsReadinessWindow) {
  const v1::Plan made = planOf(smallDinner());
  ASSERT_EQ(made.doughs_size(), 1);
  ASSERT_EQ(made.doughs(0).stages_size(), 3);
  for (const auto& stage : made.doughs(0).stages()) {
    EXPECT_GE(stage.end_time().seconds(), stage.ready_from_time().seconds() - 300) << stage.step_id();
    EXPECT_LE(stage.end_time().seconds(), stage.ready_until_time().seconds() + 300) << stage.step_id();
    EXPECT_GT(stage.samples_size(), 10);
  }
}

TEST(PlanEventTest, OnlyTheCookWithTheSkillShapes) {
  EXPECT_EQ(stepOf(planOf(smallDinner()), "rolls/shape").cook_member_id(), "ana");
}

TEST(PlanEventTest, BakesInOneOvenShareASetpointOrLieApart) {
  const v1::Plan made = planOf(smallDinner());
  std::vector<v1::PlannedStep> bakes;
  for (const auto& step : made.steps())
    if (step.kind() == v1::STEP_KIND_OVEN) bakes.push_back(step);
  ASSERT_EQ(bakes.size(), 3u);
  for (const auto& a : bakes)
    for (const auto& b : bakes) {
      const bool overlap = a.start_time().seconds() < b.end_time().seconds() &&
                           b.start_time().seconds() < a.end_time().seconds();
      if (overlap) {
        EXPECT_EQ(a.setpoint_celsius(), b.setpoint_celsius()) << a.id() << " with " << b.id();
      }
    }
}

TEST(PlanEventTest, WeighsTheLevainAndTheDough) {
  const v1::Plan made = planOf(smallDinner());
  double levain = 0;
  for (const auto& part : stepOf(made, "rolls/feed").weighings()) levain += part.mass_g();
  EXPECT_NEAR(levain, 16 * 55 * 0.19 / 0.9, 3);
  double dough = 0;
  for (const auto& part : stepOf(made, "rolls/mix").weighings()) dough += part.mass_g();
  EXPECT_NEAR(dough, 16 * 55, 5);
  EXPECT_TRUE(stepOf(made, "rolls/mix").has_water_celsius());
}

TEST(PlanEventTest, TellsWhichOvenClashesNaiveTimingWouldHaveHad) {
  const v1::Plan made = planOf(smallDinner());
  ASSERT_GE(made.oven_clashes_size(), 1);
  EXPECT_EQ(made.oven_clashes(0).oven_id(), "large");
}

TEST(PlanEventTest, MakesTheSamePlanTwice) {
  v1::Plan first = planOf(smallDinner());
  v1::Plan second = planOf(smallDinner());
  EXPECT_EQ(first.SerializeAsString().size(), second.SerializeAsString().size());
  for (int i = 0; i < first.steps_size(); ++i)
    EXPECT_EQ(first.steps(i).ShortDebugString(), second.steps(i).ShortDebugString());
}

TEST(PlanEventTest, LeavesADishThatFitsNoOvenUnservedAndSaysSo) {
  v1::Bundle bundle = smallDinner();
  bundle.mutable_recipes(1)->mutable_steps(2)->mutable_oven()->mutable_pan()->set_width_mm(900);
  const v1::Plan made = planOf(bundle);
  ASSERT_EQ(made.unserved_size(), 1);
  EXPECT_EQ(made.unserved(0).dish_id(), "roast");
  EXPECT_TRUE(made.unserved(0).impossible_alone());
  EXPECT_EQ(made.unserved(0).step_id(), "roast/roast");
  EXPECT_EQ(made.breaches_size(), 0);
}

TEST(AuditPlanTest, FindsNothingInAPlanJustMade) {
  const v1::Bundle bundle = smallDinner();
  const Documents documents = documentsOf(bundle);
  const auto audit = auditPlan(documents, planOf(bundle));
  ASSERT_TRUE(audit.ok()) << audit.status();
  EXPECT_TRUE(audit->breaches.empty()) << audit->breaches[0].ShortDebugString();
}

TEST(AuditPlanTest, FindsABakeMovedIntoTheRest) {
  const v1::Bundle bundle = smallDinner();
  const Documents documents = documentsOf(bundle);
  v1::Plan made = planOf(bundle);
  for (auto& step : *made.mutable_steps())
    if (step.id() == "roast/roast") {
      step.mutable_start_time()->set_seconds(step.start_time().seconds() + 1800);
      step.mutable_end_time()->set_seconds(step.end_time().seconds() + 1800);
    }
  const auto audit = auditPlan(documents, made);
  ASSERT_TRUE(audit.ok()) << audit.status();
  bool gap = false;
  for (const auto& breach : audit->breaches) gap = gap || breach.rule() == v1::HARD_RULE_GAP;
  EXPECT_TRUE(gap);
}

TEST(AuditPlanTest, RefusesAPlanThatNamesAnUnknownOven) {
  const v1::Bundle bundle = smallDinner();
  const Documents documents = documentsOf(bundle);
  v1::Plan made = planOf(bundle);
  for (auto& step : *made.mutable_steps())
    if (step.id() == "roast/roast") step.set_oven_id("cellar");
  const auto audit = auditPlan(documents, made);
  EXPECT_EQ(audit.status().code(), absl::StatusCode::kInvalidArgument);
  EXPECT_THAT(std::string(audit.status().message()), testing::HasSubstr("roast/roast"));
}

}  // namespace
}  // namespace suppertide::compose
