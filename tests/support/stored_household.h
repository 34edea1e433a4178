// A store with one household "home" in it, and short words for writes to it.
#pragma once

#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "server/base/clock.h"
#include "server/storage/store.h"

namespace suppertide {

inline constexpr char kHome[] = "home";
inline const Instant kNoon{std::chrono::hours(12)};

inline storage::Store::Options quickOptions() {
  storage::Store::Options options;
  options.fullSync = false;
  return options;
}

inline storage::Put put(std::string kind, std::string id, std::string bytes) {
  storage::Put put;
  put.key = {std::move(kind), std::move(id)};
  put.bytes = std::move(bytes);
  return put;
}

inline storage::Put removal(std::string kind, std::string id) {
  storage::Put removal = put(std::move(kind), std::move(id), "");
  removal.remove = true;
  return removal;
}

inline storage::WriteRequest writeOf(std::vector<storage::Put> puts, std::string requestId = "") {
  storage::WriteRequest request;
  request.householdId = kHome;
  request.memberId = "ana";
  request.fingerprint = requestId;
  request.requestId = std::move(requestId);
  request.puts = std::move(puts);
  return request;
}

inline storage::NewHousehold newHousehold() {
  storage::NewHousehold household;
  household.householdId = kHome;
  household.codeHash = "host code";
  household.bytes = "the household";
  household.memberId = "ana";
  household.device.id = "laptop";
  household.device.memberId = "ana";
  household.tokenHash = "laptop token";
  household.requestId = "make home";
  household.fingerprint = "make home";
  return household;
}

inline void addHostCode(storage::Store& store) {
  storage::Code code;
  code.purpose = storage::Code::Purpose::kHost;
  ASSERT_TRUE(store.addCode("host code", code).ok());
}

inline std::unique_ptr<storage::Store> openStore(const std::string& path,
                                                 const storage::Store::Options& options, const Clock& clock) {
  absl::StatusOr<std::unique_ptr<storage::Store>> store = storage::Store::open(path, options, clock);
  EXPECT_TRUE(store.ok()) << store.status();
  return store.ok() ? *std::move(store) : nullptr;
}

// A store in which the household was just made: revision 1.
inline std::unique_ptr<storage::Store> storeWithHome(const std::string& path,
                                                     const storage::Store::Options& options,
                                                     const Clock& clock) {
  std::unique_ptr<storage::Store> store = openStore(path, options, clock);
  if (store == nullptr) return nullptr;
  addHostCode(*store);
  const absl::StatusOr<storage::WriteResult> made = store->createHousehold(newHousehold());
  EXPECT_TRUE(made.ok()) << made.status();
  return store;
}

}  // namespace suppertide
