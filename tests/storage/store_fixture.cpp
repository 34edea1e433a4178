#include "tests/storage/store_fixture.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>

namespace suppertide::storage {

StoreFile::StoreFile()
    : folder_((std::filesystem::temp_directory_path() / "suppertide-store-XXXXXX").string()) {
  EXPECT_NE(mkdtemp(folder_.data()), nullptr);
  path_ = folder_ + "/household.sqlite";
}

StoreFile::~StoreFile() {
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

absl::StatusOr<std::unique_ptr<Store>> StoreFile::tryOpen(Store::Options options) {
  options.fullSync = false;
  return Store::open(path_, options, clock_);
}

std::unique_ptr<Store> StoreFile::open(Store::Options options) {
  auto store = tryOpen(options);
  EXPECT_TRUE(store.ok()) << store.status();
  return *std::move(store);
}

void found(Store& store) {
  ASSERT_TRUE(store.addCode("host-code", {Code::Purpose::kHost, "", "", 3, std::nullopt}).ok());
  NewHousehold fresh;
  fresh.householdId = kHouse;
  fresh.codeHash = "host-code";
  fresh.bytes = "the household";
  fresh.memberId = "ana";
  fresh.device = {"d", kHouse, "ana", "laptop", {}, {}, false};
  fresh.tokenHash = "t";
  fresh.requestId = "founding";
  fresh.fingerprint = "founding";
  const auto made = store.createHousehold(fresh);
  ASSERT_TRUE(made.ok()) << made.status();
}

WriteRequest putting(const std::string& requestId, const std::string& id, const std::string& bytes,
                     Expect expect, const std::string& etag) {
  WriteRequest request;
  request.householdId = kHouse;
  request.memberId = "ana";
  request.requestId = requestId;
  request.fingerprint = id + ":" + bytes;
  request.puts.push_back({{"recipe", id}, bytes, expect, etag, false});
  return request;
}

WriteRequest removing(const std::string& requestId, const std::string& id) {
  WriteRequest request = putting(requestId, id, "");
  request.puts.front().remove = true;
  return request;
}

}  // namespace suppertide::storage
