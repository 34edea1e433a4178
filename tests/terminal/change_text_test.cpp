#include "client/terminal/change_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/terminal/sample.h"

namespace suppertide::terminal {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

link::Replica sampleReplica() {
  const v1::Bundle bundle = testing::sampleBundle();
  link::Replica replica;
  replica.household = bundle.household();
  for (const auto& kitchen : bundle.kitchens()) replica.kitchens[kitchen.id()] = kitchen;
  for (const auto& recipe : bundle.recipes()) replica.recipes[recipe.id()] = recipe;
  for (const auto& event : bundle.events()) replica.events[event.id()] = event;
  return replica;
}

std::vector<std::string> textsBetween(const link::Replica& before, const link::Replica& after) {
  std::vector<std::string> texts;
  for (const ChangeLine& line : changesBetween(before, after)) texts.push_back(line.text);
  return texts;
}

TEST(ChangeTextTest, SaysNothingWhenNothingDiffers) {
  EXPECT_THAT(textsBetween(sampleReplica(), sampleReplica()), IsEmpty());
}

TEST(ChangeTextTest, NamesWhatWasAddedChangedAndDeleted) {
  const link::Replica before = sampleReplica();
  link::Replica after = before;
  after.recipes.erase("r-tart");
  after.events["e1"].set_location("the garden");
  after.starters["s1"].set_display_name("Rye starter");
  after.household.set_display_name("Elm Lane");
  EXPECT_THAT(textsBetween(before, after),
              ElementsAre("changed the household", "added the starter Rye starter",
                          "deleted the recipe Plum tart", "changed the event Midsummer supper"));
}

TEST(ChangeTextTest, TellsHowANewPlanTurnedOut) {
  const link::Replica before = sampleReplica();
  link::Replica after = before;
  after.plans["e1"] = testing::samplePlan();
  EXPECT_THAT(textsBetween(before, after),
              ElementsAre("made a plan for Midsummer supper: all dishes served"));
  link::Replica worse = after;
  worse.plans["e1"].add_unserved();
  worse.plans["e1"].mutable_quality()->mutable_costs()->set_lateness(15);
  EXPECT_THAT(textsBetween(after, worse),
              ElementsAre("made a new plan for Midsummer supper: 1 dish not served, 15 min late"));
}

TEST(ChangeTextTest, TellsEachNewReportOnce) {
  link::Replica before = sampleReplica();
  v1::Report& old = *before.progresses["e1"].add_reports();
  old.set_id("r1");
  link::Replica after = before;
  v1::Report& rise = *after.progresses["e1"].add_reports();
  rise.set_id("r2");
  rise.set_dish_id("rye");
  rise.set_step_id("feed");
  rise.set_rise(1.64);
  *rise.mutable_happen_time() = testing::at("2026-06-19T23:10:00+01:00");
  rise.set_note("domed");
  EXPECT_THAT(
      textsBetween(before, after),
      ElementsAre(
          "reports: Feed the levain · Rye loaf: risen to 1.6 times its volume, at Fri 23:10 (domed)"));
}

}  // namespace
}  // namespace suppertide::terminal
