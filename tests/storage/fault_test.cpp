#include <gtest/gtest.h>

#include "tests/storage/acknowledged.h"
#include "tests/storage/fault_vfs.h"
#include "tests/support/temp_dir.h"

namespace suppertide::storage {
namespace {

using absl::StatusCode;
using Fault = FaultVfs::Fault;

constexpr int kWrites = 3;

// One run: the disk fails at the n-th operation while the store is open.
struct Outcome {
  std::set<int> acknowledged;
  std::set<StatusCode> errors;
  bool struck = false;
};

class FaultTest : public ::testing::Test {
 protected:
  // Writes while the disk fails, closes, and leaves the disk well again.
  Outcome runWith(Fault fault, int n, const std::string& path, const Store::Options& options) {
    Outcome run;
    storeWithHome(path, options, clock_).reset();
    disk_.arm(fault, n);
    {
      const absl::StatusOr<std::unique_ptr<Store>> store = Store::open(path, options, clock_);
      if (!store.ok()) run.errors.insert(store.status().code());
      for (int i = 0; i < kWrites && store.ok(); ++i) {
        const absl::StatusOr<WriteResult> result = (*store)->write(numbered(i));
        if (result.ok()) run.acknowledged.insert(i);
        if (!result.ok()) run.errors.insert(result.status().code());
      }
    }
    run.struck = disk_.struck();
    disk_.disarm();
    return run;
  }

  // Fails each operation in turn until there are no more; every time the file must be whole.
  void failEach(Fault fault, const std::set<StatusCode>& allowed) {
    for (int n = 1;; ++n) {
      SCOPED_TRACE("operation " + std::to_string(n));
      TempDir dir;
      const Outcome run = runWith(fault, n, dir.file("data"), {});
      if (fault == Fault::kPowerCut) disk_.loseUnsynced();
      for (const StatusCode code : run.errors) EXPECT_TRUE(allowed.contains(code)) << static_cast<int>(code);
      const std::unique_ptr<Store> store = openStore(dir.file("data"), {}, clock_);
      ASSERT_NE(store, nullptr);
      expectExactlyOnce(*store, run.acknowledged, kWrites);
      if (HasFailure()) return;
      if (!run.struck) {
        EXPECT_GT(n, 10) << "the fault never struck";
        EXPECT_EQ(run.acknowledged.size(), static_cast<std::size_t>(kWrites));
        return;
      }
    }
  }

  ManualClock clock_{kNoon};
  FaultVfs disk_;
};

TEST_F(FaultTest, AFailedWriteLosesNothingAcknowledged) {
  failEach(Fault::kWriteErrorOnce, {StatusCode::kUnavailable});
}

TEST_F(FaultTest, AFullDiskLosesNothingAcknowledged) {
  failEach(Fault::kDiskFull, {StatusCode::kResourceExhausted});
}

TEST_F(FaultTest, APowerCutLosesNothingAcknowledged) {
  failEach(Fault::kPowerCut, {StatusCode::kUnavailable});
}

TEST_F(FaultTest, AFailedReadLosesNothingAcknowledged) {
  failEach(Fault::kReadErrorOnce, {StatusCode::kUnavailable});
}

// Shows that the power cut above can lose something.
TEST_F(FaultTest, WithoutFullSyncAPowerCutLosesWhatWasAcknowledged) {
  TempDir dir;
  const Outcome run = runWith(Fault::kPowerCut, 30, dir.file("data"), quickOptions());
  ASSERT_TRUE(run.struck);
  ASSERT_FALSE(run.acknowledged.empty());
  disk_.loseUnsynced();
  const absl::StatusOr<std::unique_ptr<Store>> store = Store::open(dir.file("data"), {}, clock_);
  EXPECT_TRUE(!store.ok() || !(*store)->write(numbered(0)).ok() || !(*store)->write(numbered(0))->replayed ||
              (*store)->changesAfter(kHome, 1, 10)->changes.empty() ||
              (*store)->revision(kHome).value() < static_cast<std::int64_t>(run.acknowledged.size()) + 1);
}

TEST_F(FaultTest, SyncsBeforeItAcknowledges) {
  TempDir dir;
  const std::unique_ptr<Store> store = storeWithHome(dir.file("data"), {}, clock_);
  for (int i = 0; i < kWrites; ++i) {
    const int before = disk_.syncs();
    ASSERT_TRUE(store->write(numbered(i)).ok());
    EXPECT_GT(disk_.syncs(), before) << "write " << i;
  }
}

TEST_F(FaultTest, ServesManyWritesWithOneSync) {
  TempDir dir;
  const std::unique_ptr<Store> store = storeWithHome(dir.file("data"), {}, clock_);
  ASSERT_TRUE(store->write(numbered(0)).ok());
  const int before = disk_.syncs();
  ASSERT_EQ(store->writeAll({numbered(1), numbered(2), numbered(3)}).size(), 3u);
  EXPECT_EQ(disk_.syncs(), before + 1);
}

TEST_F(FaultTest, GoesOnWhenTheDiskHasRoomAgain) {
  TempDir dir;
  const std::unique_ptr<Store> store = storeWithHome(dir.file("data"), {}, clock_);
  disk_.arm(Fault::kDiskFull, 1);
  EXPECT_EQ(store->write(numbered(0)).status().code(), StatusCode::kResourceExhausted);
  EXPECT_TRUE(store->snapshot(kHome).ok()) << "reading still works";
  disk_.disarm();
  EXPECT_TRUE(store->write(numbered(0)).ok());
}

TEST_F(FaultTest, WritesNothingMoreAfterAFailedSync) {
  TempDir dir;
  std::unique_ptr<Store> store = storeWithHome(dir.file("data"), {}, clock_);
  ASSERT_TRUE(store->write(numbered(0)).ok());
  int n = 1;  // the sync comes last in a commit
  for (bool stopped = false; !stopped; ++n) {
    ASSERT_LT(n, 100);
    disk_.arm(Fault::kWriteErrorOnce, n);
    EXPECT_EQ(store->write(numbered(n)).status().code(), StatusCode::kUnavailable);
    disk_.disarm();
    stopped = !store->write(numbered(1000 + n)).ok();
  }
  EXPECT_EQ(store->write(numbered(2000)).status().code(), StatusCode::kUnavailable);
  EXPECT_TRUE(store->snapshot(kHome).ok());
  store.reset();
  store = openStore(dir.file("data"), {}, clock_);
  EXPECT_TRUE(store->write(numbered(2000)).ok());
}

TEST_F(FaultTest, ReportsAReadOnlyFile) {
  TempDir dir;
  storeWithHome(dir.file("data"), {}, clock_).reset();
  disk_.arm(Fault::kReadOnly, 1);
  EXPECT_EQ(Store::open(dir.file("data"), {}, clock_).status().code(), StatusCode::kUnavailable);
}

}  // namespace
}  // namespace suppertide::storage
