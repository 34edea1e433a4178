#include <gtest/gtest.h>

#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

class CopyEventTest : public testing::Test {
 protected:
  void SetUp() override {
    served_.found();
    served_.importDinner();
  }
  grpc::Status copy(const std::string& event, const std::string& date, v1::WriteEventResponse* answer) {
    v1::CopyEventRequest asked;
    asked.set_household_id(served_.household);
    asked.set_event_id(event);
    asked.set_date(date);
    asked.set_display_name("Another supper");
    asked.set_request_id(freshRequest());
    const auto context = with(served_.token);
    return v1::EventService::NewStub(served_.channel())->CopyEvent(context.get(), asked, answer);
  }
  Served served_;
};

TEST_F(CopyEventTest, KeepsTheHourOnTheClockAcrossAClockChange) {
  const v1::Event old = compose::smallDinner().events(0);
  v1::WriteEventResponse answer;
  const grpc::Status status = copy("supper", "2027-04-04", &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  const v1::Event& made = answer.event();
  EXPECT_EQ(made.display_name(), "Another supper");
  EXPECT_NE(made.id(), "supper");
  EXPECT_EQ(made.dishes_size(), old.dishes_size());
  EXPECT_EQ(made.guests_size(), old.guests_size());
  // Four weeks on, an hour less of absolute time: summer time has come.
  EXPECT_EQ(made.courses(0).serving_time().seconds() - old.courses(0).serving_time().seconds(),
            28 * 24 * 3600 - 3600);
  EXPECT_EQ(made.work_start_time().seconds() - old.work_start_time().seconds(), 28 * 24 * 3600 - 3600);
}

TEST_F(CopyEventTest, WhatIsNoDateOrNoEventIsRefused) {
  v1::WriteEventResponse answer;
  for (const char* date : {"", "tomorrow", "2027-13-01", "2027-02-30", "27-03-01"})
    EXPECT_EQ(copy("supper", date, &answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT) << date;
  EXPECT_EQ(copy("breakfast", "2027-04-04", &answer).error_code(), grpc::StatusCode::NOT_FOUND);
}

}  // namespace
}  // namespace suppertide::service
