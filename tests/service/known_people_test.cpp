// The server knows by heart who stands behind a token: what changes of people holds from the next call on.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/service/served.h"

namespace suppertide::service {
namespace {

class KnownPeopleTest : public testing::Test {
 protected:
  KnownPeopleTest() {
    served_.found();
    cook_ = served_.invite(v1::ROLE_COOK);
    v1::WhoAmIResponse who;
    EXPECT_TRUE(stub_->WhoAmI(with(cook_).get(), {}, &who).ok());
    memberId_ = who.member_id();
    EXPECT_EQ(write(cook_), grpc::StatusCode::OK);
  }

  // A write that a cook may make.
  grpc::StatusCode write(const std::string& token) {
    v1::CreateRecipeRequest asked;
    asked.set_household_id(served_.household);
    asked.mutable_recipe()->set_display_name("Broth");
    asked.mutable_recipe()->set_serving_count(4);
    v1::Step& step = *asked.mutable_recipe()->add_steps();
    step.set_id("simmer");
    step.set_title("Simmer");
    step.set_kind(v1::STEP_KIND_HANDS_ON);
    step.mutable_duration()->mutable_likely()->set_seconds(600);
    asked.set_request_id(freshRequest());
    v1::WriteRecipeResponse answer;
    return v1::RecipeService::NewStub(served_.channel())
        ->CreateRecipe(with(token).get(), asked, &answer)
        .error_code();
  }

  // The host changes the household's people.
  template <typename Change>
  void changeMembers(Change change) {
    v1::GetHouseholdRequest get;
    get.set_household_id(served_.household);
    v1::UpdateHouseholdRequest asked;
    ASSERT_TRUE(stub_->GetHousehold(with(served_.token).get(), get, asked.mutable_household()).ok());
    change(*asked.mutable_household()->mutable_members());
    asked.set_request_id(freshRequest());
    v1::WriteHouseholdResponse answer;
    const grpc::Status status = stub_->UpdateHousehold(with(served_.token).get(), asked, &answer);
    ASSERT_TRUE(status.ok()) << status.error_message();
  }

  Served served_;
  std::unique_ptr<v1::HouseholdService::Stub> stub_ = v1::HouseholdService::NewStub(served_.channel());
  std::string cook_;  // a device token
  std::string memberId_;
};

TEST_F(KnownPeopleTest, ARoleTakenAwayIsGoneAtTheNextCall) {
  changeMembers([&](auto& members) {
    for (v1::Member& member : members)
      if (member.id() == memberId_) member.set_role(v1::ROLE_READER);
  });
  EXPECT_EQ(write(cook_), grpc::StatusCode::PERMISSION_DENIED);
  EXPECT_EQ(write(served_.token), grpc::StatusCode::OK);
}

TEST_F(KnownPeopleTest, ARoleGivenHoldsAtTheNextCall) {
  const std::string reader = served_.invite(v1::ROLE_READER);
  EXPECT_EQ(write(reader), grpc::StatusCode::PERMISSION_DENIED);
  changeMembers([](auto& members) {
    for (v1::Member& member : members)
      if (member.role() == v1::ROLE_READER) member.set_role(v1::ROLE_COOK);
  });
  EXPECT_EQ(write(reader), grpc::StatusCode::OK);
}

TEST_F(KnownPeopleTest, AMemberTakenOutIsRefusedAtTheNextCall) {
  changeMembers([&](auto& members) {
    members.erase(std::remove_if(members.begin(), members.end(),
                                 [&](const v1::Member& member) { return member.id() == memberId_; }),
                  members.end());
  });
  EXPECT_EQ(write(cook_), grpc::StatusCode::PERMISSION_DENIED);
}

TEST_F(KnownPeopleTest, WhenADeviceWasSeenIsNotedAllTheSame) {
  served_.clock().advance(std::chrono::hours(2));
  EXPECT_EQ(write(cook_), grpc::StatusCode::OK);
  v1::ListDevicesRequest asked;
  asked.set_household_id(served_.household);
  v1::ListDevicesResponse answer;
  ASSERT_TRUE(stub_->ListDevices(with(served_.token).get(), asked, &answer).ok());
  for (const v1::Device& device : answer.devices())
    EXPECT_EQ(device.last_seen_time().seconds(), served_.clock().now().time_since_epoch().count())
        << device.display_name();
}

}  // namespace
}  // namespace suppertide::service
