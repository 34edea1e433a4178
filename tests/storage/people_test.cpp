#include <gtest/gtest.h>

#include <utility>

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

  Redemption redemption(const std::string& tokenHash, const std::string& requestId = "") {
    Redemption redemption;
    redemption.codeHash = "invitation";
    redemption.device = phone();
    redemption.tokenHash = tokenHash;
    redemption.requestId = redemption.fingerprint = requestId;
    return redemption;
  }
  StatusCode redeem(const Redemption& redemption) {
    return store_->redeemInvitation(redemption).status().code();
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

TEST_F(PeopleTest, TheVersionOfPeopleRisesWithWhateverChangesThem) {
  std::uint64_t before = store_->peopleVersion();
  const auto rises = [&] {
    const std::uint64_t now = store_->peopleVersion();
    return std::exchange(before, now) < now;
  };
  makeHome();
  EXPECT_TRUE(rises());
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  ASSERT_EQ(redeem(redemption("phone token")), StatusCode::kOk);
  EXPECT_TRUE(rises());
  ASSERT_TRUE(store_->revokeDevice(kHome, "phone").ok());
  EXPECT_TRUE(rises());
  WriteRequest household;
  household.householdId = kHome;
  household.puts.emplace_back();
  household.puts.front().key = {"household", kHome};
  household.puts.front().bytes = "with somebody more";
  ASSERT_TRUE(store_->write(household).ok());
  EXPECT_TRUE(rises());
  WriteRequest recipe = household;
  recipe.puts.front().key = {"recipe", "broth"};
  ASSERT_TRUE(store_->write(recipe).ok());
  EXPECT_FALSE(rises()) << "nobody is another than before";
  ASSERT_TRUE(store_->writeAll({recipe, household}).back().ok());
  EXPECT_TRUE(rises());
}

TEST_F(PeopleTest, LetsADeviceInOnce) {
  makeHome();
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  EXPECT_EQ(store_->findCode("invitation")->role, 2);
  EXPECT_EQ(store_->findCode("invitation")->memberId, "ben");
  ASSERT_EQ(redeem(redemption("phone token")), StatusCode::kOk);
  EXPECT_EQ(store_->findDevice("phone token")->displayName, "Ben's phone");
  EXPECT_EQ(redeem(redemption("other token")), StatusCode::kNotFound);
}

TEST_F(PeopleTest, LetsNobodyInWithAnExpiredCode) {
  makeHome();
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  clock_.advance(std::chrono::hours(1));
  EXPECT_EQ(store_->findCode("invitation").status().code(), StatusCode::kNotFound);
  EXPECT_EQ(redeem(redemption("phone token")), StatusCode::kNotFound);
}

TEST_F(PeopleTest, LetsNobodyIntoAnotherHousehold) {
  makeHome();
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  Redemption elsewhere = redemption("phone token");
  elsewhere.device.householdId = "elsewhere";
  EXPECT_EQ(redeem(elsewhere), StatusCode::kInvalidArgument);
  EXPECT_TRUE(store_->findCode("invitation").ok());
}

TEST_F(PeopleTest, AddsTheMemberWithTheDeviceOrNeither) {
  makeHome();
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  Redemption joining = redemption("phone token", "join");
  joining.household = put("household", kHome, "the household with ben");
  joining.household->etag = "a stale one";
  EXPECT_EQ(redeem(joining), StatusCode::kAborted);
  EXPECT_TRUE(store_->findCode("invitation").ok());
  EXPECT_FALSE(store_->findDevice("phone token").ok());
  joining.household->etag.clear();
  const absl::StatusOr<Redeemed> joined = store_->redeemInvitation(joining);
  ASSERT_TRUE(joined.ok()) << joined.status();
  EXPECT_TRUE(joined->write.changed);
  EXPECT_EQ(joined->write.revision, 2);
  EXPECT_EQ(store_->get(kHome, {"household", kHome})->bytes, "the household with ben");
  EXPECT_EQ(store_->findDevice("phone token")->memberId, "ben");
}

TEST_F(PeopleTest, GivesARepeatedJoinTheSameMemberAndANewToken) {
  makeHome();
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  ASSERT_EQ(redeem(redemption("first token", "join")), StatusCode::kOk);
  Redemption again = redemption("second token", "join");
  again.device = Device();  // who repeats need not know whose code it was
  again.device.id = "phone-again";
  const absl::StatusOr<Redeemed> joined = store_->redeemInvitation(again);
  ASSERT_TRUE(joined.ok()) << joined.status();
  EXPECT_EQ(joined->device.memberId, "ben");
  EXPECT_EQ(joined->device.householdId, kHome);
  EXPECT_FALSE(joined->write.changed);
  EXPECT_EQ(store_->findDevice("first token").status().code(), StatusCode::kNotFound);
  EXPECT_EQ(store_->findDevice("second token")->id, "phone-again");
  EXPECT_EQ(store_->listDevices(kHome)->size(), 2u);
}

TEST_F(PeopleTest, RepeatsNoJoinForAnotherContentARevokedDeviceOrAfterADay) {
  makeHome();
  ASSERT_TRUE(store_->addCode("invitation", invitation()).ok());
  ASSERT_EQ(redeem(redemption("first token", "join")), StatusCode::kOk);
  Redemption other = redemption("second token", "join");
  other.fingerprint = "another code";
  EXPECT_EQ(redeem(other), StatusCode::kInvalidArgument);
  EXPECT_TRUE(store_->findDevice("first token").ok()) << "the refused repeat took the token away";
  ASSERT_TRUE(store_->revokeDevice(kHome, "phone").ok());
  EXPECT_EQ(redeem(redemption("second token", "join")), StatusCode::kNotFound);
  clock_.advance(std::chrono::hours(25));
  addHostCode(*store_);
  NewHousehold second = newHousehold();
  second.householdId = "second";
  second.device.id = "other";
  second.tokenHash = "other token";
  second.requestId = "another";
  ASSERT_TRUE(store_->createHousehold(second).ok());
  EXPECT_EQ(redeem(redemption("third token", "join")), StatusCode::kNotFound);
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
