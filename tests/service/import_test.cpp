#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

grpc::Status import(Served& served, const v1::Bundle& bundle, v1::ImportBundleResponse* answer,
                    bool only = false) {
  v1::ImportBundleRequest asked;
  asked.set_household_id(served.household);
  *asked.mutable_bundle() = bundle;
  asked.set_request_id(freshRequest());
  asked.set_validate_only(only);
  const auto context = with(served.token);
  return v1::HouseholdService::NewStub(served.channel())->ImportBundle(context.get(), asked, answer);
}

v1::Bundle exported(Served& served) {
  v1::ExportBundleRequest asked;
  asked.set_household_id(served.household);
  v1::Bundle bundle;
  const auto context = with(served.token);
  EXPECT_TRUE(
      v1::HouseholdService::NewStub(served.channel())->ExportBundle(context.get(), asked, &bundle).ok());
  return bundle;
}

TEST(ImportTest, WritesEverythingInOneRevision) {
  Served served;
  served.found();
  v1::ImportBundleResponse answer;
  const grpc::Status status = import(served, compose::smallDinner(), &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  EXPECT_EQ(answer.written_counts().at("recipe"), 3);
  const v1::Bundle bundle = exported(served);
  for (const auto& recipe : bundle.recipes()) EXPECT_EQ(recipe.meta().revision(), answer.revision());
}

TEST(ImportTest, TakesOverTheHouseholdUnderItsOwnId) {
  Served served;
  served.found();
  v1::ImportBundleResponse answer;
  ASSERT_TRUE(import(served, compose::smallDinner(), &answer).ok());
  const v1::Bundle bundle = exported(served);
  EXPECT_EQ(bundle.household().id(), served.household);
  EXPECT_EQ(bundle.household().members_size(), 2);
}

TEST(ImportTest, KeepsTheImporterAsAHost) {
  Served served;
  served.found();
  v1::Bundle bundle = compose::smallDinner();
  bundle.mutable_household()->mutable_members(0)->set_id("other");
  bundle.mutable_events(0)->mutable_cooks(0)->set_member_id("other");
  bundle.mutable_events(0)->mutable_dishes(0)->clear_cook_member_id();
  v1::ImportBundleResponse answer;
  const grpc::Status status = import(served, bundle, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  EXPECT_EQ(exported(served).household().members_size(), 3);
}

TEST(ImportTest, ASecondBundleTakesNobodyOff) {
  Served served;
  served.found();
  v1::ImportBundleResponse answer;
  ASSERT_TRUE(import(served, compose::smallDinner(), &answer).ok());
  v1::Bundle second = compose::smallDinner();
  second.mutable_household()->mutable_members(0)->set_id("zoe");
  second.mutable_household()->mutable_members(0)->set_display_name("Zoe");
  second.mutable_events(0)->set_id("brunch");
  second.mutable_events(0)->mutable_cooks(0)->set_member_id("zoe");
  second.mutable_events(0)->mutable_dishes(0)->clear_cook_member_id();
  const grpc::Status status = import(served, second, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  EXPECT_THAT(answer.kept_member_ids(), testing::Contains("ana"));
  const v1::Bundle bundle = exported(served);
  std::set<std::string> members;
  for (const v1::Member& member : bundle.household().members()) members.insert(member.id());
  for (const v1::Event& event : bundle.events())
    for (const v1::EventCook& cook : event.cooks())
      EXPECT_TRUE(members.contains(cook.member_id())) << event.id() << " names " << cook.member_id();
  EXPECT_TRUE(compose::validate(bundle, false).empty());
}

TEST(ImportTest, ListsEveryMistakeAndWritesNothing) {
  Served served;
  served.found();
  v1::Bundle bundle = compose::smallDinner();
  bundle.mutable_events(0)->mutable_dishes(1)->set_recipe_id("nothing");
  bundle.mutable_recipes(2)->set_serving_count(-3);
  v1::ImportBundleResponse answer;
  const grpc::Status status = import(served, bundle, &answer);
  EXPECT_EQ(status.error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(status.error_message(), testing::HasSubstr("events[0].dishes[1].recipeId"));
  EXPECT_THAT(status.error_message(), testing::HasSubstr("recipes[2].servingCount"));
  EXPECT_EQ(exported(served).recipes_size(), 0);
}

TEST(ImportTest, ValidateOnlyWritesNothing) {
  Served served;
  served.found();
  v1::ImportBundleResponse answer;
  ASSERT_TRUE(import(served, compose::smallDinner(), &answer, true).ok());
  EXPECT_EQ(exported(served).recipes_size(), 0);
}

TEST(ImportTest, RefusesAPlanThatBreaksARule) {
  const v1::Bundle dinner = compose::smallDinner();
  const auto plan = compose::planEvent(compose::documentsOf(dinner), {.seed = 1, .workLimit = 1000});
  ASSERT_TRUE(plan.ok()) << plan.status();
  v1::Bundle bundle = dinner;
  *bundle.add_plans() = *plan;
  Served served;
  served.found();
  v1::ImportBundleResponse answer;
  EXPECT_TRUE(import(served, bundle, &answer, true).ok());
  for (auto& step : *bundle.mutable_plans(0)->mutable_steps())
    if (step.id() == "gratin/bake") step.set_setpoint_celsius(165);
  EXPECT_EQ(import(served, bundle, &answer, true).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
}

// Without what every server gives anew.
v1::Bundle withoutMeta(v1::Bundle bundle) {
  bundle.mutable_household()->clear_meta();
  bundle.mutable_household()->clear_id();
  const auto clear = [](auto* list) {
    for (auto& document : *list) document.clear_meta();
  };
  clear(bundle.mutable_kitchens());
  clear(bundle.mutable_starters());
  clear(bundle.mutable_recipes());
  clear(bundle.mutable_events());
  clear(bundle.mutable_plans());
  clear(bundle.mutable_progresses());
  return bundle;
}

TEST(ImportTest, AHouseholdMovesToAnotherServerWithNothingLost) {
  Served first;
  first.found();
  v1::Bundle dinner = compose::smallDinner();
  const auto plan = compose::planEvent(compose::documentsOf(dinner), {.seed = 1, .workLimit = 1000});
  ASSERT_TRUE(plan.ok()) << plan.status();
  *dinner.add_plans() = *plan;
  v1::Progress& progress = *dinner.add_progresses();
  progress.set_id(dinner.events(0).id());
  v1::Report& report = *progress.add_reports();
  report.set_id("first");
  report.set_dish_id(plan->steps(0).dish_id());
  const std::string& step = plan->steps(0).id();
  report.set_step_id(step.substr(step.find('/') + 1));
  report.set_member_id("ana");
  report.set_started(true);
  report.set_note("flour everywhere");
  *report.mutable_happen_time() = plan->steps(0).start_time();
  v1::ImportBundleResponse answer;
  grpc::Status status = import(first, dinner, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  const v1::Bundle moved = exported(first);
  ASSERT_EQ(moved.plans_size(), 1);
  ASSERT_EQ(moved.progresses_size(), 1);
  Served second;
  second.found();
  status = import(second, moved, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  EXPECT_EQ(withoutMeta(exported(second)).DebugString(), withoutMeta(moved).DebugString());
}

}  // namespace
}  // namespace suppertide::service
