#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <httplib.h>

#include "suppertide/v1/calendar_service.grpc.pb.h"
#include "tests/service/supper.h"

namespace suppertide::service {
namespace {

class CalendarAddressTest : public testing::Test {
 protected:
  CalendarAddressTest() : supper_(v1::LIVE_CORRECTION_AT_ONCE, {}, "127.0.0.1:0") {
    supper_.makePlan();
    stub_ = v1::CalendarService::NewStub(supper_.served().channel());
  }
  v1::CreateCalendarAddressResponse make(const std::string& member, const std::string& token,
                                         grpc::StatusCode wanted) {
    v1::CreateCalendarAddressRequest asked;
    asked.set_household_id(supper_.served().household);
    asked.mutable_address()->set_display_name("phone");
    asked.mutable_address()->set_event_id("supper");
    asked.mutable_address()->set_member_id(member);
    asked.set_request_id(freshRequest());
    v1::CreateCalendarAddressResponse answer;
    const auto context = with(token);
    const grpc::Status status = stub_->CreateCalendarAddress(context.get(), asked, &answer);
    EXPECT_EQ(status.error_code(), wanted) << status.error_message();
    return answer;
  }
  httplib::Result fetch(const std::string& path) {
    httplib::Client client("127.0.0.1", supper_.served().server().calendarPort());
    client.set_connection_timeout(5);
    client.set_read_timeout(5);
    return client.Get(path);
  }

  Supper supper_;
  std::unique_ptr<v1::CalendarService::Stub> stub_;
};

TEST_F(CalendarAddressTest, ServesThePlanToWhoKnowsTheSecret) {
  const auto made = make("", supper_.served().token, grpc::StatusCode::OK);
  EXPECT_EQ(made.port(), supper_.served().server().calendarPort());
  EXPECT_EQ(made.address().secret_hash(), "");
  const auto answer = fetch(made.path());
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->status, 200);
  EXPECT_THAT(answer->get_header_value("Content-Type"), testing::StartsWith("text/calendar"));
  EXPECT_THAT(answer->body, testing::StartsWith("BEGIN:VCALENDAR\r\n"));
  EXPECT_THAT(answer->body, testing::HasSubstr("Season the roast"));
}

TEST_F(CalendarAddressTest, AWrongSecretAndAWrongAddressLookAlike) {
  const auto made = make("", supper_.served().token, grpc::StatusCode::OK);
  std::string guess = made.path();
  guess[guess.size() - 6] = guess[guess.size() - 6] == 'A' ? 'B' : 'A';
  for (const std::string& path : {guess, std::string("/calendar/x/y/z.ics"), std::string("/"),
                                  made.path() + "x", std::string("/calendar/../../etc/passwd")}) {
    const auto answer = fetch(path);
    ASSERT_TRUE(answer) << path;
    EXPECT_EQ(answer->status, 404) << path;
    EXPECT_EQ(answer->body, "") << path;
  }
}

TEST_F(CalendarAddressTest, WhoGuessesOnIsKeptWaiting) {
  for (int guess = 0; guess < 31; ++guess) fetch("/calendar/x/y/" + std::to_string(guess) + ".ics");
  EXPECT_EQ(fetch("/calendar/x/y/z.ics")->status, 429);
}

TEST_F(CalendarAddressTest, ARevokedAddressIsNotFoundAnyMore) {
  const auto made = make("", supper_.served().token, grpc::StatusCode::OK);
  v1::RevokeCalendarAddressRequest asked;
  asked.set_household_id(supper_.served().household);
  asked.set_address_id(made.address().id());
  asked.set_request_id(freshRequest());
  v1::RevokeCalendarAddressResponse answer;
  const auto context = with(supper_.served().token);
  ASSERT_TRUE(stub_->RevokeCalendarAddress(context.get(), asked, &answer).ok());
  EXPECT_EQ(fetch(made.path())->status, 404);
}

TEST_F(CalendarAddressTest, ACookMakesAddressesOfTheirOwnOnly) {
  const std::string cook = supper_.served().invite(v1::ROLE_COOK);
  make("ana", cook, grpc::StatusCode::PERMISSION_DENIED);
  make("", cook, grpc::StatusCode::PERMISSION_DENIED);
}

TEST_F(CalendarAddressTest, TheAddressFollowsThePlan) {
  const auto made = make("", supper_.served().token, grpc::StatusCode::OK);
  const std::string before = fetch(made.path())->body;
  const v1::Plan plan = supper_.stored();
  Follower follower(supper_.served(), supper_.served().token);
  supper_.timeIs(Supper::startOf(plan, "roast/season") - 1200);
  v1::Report late = Supper::about("roast/season");
  late.mutable_delayed_by()->set_seconds(2400);
  ASSERT_TRUE(supper_.tell(late).ok());
  follower.nextPlan();
  const std::string after = fetch(made.path())->body;
  EXPECT_NE(after, before);
  EXPECT_THAT(after, testing::HasSubstr("SEQUENCE:1\r\n"));
}

TEST(CalendarServiceTest, WithoutAnAddressToServeOnOnlyFilesAreToBeHad) {
  Supper supper;
  supper.makePlan();
  const auto stub = v1::CalendarService::NewStub(supper.served().channel());
  v1::ExportCalendarRequest asked;
  asked.set_household_id(supper.served().household);
  asked.set_event_id("supper");
  v1::ExportCalendarResponse answer;
  const auto first = with(supper.served().token);
  ASSERT_TRUE(stub->ExportCalendar(first.get(), asked, &answer).ok());
  EXPECT_THAT(answer.calendar(), testing::StartsWith("BEGIN:VCALENDAR\r\n"));
  v1::CreateCalendarAddressRequest make;
  make.set_household_id(supper.served().household);
  make.mutable_address()->set_display_name("phone");
  make.set_request_id(freshRequest());
  v1::CreateCalendarAddressResponse none;
  const auto second = with(supper.served().token);
  EXPECT_EQ(stub->CreateCalendarAddress(second.get(), make, &none).error_code(),
            grpc::StatusCode::FAILED_PRECONDITION);
  asked.set_event_id("breakfast");
  const auto third = with(supper.served().token);
  EXPECT_EQ(stub->ExportCalendar(third.get(), asked, &answer).error_code(), grpc::StatusCode::NOT_FOUND);
}

}  // namespace
}  // namespace suppertide::service
