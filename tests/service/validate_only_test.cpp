// What every write does with validate_only: the same checks and the same answer, and nothing stored. Of
// documents see contract_test.cpp.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "suppertide/v1/calendar_service.grpc.pb.h"
#include "suppertide/v1/reminder_service.grpc.pb.h"
#include "suppertide/v1/shopping_service.grpc.pb.h"
#include "tests/service/served.h"
#include "tests/service/supper.h"

namespace suppertide::service {
namespace {

class ValidateOnlyTest : public ::testing::Test {
 protected:
  void SetUp() override { plan_ = supper_.makePlan(); }

  Served& served() { return supper_.served(); }
  std::int64_t present() {
    return served().server().backend().store().revision(served().household).value_or(-1);
  }
  template <typename Request>
  Request asked() {
    Request request;
    request.set_household_id(served().household);
    request.set_request_id(freshRequest());
    return request;
  }
  // Tries it, then does it with the same request id: only the second time something changes.
  template <typename Stub, typename Request, typename Answer>
  void tryThenDo(Stub& stub, grpc::Status (Stub::*call)(grpc::ClientContext*, const Request&, Answer*),
                 Request request, Answer& tried, Answer& done) {
    const std::int64_t before = present();
    request.set_validate_only(true);
    const auto trying = with(served().token);
    const grpc::Status first = (stub.*call)(trying.get(), request, &tried);
    ASSERT_TRUE(first.ok()) << first.error_message();
    EXPECT_EQ(present(), before);
    request.set_validate_only(false);
    const auto doing = with(served().token);
    const grpc::Status second = (stub.*call)(doing.get(), request, &done);
    ASSERT_TRUE(second.ok()) << second.error_message();
  }

