// Fitting an oven over the wire.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "suppertide/v1/kitchen_service.grpc.pb.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

using testing::ElementsAre;

class OvenFitServiceTest : public testing::Test {
 protected:
  OvenFitServiceTest() {
    served_.found();
    asked_.set_household_id(served_.household);
    v1::Oven& oven = *asked_.mutable_oven();
    oven.set_id("large");
    oven.set_display_name("Large oven");
    oven.set_min_setpoint_celsius(50);
    oven.set_max_setpoint_celsius(250);
    oven.add_rack_clear_height_mm(100);
    oven.set_shelf_width_mm(450);
    oven.set_shelf_depth_mm(370);
  }

  void read(google::protobuf::RepeatedPtrField<v1::HeatReading>* list, int minute, double celsius) {
    v1::HeatReading& reading = *list->Add();
    reading.mutable_after()->set_seconds(minute * 60);
    reading.set_celsius(celsius);
  }
  v1::HeatCurve& curve() { return *asked_.mutable_oven()->mutable_heat_curve(); }

  grpc::Status fit(v1::FitOvenResponse* answer, const std::string& token = "") {
    context_ = with(token.empty() ? served_.token : token);
    return v1::KitchenService::NewStub(served_.channel())->FitOven(context_.get(), asked_, answer);
  }
  std::vector<std::string> violations() const {
    const auto& trailers = context_->GetServerTrailingMetadata();
    const auto found = trailers.find("suppertide-error-bin");
    std::vector<std::string> paths;
    v1::ErrorDetail detail;
    if (found != trailers.end() &&
        detail.ParseFromString(std::string(found->second.data(), found->second.size())))
      for (const auto& violation : detail.violations()) paths.push_back(violation.field_path());
    return paths;
  }

  Served served_;
  v1::FitOvenRequest asked_;
  std::unique_ptr<grpc::ClientContext> context_;
};

TEST_F(OvenFitServiceTest, GivesTheCurveItsResidualsAndTheTimesPlansCountOn) {
  for (const int minute : {0, 5, 10, 15})
    read(curve().mutable_heating(), minute, 320 - 298 * std::exp(-minute / 24.0));
  for (const int minute : {0, 10, 20})
    read(curve().mutable_cooling_ajar(), minute, 22 + 178 * std::exp(-minute / 15.0));
  v1::FitOvenResponse answer;
  ASSERT_TRUE(fit(&answer).ok());
  EXPECT_NEAR(answer.after().heat_minutes(), 24, 0.05);
  EXPECT_NEAR(answer.after().maximum_celsius(), 320, 0.5);
  EXPECT_NEAR(answer.after().ajar_minutes(), 15, 0.05);
  EXPECT_EQ(answer.after().closed_minutes(), answer.before().closed_minutes());
  EXPECT_LT(answer.residual_after_k(), 0.1);
  EXPECT_GT(answer.residual_before_k(), 10);
  ASSERT_EQ(answer.readings_size(), 7);
  EXPECT_EQ(answer.readings(5).field_path(), "oven.heatCurve.coolingAjar[1]");
  EXPECT_NEAR(answer.readings(3).after_celsius(), answer.readings(3).celsius(), 0.1);
  ASSERT_EQ(answer.changes_size(), 6);
  EXPECT_EQ(answer.changes(3).to_celsius(), 230);
  EXPECT_GT(answer.changes(3).after_duration().seconds(), answer.changes(3).before_duration().seconds());
}

TEST_F(OvenFitServiceTest, LearnsFromTimedRisesALittleEach) {
  v1::HeatRise& rise = *curve().add_rises();
  rise.set_from_celsius(22);
  rise.set_to_celsius(200);
  rise.mutable_duration()->set_seconds(1200);
  v1::FitOvenResponse once;
  ASSERT_TRUE(fit(&once).ok());
  *curve().add_rises() = rise;
  v1::FitOvenResponse twice;
  ASSERT_TRUE(fit(&twice).ok());
  EXPECT_GT(once.after().heat_minutes(), once.before().heat_minutes());
  EXPECT_GT(twice.after().heat_minutes(), once.after().heat_minutes());
}

TEST_F(OvenFitServiceTest, ListsEveryImpossibleReading) {
  read(curve().mutable_heating(), 0, 20);
  read(curve().mutable_heating(), 5, 400);
  read(curve().mutable_heating(), 10, 15);
  read(curve().mutable_heating(), 15, 200);
  read(curve().mutable_cooling(), 0, 200);
  read(curve().mutable_cooling(), 10, 15);
  v1::FitOvenResponse answer;
  EXPECT_EQ(fit(&answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(), ElementsAre("oven.heatCurve.heating[1]", "oven.heatCurve.heating[2]",
                                        "oven.heatCurve.cooling[1]"));
}

TEST_F(OvenFitServiceTest, RefusesAnOvenWithoutReadingsOrWithABadDial) {
  v1::FitOvenResponse answer;
  EXPECT_EQ(fit(&answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(), ElementsAre("oven.heatCurve"));
  asked_.mutable_oven()->set_max_setpoint_celsius(900);
  EXPECT_EQ(fit(&answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(), ElementsAre("oven.maxSetpointCelsius"));
}

TEST_F(OvenFitServiceTest, ACurveThatNeverReachesTheDialIsRefused) {
  for (const int minute : {0, 5, 10, 15, 20})
    read(curve().mutable_heating(), minute, 210 - 188 * std::exp(-minute / 8.0));
  v1::FitOvenResponse answer;
  EXPECT_EQ(fit(&answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(), ElementsAre("oven.heatCurve.heating"));
}

TEST_F(OvenFitServiceTest, NeedsATokenOfTheHousehold) {
  v1::FitOvenResponse answer;
  EXPECT_EQ(fit(&answer, "nobody").error_code(), grpc::StatusCode::UNAUTHENTICATED);
  asked_.set_household_id("another");
  EXPECT_EQ(fit(&answer).error_code(), grpc::StatusCode::PERMISSION_DENIED);
}

TEST_F(OvenFitServiceTest, ADayWithoutAPlanOrReportsTeachesNothing) {
  served_.importDinner();
  asked_.clear_oven();
  asked_.set_event_id("supper");
  asked_.set_oven_id("large");
  v1::FitOvenResponse answer;
  EXPECT_EQ(fit(&answer).error_code(), grpc::StatusCode::FAILED_PRECONDITION);
  asked_.set_oven_id("garden-oven");
  EXPECT_EQ(fit(&answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(), ElementsAre("ovenId"));
  asked_.set_event_id("nothing");
  EXPECT_EQ(fit(&answer).error_code(), grpc::StatusCode::NOT_FOUND);
}

}  // namespace
}  // namespace suppertide::service
