#include <gmock/gmock.h>
#include <gtest/gtest.h>

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

}  // namespace
}  // namespace suppertide::service