  Supper supper_{v1::LIVE_CORRECTION_OFF, {}, "127.0.0.1:0"};
  v1::Plan plan_;
};

TEST_F(ValidateOnlyTest, Reports) {
  const auto stub = v1::ProgressService::NewStub(served().channel());
  auto request = asked<v1::AddReportsRequest>();
  request.set_event_id("supper");
  supper_.timeIs(plan_.steps(0).start_time().seconds());
  v1::Report& report = *request.add_reports() = Supper::about(plan_.steps(0).id());
  report.set_started(true);
  v1::AddReportsResponse tried, done;
  tryThenDo(*stub, &v1::ProgressService::Stub::AddReports, request, tried, done);
  EXPECT_EQ(tried.progress().reports_size(), 1);
  EXPECT_EQ(done.progress().reports_size(), 1);
  EXPECT_GT(done.revision(), tried.revision());
}

TEST_F(ValidateOnlyTest, ShoppingWithItsMistakesListed) {
  const auto stub = v1::ShoppingService::NewStub(served().channel());
  auto request = asked<v1::EditShoppingRequest>();
  request.set_event_id("supper");
  v1::OwnItem& own = *request.add_edits()->mutable_own_item();
  own.set_id("candles");
  own.set_name("Candles");
  v1::EditShoppingResponse tried, done;
  tryThenDo(*stub, &v1::ShoppingService::Stub::EditShopping, request, tried, done);
  EXPECT_EQ(tried.shopping().own_items_size(), 1);
  EXPECT_EQ(done.shopping().own_items_size(), 1);
  auto wrong = asked<v1::EditShoppingRequest>();
  wrong.set_event_id("supper");
  wrong.add_edits()->mutable_tick()->set_item_id("no such line");
  wrong.set_validate_only(true);
  EXPECT_EQ(stub->EditShopping(with(served().token).get(), wrong, &tried).error_code(),
            grpc::StatusCode::INVALID_ARGUMENT);
}

TEST_F(ValidateOnlyTest, RemindersSnoozedAndSettled) {
  const auto stub = v1::ReminderService::NewStub(served().channel());
  supper_.timeIs(plan_.steps(0).start_time().seconds() - 3600);
  v1::ListRemindersRequest list;
  list.set_household_id(served().household);
  const auto remindTime = [&](const std::string& id) {
    v1::ListRemindersResponse answer;
    EXPECT_TRUE(stub->ListReminders(with(served().token).get(), list, &answer).ok());
    for (const v1::Reminder& reminder : answer.reminders())
      if (reminder.id() == id || id.empty())
        return std::make_pair(reminder.id(), reminder.remind_time().seconds());
    return std::make_pair(std::string(), std::int64_t{0});
  };
  const auto [id, time] = remindTime("");
  ASSERT_FALSE(id.empty());
  auto snooze = asked<v1::SnoozeReminderRequest>();
  snooze.set_reminder_id(id);
  snooze.mutable_snooze_duration()->set_seconds(7200);
  snooze.set_validate_only(true);
  v1::SnoozeReminderResponse snoozed;
  ASSERT_TRUE(stub->SnoozeReminder(with(served().token).get(), snooze, &snoozed).ok());
  EXPECT_GT(snoozed.remind_time().seconds(), 0);
  EXPECT_EQ(remindTime(id).second, time);
  auto settle = asked<v1::SettleRemindersRequest>();
  settle.add_reminder_ids(id);
  v1::SettleRemindersResponse tried, done;
  tryThenDo(*stub, &v1::ReminderService::Stub::SettleReminders, settle, tried, done);
  EXPECT_EQ(remindTime(id).first, "");
}

TEST_F(ValidateOnlyTest, CalendarAddressesMadeAndRevoked) {
  const auto stub = v1::CalendarService::NewStub(served().channel());
  auto make = asked<v1::CreateCalendarAddressRequest>();
  make.mutable_address()->set_display_name("phone");
  v1::CreateCalendarAddressResponse tried, done;
  tryThenDo(*stub, &v1::CalendarService::Stub::CreateCalendarAddress, make, tried, done);
  EXPECT_EQ(tried.path(), "");
  EXPECT_NE(done.path(), "");
  auto revoke = asked<v1::RevokeCalendarAddressRequest>();
  revoke.set_address_id(done.address().id());
  v1::RevokeCalendarAddressResponse wouldRevoke, revoked;
  tryThenDo(*stub, &v1::CalendarService::Stub::RevokeCalendarAddress, revoke, wouldRevoke, revoked);
  EXPECT_GT(revoked.revision(), wouldRevoke.revision());
}

TEST_F(ValidateOnlyTest, AnInvitationItsUseAndADeviceTakenAway) {
  const auto stub = v1::HouseholdService::NewStub(served().channel());
  auto invite = asked<v1::CreateInvitationRequest>();
  invite.set_role(v1::ROLE_COOK);
  v1::CreateInvitationResponse tried, invitation;
  tryThenDo(*stub, &v1::HouseholdService::Stub::CreateInvitation, invite, tried, invitation);
  EXPECT_EQ(tried.code(), "");
  EXPECT_EQ(tried.expire_time().seconds(), invitation.expire_time().seconds());
  v1::JoinHouseholdRequest join;
  join.set_code(invitation.code());
  join.set_display_name("Kit");
  join.set_request_id(freshRequest());
  v1::JoinHouseholdResponse would, joined;
  tryThenDo(*stub, &v1::HouseholdService::Stub::JoinHousehold, join, would, joined);
  EXPECT_EQ(would.household_id(), served().household);
  EXPECT_EQ(would.member_id(), joined.member_id());
  EXPECT_EQ(would.device_token(), "");
  join.set_code("AAAA-BBBB-CCCC");
  join.set_validate_only(true);
  EXPECT_EQ(stub->JoinHousehold(with("").get(), join, &would).error_code(),
            grpc::StatusCode::PERMISSION_DENIED);
  auto revoke = asked<v1::RevokeDeviceRequest>();
  revoke.set_device_id(joined.device_id());
  revoke.set_validate_only(true);
  v1::RevokeDeviceResponse gone;
  ASSERT_TRUE(stub->RevokeDevice(with(served().token).get(), revoke, &gone).ok());
  v1::WhoAmIResponse me;
  EXPECT_TRUE(stub->WhoAmI(with(joined.device_token()).get(), {}, &me).ok());
  revoke.set_device_id("none");
  EXPECT_EQ(stub->RevokeDevice(with(served().token).get(), revoke, &gone).error_code(),
            grpc::StatusCode::NOT_FOUND);
}

TEST(ValidateOnlyHouseholdTest, TheHostCodeIsNotUsedUp) {
  Served served;
  const auto stub = v1::HouseholdService::NewStub(served.channel());
  v1::CreateHouseholdRequest request;
  request.set_host_code(served.server().hostCode());
  request.mutable_household()->set_display_name("Harbour Lane");
  request.mutable_household()->set_time_zone("Europe/Lisbon");
  request.set_request_id(freshRequest());
  request.set_validate_only(true);
  v1::CreateHouseholdResponse answer;
  ASSERT_TRUE(stub->CreateHousehold(with("").get(), request, &answer).ok());
  EXPECT_EQ(answer.device_token(), "");
  EXPECT_EQ(answer.household().members(0).role(), v1::ROLE_HOST);
  request.set_validate_only(false);
  ASSERT_TRUE(stub->CreateHousehold(with("").get(), request, &answer).ok());
  EXPECT_NE(answer.device_token(), "");
}

TEST(ValidateOnlyProposalTest, AProposalTriedWaitsOn) {
  Supper supper(v1::LIVE_CORRECTION_ASK_FIRST);
  const v1::Plan before = supper.makePlan();
  Follower follower(supper.served(), supper.served().token);
  supper.timeIs(Supper::startOf(before, "roast/season") - 20 * 60);
  v1::Report late = Supper::about("roast/season");
  late.mutable_delayed_by()->set_seconds(40 * 60);
  ASSERT_TRUE(supper.tell(late).ok());
  const v1::PlanProposal proposal =
      follower.next([](const v1::Change& c) { return c.has_plan_proposal(); }).plan_proposal();
  const auto stub = v1::PlanService::NewStub(supper.served().channel());
  v1::AcceptProposalRequest accept;
  accept.set_household_id(supper.served().household);
  accept.set_event_id("supper");
  accept.set_etag(proposal.meta().etag());
  accept.set_request_id(freshRequest());
  accept.set_validate_only(true);
  v1::AcceptProposalResponse tried;
  ASSERT_TRUE(stub->AcceptProposal(with(supper.served().token).get(), accept, &tried).ok());
  EXPECT_EQ(Supper::startOf(tried.plan(), "roast/season"), Supper::startOf(proposal.plan(), "roast/season"));
  EXPECT_EQ(supper.stored().meta().etag(), before.meta().etag());
  v1::DismissProposalRequest dismiss;
  dismiss.set_household_id(supper.served().household);
  dismiss.set_event_id("supper");
  dismiss.set_request_id(freshRequest());
  dismiss.set_validate_only(true);
  v1::DismissProposalResponse dismissed;
  ASSERT_TRUE(stub->DismissProposal(with(supper.served().token).get(), dismiss, &dismissed).ok());
  accept.set_validate_only(false);
  EXPECT_TRUE(stub->AcceptProposal(with(supper.served().token).get(), accept, &tried).ok());
}

}  // namespace
}  // namespace suppertide::service
