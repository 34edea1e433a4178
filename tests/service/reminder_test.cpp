#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <optional>

#include "suppertide/v1/reminder_service.grpc.pb.h"
#include "tests/service/supper.h"

namespace suppertide::service {
namespace {

// One device that listens for reminders.
class Ear {
 public:
  Ear(Served& served, const std::string& token) : context_(with(token)) {
    stub_ = v1::ReminderService::NewStub(served.channel());
    v1::WatchRemindersRequest asked;
    asked.set_household_id(served.household);
    stream_ = stub_->WatchReminders(context_.get(), asked);
  }
  ~Ear() { close(); }
  void close() { context_->TryCancel(); }
  // The next message that `wanted` is true of; the ones before it are passed over.
  template <typename Wanted>
  v1::WatchRemindersResponse next(Wanted wanted) {
    v1::WatchRemindersResponse message;
    while (stream_->Read(&message))
      if (wanted(message)) return message;
    ADD_FAILURE() << "the stream ended: " << stream_->Finish().error_message();
    return {};
  }
  v1::WatchRemindersResponse first() {
    return next([](const v1::WatchRemindersResponse&) { return true; });
  }
  v1::DueReminder nextDue(v1::ReminderKind kind) {
    return next([&](const v1::WatchRemindersResponse& m) {
             return m.has_due() && m.due().reminder().kind() == kind;
           })
        .due();
  }

 private:
  std::unique_ptr<grpc::ClientContext> context_;
  std::unique_ptr<v1::ReminderService::Stub> stub_;
  std::unique_ptr<grpc::ClientReader<v1::WatchRemindersResponse>> stream_;
};

class ReminderTest : public testing::Test {
 protected:
  ReminderTest() : plan_(supper_.makePlan()) {
    supper_.timeIs(plan_.meta().create_time().seconds());
    stub_ = v1::ReminderService::NewStub(supper_.served().channel());
  }

  // Of Ana, who is the host here; another device of hers.
  std::string anotherDevice() {
    const auto stub = v1::HouseholdService::NewStub(supper_.served().channel());
    v1::CreateInvitationRequest asked;
    asked.set_household_id(supper_.served().household);
    asked.set_role(v1::ROLE_HOST);
    asked.set_member_id("ana");
    asked.set_request_id(freshRequest());
    v1::CreateInvitationResponse invitation;
    const auto first = with(supper_.served().token);
    EXPECT_TRUE(stub->CreateInvitation(first.get(), asked, &invitation).ok());
    v1::JoinHouseholdRequest join;
    join.set_code(invitation.code());
    join.set_device_name("phone");
    join.set_request_id(freshRequest());
    v1::JoinHouseholdResponse joined;
    const auto second = with("");
    EXPECT_TRUE(stub->JoinHousehold(second.get(), join, &joined).ok());
    return joined.device_token();
  }

  // Ana's first step of the kind there is, with hands.
  const v1::PlannedStep& anas() const {
    for (const v1::PlannedStep& step : plan_.steps())
      if (step.cook_member_id() == "ana" && step.attention_percent() > 0) return step;
    ADD_FAILURE() << "Ana has nothing to do";
    return plan_.steps(0);
  }

  grpc::Status settle(const std::string& id) {
    v1::SettleRemindersRequest asked;
    asked.set_household_id(supper_.served().household);
    asked.add_reminder_ids(id);
    asked.set_request_id(freshRequest());
    v1::SettleRemindersResponse answer;
    const auto context = with(supper_.served().token);
    return stub_->SettleReminders(context.get(), asked, &answer);
  }
  grpc::Status snooze(const std::string& id, int minutes) {
    v1::SnoozeReminderRequest asked;
    asked.set_household_id(supper_.served().household);
    asked.set_reminder_id(id);
    asked.mutable_snooze_duration()->set_seconds(minutes * kMinute);
    asked.set_request_id(freshRequest());
    v1::SnoozeReminderResponse answer;
    const auto context = with(supper_.served().token);
    return stub_->SnoozeReminder(context.get(), asked, &answer);
  }

