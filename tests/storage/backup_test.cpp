#include "server/storage/backup.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <atomic>
#include <filesystem>
#include <fstream>
#include <thread>

#include "server/storage/database.h"
#include "server/storage/inspection.h"
#include "tests/storage/acknowledged.h"
#include "tests/support/temp_dir.h"

namespace suppertide::storage {
namespace {

using absl::StatusCode;

class BackupTest : public ::testing::Test {
 protected:
  std::unique_ptr<Store> served() { return storeWithHome(data_, quickOptions(), clock_); }

  TempDir dir_;
  const std::string data_ = dir_.file("data");
  const std::string copy_ = dir_.file("copy");
  ManualClock clock_{kNoon};
};

TEST_F(BackupTest, CopiesAFileThatIsBeingServed) {
  const std::unique_ptr<Store> store = served();
  for (int i = 0; i < 10; ++i) ASSERT_TRUE(store->write(numbered(i)).ok());
  const auto report = backUp(data_, copy_);
  ASSERT_TRUE(report.ok()) << report.status();
  EXPECT_EQ(report->households, 1);
  EXPECT_EQ(report->documents, 12);
  EXPECT_GT(report->bytes, 0);
  ASSERT_TRUE(store->write(numbered(10)).ok());
  EXPECT_EQ(openStore(copy_, quickOptions(), clock_)->snapshot(kHome)->documents.size(), 12u);
  EXPECT_TRUE(inspect(data_)->damages.empty());
}

// Each copy holds a moment: all of a write or nothing of it.
TEST_F(BackupTest, CopiesOneMomentWhileOthersWrite) {
  Store::Options options = quickOptions();
  options.maxDocuments = 1'000'000;  // a fast writer makes more than a household may have
  const std::unique_ptr<Store> store = storeWithHome(data_, options, clock_);
  std::atomic<bool> done = false;
  std::jthread writer([&] {
    for (int i = 0; !done; ++i) ASSERT_TRUE(store->write(numbered(i)).ok());
  });
  for (int copy = 0; copy < 10; ++copy) {
    const std::string path = copy_ + std::to_string(copy);
    const auto report = backUp(data_, path);
    ASSERT_TRUE(report.ok()) << report.status();
    const auto inspection = inspect(path);
    ASSERT_TRUE(inspection.ok()) << inspection.status();
    EXPECT_TRUE(inspection->damages.empty()) << inspection->damages.front();
    const auto copied = openStore(path, quickOptions(), clock_)->changesAfter(kHome, 1, 1'000'000);
    for (const Change& change : copied->changes) EXPECT_EQ(change.documents.size(), 2u);
  }
  done = true;
}

TEST_F(BackupTest, IsReadableByItsOwnerAlone) {
  served();
  ASSERT_TRUE(backUp(data_, copy_).ok());
  struct stat there {};
  ASSERT_EQ(stat(copy_.c_str(), &there), 0);
  EXPECT_EQ(there.st_mode & 0777, 0600u);
}

TEST_F(BackupTest, WritesOverNothing) {
  served();
  std::ofstream(copy_) << "mine";
  EXPECT_EQ(backUp(data_, copy_).status().code(), StatusCode::kAlreadyExists);
  EXPECT_EQ(std::filesystem::file_size(copy_), 4u);
}

TEST_F(BackupTest, LeavesNothingBehindWhenItFails) {
  EXPECT_EQ(backUp(dir_.file("none"), copy_).status().code(), StatusCode::kUnavailable);
  std::ofstream(dir_.file("letter")) << std::string(5000, 'x');
  EXPECT_EQ(backUp(dir_.file("letter"), copy_).status().code(), StatusCode::kDataLoss);
  std::ofstream(dir_.file("empty")).close();
  EXPECT_EQ(backUp(dir_.file("empty"), copy_).status().code(), StatusCode::kFailedPrecondition);
  EXPECT_FALSE(std::filesystem::exists(copy_));
  EXPECT_FALSE(std::filesystem::exists(copy_ + ".new"));
}

TEST_F(BackupTest, ARestoredFileHasEverythingTheCopyHas) {
  {
    const std::unique_ptr<Store> store = served();
    for (int i = 0; i < 5; ++i) ASSERT_TRUE(store->write(numbered(i)).ok());
    ASSERT_TRUE(backUp(data_, copy_).ok());
    for (int i = 5; i < 9; ++i) ASSERT_TRUE(store->write(numbered(i)).ok());
  }
  EXPECT_EQ(restore(copy_, data_, false).status().code(), StatusCode::kAlreadyExists);
  const auto report = restore(copy_, data_, true);
  ASSERT_TRUE(report.ok()) << report.status();
  EXPECT_EQ(report->documents, 7);
  const std::unique_ptr<Store> store = openStore(data_, quickOptions(), clock_);
  EXPECT_EQ(store->snapshot(kHome)->documents.size(), 7u);
  EXPECT_TRUE(store->findDevice("laptop token").ok());
  EXPECT_TRUE(inspect(data_)->damages.empty()) << inspect(data_)->damages.front();
  EXPECT_EQ(openStore(data_ + ".before-restore", quickOptions(), clock_)->snapshot(kHome)->documents.size(),
            11u);
}

// What was set aside first is the household's own, and may be all that is left of it.
TEST_F(BackupTest, ASecondRestoreKeepsWhatTheFirstSetAside) {
  {
    const std::unique_ptr<Store> store = served();
    ASSERT_TRUE(backUp(data_, copy_).ok());
    for (int i = 0; i < 9; ++i) ASSERT_TRUE(store->write(numbered(i)).ok());
  }
  EXPECT_EQ(restore(copy_, data_, true)->setAside, data_ + ".before-restore");
  EXPECT_EQ(restore(copy_, data_, true)->setAside, data_ + ".before-restore-2");
  const std::unique_ptr<Store> first = openStore(data_ + ".before-restore", quickOptions(), clock_);
  EXPECT_EQ(first->snapshot(kHome)->documents.size(), 11u);
}

TEST_F(BackupTest, TellsNothingOfAFileSetAsideWhereThereWasNone) {
  served();
  ASSERT_TRUE(backUp(data_, copy_).ok());
  EXPECT_EQ(restore(copy_, dir_.file("fresh"), true)->setAside, "");
}

TEST_F(BackupTest, RestoresNoFileFromItself) {
  served();
  EXPECT_EQ(restore(data_, data_, true).status().code(), StatusCode::kInvalidArgument);
  EXPECT_FALSE(std::filesystem::exists(data_ + ".before-restore"));
}

TEST_F(BackupTest, TellsWhatIsThereInsteadOfADataFile) {
  const std::string folder = std::filesystem::path(data_).parent_path().string();
  EXPECT_EQ(inspect(dir_.file("none")).status().message(),
            "open " + dir_.file("none") + ": there is no such file");
  EXPECT_EQ(inspect(folder).status().message(), "open " + folder + ": it is a folder");
  EXPECT_EQ(restore(copy_, dir_.file("no/data"), false).status().message(),
            "open " + dir_.file("no/data.lock") + ": there is no folder " + dir_.file("no"));
}

TEST_F(BackupTest, TheLogBelongsToTheSizeOfAFile) {
  const std::unique_ptr<Store> store = served();
  ASSERT_TRUE(store->write(numbered(0)).ok());
  EXPECT_GT(inspect(data_)->bytes, static_cast<std::int64_t>(std::filesystem::file_size(data_)));
}

// A device that saw revision 10 before must not take the new revision 10 for it.
TEST_F(BackupTest, DevicesThatSawMoreThanTheCopyStartOver) {
  std::int64_t seen = 0;
  {
    const std::unique_ptr<Store> store = served();
    ASSERT_TRUE(store->write(numbered(0)).ok());
    ASSERT_TRUE(backUp(data_, copy_).ok());
    for (int i = 1; i < 9; ++i) seen = store->write(numbered(i))->revision;
  }
  ASSERT_TRUE(restore(copy_, data_, true).ok());
  const std::unique_ptr<Store> store = openStore(data_, quickOptions(), clock_);
  ASSERT_TRUE(store->write(numbered(100)).ok());
  EXPECT_GT(*store->revision(kHome), seen);
  EXPECT_TRUE(store->changesAfter(kHome, seen, 100)->trimmed);
  EXPECT_TRUE(store->changesAfter(kHome, 2, 100)->trimmed);
}

TEST_F(BackupTest, RestoresNoInvitations) {
  {
    const std::unique_ptr<Store> store = served();
    Code code;
    code.householdId = kHome;
    ASSERT_TRUE(store->addCode("invitation", code).ok());
    ASSERT_TRUE(backUp(data_, copy_).ok());
  }
  ASSERT_TRUE(restore(copy_, data_, true).ok());
  EXPECT_FALSE(openStore(data_, quickOptions(), clock_)->findCode("invitation").ok());
}

TEST_F(BackupTest, RestoresNothingUnderAServer) {
  const std::unique_ptr<Store> store = served();
  ASSERT_TRUE(backUp(data_, copy_).ok());
  EXPECT_EQ(restore(copy_, data_, true).status().code(), StatusCode::kFailedPrecondition);
  EXPECT_TRUE(store->write(numbered(0)).ok());
}

TEST_F(BackupTest, RestoresNothingDamagedOrNewer) {
  {
    const std::unique_ptr<Store> store = served();
    for (int i = 0; i < 50; ++i) ASSERT_TRUE(store->write(numbered(i)).ok());
    ASSERT_TRUE(backUp(data_, copy_).ok());
  }
  {
    std::fstream file(copy_, std::ios::binary | std::ios::in | std::ios::out);
    for (int page = 4096; page < 40'000; page += 4096) {
      file.seekp(page);
      file << std::string(64, '\x7F');
    }
  }
  EXPECT_EQ(restore(copy_, data_, true).status().code(), StatusCode::kDataLoss);
  std::filesystem::remove(copy_);
  ASSERT_TRUE(backUp(data_, copy_).ok());
  ASSERT_TRUE((*Database::open(copy_, Database::Mode::kReadWrite))->exec("PRAGMA user_version = 1000").ok());
  EXPECT_EQ(restore(copy_, data_, true).status().code(), StatusCode::kFailedPrecondition);
  EXPECT_EQ(openStore(data_, quickOptions(), clock_)->snapshot(kHome)->documents.size(), 52u);
}

class InspectionTest : public BackupTest {
 protected:
  void makeFile() {
    const std::unique_ptr<Store> store = served();
    for (int i = 0; i < 5; ++i) ASSERT_TRUE(store->write(numbered(i)).ok());
    ASSERT_TRUE(store->write(writeOf({removal("recipe", "own-0")})).ok());
  }
  void run(const std::string& sql) {
    const auto database = Database::open(data_, Database::Mode::kReadWrite);
    const absl::Status status = (*database)->exec(sql);
    ASSERT_TRUE(status.ok()) << status;
  }
};

TEST_F(InspectionTest, CountsWhatIsThere) {
  makeFile();
  const auto found = inspect(data_);
  ASSERT_TRUE(found.ok()) << found.status();
  EXPECT_TRUE(found->damages.empty()) << found->damages.front();
  EXPECT_TRUE(found->foreign.empty()) << found->foreign.front();
  EXPECT_EQ(found->schemaVersion, found->knownVersion);
  ASSERT_EQ(found->households.size(), 1u);
  const HouseholdInspection& home = found->households.front();
  EXPECT_EQ(home.revision, 7);
  EXPECT_EQ(home.documents.at("recipe"), 5);
  EXPECT_EQ(home.documents.at("household"), 1);
  EXPECT_EQ(home.tombstones, 1);
  EXPECT_EQ(home.changes, 7);
  EXPECT_EQ(home.requests, 5);
  EXPECT_EQ(home.devices, 1);
}

TEST_F(InspectionTest, TellsWhatContradictsItself) {
  for (const char* sql :
       {"UPDATE households SET document_count = 77", "DELETE FROM changed_documents WHERE revision = 3",
        "UPDATE documents SET bytes = x'00' WHERE id = 'own-1'",
        "UPDATE documents SET revision = 900 WHERE id = 'own-1'",
        "DELETE FROM documents WHERE kind = 'household'",
        "PRAGMA foreign_keys = OFF; DELETE FROM households"}) {
    std::filesystem::remove(data_);
    makeFile();
    run(sql);
    const auto found = inspect(data_);
    ASSERT_TRUE(found.ok()) << found.status();
    EXPECT_FALSE(found->damages.empty()) << sql;
  }
}

TEST_F(InspectionTest, TellsWhatIsNotOurs) {
  makeFile();
  run("CREATE TABLE notes (x); CREATE TRIGGER spy AFTER DELETE ON documents BEGIN SELECT 1; END");
  const auto found = inspect(data_);
  ASSERT_TRUE(found.ok()) << found.status();
  EXPECT_EQ(found->foreign, (std::vector<std::string>{"table notes", "trigger spy"}));
}

TEST_F(InspectionTest, TellsPhysicalDamageInstead) {
  makeFile();
  {
    std::fstream file(data_, std::ios::binary | std::ios::in | std::ios::out);
    for (std::size_t page = 8192; page < std::filesystem::file_size(data_); page += 4096) {
      file.seekp(static_cast<std::streamoff>(page));
      file << std::string(64, '\x7F');
    }
  }
  const auto found = inspect(data_);
  EXPECT_TRUE(!found.ok() || !found->damages.empty());
}

}  // namespace
}  // namespace suppertide::storage
