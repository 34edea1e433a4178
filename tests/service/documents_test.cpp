#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <thread>

#include "suppertide/v1/kitchen_service.grpc.pb.h"
#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

class DocumentsTest : public testing::Test {
 protected:
  DocumentsTest() : stub_(v1::RecipeService::NewStub(served_.channel())) { served_.found(); }

  v1::CreateRecipeRequest creating(const std::string& id) {
    v1::CreateRecipeRequest asked;
    asked.set_household_id(served_.household);
    *asked.mutable_recipe() = compose::smallDinner().recipes(1);
    asked.mutable_recipe()->set_id(id);
    asked.set_request_id(freshRequest());
    return asked;
  }
  grpc::Status create(const v1::CreateRecipeRequest& asked, v1::WriteRecipeResponse* answer) {
    const auto context = with(served_.token);
    return stub_->CreateRecipe(context.get(), asked, answer);
  }
  grpc::Status update(const v1::UpdateRecipeRequest& asked, v1::WriteRecipeResponse* answer) {
    last_ = with(served_.token);
    return stub_->UpdateRecipe(last_.get(), asked, answer);
  }
  grpc::Status get(const std::string& id, v1::Recipe* answer) {
    v1::GetRecipeRequest asked;
    asked.set_household_id(served_.household);
    asked.set_recipe_id(id);
    const auto context = with(served_.token);
    return stub_->GetRecipe(context.get(), asked, answer);
  }

  Served served_;
  std::unique_ptr<v1::RecipeService::Stub> stub_;
  std::unique_ptr<grpc::ClientContext> last_;
};

TEST_F(DocumentsTest, WhatIsCreatedIsReadWithItsMeta) {
  v1::WriteRecipeResponse made;
  ASSERT_TRUE(create(creating("roast"), &made).ok());
  v1::Recipe read;
  ASSERT_TRUE(get("roast", &read).ok());
  EXPECT_EQ(read.display_name(), "Pork shoulder");
  EXPECT_EQ(read.meta().revision(), made.revision());
  EXPECT_EQ(read.meta().etag(), made.recipe().meta().etag());
  EXPECT_EQ(read.meta().updated_by_member_id(), "ana");
}

TEST_F(DocumentsTest, AnEmptyIdIsFilledIn) {
  v1::WriteRecipeResponse made;
  ASSERT_TRUE(create(creating(""), &made).ok());
  EXPECT_EQ(made.recipe().id().size(), 36u);
}

TEST_F(DocumentsTest, ARepeatedRequestGetsItsFirstOutcome) {
  const auto asked = creating("");
  v1::WriteRecipeResponse first;
  v1::WriteRecipeResponse second;
  ASSERT_TRUE(create(asked, &first).ok());
  ASSERT_TRUE(create(asked, &second).ok());
  EXPECT_EQ(first.recipe().id(), second.recipe().id());
  EXPECT_EQ(first.revision(), second.revision());
}

