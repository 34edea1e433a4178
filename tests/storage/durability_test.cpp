// What happens to the file when the process, another one or the disk misbehaves.
#include <gtest/gtest.h>
#include <signal.h>
#include <sqlite3.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>
#include <random>

#include "tests/storage/store_fixture.h"

namespace suppertide::storage {
namespace {

TEST(OpeningTest, RefusesAFileThatAnotherStoreHas) {
  StoreFile file;
  const auto first = file.open();
  EXPECT_EQ(file.tryOpen().status().code(), absl::StatusCode::kFailedPrecondition);
}

TEST(OpeningTest, RefusesANewerSchemaAndLeavesItAsItIs) {
  StoreFile file;
  found(*file.open());
  sqlite3* raw = nullptr;
  ASSERT_EQ(sqlite3_open(file.path().c_str(), &raw), SQLITE_OK);
  ASSERT_EQ(sqlite3_exec(raw, "PRAGMA user_version = 9999", nullptr, nullptr, nullptr), SQLITE_OK);
  sqlite3_close(raw);
  EXPECT_EQ(file.tryOpen().status().code(), absl::StatusCode::kFailedPrecondition);
  EXPECT_EQ(file.tryOpen().status().code(), absl::StatusCode::kFailedPrecondition);
}

TEST(OpeningTest, RefusesWhatIsNoDatabase) {
  StoreFile file;
  std::ofstream(file.path()) << std::string(8192, 'x');
  EXPECT_FALSE(file.tryOpen().ok());
}

// A child writes as fast as it can and tells each answer through a pipe; it is
// killed at a random moment. What it told must be there, whole and once.
void killOnce(StoreFile& file, int round, std::mt19937& random, int& next) {
  int ends[2];
  ASSERT_EQ(pipe(ends), 0);
  const pid_t child = fork();
  if (child == 0) {
    close(ends[0]);
    const auto store = file.open();
    for (int i = next;; ++i) {
      const std::string name = "k" + std::to_string(i);
      WriteRequest both = putting(name, name, name);
      both.puts.push_back({{"recipe", name + "-twin"}, name, Expect::kAnything, "", false});
      if (!store->write(both).ok()) _exit(1);
      if (write(ends[1], &i, sizeof(i)) != sizeof(i)) _exit(2);
    }
  }
  close(ends[1]);
  const int enough = static_cast<int>(random() % 60) + 1;
  int last = next - 1;
  int told = 0;
  for (int value = 0; told < enough && read(ends[0], &value, sizeof(value)) == sizeof(value); ++told)
    last = value;
  kill(child, SIGKILL);
  for (int value = 0; read(ends[0], &value, sizeof(value)) == sizeof(value);) last = value;
  close(ends[0]);
  waitpid(child, nullptr, 0);
  SCOPED_TRACE("round " + std::to_string(round));
  EXPECT_EQ(told, enough);
  const auto store = file.open();
  for (int i = next; i <= last; ++i)
    EXPECT_TRUE(store->get(kHouse, {"recipe", "k" + std::to_string(i)}).ok())
        << "acknowledged write " << i << " is lost";
  // The one after may or may not be there, but never by half.
  const std::string after = "k" + std::to_string(last + 1);
  EXPECT_EQ(store->get(kHouse, {"recipe", after}).ok(), store->get(kHouse, {"recipe", after + "-twin"}).ok());
  const auto again = store->write([&] {
    WriteRequest both =
        putting("k" + std::to_string(last), "k" + std::to_string(last), "k" + std::to_string(last));
    both.puts.push_back({{"recipe", "k" + std::to_string(last) + "-twin"},
                         "k" + std::to_string(last),
                         Expect::kAnything,
                         "",
                         false});
    return both;
  }());
  ASSERT_TRUE(again.ok()) << again.status();
  EXPECT_TRUE(again->replayed);
  next = last + 2;
}

TEST(KilledProcessTest, LosesNothingThatWasAcknowledged) {
  StoreFile file;
  found(*file.open());
  std::mt19937 random(7);
  int next = 0;
  for (int round = 0; round < 20 && !HasFatalFailure(); ++round) killOnce(file, round, random, next);
}

}  // namespace
}  // namespace suppertide::storage
