#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "suppertide/v1/review_service.grpc.pb.h"
#include "tests/service/supper.h"

namespace suppertide::service {
namespace {

class ReviewTest : public testing::Test {
 protected:
  ReviewTest() : supper_(v1::LIVE_CORRECTION_OFF), plan_(supper_.makePlan()) {
    stub_ = v1::ReviewService::NewStub(supper_.served().channel());
  }
  // Told when all is over, with true times.
  void tellAll() {
    supper_.timeIs(plan_.courses(0).serving_time().seconds() + 3600);
    at(Supper::about("roast/season"), 0, [](v1::Report& r) { r.set_started(true); });
    at(Supper::about("roast/season"), 40, [](v1::Report& r) { r.set_finished(true); });
    v1::Report rise = Supper::about("rolls/levain");
    const v1::PlannedStep& levain = Supper::step(plan_, "rolls/levain");
    rise.mutable_happen_time()->set_seconds(levain.end_time().seconds() - 5 * kMinute);
    rise.set_rise(1.05);
    ASSERT_TRUE(supper_.tell(rise).ok());
    v1::Report left = Supper::about("roast/");
    left.set_left_over_serving_count(2.5);
    const grpc::Status status = supper_.tell(left);
    ASSERT_TRUE(status.ok()) << status.error_message();
  }
  template <typename Set>
  void at(v1::Report report, int minutes, Set set) {
    report.mutable_happen_time()->set_seconds(
        Supper::startOf(plan_, report.dish_id() + "/" + report.step_id()) + minutes * kMinute);
    set(report);
    const grpc::Status status = supper_.tell(report);
    ASSERT_TRUE(status.ok()) << status.error_message();
  }
  grpc::Status get(v1::Review* review) {
    v1::GetReviewRequest asked;
    asked.set_household_id(supper_.served().household);
    asked.set_event_id("supper");
    const auto context = with(supper_.served().token);
    return stub_->GetReview(context.get(), asked, review);
  }
  grpc::Status keep(const std::vector<std::string>& taken, const std::vector<std::string>& declined,
                    v1::Review* review) {
    v1::KeepReviewRequest asked;
    asked.set_household_id(supper_.served().household);
    asked.set_event_id("supper");
    for (const std::string& id : taken) asked.add_taken_lesson_ids(id);
    for (const std::string& id : declined) asked.add_declined_lesson_ids(id);
    asked.set_request_id(freshRequest());
    v1::KeepReviewResponse answer;
    const auto context = with(supper_.served().token);
    const grpc::Status status = stub_->KeepReview(context.get(), asked, &answer);
    *review = answer.review();
    return status;
  }
  static const v1::Lesson* lesson(const v1::Review& review, const std::string& id) {
    const auto found = std::find_if(review.lessons().begin(), review.lessons().end(),
                                    [&](const v1::Lesson& l) { return l.id() == id; });
    return found == review.lessons().end() ? nullptr : &*found;
  }
  v1::Recipe roast() {
    v1::GetRecipeRequest asked;
    asked.set_household_id(supper_.served().household);
    asked.set_recipe_id("roast");
    v1::Recipe recipe;
    const auto context = with(supper_.served().token);
    EXPECT_TRUE(v1::RecipeService::NewStub(supper_.served().channel())
                    ->GetRecipe(context.get(), asked, &recipe)
                    .ok());
    return recipe;
  }

  Supper supper_;
  v1::Plan plan_;
  std::unique_ptr<v1::ReviewService::Stub> stub_;
};

TEST_F(ReviewTest, WithoutReportsThereIsNothingToLookBackOn) {
  v1::Review review;
  EXPECT_EQ(get(&review).error_code(), grpc::StatusCode::NOT_FOUND);
}

TEST_F(ReviewTest, SaysWhatHappenedBesideWhatWasPlanned) {
  tellAll();
  v1::Review review;
  ASSERT_TRUE(get(&review).ok());
  ASSERT_EQ(review.steps_size(), 1);
  EXPECT_EQ(review.steps(0).step_id(), "roast/season");
  EXPECT_EQ(review.steps(0).planned_start_time().seconds(), Supper::startOf(plan_, "roast/season"));
  EXPECT_EQ(review.steps(0).end_time().seconds() - review.steps(0).start_time().seconds(), 40 * kMinute);
  EXPECT_EQ(review.courses_size(), 1);
  ASSERT_EQ(review.doughs_size(), 1);
  EXPECT_DOUBLE_EQ(review.doughs(0).seen_rise(), 1.05);
}

TEST_F(ReviewTest, LeftoversSayUntilWhenTheyMayBeEatenByTheRules) {
  tellAll();
  v1::Review review;
  ASSERT_TRUE(get(&review).ok());
  ASSERT_EQ(review.leftovers_size(), 1);
  const v1::Leftover& left = review.leftovers(0);
  EXPECT_EQ(left.dish_id(), "roast");
  EXPECT_DOUBLE_EQ(left.serving_count(), 2.5);
  EXPECT_TRUE(left.reported());
  EXPECT_GT(left.use_by_time().seconds(), plan_.courses(0).serving_time().seconds() + 24 * 3600);
  EXPECT_LE(left.use_by_time().seconds(), plan_.courses(0).serving_time().seconds() + 5 * 24 * 3600);
  EXPECT_GE(left.reheat_celsius(), 70);
  EXPECT_GE(left.sources_size(), 3);
}

TEST_F(ReviewTest, ALengthIsLearnedOnlyWhenSomebodySaysSo) {
  tellAll();
  v1::Review review;
  ASSERT_TRUE(get(&review).ok());
  const v1::Lesson* length = lesson(review, "length/roast/season");
  ASSERT_NE(length, nullptr);
  EXPECT_DOUBLE_EQ(length->value_before(), 15);
  EXPECT_GT(length->value_seen(), 25);
  EXPECT_GT(length->value_after(), 15);
  EXPECT_LT(length->value_after(), length->value_seen());
  const double after = length->value_after();
  EXPECT_EQ(roast().steps(0).duration().likely().seconds(), 900);
  v1::Review kept;
  ASSERT_TRUE(keep({"length/roast/season"}, {}, &kept).ok());
  EXPECT_EQ(roast().steps(0).duration().likely().seconds(), static_cast<std::int64_t>(after) * kMinute);
  EXPECT_EQ(lesson(kept, "length/roast/season")->state(), v1::LESSON_STATE_TAKEN);
  EXPECT_FALSE(kept.meta().etag().empty());
  // Kept, and not taken a second time.
  ASSERT_TRUE(keep({"length/roast/season"}, {}, &kept).ok());
  EXPECT_EQ(roast().steps(0).duration().likely().seconds(), static_cast<std::int64_t>(after) * kMinute);
}

TEST_F(ReviewTest, ASlowStarterIsOfferedAndMayBeDeclined) {
  tellAll();
  v1::Review review;
  ASSERT_TRUE(get(&review).ok());
  const v1::Lesson* vigour = lesson(review, "vigour/s");
  ASSERT_NE(vigour, nullptr);
  EXPECT_LT(vigour->value_after(), vigour->value_before());
  v1::Review kept;
  ASSERT_TRUE(keep({}, {"vigour/s"}, &kept).ok());
  EXPECT_EQ(lesson(kept, "vigour/s")->state(), v1::LESSON_STATE_DECLINED);
  EXPECT_EQ(keep({"vigour/nobody"}, {}, &kept).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
}

}  // namespace
}  // namespace suppertide::service