  Supper supper_;
  v1::Plan plan_;
  std::unique_ptr<v1::ReminderService::Stub> stub_;
};

TEST_F(ReminderTest, TellsWhatIsToComeFirst) {
  Ear ear(supper_.served(), supper_.served().token);
  const auto message = ear.first();
  ASSERT_TRUE(message.has_upcoming());
  ASSERT_GT(message.upcoming().reminders_size(), 3);
  for (int r = 1; r < message.upcoming().reminders_size(); ++r)
    EXPECT_LE(message.upcoming().reminders(r - 1).remind_time().seconds(),
              message.upcoming().reminders(r).remind_time().seconds());
}

TEST_F(ReminderTest, AStepIsToldSoonAndWhenItIsDue) {
  Ear ear(supper_.served(), supper_.served().token);
  ear.first();
  const std::int64_t start = anas().start_time().seconds();
  supper_.timeIs(start - 10 * kMinute);
  const v1::DueReminder soon = ear.nextDue(v1::REMINDER_KIND_STEP_SOON);
  EXPECT_EQ(soon.reminder().step_id(), anas().id());
  EXPECT_TRUE(soon.rings());
  supper_.timeIs(start);
  const v1::DueReminder due = ear.nextDue(v1::REMINDER_KIND_STEP_DUE);
  EXPECT_EQ(due.reminder().step_id(), anas().id());
  EXPECT_EQ(due.reminder().due_time().seconds(), start);
}

TEST_F(ReminderTest, OneOfTwoDevicesRingsAndBothShow) {
  Ear laptop(supper_.served(), supper_.served().token);
  laptop.first();
  Ear phone(supper_.served(), anotherDevice());
  phone.first();
  supper_.timeIs(anas().start_time().seconds());
  const v1::DueReminder onLaptop = laptop.nextDue(v1::REMINDER_KIND_STEP_DUE);
  const v1::DueReminder onPhone = phone.nextDue(v1::REMINDER_KIND_STEP_DUE);
  EXPECT_EQ(onLaptop.reminder().id(), onPhone.reminder().id());
  EXPECT_FALSE(onLaptop.rings());
  EXPECT_TRUE(onPhone.rings()) << "it came last";
}

TEST_F(ReminderTest, WhatOneDeviceSettlesIsTakenFromTheOther) {
  Ear laptop(supper_.served(), supper_.served().token);
  laptop.first();
  Ear phone(supper_.served(), anotherDevice());
  phone.first();
  supper_.timeIs(anas().start_time().seconds());
  const std::string id = laptop.nextDue(v1::REMINDER_KIND_STEP_DUE).reminder().id();
  phone.nextDue(v1::REMINDER_KIND_STEP_DUE);
  ASSERT_TRUE(settle(id).ok());
  const auto gone = [&](const v1::WatchRemindersResponse& m) {
    return m.has_settled() && m.settled().reminder_id() == id;
  };
  phone.next(gone);
  laptop.next(gone);
}

TEST_F(ReminderTest, WhatWasToldIsNotToldAgainToADeviceThatComesLater) {
  std::string told;
  {
    Ear laptop(supper_.served(), supper_.served().token);
    laptop.first();
    supper_.timeIs(anas().start_time().seconds());
    told = laptop.nextDue(v1::REMINDER_KIND_STEP_DUE).reminder().id();
  }
  supper_.timeIs(anas().start_time().seconds() + kMinute);
  Ear phone(supper_.served(), anotherDevice());
  const auto message = phone.first();
  ASSERT_TRUE(message.has_upcoming());
  supper_.timeIs(anas().start_time().seconds() + 24 * 3600);
  const auto next = phone.next([](const v1::WatchRemindersResponse& m) { return m.has_due(); });
  EXPECT_NE(next.due().reminder().id(), told);
}

TEST_F(ReminderTest, WhatCameWhileNobodyListenedIsSummarised) {
  supper_.timeIs(anas().start_time().seconds() + kMinute);
  Ear ear(supper_.served(), supper_.served().token);
  ear.first();
  const auto missed = ear.next([](const v1::WatchRemindersResponse&) { return true; });
  ASSERT_TRUE(missed.has_missed());
  const auto& all = missed.missed().reminders();
  EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const v1::Reminder& r) {
    return r.kind() == v1::REMINDER_KIND_STEP_DUE && r.step_id() == anas().id();
  }));
  ear.close();
  // Once: whoever comes next hears nothing of it.
  Ear again(supper_.served(), supper_.served().token);
  again.first();
  supper_.timeIs(anas().start_time().seconds() + 24 * 3600);
  EXPECT_TRUE(again.next([](const v1::WatchRemindersResponse& m) { return !m.has_upcoming(); }).has_due());
}

