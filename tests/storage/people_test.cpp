#include <gtest/gtest.h>

#include "tests/support/stored_household.h"

namespace suppertide::storage {
namespace {

using absl::StatusCode;

class PeopleTest : public ::testing::Test {
 protected:
  PeopleTest() { store_ = openStore(":memory:", {}, clock_); }

  void makeHome() {
    addHostCode(*store_);
    ASSERT_TRUE(store_->createHousehold(newHousehold()).ok());
  }

  Code invitation() {
    Code code;
    code.householdId = kHome;
    code.memberId = "ben";
    code.role = 2;
    code.expireTime = kNoon + std::chrono::hours(1);
    return code;
  }

  Device phone() {
    Device device;
    device.id = "phone";
    device.householdId = kHome;
    device.memberId = "ben";
    device.displayName = "Ben's phone";
    device.createTime = device.lastSeenTime = kNoon;
    return device;
  }

  ManualClock clock_{kNoon};
  std::unique_ptr<Store> store_;
};

TEST_F(PeopleTest, MakesAHouseholdWithItsDocumentAndDevice) {
  EXPECT_FALSE(*store_->hasHouseholds());
  makeHome();
  EXPECT_TRUE(*store_->hasHouseholds());
  EXPECT_EQ(*store_->revision(kHome), 1);
  EXPECT_EQ(store_->get(kHome, {"household", kHome})->bytes, "the household");
  const absl::StatusOr<Device> device = store_->findDevice("laptop token");
  ASSERT_TRUE(device.ok()) << device.status();
  EXPECT_EQ(device->id, "laptop");
  EXPECT_EQ(device->householdId, kHome);
}

TEST_F(PeopleTest, UsesUpTheHostCode) {
  makeHome();
  NewHousehold second = newHousehold();
  second.householdId = "second";
  second.requestId = "another";
  EXPECT_EQ(store_->createHousehold(second).status().code(), StatusCode::kNotFound);
  EXPECT_EQ(store_->findCode("host code").status().code(), StatusCode::kNotFound);
}

TEST_F(PeopleTest, KeepsTheCodeWhenTheHouseholdIsRefused) {
  makeHome();
  addHostCode(*store_);
  NewHousehold second = newHousehold();
  second.requestId = "another";
  EXPECT_EQ(store_->createHousehold(second).status().code(), StatusCode::kAlreadyExists);
  EXPECT_TRUE(store_->findCode("host code").ok());
}

TEST_F(PeopleTest, GivesARepeatTheFirstHouseholdAndANewToken) {
  makeHome();
  NewHousehold repeat = newHousehold();
  repeat.householdId = "made-again";
  repeat.device.id = "laptop-again";
  repeat.device.memberId = "made-again";
  repeat.tokenHash = "second token";
  const absl::StatusOr<WriteResult> again = store_->createHousehold(repeat);
  ASSERT_TRUE(again.ok()) << again.status();
  EXPECT_TRUE(again->replayed);
  EXPECT_EQ(again->documents.front().key.id, kHome);
  EXPECT_EQ(store_->findDevice("laptop token").status().code(), StatusCode::kNotFound);
  EXPECT_EQ(store_->findDevice("second token")->memberId, "ana");
  EXPECT_EQ(store_->listDevices(kHome)->size(), 1u);
  repeat.fingerprint = "something else";
  EXPECT_EQ(store_->createHousehold(repeat).status().code(), StatusCode::kInvalidArgument);
}

TEST_F(PeopleTest, GivesARepeatNothingOnceTheDeviceWasRevoked) {
  makeHome();
  ASSERT_TRUE(store_->revokeDevice(kHome, "laptop").ok());
  EXPECT_EQ(store_->createHousehold(newHousehold()).status().code(), StatusCode::kNotFound);
}

TEST_F(PeopleTest, TakesNoInvitationForAHostCode) {
  makeHome();
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  NewHousehold second = newHousehold();
  second.householdId = "second";
  second.requestId = "another";
  second.codeHash = "invitation";
  EXPECT_EQ(store_->createHousehold(second).status().code(), StatusCode::kNotFound);
}

TEST_F(PeopleTest, LetsADeviceInOnce) {
  makeHome();
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  EXPECT_EQ(store_->findCode("invitation")->role, 2);
  EXPECT_EQ(store_->findCode("invitation")->memberId, "ben");
  ASSERT_TRUE(store_->redeemInvitation("invitation", phone(), "phone token").ok());
  EXPECT_EQ(store_->findDevice("phone token")->displayName, "Ben's phone");
  EXPECT_EQ(store_->redeemInvitation("invitation", phone(), "other token").code(), StatusCode::kNotFound);
}

TEST_F(PeopleTest, LetsNobodyInWithAnExpiredCode) {
  makeHome();
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  clock_.advance(std::chrono::hours(1));
  EXPECT_EQ(store_->findCode("invitation").status().code(), StatusCode::kNotFound);
  EXPECT_EQ(store_->redeemInvitation("invitation", phone(), "phone token").code(), StatusCode::kNotFound);
}

TEST_F(PeopleTest, LetsNobodyIntoAnotherHousehold) {
  makeHome();
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  Device device = phone();
  device.householdId = "elsewhere";
  EXPECT_EQ(store_->redeemInvitation("invitation", device, "phone token").code(),
            StatusCode::kInvalidArgument);
  EXPECT_TRUE(store_->findCode("invitation").ok());
}

TEST_F(PeopleTest, DropsCodesOfOnePurpose) {
  makeHome();
  addHostCode(*store_);
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  ASSERT_TRUE(store_->dropCodes(Code::Purpose::kHost).ok());
  EXPECT_FALSE(store_->findCode("host code").ok());
  EXPECT_TRUE(store_->findCode("invitation").ok());
}

TEST_F(PeopleTest, ForgetsTheTokenOfARevokedDevice) {
  makeHome();
  ASSERT_TRUE(store_->revokeDevice(kHome, "laptop").ok());
  ASSERT_TRUE(store_->revokeDevice(kHome, "laptop").ok());
  EXPECT_EQ(store_->findDevice("laptop token").status().code(), StatusCode::kNotFound);
  EXPECT_TRUE(store_->listDevices(kHome)->front().revoked);
}

TEST_F(PeopleTest, RevokesNoDeviceOfAnotherHousehold) {
  makeHome();
  EXPECT_EQ(store_->revokeDevice("elsewhere", "laptop").code(), StatusCode::kNotFound);
  EXPECT_TRUE(store_->findDevice("laptop token").ok());
}

TEST_F(PeopleTest, NotesWhenADeviceWasLastSeenToTheHour) {
  makeHome();
  ASSERT_TRUE(store_->findDevice("laptop token").ok());
  clock_.advance(std::chrono::minutes(59));
  ASSERT_TRUE(store_->findDevice("laptop token").ok());
  EXPECT_EQ(store_->listDevices(kHome)->front().lastSeenTime, kNoon);
  clock_.advance(std::chrono::minutes(1));
  ASSERT_TRUE(store_->findDevice("laptop token").ok());
  EXPECT_EQ(store_->listDevices(kHome)->front().lastSeenTime, kNoon + std::chrono::hours(1));
}

}  // namespace
}  // namespace suppertide::storage
