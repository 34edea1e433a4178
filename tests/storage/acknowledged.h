// Numbered writes, and whether a store kept what it acknowledged of them.
//
// Write i puts a document of its own and changes a shared one, under a request
// id of its own: so a lost, doubled or half write shows.
#pragma once

#include <gtest/gtest.h>

#include <map>
#include <set>
#include <string>

#include "tests/support/stored_household.h"

namespace suppertide {

inline storage::WriteRequest numbered(int i) {
  const std::string number = std::to_string(i);
  return writeOf(
      {put("recipe", "own-" + number, number + std::string(300, '.')), put("recipe", "shared", number)},
      "request-" + number);
}

// Each acknowledged write is in the log once and whole, nothing is there twice
// or by halves, and repeating any of them all ends with each there exactly once.
// With `first` only what was attempted from that number on, in a log that had all
// before it at revision first + 1.
inline void expectExactlyOnce(storage::Store& store, const std::set<int>& acknowledged, int attempted,
                              int first = 0) {
  for (int i = first; i < attempted; ++i) {
    const absl::StatusOr<storage::WriteResult> repeat = store.write(numbered(i));
    ASSERT_TRUE(repeat.ok()) << "write " << i << ": " << repeat.status();
    EXPECT_TRUE(repeat->replayed || !acknowledged.contains(i)) << "write " << i << " was lost";
  }
  const absl::StatusOr<storage::ChangePage> page = store.changesAfter(kHome, first + 1, 1'000'000);
  ASSERT_TRUE(page.ok()) << page.status();
  ASSERT_FALSE(page->trimmed) << "the log no longer reaches back to write " << first;
  std::map<std::string, int> seen;
  std::int64_t expected = first + 2;
  for (const storage::Change& change : page->changes) {
    EXPECT_EQ(change.revision, expected++);
    ASSERT_EQ(change.documents.size(), 2u) << "half a write at revision " << change.revision;
    EXPECT_EQ(change.documents[0].key.id, "own-" + change.documents[1].bytes);
    ++seen[change.documents[0].key.id];
  }
  EXPECT_EQ(seen.size(), static_cast<std::size_t>(attempted - first));
  for (const auto& [id, times] : seen) EXPECT_EQ(times, 1) << id;
  EXPECT_EQ(*store.revision(kHome), expected - 1);
}

}  // namespace suppertide