TEST_F(DocumentsTest, ARequestIdUsedForSomethingElseIsRefused) {
  auto asked = creating("a");
  v1::WriteRecipeResponse answer;
  ASSERT_TRUE(create(asked, &answer).ok());
  asked.mutable_recipe()->set_id("b");
  EXPECT_EQ(create(asked, &answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
}

TEST_F(DocumentsTest, ATakenIdIsRefused) {
  v1::WriteRecipeResponse answer;
  ASSERT_TRUE(create(creating("roast"), &answer).ok());
  EXPECT_EQ(create(creating("roast"), &answer).error_code(), grpc::StatusCode::ALREADY_EXISTS);
}

TEST_F(DocumentsTest, ValidateOnlyChecksAndStoresNothing) {
  auto asked = creating("roast");
  asked.set_validate_only(true);
  v1::WriteRecipeResponse answer;
  ASSERT_TRUE(create(asked, &answer).ok());
  EXPECT_EQ(answer.recipe().display_name(), "Pork shoulder");
  v1::Recipe read;
  EXPECT_EQ(get("roast", &read).error_code(), grpc::StatusCode::NOT_FOUND);
}

TEST_F(DocumentsTest, AMaskChangesOnlyItsFields) {
  v1::WriteRecipeResponse made;
  ASSERT_TRUE(create(creating("roast"), &made).ok());
  v1::UpdateRecipeRequest asked;
  asked.set_household_id(served_.household);
  asked.mutable_recipe()->set_id("roast");
  asked.mutable_recipe()->set_note("turn it once");
  asked.mutable_update_mask()->add_paths("note");
  asked.set_request_id(freshRequest());
  v1::WriteRecipeResponse answer;
  ASSERT_TRUE(update(asked, &answer).ok());
  EXPECT_EQ(answer.recipe().note(), "turn it once");
  EXPECT_EQ(answer.recipe().steps_size(), made.recipe().steps_size());
}

TEST_F(DocumentsTest, AnUnknownMaskPathIsRefused) {
  v1::WriteRecipeResponse answer;
  ASSERT_TRUE(create(creating("roast"), &answer).ok());
  v1::UpdateRecipeRequest asked;
  asked.set_household_id(served_.household);
  asked.mutable_recipe()->set_id("roast");
  asked.mutable_update_mask()->add_paths("colour");
  asked.set_request_id(freshRequest());
  EXPECT_EQ(update(asked, &answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
}

TEST_F(DocumentsTest, AStaleEtagIsRefusedWithTheCurrentDocument) {
  v1::WriteRecipeResponse made;
  ASSERT_TRUE(create(creating("roast"), &made).ok());
  v1::UpdateRecipeRequest asked;
  asked.set_household_id(served_.household);
  *asked.mutable_recipe() = made.recipe();
  asked.mutable_recipe()->set_note("first");
  asked.set_request_id(freshRequest());
  v1::WriteRecipeResponse answer;
  ASSERT_TRUE(update(asked, &answer).ok());
  asked.mutable_recipe()->set_note("second");
  asked.set_request_id(freshRequest());
  EXPECT_EQ(update(asked, &answer).error_code(), grpc::StatusCode::ABORTED);
  const auto& trailers = last_->GetServerTrailingMetadata();
  const auto found = trailers.find("suppertide-error-bin");
  ASSERT_NE(found, trailers.end());
  v1::ErrorDetail detail;
  ASSERT_TRUE(detail.ParseFromString(std::string(found->second.data(), found->second.size())));
  EXPECT_EQ(detail.reason(), "STALE_ETAG");
  v1::Recipe current;
  ASSERT_TRUE(current.ParseFromString(detail.current_document()));
  EXPECT_EQ(current.note(), "first");
}

TEST_F(DocumentsTest, EveryMistakeIsListed) {
  auto asked = creating("roast");
  asked.mutable_recipe()->set_serving_count(0);
  asked.mutable_recipe()->mutable_steps(2)->mutable_oven()->set_setpoint_celsius(900);
  v1::WriteRecipeResponse answer;
  const grpc::Status status = create(asked, &answer);
  EXPECT_EQ(status.error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(status.error_message(), testing::HasSubstr("servingCount"));
  EXPECT_THAT(status.error_message(), testing::HasSubstr("steps[2].oven.setpointCelsius"));
}

TEST_F(DocumentsTest, ListsInPages) {
  v1::WriteRecipeResponse answer;
  for (const char* id : {"a", "b", "c"}) ASSERT_TRUE(create(creating(id), &answer).ok());
  v1::ListRecipesRequest asked;
  asked.set_household_id(served_.household);
  asked.set_page_size(2);
  v1::ListRecipesResponse page;
  const auto first = with(served_.token);
  ASSERT_TRUE(stub_->ListRecipes(first.get(), asked, &page).ok());
  ASSERT_EQ(page.recipes_size(), 2);
  asked.set_page_token(page.next_page_token());
  v1::ListRecipesResponse rest;
  const auto second = with(served_.token);
  ASSERT_TRUE(stub_->ListRecipes(second.get(), asked, &rest).ok());
  ASSERT_EQ(rest.recipes_size(), 1);
  EXPECT_EQ(rest.recipes(0).id(), "c");
  EXPECT_TRUE(rest.next_page_token().empty());
}

TEST_F(DocumentsTest, ANegativePageSizeIsRefused) {
  v1::ListRecipesRequest asked;
  asked.set_household_id(served_.household);
  asked.set_page_size(-1);
  v1::ListRecipesResponse page;
  const auto context = with(served_.token);
  EXPECT_EQ(stub_->ListRecipes(context.get(), asked, &page).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
}

TEST_F(DocumentsTest, DeletingTwiceIsFine) {
  v1::WriteRecipeResponse made;
  ASSERT_TRUE(create(creating("roast"), &made).ok());
  for (int time = 0; time < 2; ++time) {
    v1::DeleteRecipeRequest asked;
    asked.set_household_id(served_.household);
    asked.set_recipe_id("roast");
    asked.set_request_id(freshRequest());
    v1::DeleteRecipeResponse answer;
    const auto context = with(served_.token);
    EXPECT_TRUE(stub_->DeleteRecipe(context.get(), asked, &answer).ok());
  }
  v1::Recipe read;
  EXPECT_EQ(get("roast", &read).error_code(), grpc::StatusCode::NOT_FOUND);
}

TEST_F(DocumentsTest, ARepeatGetsItsFirstOutcomeAlsoWhenTheDocumentIsGone) {
  v1::WriteRecipeResponse made;
  ASSERT_TRUE(create(creating("roast"), &made).ok());
  v1::UpdateRecipeRequest asked;
  asked.set_household_id(served_.household);
  asked.mutable_recipe()->set_id("roast");
  asked.mutable_recipe()->set_note("turn it once");
  asked.mutable_update_mask()->add_paths("note");
  asked.set_request_id(freshRequest());
  v1::WriteRecipeResponse first;
  ASSERT_TRUE(update(asked, &first).ok());
  v1::DeleteRecipeRequest deleting;
  deleting.set_household_id(served_.household);
  deleting.set_recipe_id("roast");
  deleting.set_request_id(freshRequest());
  v1::DeleteRecipeResponse deleted;
  const auto context = with(served_.token);
  ASSERT_TRUE(stub_->DeleteRecipe(context.get(), deleting, &deleted).ok());
  v1::WriteRecipeResponse again;
  ASSERT_TRUE(update(asked, &again).ok());
  EXPECT_EQ(again.revision(), first.revision());
  asked.set_request_id(freshRequest());
  EXPECT_EQ(update(asked, &again).error_code(), grpc::StatusCode::NOT_FOUND);
}

TEST_F(DocumentsTest, MasksWithoutEtagsAllGetThrough) {
  v1::WriteRecipeResponse made;
  ASSERT_TRUE(create(creating("roast"), &made).ok());
  std::vector<std::thread> cooks;
  for (int cook = 0; cook < 4; ++cook)
    cooks.emplace_back([this, cook] {
      v1::UpdateRecipeRequest asked;
      asked.set_household_id(served_.household);
      asked.mutable_recipe()->set_id("roast");
      asked.mutable_recipe()->set_note("by " + std::to_string(cook));
      asked.mutable_update_mask()->add_paths("note");
      asked.set_request_id(freshRequest());
      v1::WriteRecipeResponse answer;
      const auto context = with(served_.token);
      const grpc::Status status = stub_->UpdateRecipe(context.get(), asked, &answer);
      EXPECT_TRUE(status.ok()) << status.error_message();
    });
  for (std::thread& cook : cooks) cook.join();
}

TEST_F(DocumentsTest, MoreMistakesThanATrailerHoldsAreCounted) {
  auto asked = creating("roast");
  const v1::Step model = asked.recipe().steps(0);
  for (int i = 0; i < 50; ++i) {
    v1::Step& step = *asked.mutable_recipe()->add_steps();
    step = model;
    step.set_id("extra" + std::to_string(i));
    step.set_title("");
    step.set_volume_l(-1);
    step.mutable_equipment()->Add()->set_equipment_id("\xc3\xa4\xc3\xb6\xc3\xbc");
  }
  v1::WriteRecipeResponse answer;
  const auto context = with(served_.token);
  const grpc::Status status = stub_->CreateRecipe(context.get(), asked, &answer);
  EXPECT_EQ(status.error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(status.error_message(), testing::HasSubstr(" more"));
  const auto& trailers = context->GetServerTrailingMetadata();
  const auto found = trailers.find("suppertide-error-bin");
  ASSERT_NE(found, trailers.end());
  v1::ErrorDetail detail;
  ASSERT_TRUE(detail.ParseFromString(std::string(found->second.data(), found->second.size())));
  EXPECT_GE(std::stoi(detail.metadata().at("violation_count")), 100);
  EXPECT_GT(detail.violations_size(), 10);
}

TEST(DocumentLimitsTest, AHouseholdHasTenKitchensAtMost) {
  Served served;
  served.found();
  const auto stub = v1::KitchenService::NewStub(served.channel());
  v1::CreateKitchenRequest asked;
  asked.set_household_id(served.household);
  *asked.mutable_kitchen() = compose::smallDinner().kitchens(0);
  v1::WriteKitchenResponse answer;
  for (int i = 0; i < 10; ++i) {
    asked.mutable_kitchen()->set_id("k" + std::to_string(i));
    asked.set_request_id(freshRequest());
    const auto context = with(served.token);
    ASSERT_TRUE(stub->CreateKitchen(context.get(), asked, &answer).ok());
  }
  const auto repeat = with(served.token);
  EXPECT_TRUE(stub->CreateKitchen(repeat.get(), asked, &answer).ok());
  asked.mutable_kitchen()->set_id("one-more");
  asked.set_request_id(freshRequest());
  const auto context = with(served.token);
  EXPECT_EQ(stub->CreateKitchen(context.get(), asked, &answer).error_code(),
            grpc::StatusCode::RESOURCE_EXHAUSTED);
}

TEST(EventReferencesTest, WhatTheHouseholdLacksIsToldWithItsPath) {
  Served served;
  served.found();
  served.importDinner();
  const auto stub = v1::EventService::NewStub(served.channel());
  v1::CreateEventRequest asked;
  asked.set_household_id(served.household);
  *asked.mutable_event() = compose::smallDinner().events(0);
  asked.mutable_event()->set_id("second");
  asked.set_request_id(freshRequest());
  v1::WriteEventResponse answer;
  const auto first = with(served.token);
  const grpc::Status taken = stub->CreateEvent(first.get(), asked, &answer);
  ASSERT_TRUE(taken.ok()) << taken.error_message();
  asked.mutable_event()->set_id("third");
  asked.mutable_event()->mutable_dishes(1)->set_recipe_id("nothing");
  asked.set_request_id(freshRequest());
  const auto second = with(served.token);
  const grpc::Status refused = stub->CreateEvent(second.get(), asked, &answer);
  EXPECT_EQ(refused.error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(refused.error_message(), testing::HasSubstr("\ndishes[1].recipeId: "));
}

}  // namespace
}  // namespace suppertide::service
