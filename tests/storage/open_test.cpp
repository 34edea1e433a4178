#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "server/storage/database.h"
#include "server/storage/inspection.h"
#include "server/storage/migrations.h"
#include "tests/support/stored_household.h"
#include "tests/support/temp_dir.h"

namespace suppertide::storage {
namespace {

using absl::StatusCode;

class OpenTest : public ::testing::Test {
 protected:
  absl::Status openAgain() { return Store::open(path_, quickOptions(), clock_).status(); }

  void makeFile() {
    const std::unique_ptr<Store> store = storeWithHome(path_, quickOptions(), clock_);
    for (int i = 0; i < 50; ++i) {
      const std::string id = "r" + std::to_string(i);
      ASSERT_TRUE(store->write(writeOf({put("recipe", id, std::string(500, 'x'))}, id)).ok());
    }
  }

  void run(const std::string& sql) {
    const auto database = Database::open(path_, Database::Mode::kReadWrite);
    ASSERT_TRUE(database.ok()) << database.status();
    ASSERT_TRUE((*database)->exec(sql).ok());
  }

  std::string contents() const {
    std::ifstream file(path_, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }

  void overwrite(std::size_t at, const std::string& bytes) {
    std::fstream file(path_, std::ios::binary | std::ios::in | std::ios::out);
    file.seekp(static_cast<std::streamoff>(at));
    file << bytes;
  }

  TempDir dir_;
  const std::string path_ = dir_.file("data");
  ManualClock clock_{kNoon};
};

TEST_F(OpenTest, FindsEverythingAgain) {
  makeFile();
  const std::unique_ptr<Store> store = openStore(path_, quickOptions(), clock_);
  EXPECT_EQ(*store->revision(kHome), 51);
  EXPECT_EQ(store->snapshot(kHome)->documents.size(), 51u);
  EXPECT_EQ(store->changesAfter(kHome, 0, 100)->changes.size(), 51u);
  EXPECT_TRUE(store->findDevice("laptop token").ok());
  EXPECT_EQ(store->write(writeOf({put("recipe", "next", "")}))->revision, 52);
}

TEST_F(OpenTest, RefusesASecondServer) {
  const std::unique_ptr<Store> first = storeWithHome(path_, quickOptions(), clock_);
  EXPECT_EQ(openAgain().code(), StatusCode::kFailedPrecondition);
  EXPECT_TRUE(first->write(writeOf({put("recipe", "a", "1")})).ok());
}

TEST_F(OpenTest, OpensAfterTheFirstServerIsGone) {
  makeFile();
  EXPECT_TRUE(openAgain().ok());
}

TEST_F(OpenTest, KeepsMemoryStoresApart) {
  const auto first = storeWithHome(":memory:", {}, clock_);
  const auto second = openStore(":memory:", {}, clock_);
  EXPECT_FALSE(*second->hasHouseholds());
  EXPECT_FALSE(std::filesystem::exists(":memory:.lock"));
}

TEST_F(OpenTest, RefusesANewerSchemaAndLeavesTheFileAlone) {
  makeFile();
  run("PRAGMA user_version = 1000");
  const std::string before = contents();
  EXPECT_EQ(openAgain().code(), StatusCode::kFailedPrecondition);
  EXPECT_EQ(contents(), before);
}

TEST_F(OpenTest, LeavesANewerFileAloneWithTheLogThatAKilledServerLeft) {
  makeFile();
  {
    const auto killed = Database::open(path_, Database::Mode::kReadWrite);
    ASSERT_TRUE((*killed)->exec("PRAGMA user_version = 1000").ok());
    (*killed)->leaveLogOnClose(true);
  }
  const auto log = std::filesystem::file_size(path_ + "-wal");
  ASSERT_GT(log, 0u);
  const std::string before = contents();
  EXPECT_EQ(openAgain().code(), StatusCode::kFailedPrecondition);
  EXPECT_EQ(contents(), before);
  EXPECT_EQ(std::filesystem::file_size(path_ + "-wal"), log);
}

TEST_F(OpenTest, RefusesTheDatabaseOfAnotherProgram) {
  run("CREATE TABLE theirs (x)");
  const std::string before = contents();
  EXPECT_EQ(openAgain().code(), StatusCode::kFailedPrecondition);
  EXPECT_EQ(contents(), before);
}

TEST_F(OpenTest, ReportsAFileThatIsNoDatabase) {
  std::ofstream(path_) << std::string(8192, 'x');
  EXPECT_EQ(openAgain().code(), StatusCode::kDataLoss);
}

TEST_F(OpenTest, ReportsADamagedFile) {
  makeFile();
  const std::size_t size = contents().size();
  ASSERT_GT(size, 16384u);
  for (std::size_t page = 4096; page < size; page += 4096) overwrite(page, std::string(64, '\x7F'));
  EXPECT_EQ(openAgain().code(), StatusCode::kDataLoss);
  const std::string message(openAgain().message());
  EXPECT_EQ(message.find('\n'), std::string::npos) << "one clear line: " << message;
}

TEST_F(OpenTest, ReportsAFileCutShort) {
  makeFile();
  std::filesystem::resize_file(path_, std::filesystem::file_size(path_) / 2 / 4096 * 4096);
  EXPECT_EQ(openAgain().code(), StatusCode::kDataLoss);
}

TEST_F(OpenTest, ReportsAFolderThatIsNotThere) {
  const absl::Status status = Store::open(dir_.file("none/data"), {}, clock_).status();
  EXPECT_EQ(status.code(), StatusCode::kUnavailable);
  EXPECT_NE(std::string(status.message()).find("none/data"), std::string::npos);
}

// A file as each released schema version left it: opened, brought forward, whole, and used on.
TEST(StoredVersionTest, EachOpensWithEverythingItHad) {
  for (int version = 1; version < static_cast<int>(migrations().size()); ++version) {
    SCOPED_TRACE("version " + std::to_string(version));
    TempDir dir;
    const std::string path = dir.file("data");
    const std::string stored =
        std::string(SUPPERTIDE_STORED_VERSIONS) + "/version-" + std::to_string(version) + ".sqlite";
    ASSERT_TRUE(std::filesystem::exists(stored)) << "keep a file of each version that was released";
    std::filesystem::copy_file(stored, path);
    const auto before = inspect(path);
    ASSERT_TRUE(before.ok()) << before.status();
    EXPECT_EQ(before->schemaVersion, version);
    EXPECT_TRUE(before->foreign.empty());
    ASSERT_EQ(before->households.size(), 1u);
    const std::string home = before->households[0].id;
    const ManualClock clock(kNoon);
    {
      const std::unique_ptr<Store> store = openStore(path, quickOptions(), clock);
      ASSERT_NE(store, nullptr);
      EXPECT_EQ(store->changesAfter(home, 0, 100)->changes.size(), 3u);
      WriteRequest write = writeOf({put("recipe", "new", "bytes")});
      write.householdId = home;
      EXPECT_EQ(store->write(write)->revision, 4);
    }
    const auto after = inspect(path);
    ASSERT_TRUE(after.ok()) << after.status();
    EXPECT_EQ(after->schemaVersion, after->knownVersion);
    EXPECT_TRUE(after->damages.empty()) << after->damages.front();
    EXPECT_EQ(after->households[0].devices, 2);
    EXPECT_EQ(after->households[0].documents.at("recipe"), 3);
    EXPECT_EQ(after->codes, 1);
  }
}

// Migrations of an imagined program, to test how any are applied.
const std::vector<std::string> kThree = {"CREATE TABLE a (x)", "ALTER TABLE a ADD COLUMN y",
                                         "INSERT INTO a VALUES (1, 2)"};

TEST(MigrationsTest, GoOnFromTheVersionOfTheFile) {
  TempDir dir;
  const auto database = Database::open(dir.file("data"), Database::Mode::kReadWrite);
  ASSERT_TRUE(migrate(**database, {kThree[0], kThree[1]}).ok());
  EXPECT_EQ(*(*database)->integer("PRAGMA user_version"), 2);
  ASSERT_TRUE(migrate(**database, kThree).ok());
  ASSERT_TRUE(migrate(**database, kThree).ok());
  EXPECT_EQ(*(*database)->integer("PRAGMA user_version"), 3);
  EXPECT_EQ(*(*database)->integer("SELECT count(*) FROM a"), 1);
}

TEST(MigrationsTest, LeaveTheLastGoodVersionWhenOneFails) {
  TempDir dir;
  const auto database = Database::open(dir.file("data"), Database::Mode::kReadWrite);
  EXPECT_FALSE(migrate(**database, {kThree[0], "CREATE TABLE b (x); CREATE TABLE a (x)", kThree[2]}).ok());
  EXPECT_EQ(*(*database)->integer("PRAGMA user_version"), 1);
  EXPECT_EQ(*(*database)->integer("SELECT count(*) FROM sqlite_schema"), 1);
  EXPECT_TRUE(checkIdentity(**database, 1).ok());
  ASSERT_TRUE(migrate(**database, kThree).ok());
}

}  // namespace
}  // namespace suppertide::storage
