#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>
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

TEST_F(ProgressTest, ReportsThatTellNothingNewWriteNothing) {
  v1::AddReportsResponse first;
  ASSERT_TRUE(report("r1", &first).ok());
  v1::AddReportsResponse second;
  ASSERT_TRUE(report("r1", &second).ok());
  EXPECT_EQ(second.revision(), first.revision());
}

TEST_F(ProgressTest, EveryMistakeInReportsIsListed) {
  v1::AddReportsRequest asked;
  asked.set_household_id(served_.household);
  asked.set_event_id("supper");
  asked.set_request_id(freshRequest());
  const auto add = [&]() -> v1::Report& {
    v1::Report& one = *asked.add_reports();
    one.set_id("r" + std::to_string(asked.reports_size()));
    return one;
  };
  add().set_rise(0.2);
  add().set_dough_celsius(std::numeric_limits<double>::quiet_NaN());
  add().mutable_delayed_by()->set_seconds(-60);
  add().set_handed_to_member_id("stranger");
  add().set_started(false);
  add();
  add().set_dent_test(static_cast<v1::DentTest>(9));
  v1::Report& long7 = add();
  long7.set_finished(true);
  long7.set_note(std::string(501, 'x'));
  v1::Report& id8 = add();
  id8.set_finished(true);
  id8.set_id("not an id");
  const auto context = with(served_.token);
  v1::AddReportsResponse answer;
  const grpc::Status status =
      v1::ProgressService::NewStub(served_.channel())->AddReports(context.get(), asked, &answer);
  EXPECT_EQ(status.error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  for (const char* path :
       {"reports[0].rise", "reports[1].doughCelsius", "reports[2].delayedBy", "reports[3].handedToMemberId",
        "reports[4].started", "reports[5].what", "reports[6].dentTest", "reports[7].note", "reports[8].id"})
    EXPECT_THAT(status.error_message(), testing::HasSubstr(path));
}

}  // namespace
}  // namespace suppertide::service
