#include <gtest/gtest.h>

#include <thread>

#include "tests/service/served.h"

namespace suppertide::service {
namespace {

grpc::Status create(Served& served, const std::string& code, v1::CreateHouseholdResponse* answer) {
  v1::CreateHouseholdRequest asked;
  asked.set_host_code(code);
  asked.mutable_household()->set_display_name("Harbour Lane");
  asked.mutable_household()->set_time_zone("Europe/Lisbon");
  asked.set_request_id(freshRequest());
  const auto context = with("");
  return v1::HouseholdService::NewStub(served.channel())->CreateHousehold(context.get(), asked, answer);
}

TEST(PeopleTest, TheHostCodeMakesAHouseholdOnce) {
  Served served;
  const std::string code = served.server().hostCode();
  v1::CreateHouseholdResponse answer;
  ASSERT_TRUE(create(served, code, &answer).ok());
  EXPECT_FALSE(answer.device_token().empty());
  EXPECT_EQ(answer.household().members(0).role(), v1::ROLE_HOST);
  EXPECT_EQ(create(served, code, &answer).error_code(), grpc::StatusCode::PERMISSION_DENIED);
}

TEST(PeopleTest, TheCodeMayBeTypedInSmallLettersWithoutDashes) {
  Served served;
  std::string code;
  for (const char c : served.server().hostCode())
    if (c != '-') code += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  v1::CreateHouseholdResponse answer;
  EXPECT_TRUE(create(served, code, &answer).ok());
}

TEST(PeopleTest, GuessingIsSlowedDown) {
  Served served;
  v1::CreateHouseholdResponse answer;
  for (int guess = 0; guess < 10; ++guess)
    EXPECT_EQ(create(served, "AAAA-BBBB-CCCC", &answer).error_code(), grpc::StatusCode::PERMISSION_DENIED);
  EXPECT_EQ(create(served, "AAAA-BBBB-CCCC", &answer).error_code(), grpc::StatusCode::RESOURCE_EXHAUSTED);
  served.clock().advance(std::chrono::seconds(61));
  EXPECT_TRUE(create(served, served.server().hostCode(), &answer).ok());
}

TEST(PeopleTest, AnInvitationIsGoodOnceAndForItsTime) {
  Served served;
  served.found();
  const auto stub = v1::HouseholdService::NewStub(served.channel());
  v1::CreateInvitationRequest asked;
  asked.set_household_id(served.household);
  asked.set_role(v1::ROLE_COOK);
  asked.set_request_id(freshRequest());
  v1::CreateInvitationResponse invitation;
  const auto first = with(served.token);
  ASSERT_TRUE(stub->CreateInvitation(first.get(), asked, &invitation).ok());
  const auto join = [&](const std::string& code) {
    v1::JoinHouseholdRequest joining;
    joining.set_code(code);
    joining.set_display_name("Rui");
    joining.set_request_id(freshRequest());
    v1::JoinHouseholdResponse joined;
    const auto context = with("");
    return stub->JoinHousehold(context.get(), joining, &joined).error_code();
  };
  EXPECT_EQ(join(invitation.code()), grpc::StatusCode::OK);
  EXPECT_EQ(join(invitation.code()), grpc::StatusCode::PERMISSION_DENIED);
  const auto second = with(served.token);
  asked.set_request_id(freshRequest());
  ASSERT_TRUE(stub->CreateInvitation(second.get(), asked, &invitation).ok());
  served.clock().advance(std::chrono::hours(25));
  EXPECT_EQ(join(invitation.code()), grpc::StatusCode::PERMISSION_DENIED);
}

TEST(PeopleTest, ARevokedDeviceIsKnownNoMoreAndItsStreamEnds) {
  Served served;
  served.found();
  const std::string cook = served.invite(v1::ROLE_COOK);
  const auto stub = v1::HouseholdService::NewStub(served.channel());
  v1::WhoAmIResponse who;
  const auto first = with(cook);
  ASSERT_TRUE(stub->WhoAmI(first.get(), {}, &who).ok());
  v1::WatchRequest watch;
  watch.set_household_id(served.household);
  const auto watching = with(cook);
  const auto stream = v1::SyncService::NewStub(served.channel())->Watch(watching.get(), watch);
  v1::WatchResponse message;
  while (stream->Read(&message) && !message.has_bookmark()) {
  }
  v1::RevokeDeviceRequest asked;
  asked.set_household_id(served.household);
  asked.set_device_id(who.device_id());
  v1::RevokeDeviceResponse answer;
  const auto second = with(served.token);
  ASSERT_TRUE(stub->RevokeDevice(second.get(), asked, &answer).ok());
  while (stream->Read(&message)) {
  }
  EXPECT_EQ(stream->Finish().error_code(), grpc::StatusCode::UNAUTHENTICATED);
  const auto third = with(cook);
  EXPECT_EQ(stub->WhoAmI(third.get(), {}, &who).error_code(), grpc::StatusCode::UNAUTHENTICATED);
}

TEST(PeopleTest, AHostCannotTakeTheirOwnRoleAway) {
  Served served;
  served.found();
  v1::UpdateHouseholdRequest asked;
  asked.mutable_household()->set_id(served.household);
  v1::Member& ana = *asked.mutable_household()->add_members();
  ana.set_id("ana");
  ana.set_display_name("Ana");
  ana.set_role(v1::ROLE_COOK);
  asked.mutable_update_mask()->add_paths("members");
  asked.set_request_id(freshRequest());
  v1::WriteHouseholdResponse answer;
  const auto context = with(served.token);
  EXPECT_EQ(v1::HouseholdService::NewStub(served.channel())
                ->UpdateHousehold(context.get(), asked, &answer)
                .error_code(),
            grpc::StatusCode::INVALID_ARGUMENT);
}

// A cook's device and what it writes of its household.
class OwnTimesTest : public testing::Test {
 protected:
  OwnTimesTest() {
    served_.found();
    served_.token = served_.invite(v1::ROLE_COOK);
    v1::GetHouseholdRequest asked;
    asked.set_household_id(served_.household);
    EXPECT_TRUE(stub_->GetHousehold(with(served_.token).get(), asked, &household_).ok());
    v1::WhoAmIResponse who;
    EXPECT_TRUE(stub_->WhoAmI(with(served_.token).get(), {}, &who).ok());
    for (v1::Member& member : *household_.mutable_members())
      (member.id() == who.member_id() ? self_ : other_) = &member;
  }
  grpc::StatusCode write() {
    v1::UpdateHouseholdRequest asked;
    *asked.mutable_household() = household_;
    asked.set_request_id(freshRequest());
    v1::WriteHouseholdResponse answer;
    return stub_->UpdateHousehold(with(served_.token).get(), asked, &answer).error_code();
  }

