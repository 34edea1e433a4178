#include <gmock/gmock.h>
#include <gtest/gtest.h>

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

TEST(ImportTest, WhatIsExportedImportsAgain) {
  Served served;
  served.found();
  v1::ImportBundleResponse answer;
  ASSERT_TRUE(import(served, compose::smallDinner(), &answer).ok());
  v1::Bundle first = exported(served);
  ASSERT_TRUE(import(served, first, &answer).ok());
  v1::Bundle second = exported(served);
  for (v1::Bundle* bundle : {&first, &second})
    for (auto& recipe : *bundle->mutable_recipes()) recipe.clear_meta();
  ASSERT_EQ(first.recipes_size(), second.recipes_size());
  for (int i = 0; i < first.recipes_size(); ++i)
    EXPECT_EQ(first.recipes(i).ShortDebugString(), second.recipes(i).ShortDebugString());
}

}  // namespace
}  // namespace suppertide::service
