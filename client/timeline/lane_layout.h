// Puts the steps of one lane into sub-rows, so that none covers another.
#pragma once

#include <vector>

namespace suppertide {

// Half-open, minutes.
struct LaneSpan {
  double start = 0;
  double limit = 0;
};

struct Placement {
  int subRow = 0;        // 0 is the uppermost
  double roomAfter = 0;  // minutes until the next span of the same sub-row; kEndlessRoom for the last
};
constexpr double kEndlessRoom = 1e9;

struct LaneLayout {
  int subRowCount = 1;
  std::vector<Placement> placements;  // one a span, in their order
};

// `spans` ordered by start. Each goes into the uppermost sub-row that is free, so
// as few are made as spans overlap at most. A span of no length still takes its sub-row.
LaneLayout layOut(const std::vector<LaneSpan>& spans);

}  // namespace suppertide
