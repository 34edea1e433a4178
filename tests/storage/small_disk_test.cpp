// A real disk that is full or read-only: a file system in memory of a process of its own.
#include <gtest/gtest.h>
#include <sched.h>
#include <sys/mount.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>

#include "tests/storage/acknowledged.h"
#include "tests/support/temp_dir.h"

namespace suppertide::storage {
namespace {

constexpr int kNotAllowed = 77;
constexpr char kSize[] = "size=3m";

bool mountDisk(const std::string& folder, unsigned long flags, const std::string& options) {
  return ::mount("suppertide", folder.c_str(), "tmpfs", flags, options.c_str()) == 0;
}

// Whether this process may have mounts that no other sees.
bool ownMounts() {
  if (::unshare(CLONE_NEWNS) != 0 && ::unshare(CLONE_NEWUSER | CLONE_NEWNS) != 0) return false;
  return ::mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) == 0;
}

class SmallDiskTest : public ::testing::Test {
 protected:
  // Runs `evening` in a process of its own, with a disk of 3 MB at disk(); what it expects is expected here.
  void runOnSmallDisk(const std::function<void()>& evening) {
    std::filesystem::create_directory(disk());
    const pid_t child = ::fork();
    if (child == 0) {
      if (!ownMounts() || !mountDisk(disk(), 0, kSize)) ::_exit(kNotAllowed);
      evening();
      ::_exit(HasFailure() ? 1 : 0);
    }
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    ASSERT_TRUE(WIFEXITED(status));
    if (WEXITSTATUS(status) == kNotAllowed) GTEST_SKIP() << "mounts of one's own are not allowed here";
    EXPECT_EQ(WEXITSTATUS(status), 0) << "see above";
  }
  std::string disk() const { return dir_.file("disk"); }
  std::string file() const { return disk() + "/data"; }

  // Takes all the room that is left.
  void fillUp() const {
    std::ofstream filler(disk() + "/filler", std::ios::binary);
    const std::string block(4096, 'f');
    while (filler.write(block.data(), static_cast<std::streamsize>(block.size())).flush()) continue;
  }
  void makeRoom() const { std::filesystem::remove(disk() + "/filler"); }

  TempDir dir_;
  SystemClock clock_;
};

TEST_F(SmallDiskTest, AFullDiskIsToldAndNothingAcknowledgedIsLost) {
  runOnSmallDisk([&] {
    std::set<int> acknowledged;
    const std::unique_ptr<Store> store = storeWithHome(file(), {}, clock_);
    ASSERT_NE(store, nullptr);
    for (int i = 0; i < 20; ++i)
      if (store->write(numbered(i)).ok()) acknowledged.insert(i);
    fillUp();
    int refused = 0;
    for (int i = 20; i < 60; ++i) {
      const auto result = store->write(numbered(i));
      if (result.ok()) acknowledged.insert(i);
      if (result.ok()) continue;
      ++refused;
      EXPECT_EQ(result.status().code(), absl::StatusCode::kResourceExhausted) << result.status();
      EXPECT_NE(std::string(result.status().message()).find("the disk is full"), std::string::npos);
    }
    EXPECT_GT(refused, 0);
    EXPECT_TRUE(store->get(kHome, {"recipe", "own-0"}).ok()) << "reading goes on";
    makeRoom();
    EXPECT_TRUE(store->write(numbered(60)).ok()) << "and so does writing once there is room";
    acknowledged.insert(60);
    expectExactlyOnce(*store, acknowledged, 61);
  });
}

TEST_F(SmallDiskTest, AFullDiskAtTheStartLosesNothing) {
  runOnSmallDisk([&] {
    storeWithHome(file(), {}, clock_)->write(numbered(0)).status().IgnoreError();
    fillUp();
    {
      const auto store = Store::open(file(), {}, clock_);
      EXPECT_TRUE(store.ok() || store.status().code() == absl::StatusCode::kResourceExhausted)
          << store.status();
    }
    makeRoom();
    const std::unique_ptr<Store> store = openStore(file(), {}, clock_);
    ASSERT_NE(store, nullptr);
    expectExactlyOnce(*store, {0}, 1);
  });
}

TEST_F(SmallDiskTest, AReadOnlyDiskIsToldAndLeftAlone) {
  runOnSmallDisk([&] {
    storeWithHome(file(), {}, clock_)->write(numbered(0)).status().IgnoreError();
    ASSERT_TRUE(mountDisk(disk(), MS_REMOUNT | MS_RDONLY, kSize));
    const auto refused = Store::open(file(), {}, clock_);
    EXPECT_EQ(refused.status().code(), absl::StatusCode::kUnavailable) << refused.status();
    EXPECT_NE(std::string(refused.status().message()).find("ead-only"), std::string::npos)
        << refused.status();
    ASSERT_TRUE(mountDisk(disk(), MS_REMOUNT, kSize));
    const std::unique_ptr<Store> store = openStore(file(), {}, clock_);
    ASSERT_NE(store, nullptr);
    expectExactlyOnce(*store, {0}, 1);
  });
}

}  // namespace
}  // namespace suppertide::storage
