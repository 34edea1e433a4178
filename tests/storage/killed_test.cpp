#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <cstdlib>

#include "server/storage/write_queue.h"
#include "tests/storage/acknowledged.h"
#include "tests/support/dice.h"
#include "tests/support/temp_dir.h"

namespace suppertide::storage {
namespace {

constexpr int kInFlight = 8;

// SUPPERTIDE_KILLS=5000 for a night.
int kills() {
  const char* wanted = std::getenv("SUPPERTIDE_KILLS");
  return wanted != nullptr ? std::max(1, std::atoi(wanted)) : 200;
}

Store::Options keepingAll() {
  Store::Options options;
  options.keepChanges = 1'000'000;
  options.keepLogBytes = 1'000'000'000;
  options.maxDocuments = 1'000'000;
  return options;
}

// For looking at what was left: its own writes need not outlive a power cut.
Store::Options looking() {
  Store::Options options = keepingAll();
  options.fullSync = false;
  return options;
}

// The life of a server: opens the file and writes numbers from `first` on until
// it is killed, telling each acknowledged one through `pipe`.
[[noreturn]] void serve(const std::string& path, int first, int pipe) {
  SystemClock clock;
  const absl::StatusOr<std::unique_ptr<Store>> store = Store::open(path, keepingAll(), clock);
  if (!store.ok()) ::_exit(1);
  WriteQueue queue(**store, nullptr);
  std::atomic<int> waiting = 0;
  for (int i = first;; ++i) {
    for (int seen = waiting; seen >= kInFlight; seen = waiting) waiting.wait(seen);
    ++waiting;
    queue.submit(numbered(i), [&, i](const absl::StatusOr<WriteResult>& result) {
      if (!result.ok() || ::write(pipe, &i, sizeof i) != sizeof i) ::_exit(1);
      --waiting;
      waiting.notify_one();
    });
  }
}

// Takes acknowledged numbers until `enough` have come or the writer is gone.
void take(int pipe, std::size_t enough, std::set<int>& acknowledged) {
  int number = 0;
  while (enough-- > 0 && ::read(pipe, &number, sizeof number) == sizeof number) acknowledged.insert(number);
}

TEST(KilledTest, AKilledServerLosesNothingAcknowledged) {
  TempDir dir;
  SystemClock clock;
  Dice dice(7);
  std::set<int> acknowledged;
  int first = 0;
  storeWithHome(dir.file("data"), keepingAll(), clock).reset();
  const int most = kills();
  for (int kill = 0; kill < most; ++kill) {
    SCOPED_TRACE("kill " + std::to_string(kill));
    int ends[2];
    ASSERT_EQ(::pipe(ends), 0);
    const pid_t child = ::fork();
    if (child == 0) serve(dir.file("data"), first, ends[1]);
    ::close(ends[1]);
    const std::size_t before = acknowledged.size();
    take(ends[0], static_cast<std::size_t>(dice.between(1, 60)), acknowledged);
    // Moves the kill about within a write.
    for (volatile int spin = dice.between(0, 300'000); spin > 0;) spin = spin - 1;
    ::kill(child, SIGKILL);
    take(ends[0], 1'000'000, acknowledged);  // what it had told and we not yet read
    ::close(ends[0]);
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    ASSERT_TRUE(WIFSIGNALED(status)) << "the server ended by itself: " << status;
    EXPECT_GT(acknowledged.size(), before);
    const std::unique_ptr<Store> store = openStore(dir.file("data"), looking(), clock);
    ASSERT_NE(store, nullptr);
    const int checked = first;
    first = *acknowledged.rbegin() + kInFlight + 1;
    expectExactlyOnce(*store, acknowledged, first, checked);
    if (HasFailure()) return;
  }
  // And all of it again, as early writes may be lost late.
  expectExactlyOnce(*openStore(dir.file("data"), looking(), clock), acknowledged, first);
}

}  // namespace
}  // namespace suppertide::storage