TEST_F(ReminderTest, ASnoozedReminderComesAgainLater) {
  Ear ear(supper_.served(), supper_.served().token);
  ear.first();
  const std::int64_t start = anas().start_time().seconds();
  supper_.timeIs(start);
  const std::string id = ear.nextDue(v1::REMINDER_KIND_STEP_DUE).reminder().id();
  ASSERT_TRUE(snooze(id, 5).ok());
  ear.next([&](const v1::WatchRemindersResponse& m) { return m.settled().reminder_id() == id; });
  supper_.timeIs(start + 5 * kMinute);
  EXPECT_EQ(ear.next([&](const v1::WatchRemindersResponse& m) { return m.due().reminder().id() == id; })
                .due()
                .reminder()
                .remind_time()
                .seconds(),
            start + 5 * kMinute);
  EXPECT_EQ(snooze("none", 5).error_code(), grpc::StatusCode::NOT_FOUND);
  EXPECT_EQ(snooze(id, 0).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
}

TEST_F(ReminderTest, WhatIsReportedIsNotToldAnyMore) {
  Ear ear(supper_.served(), supper_.served().token);
  ear.first();
  const v1::PlannedStep step = anas();
  supper_.timeIs(step.start_time().seconds() - 5 * kMinute);
  ear.nextDue(v1::REMINDER_KIND_STEP_SOON);
  v1::Report started = Supper::about(step.id());
  started.set_started(true);
  ASSERT_TRUE(supper_.tell(started).ok());
  ear.next([](const v1::WatchRemindersResponse& m) { return m.has_settled(); });
  v1::ListRemindersRequest asked;
  asked.set_household_id(supper_.served().household);
  v1::ListRemindersResponse answer;
  const auto context = with(supper_.served().token);
  ASSERT_TRUE(stub_->ListReminders(context.get(), asked, &answer).ok());
  for (const v1::Reminder& reminder : answer.reminders())
    EXPECT_FALSE(reminder.step_id() == step.id() && reminder.kind() == v1::REMINDER_KIND_STEP_DUE);
}

TEST_F(ReminderTest, AMovedStepIsToldAtItsNewTime) {
  Ear ear(supper_.served(), supper_.served().token);
  ear.first();
  const v1::PlannedStep step = anas();
  supper_.timeIs(step.start_time().seconds() - 5 * kMinute);
  ear.nextDue(v1::REMINDER_KIND_STEP_SOON);
  Follower follower(supper_.served(), supper_.served().token);
  v1::Report late = Supper::about(step.id());
  late.mutable_delayed_by()->set_seconds(30 * kMinute);
  ASSERT_TRUE(supper_.tell(late).ok());
  const std::int64_t start = Supper::startOf(follower.nextPlan(), step.id());
  ASSERT_GE(start, step.start_time().seconds() + 30 * kMinute);
  // Until the board knows the new plan the old time could still ring.
  ear.next([](const v1::WatchRemindersResponse& m) { return m.has_settled(); });
  supper_.timeIs(start - 10 * kMinute);
  EXPECT_EQ(ear.nextDue(v1::REMINDER_KIND_STEP_SOON).reminder().due_time().seconds(), start);
}

TEST_F(ReminderTest, InQuietHoursNothingRings) {
  v1::UpdateHouseholdRequest asked;
  asked.mutable_household()->set_id(supper_.served().household);
  v1::Member& ana = *asked.mutable_household()->add_members();
  ana.set_id("ana");
  ana.set_display_name("Ana");
  ana.set_role(v1::ROLE_HOST);
  ana.mutable_quiet()->set_start("00:00");
  ana.mutable_quiet()->set_limit("24:00");
  v1::Member& rui = *asked.mutable_household()->add_members();
  rui.set_id("rui");
  rui.set_display_name("Rui");
  rui.set_role(v1::ROLE_COOK);
  asked.mutable_update_mask()->add_paths("members");
  asked.set_request_id(freshRequest());
  v1::WriteHouseholdResponse written;
  const auto context = with(supper_.served().token);
  const grpc::Status status = v1::HouseholdService::NewStub(supper_.served().channel())
                                  ->UpdateHousehold(context.get(), asked, &written);
  ASSERT_TRUE(status.ok()) << status.error_message();
  Ear ear(supper_.served(), supper_.served().token);
  ear.first();
  supper_.timeIs(anas().start_time().seconds());
  const v1::DueReminder due = ear.nextDue(v1::REMINDER_KIND_STEP_DUE);
  EXPECT_FALSE(due.rings());
  EXPECT_TRUE(due.reminder().quiet());
}

}  // namespace
}  // namespace suppertide::service
