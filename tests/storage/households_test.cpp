#include <gtest/gtest.h>

#include "tests/storage/store_fixture.h"

namespace suppertide::storage {
namespace {

TEST(HouseholdsTest, AreMadeWithTheHostCodeOnce) {
  StoreFile file;
  const auto store = file.open();
  EXPECT_FALSE(*store->hasHouseholds());
  found(*store);
  EXPECT_TRUE(*store->hasHouseholds());
  EXPECT_EQ(store->findCode("host-code").status().code(), absl::StatusCode::kNotFound);
}

TEST(HouseholdsTest, NeedARightCode) {
  StoreFile file;
  const auto store = file.open();
  NewHousehold fresh;
  fresh.householdId = kHouse;
  fresh.codeHash = "guess";
  fresh.requestId = "r";
  EXPECT_EQ(store->createHousehold(fresh).status().code(), absl::StatusCode::kNotFound);
  EXPECT_FALSE(*store->hasHouseholds());
}

TEST(DevicesTest, AreFoundByTheirTokenUntilRevoked) {
  StoreFile file;
  const auto store = file.open();
  found(*store);
  ASSERT_EQ(store->findDevice("t")->memberId, "ana");
  ASSERT_TRUE(store->revokeDevice(kHouse, "d").ok());
  EXPECT_EQ(store->findDevice("t").status().code(), absl::StatusCode::kNotFound);
  EXPECT_TRUE(store->listDevices(kHouse)->front().revoked);
}

TEST(CodesTest, AreUsedOnce) {
  StoreFile file;
  const auto store = file.open();
  found(*store);
  ASSERT_TRUE(store->addCode("c", {Code::Purpose::kInvitation, kHouse, "rui", 2, std::nullopt}).ok());
  const Device phone{"p", kHouse, "rui", "phone", {}, {}, false};
  ASSERT_TRUE(store->redeemInvitation("c", phone, "t2").ok());
  EXPECT_EQ(store->redeemInvitation("c", phone, "t3").code(), absl::StatusCode::kNotFound);
  EXPECT_EQ(store->findDevice("t2")->id, "p");
}

TEST(CodesTest, Expire) {
  StoreFile file;
  const auto store = file.open();
  found(*store);
  const Instant soon = file.clock().now() + std::chrono::minutes(5);
  ASSERT_TRUE(store->addCode("c", {Code::Purpose::kInvitation, kHouse, "", 2, soon}).ok());
  EXPECT_TRUE(store->findCode("c").ok());
  file.clock().advance(std::chrono::minutes(6));
  EXPECT_EQ(store->findCode("c").status().code(), absl::StatusCode::kNotFound);
}

}  // namespace
}  // namespace suppertide::storage
