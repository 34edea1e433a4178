#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "client/link/bundle_parts.h"
#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

TEST(ImportTest, WritesEverythingInOneRevision) {
  Served served;
  served.found();
  v1::ImportBundleResponse answer;
  const grpc::Status status = served.import(compose::smallDinner(), &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  EXPECT_EQ(answer.written_counts().at("recipe"), 3);
  const v1::Bundle bundle = served.exported();
  for (const auto& recipe : bundle.recipes()) EXPECT_EQ(recipe.meta().revision(), answer.revision());
}

TEST(ImportTest, TakesOverTheHouseholdUnderItsOwnId) {
  Served served;
  served.found();
  v1::ImportBundleResponse answer;
  ASSERT_TRUE(served.import(compose::smallDinner(), &answer).ok());
  const v1::Bundle bundle = served.exported();
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
  const grpc::Status status = served.import(bundle, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  EXPECT_EQ(served.exported().household().members_size(), 3);
}

TEST(ImportTest, ASecondBundleTakesNobodyOff) {
  Served served;
  served.found();
  v1::ImportBundleResponse answer;
  ASSERT_TRUE(served.import(compose::smallDinner(), &answer).ok());
  v1::Bundle second = compose::smallDinner();
  second.mutable_household()->mutable_members(0)->set_id("zoe");
  second.mutable_household()->mutable_members(0)->set_display_name("Zoe");
  second.mutable_events(0)->set_id("brunch");
  second.mutable_events(0)->mutable_cooks(0)->set_member_id("zoe");
  second.mutable_events(0)->mutable_dishes(0)->clear_cook_member_id();
  const grpc::Status status = served.import(second, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  EXPECT_THAT(answer.kept_member_ids(), testing::Contains("ana"));
  const v1::Bundle bundle = served.exported();
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
  const grpc::Status status = served.import(bundle, &answer);
  EXPECT_EQ(status.error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(status.error_message(), testing::HasSubstr("events[0].dishes[1].recipeId"));
  EXPECT_THAT(status.error_message(), testing::HasSubstr("recipes[2].servingCount"));
  EXPECT_EQ(served.exported().recipes_size(), 0);
}

TEST(ImportTest, ValidateOnlyWritesNothing) {
  Served served;
  served.found();
  v1::ImportBundleResponse answer;
  ASSERT_TRUE(served.import(compose::smallDinner(), &answer, true).ok());
  EXPECT_EQ(served.exported().recipes_size(), 0);
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
  EXPECT_TRUE(served.import(bundle, &answer, true).ok());
  for (auto& step : *bundle.mutable_plans(0)->mutable_steps())
    if (step.id() == "gratin/bake") step.set_setpoint_celsius(165);
  EXPECT_EQ(served.import(bundle, &answer, true).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
}

// The small dinner with so many more recipes that no one message holds it.
v1::Bundle largeBundle() {
  v1::Bundle bundle = compose::smallDinner();
  const v1::Recipe model = bundle.recipes(1);
  for (int i = 0; bundle.ByteSizeLong() < 10'000'000; ++i) {
    v1::Recipe& recipe = *bundle.add_recipes();
    recipe = model;
    recipe.set_id("more" + std::to_string(i));
    recipe.set_note(std::string(2000, 'n'));
    for (v1::Step& step : *recipe.mutable_steps()) step.set_instructions(std::string(2000, 'i'));
  }
  return bundle;
}

grpc::Status importParts(Served& served, const std::vector<v1::ImportBundleRequest>& parts,
                         v1::ImportBundleResponse* answer) {
  const auto context = with(served.token);
  const auto stub = v1::HouseholdService::NewStub(served.channel());
  const auto stream = stub->ImportBundle(context.get(), answer);
  for (const v1::ImportBundleRequest& part : parts)
    if (!stream->Write(part)) break;
  stream->WritesDone();
  return stream->Finish();
}

TEST(ImportTest, ABundleLargerThanAMessageComesInPartsAndIsOneWrite) {
  Served served;
  served.found();
  v1::ImportBundleRequest whole;
  whole.set_household_id(served.household);
  whole.set_request_id(freshRequest());
  *whole.mutable_bundle() = largeBundle();
  const auto parts = link::partsOf(whole);
  ASSERT_GT(parts.size(), 8u);
  v1::ImportBundleResponse answer;
  const grpc::Status status = importParts(served, parts, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  const v1::Bundle stored = served.exported();
  EXPECT_EQ(stored.recipes_size(), whole.bundle().recipes_size());
  for (const v1::Recipe& recipe : stored.recipes()) EXPECT_EQ(recipe.meta().revision(), answer.revision());
  v1::ImportBundleResponse again;
  ASSERT_TRUE(importParts(served, parts, &again).ok());
  EXPECT_EQ(again.revision(), answer.revision()) << "a repeat";
}

TEST(ImportTest, OfABundleWithoutItsLastPartNothingIsWritten) {
  Served served;
  served.found();
  v1::ImportBundleRequest part;
  part.set_household_id(served.household);
  part.set_request_id(freshRequest());
  *part.mutable_bundle() = compose::smallDinner();
  part.set_partial(true);
  v1::ImportBundleResponse answer;
  EXPECT_EQ(importParts(served, {part}, &answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_EQ(importParts(served, {}, &answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_EQ(served.exported().recipes_size(), 0);
}

TEST(ImportTest, RefusesMoreThanItsMemoryIsFor) {
  Served served;
  served.found();
  v1::ImportBundleRequest part;
  part.set_household_id(served.household);
  part.set_request_id(freshRequest());
  part.set_partial(true);
  part.mutable_bundle()->add_recipes()->set_note(std::string(7'000'000, 'n'));
  v1::ImportBundleResponse answer;
  const std::vector<v1::ImportBundleRequest> parts(10, part);
  EXPECT_EQ(importParts(served, parts, &answer).error_code(), grpc::StatusCode::RESOURCE_EXHAUSTED);
}

TEST(ImportTest, AHouseholdSendsOneLargeBundleAtATime) {
  Served served;
  served.found();
  Caller caller;
  caller.householdId = served.household;
  const auto place = served.server().backend().enterLargeImport(caller);
  v1::ImportBundleRequest part;
  part.set_household_id(served.household);
  part.set_request_id(freshRequest());
  part.set_partial(true);
  part.mutable_bundle()->add_recipes()->set_note(std::string(5'000'000, 'n'));
  v1::ImportBundleResponse answer;
  EXPECT_EQ(importParts(served, {part, part}, &answer).error_code(), grpc::StatusCode::RESOURCE_EXHAUSTED);
  EXPECT_TRUE(served.import(compose::smallDinner()).ok()) << "others go on";
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
  grpc::Status status = first.import(dinner, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  const v1::Bundle moved = first.exported();
  ASSERT_EQ(moved.plans_size(), 1);
  ASSERT_EQ(moved.progresses_size(), 1);
  Served second;
  second.found();
  status = second.import(moved, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  EXPECT_EQ(withoutMeta(second.exported()).DebugString(), withoutMeta(moved).DebugString());
}

}  // namespace
}  // namespace suppertide::service
