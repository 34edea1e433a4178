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
    served_.importDinner();
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

  grpc::Status tell(const v1::Report& report, v1::AddReportsResponse* answer = nullptr,
                    const std::string& token = "") {
    v1::AddReportsRequest asked;
    asked.set_household_id(served_.household);
    asked.set_event_id("supper");
    asked.set_request_id(freshRequest());
    *asked.add_reports() = report;
    v1::AddReportsResponse scratch;
    const auto context = with(token.empty() ? served_.token : token);
    return v1::ProgressService::NewStub(served_.channel())
        ->AddReports(context.get(), asked, answer == nullptr ? &scratch : answer);
  }
  static v1::Report about(const char* dish, const char* step, std::int64_t seconds = kNow) {
    v1::Report report;
    report.set_id(freshRequest());
    report.set_dish_id(dish);
    report.set_step_id(step);
    report.mutable_happen_time()->set_seconds(seconds);
    return report;
  }
  void expectRefused(const v1::Report& report, const std::string& path, const std::string& words) {
    const grpc::Status status = tell(report);
    EXPECT_EQ(status.error_code(), grpc::StatusCode::INVALID_ARGUMENT) << path;
    EXPECT_THAT(status.error_message(), testing::HasSubstr(path));
    EXPECT_THAT(status.error_message(), testing::HasSubstr(words));
  }

  static constexpr std::int64_t kNow = 1'800'000'000;
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

TEST_F(ProgressTest, TwoCooksWhoReportTheSameAgree) {
  const std::string other = served_.invite(v1::ROLE_COOK);
  v1::Report mine = about("roast", "season", kNow - 600);
  mine.set_finished(true);
  v1::Report theirs = about("roast", "season", kNow - 540);
  theirs.set_finished(true);
  v1::AddReportsResponse answer;
  ASSERT_TRUE(tell(mine).ok());
  ASSERT_TRUE(tell(theirs, &answer, other).ok());
  ASSERT_EQ(answer.progress().reports_size(), 2);
  EXPECT_EQ(answer.progress().reports(0).agrees_with_report_id(), "");
  EXPECT_EQ(answer.progress().reports(1).agrees_with_report_id(), mine.id());
  EXPECT_EQ(answer.progress().reports(1).happen_time().seconds(), kNow - 540);
}

TEST_F(ProgressTest, ANoteAloneIsAReport) {
  v1::Report note = about("roast", "season");
  note.set_note("the small knife is in the drying rack");
  EXPECT_TRUE(tell(note).ok());
  note.set_id(freshRequest());
  note.clear_dish_id();
  note.clear_step_id();
  EXPECT_TRUE(tell(note).ok());
}

TEST_F(ProgressTest, WhatCannotBeIsRefusedWithWords) {
  v1::Report ahead = about("roast", "season", kNow + 121);
  ahead.set_started(true);
  expectRefused(ahead, "reports[0].happenTime", "future");
  v1::Report unknown = about("roast", "juggle");
  unknown.set_started(true);
  expectRefused(unknown, "reports[0].stepId", "step of the dish");
  v1::Report dish = about("soup", "season");
  dish.set_started(true);
  expectRefused(dish, "reports[0].dishId", "dish of the event");
  v1::Report none = about("roast", "");
  none.set_started(true);
  expectRefused(none, "reports[0].stepId", "which step");
  v1::Report started = about("roast", "season", kNow - 60);
  started.set_started(true);
  ASSERT_TRUE(tell(started).ok());
  v1::Report finished = about("roast", "season", kNow - 120);
  finished.set_finished(true);
  expectRefused(finished, "reports[0].happenTime", "before the step was started");
  v1::Report left = about("roast", "season");
  left.set_left_over_serving_count(2);
  expectRefused(left, "reports[0].stepId", "must be empty");
}

TEST_F(ProgressTest, AReportIsTakenBackOnce) {
  v1::Report started = about("roast", "season", kNow - 60);
  started.set_started(true);
  ASSERT_TRUE(tell(started).ok());
  v1::Report undo = about("", "");
  undo.set_undone_report_id(started.id());
  ASSERT_TRUE(tell(undo).ok());
  EXPECT_TRUE(tell(undo).ok()) << "the same report told again";
  v1::Report twice = undo;
  twice.set_id(freshRequest());
  expectRefused(twice, "reports[0].undoneReportId", "already");
  v1::Report back = about("", "");
  back.set_undone_report_id(undo.id());
  expectRefused(back, "reports[0].undoneReportId", "itself an undo");
  v1::Report nothing = about("", "");
  nothing.set_undone_report_id("none");
  expectRefused(nothing, "reports[0].undoneReportId", "report of this event");
}

TEST_F(ProgressTest, AReportToldLateKeepsItsTrueTime) {
  v1::Report started = about("roast", "season", kNow - 3 * 3600);
  started.set_started(true);
  v1::AddReportsResponse answer;
  ASSERT_TRUE(tell(started, &answer).ok());
  EXPECT_EQ(answer.progress().reports(0).happen_time().seconds(), kNow - 3 * 3600);
  EXPECT_EQ(answer.progress().reports(0).receive_time().seconds(), kNow);
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