  Served served_;
  std::unique_ptr<v1::HouseholdService::Stub> stub_ = v1::HouseholdService::NewStub(served_.channel());
  v1::Household household_;
  v1::Member* self_ = nullptr;
  v1::Member* other_ = nullptr;
};

TEST_F(OwnTimesTest, ACookChangesTheirOwnHoursAndReminders) {
  ASSERT_NE(self_, nullptr);
  self_->mutable_awake()->set_start("09:00");
  self_->mutable_awake()->set_limit("23:00");
  self_->mutable_soon_duration()->set_seconds(300);
  EXPECT_EQ(write(), grpc::StatusCode::OK);
  EXPECT_EQ(write(), grpc::StatusCode::ABORTED) << "its etag is old now";
}

TEST_F(OwnTimesTest, NothingElseOfThemselves) {
  ASSERT_NE(self_, nullptr);
  self_->set_role(v1::ROLE_HOST);
  EXPECT_EQ(write(), grpc::StatusCode::PERMISSION_DENIED);
}

TEST_F(OwnTimesTest, NothingOfOthers) {
  ASSERT_NE(other_, nullptr);
  other_->mutable_awake()->set_start("05:00");
  other_->mutable_awake()->set_limit("23:00");
  EXPECT_EQ(write(), grpc::StatusCode::PERMISSION_DENIED);
}

TEST_F(OwnTimesTest, NothingOfTheHousehold) {
  household_.set_display_name("Mine");
  EXPECT_EQ(write(), grpc::StatusCode::PERMISSION_DENIED);
}

TEST_F(OwnTimesTest, NotWithoutSayingWhatTheyChanged) {
  household_.mutable_meta()->clear_etag();
  EXPECT_EQ(write(), grpc::StatusCode::INVALID_ARGUMENT);
}

TEST(PeopleTest, TheHostCodeIsToldNoMoreOnceThereIsAHousehold) {
  Served served;
  EXPECT_FALSE(served.server().hostCode().empty());
  served.found();
  EXPECT_TRUE(served.server().hostCode().empty());
}

std::string invitation(Served& served, v1::Role role) {
  v1::CreateInvitationRequest asked;
  asked.set_household_id(served.household);
  asked.set_role(role);
  asked.mutable_lifetime();  // none: the usual one
  asked.set_request_id(freshRequest());
  v1::CreateInvitationResponse answer;
  const auto context = with(served.token);
  EXPECT_TRUE(
      v1::HouseholdService::NewStub(served.channel())->CreateInvitation(context.get(), asked, &answer).ok());
  EXPECT_EQ(answer.expire_time().seconds(), 1'800'000'000 + 24 * 3600);
  return answer.code();
}

v1::Household householdOf(Served& served) {
  v1::GetHouseholdRequest asked;
  asked.set_household_id(served.household);
  v1::Household answer;
  const auto context = with(served.token);
  EXPECT_TRUE(
      v1::HouseholdService::NewStub(served.channel())->GetHousehold(context.get(), asked, &answer).ok());
  return answer;
}

TEST(PeopleTest, AJoinWhoseAnswerWasLostCanBeAskedAgain) {
  Served served;
  served.found();
  v1::JoinHouseholdRequest asked;
  asked.set_code(invitation(served, v1::ROLE_COOK));
  asked.set_display_name("Rui");
  asked.set_request_id(freshRequest());
  const auto stub = v1::HouseholdService::NewStub(served.channel());
  const auto join = [&](v1::JoinHouseholdResponse* joined) {
    const auto context = with("");
    return stub->JoinHousehold(context.get(), asked, joined).error_code();
  };
  const auto knows = [&](const std::string& token) {
    v1::WhoAmIResponse who;
    const auto context = with(token);
    return stub->WhoAmI(context.get(), {}, &who).ok();
  };
  v1::JoinHouseholdResponse first;
  ASSERT_EQ(join(&first), grpc::StatusCode::OK);
  v1::JoinHouseholdResponse second;
  ASSERT_EQ(join(&second), grpc::StatusCode::OK);
  EXPECT_EQ(second.member_id(), first.member_id());
  EXPECT_EQ(householdOf(served).members_size(), 2);
  EXPECT_TRUE(knows(second.device_token()));
  EXPECT_FALSE(knows(first.device_token()));
  asked.set_request_id(freshRequest());
  EXPECT_EQ(join(&second), grpc::StatusCode::PERMISSION_DENIED) << "another request finds the code used up";
}

TEST(PeopleTest, WatchersHearOfTheOneWhoJoined) {
  Served served;
  served.found();
  v1::WatchRequest watch;
  watch.set_household_id(served.household);
  watch.set_after_revision(1);
  const auto watching = with(served.token);
  const auto stream = v1::SyncService::NewStub(served.channel())->Watch(watching.get(), watch);
  served.invite(v1::ROLE_COOK);
  v1::WatchResponse message;
  while (stream->Read(&message) && !message.has_changes()) {
  }
  EXPECT_EQ(message.changes().revision(), 2);
  EXPECT_EQ(message.changes().changes(0).household().members_size(), 2);
}

TEST(PeopleTest, DevicesTellWhenTheyWereMade) {
  Served served;
  served.found();
  v1::ListDevicesRequest asked;
  asked.set_household_id(served.household);
  v1::ListDevicesResponse answer;
  const auto context = with(served.token);
  ASSERT_TRUE(
      v1::HouseholdService::NewStub(served.channel())->ListDevices(context.get(), asked, &answer).ok());
  EXPECT_EQ(answer.devices(0).create_time().seconds(), 1'800'000'000);
}

TEST(PeopleTest, ThoseWhoJoinAtTheSameTimeAllGetIn) {
  Served served;
  served.found();
  std::vector<std::string> codes;
  for (int cook = 0; cook < 4; ++cook) codes.push_back(invitation(served, v1::ROLE_COOK));
  std::vector<std::thread> cooks;
  for (const std::string& code : codes)
    cooks.emplace_back([&served, code] {
      v1::JoinHouseholdRequest asked;
      asked.set_code(code);
      asked.set_display_name("Cook");
      asked.set_request_id(freshRequest());
      v1::JoinHouseholdResponse joined;
      const auto context = with("");
      const auto stub = v1::HouseholdService::NewStub(served.channel());
      const grpc::Status status = stub->JoinHousehold(context.get(), asked, &joined);
      EXPECT_TRUE(status.ok()) << status.error_message();
    });
  for (std::thread& cook : cooks) cook.join();
  EXPECT_EQ(householdOf(served).members_size(), 5);
}

}  // namespace
}  // namespace suppertide::service
