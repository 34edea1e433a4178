#include <gtest/gtest.h>

#include <thread>

#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

class ProgressTest : public testing::Test {
 protected:
  void SetUp() override {
    served_.found();
    v1::ImportBundleRequest asked;
    asked.set_household_id(served_.household);
    *asked.mutable_bundle() = compose::smallDinner();
    asked.set_request_id(freshRequest());
    v1::ImportBundleResponse answer;
    const auto context = with(served_.token);
    ASSERT_TRUE(
        v1::HouseholdService::NewStub(served_.channel())->ImportBundle(context.get(), asked, &answer).ok());
  }

  grpc::Status report(const std::string& id, v1::AddReportsResponse* answer,
                      const std::string& event = "supper") {
    v1::AddReportsRequest asked;
    asked.set_household_id(served_.household);
    asked.set_event_id(event);
    asked.set_request_id(freshRequest());
    v1::Report& one = *asked.add_reports();
    one.set_id(id);
    one.set_dish_id("rolls");
    one.set_step_id("mix");
    one.set_finished(true);
    const auto context = with(served_.token);
    return v1::ProgressService::NewStub(served_.channel())->AddReports(context.get(), asked, answer);
  }

  Served served_;
};

TEST_F(ProgressTest, AReportIsKeptWithItsMemberAndTime) {
  v1::AddReportsResponse answer;
  ASSERT_TRUE(report("r1", &answer).ok());
  ASSERT_EQ(answer.progress().reports_size(), 1);
  EXPECT_EQ(answer.progress().reports(0).member_id(), "ana");
  EXPECT_EQ(answer.progress().reports(0).receive_time().seconds(), 1'800'000'000);
}

TEST_F(ProgressTest, AReportToldTwiceCountsOnce) {
  v1::AddReportsResponse answer;
  ASSERT_TRUE(report("r1", &answer).ok());
  ASSERT_TRUE(report("r1", &answer).ok());
  EXPECT_EQ(answer.progress().reports_size(), 1);
}

TEST_F(ProgressTest, ReportsToldAtTheSameTimeAreAllKept) {
  std::vector<std::thread> cooks;
  for (int cook = 0; cook < 4; ++cook)
    cooks.emplace_back([this, cook] {
      v1::AddReportsResponse answer;
      EXPECT_TRUE(report("r" + std::to_string(cook), &answer).ok());
    });
  for (std::thread& cook : cooks) cook.join();
  v1::AddReportsResponse answer;
  ASSERT_TRUE(report("r0", &answer).ok());
  EXPECT_EQ(answer.progress().reports_size(), 4);
}

TEST_F(ProgressTest, AnUnknownEventIsNotFound) {
  v1::AddReportsResponse answer;
  EXPECT_EQ(report("r1", &answer, "breakfast").error_code(), grpc::StatusCode::NOT_FOUND);
}

}  // namespace
}  // namespace suppertide::service
