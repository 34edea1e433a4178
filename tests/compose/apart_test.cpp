// Guests who may have no traces, the comfort of cooks and ovens, and pins, as the planner gets them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "server/compose/composition.h"
#include "server/compose/planner.h"
#include "tests/compose/planned.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

using ::testing::Contains;
using ::testing::Not;

// Marta may have no traces of nuts; the gratin holds walnuts, roast and rolls are known to be free.
v1::Bundle dinnerWithNuts() {
  v1::Bundle bundle = smallDinner();
  v1::Need* need = bundle.mutable_events(0)->mutable_guests(0)->add_needs();
  need->set_name("Tree nuts");
  need->set_severity(v1::NEED_SEVERITY_NO_TRACES);
  for (v1::Recipe& recipe : *bundle.mutable_recipes()) {
    if (recipe.has_formula())
      for (v1::FormulaLine& line : *recipe.mutable_formula()->mutable_lines()) line.set_known_contents(true);
    if (recipe.id() == "rolls") continue;
    v1::Ingredient* ingredient = recipe.add_ingredients();
    ingredient->set_known_contents(true);
    ingredient->set_name(recipe.id() == "gratin" ? "walnuts" : "pork");
    if (recipe.id() == "gratin") ingredient->add_contains("tree nuts");
  }
  return bundle;
}

bool overlap(const v1::PlannedStep& a, const v1::PlannedStep& b) {
  return a.start_time().seconds() < b.end_time().seconds() &&
         b.start_time().seconds() < a.end_time().seconds();
}

TEST(SeparationTest, NothingFreeStandsInTheOvenTogetherWithWhatHoldsIt) {
  const v1::Plan plan = soundPlanOf(dinnerWithNuts());
  EXPECT_FALSE(overlap(stepOf(plan, "gratin/bake"), stepOf(plan, "roast/roast")));
  EXPECT_FALSE(overlap(stepOf(plan, "gratin/bake"), stepOf(plan, "rolls/bake")));
  EXPECT_THAT(stepOf(plan, "roast/roast").cautions(), Contains(v1::CAUTION_ALLERGEN_CONTACT));
  EXPECT_THAT(stepOf(plan, "rolls/mix").cautions(), Not(Contains(v1::CAUTION_ALLERGEN_CONTACT)));
}

TEST(SeparationTest, WhatIsNotToldIsNotFree) {
  v1::Bundle bundle = dinnerWithNuts();
  for (v1::Recipe& recipe : *bundle.mutable_recipes())
    if (recipe.id() == "rolls") recipe.mutable_formula()->mutable_lines(0)->set_known_contents(false);
  const Documents documents = documentsOf(bundle);
  const auto composition = composeProblem(documents);
  ASSERT_TRUE(composition.ok()) << composition.status();
  const auto& problem = composition->problem;
  EXPECT_FALSE(problem.separations.empty());
  for (const planning::Separation& separation : problem.separations)
    EXPECT_EQ(problem.steps[static_cast<std::size_t>(separation.clean)].id, "roast/roast")
        << "only the roast is known to be free";
}

TEST(SeparationTest, WithoutSuchAGuestNothingIsKeptApart) {
  const v1::Bundle bundle = smallDinner();
  const Documents documents = documentsOf(bundle);
  const auto composition = composeProblem(documents);
  ASSERT_TRUE(composition.ok());
  EXPECT_TRUE(composition->problem.separations.empty());
}

TEST(ComfortTest, WantsAirAfterUncertainStepsButNoneAroundADough) {
  const v1::Bundle bundle = smallDinner();
  const Documents documents = documentsOf(bundle);
  const auto composition = composeProblem(documents);
  ASSERT_TRUE(composition.ok());
  const auto& problem = composition->problem;
  EXPECT_GT(problem.airBetweenTasks, 0);
  for (const planning::Oven& oven : problem.ovens) EXPECT_EQ(oven.idleMinuteCost, 1);
  bool some = false;
  for (const planning::Gap& gap : problem.gaps) {
    some |= gap.air > 0;
    const auto kind = problem.steps[static_cast<std::size_t>(gap.from)].kind;
    if (kind == planning::StepKind::kFerment) {
      EXPECT_EQ(gap.air, 0);
    }
    EXPECT_LE(gap.least + gap.air, gap.most);
  }
  EXPECT_TRUE(some);
}

// Nobody sleeps beside a hot oven, nor gets up to put something into the fridge.
TEST(PresenceTest, BakesAndWhatIsPutAwayFallWhenSomebodyIsThere) {
  const v1::Bundle bundle = smallDinner();
  const Documents documents = documentsOf(bundle);
  const auto composition = composeProblem(documents);
  ASSERT_TRUE(composition.ok()) << composition.status();
  const auto lengthAt = [&](const char* id, int day, const char* clock) {
    for (const planning::Step& step : composition->problem.steps)
      if (step.id == id) return step.modes[0].length.at(composition->axis.minuteOfClock(day, clock));
    ADD_FAILURE() << "no step " << id;
    return planning::Length{};
  };
  EXPECT_TRUE(lengthAt("roast/roast", 1, "12:00").possible());
  EXPECT_FALSE(lengthAt("roast/roast", 1, "03:00").possible());
  EXPECT_FALSE(lengthAt("roast/roast", 1, "22:00").possible()) << "it would end at midnight";
  EXPECT_TRUE(lengthAt("gratin/chill", 1, "22:00").possible()) << "it may stand there all night";
  EXPECT_FALSE(lengthAt("gratin/chill", 1, "02:00").possible());
}

TEST(PinTest, AProofStandsWhereItIsPinned) {
  for (const std::string place : {"counter", "light"}) {
    v1::Bundle bundle = smallDinner();
    v1::StepPin* pin = bundle.mutable_events(0)->add_pins();
    pin->set_dish_id("rolls");
    pin->set_step_id("proof");
    pin->set_place_id(place);
    const Documents documents = documentsOf(bundle);
    const auto composition = composeProblem(documents);
    ASSERT_TRUE(composition.ok()) << composition.status();
    const auto proof = static_cast<std::size_t>(composition->dishes[0].steps[6]);
    ASSERT_EQ(composition->problem.steps[proof].id, "rolls/proof");
    bool some = false;
    for (std::size_t m = 0; m < composition->steps[proof].modes.size(); ++m) {
      const auto& rows = composition->problem.steps[proof].modes[m].length.rows;
      const bool possible =
          std::any_of(rows.begin(), rows.end(), [](const auto& row) { return row.possible(); });
      const int here = composition->steps[proof].modes[m].place;
      if (possible) {
        EXPECT_EQ(documents.kitchen.places(here).id(), place);
      }
      some |= possible;
    }
    EXPECT_TRUE(some);
    if (place == "counter") {
      EXPECT_EQ(stepOf(soundPlanOf(bundle), "rolls/proof").place_id(), place);
    }
  }
}

}  // namespace
}  // namespace suppertide::compose
