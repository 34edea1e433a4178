#include "client/link/replica_file.h"

#include <gtest/gtest.h>

#include <fstream>

#include "client/link/replica_changes.h"
#include "tests/support/temp_dir.h"

namespace suppertide::link {
namespace {

Replica storedHousehold() {
  Replica replica;
  replica.revision = 7;
  replica.household.set_id("h1");
  replica.kitchens["k"].set_id("k");
  replica.starters["s"].set_id("s");
  replica.recipes["r"].set_id("r");
  replica.events["e"].set_id("e");
  replica.plans["e"].set_id("e");
  replica.progresses["e"].set_id("e");
  replica.proposals["e"].set_id("e");
  replica.reviews["e"].set_id("e");
  replica.reminderLogs["m"].set_id("m");
  replica.calendarAddresses["c"].set_id("c");
  replica.shoppings["e"].set_id("e");
  return replica;
}

TEST(ReplicaFileTest, GivesBackEveryKindOfDocument) {
  const auto* kinds = v1::Change::descriptor()->FindOneofByName("what");
  ASSERT_NE(kinds, nullptr);
  EXPECT_EQ(static_cast<int>(changesOf(storedHousehold()).size()), kinds->field_count() - 1)
      << "every kind but what is deleted";
  const TempDir folder;
  ASSERT_TRUE(saveReplica(folder.file("kept/replica"), storedHousehold()).ok());
  const auto loaded = loadReplica(folder.file("kept/replica"));
  ASSERT_TRUE(loaded.ok()) << loaded.status();
  EXPECT_EQ((*loaded)->revision, 7);
  const auto before = changesOf(storedHousehold());
  const auto after = changesOf(**loaded);
  ASSERT_EQ(after.size(), before.size());
  for (std::size_t i = 0; i < before.size(); ++i)
    EXPECT_EQ(after[i].SerializeAsString(), before[i].SerializeAsString());
}

TEST(ReplicaFileTest, AFileCutShortIsNotHalfRead) {
  const TempDir folder;
  ASSERT_TRUE(saveReplica(folder.file("replica"), storedHousehold()).ok());
  const auto size = std::filesystem::file_size(folder.file("replica"));
  for (std::uintmax_t kept = 0; kept < size; kept += 3) {
    std::filesystem::copy_file(folder.file("replica"), folder.file("cut"),
                               std::filesystem::copy_options::overwrite_existing);
    std::filesystem::resize_file(folder.file("cut"), kept);
    EXPECT_EQ(loadReplica(folder.file("cut")).status().code(), absl::StatusCode::kDataLoss) << kept;
  }
  EXPECT_EQ(loadReplica(folder.file("none")).status().code(), absl::StatusCode::kNotFound);
}

TEST(ReplicaKeeperTest, WritesTheLastOneAtTheLatestWhenItGoes) {
  const TempDir folder;
  {
    ReplicaKeeper keeper(folder.file("replica"), std::chrono::minutes(10));
    for (int revision = 1; revision <= 5; ++revision) {
      Replica replica = storedHousehold();
      replica.revision = revision;
      keeper.keep(std::make_shared<const Replica>(std::move(replica)));
    }
  }
  const auto loaded = loadReplica(folder.file("replica"));
  ASSERT_TRUE(loaded.ok()) << loaded.status();
  EXPECT_EQ((*loaded)->revision, 5);
}

}  // namespace
}  // namespace suppertide::link
