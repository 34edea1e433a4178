#include "client/timeline/lane_layout.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace suppertide {
namespace {

std::vector<int> subRows(const std::vector<LaneSpan>& spans) {
  std::vector<int> rows;
  for (const Placement& placement : layOut(spans).placements) rows.push_back(placement.subRow);
  return rows;
}

TEST(LaneLayoutTest, TouchingSpansShareASubRow) {
  EXPECT_EQ(subRows({{0, 10}, {10, 20}, {20, 25}}), (std::vector<int>{0, 0, 0}));
}

TEST(LaneLayoutTest, OverlappingSpansGoBelowAndComeBackUp) {
  EXPECT_EQ(subRows({{0, 30}, {10, 20}, {15, 40}, {20, 35}, {30, 50}}), (std::vector<int>{0, 1, 2, 1, 0}));
}

TEST(LaneLayoutTest, SpansOfNoLengthAtOneMomentDoNotCoverEachOther) {
  EXPECT_EQ(subRows({{5, 5}, {5, 5}}), (std::vector<int>{0, 1}));
}

TEST(LaneLayoutTest, TellsTheRoomUntilTheNextOfTheSameSubRow) {
  const LaneLayout layout = layOut({{0, 10}, {5, 8}, {25, 30}});
  EXPECT_DOUBLE_EQ(layout.placements[0].roomAfter, 15);
  EXPECT_DOUBLE_EQ(layout.placements[1].roomAfter, kEndlessRoom);
  EXPECT_EQ(layout.subRowCount, 2);
}

TEST(LaneLayoutTest, AnEmptyLaneHasOneSubRow) {
  EXPECT_EQ(layOut({}).subRowCount, 1);
}

TEST(LaneLayoutTest, RandomLanesNeverOverlapAndUseAsFewSubRowsAsOverlapAtMost) {
  for (unsigned seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE(seed);
    std::minstd_rand random(seed);
    std::vector<LaneSpan> spans(random() % 30);
    for (LaneSpan& span : spans) {
      span.start = random() % 100;
      span.limit = span.start + 1 + random() % 40;
    }
    std::sort(spans.begin(), spans.end(),
              [](const LaneSpan& a, const LaneSpan& b) { return a.start < b.start; });
    const LaneLayout layout = layOut(spans);
    std::size_t most = 1;
    for (int minute = 0; minute < 150; ++minute) {
      std::vector<int> rows;
      for (std::size_t i = 0; i < spans.size(); ++i) {
        if (spans[i].start <= minute && minute < spans[i].limit) rows.push_back(layout.placements[i].subRow);
      }
      most = std::max(most, rows.size());
      std::sort(rows.begin(), rows.end());
      ASSERT_EQ(std::unique(rows.begin(), rows.end()), rows.end()) << "two spans on one place at " << minute;
    }
    EXPECT_EQ(static_cast<std::size_t>(layout.subRowCount), most);
  }
}

}  // namespace
}  // namespace suppertide
