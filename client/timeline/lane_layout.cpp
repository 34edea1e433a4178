#include "client/timeline/lane_layout.h"

#include <algorithm>

namespace suppertide {
namespace {
constexpr double kLeastLength = 1;  // minutes taken by a span of no length
}  // namespace

LaneLayout layOut(const std::vector<LaneSpan>& spans) {
  LaneLayout layout;
  std::vector<double> freeFrom;
  std::vector<std::size_t> last;  // the span that stands last in each sub-row
  for (std::size_t i = 0; i < spans.size(); ++i) {
    const LaneSpan& span = spans[i];
    std::size_t row = 0;
    while (row < freeFrom.size() && freeFrom[row] > span.start) ++row;
    if (row == freeFrom.size()) {
      freeFrom.push_back(0);
      last.push_back(i);
    } else {
      const std::size_t before = last[row];
      layout.placements[before].roomAfter = std::max(0.0, span.start - spans[before].limit);
      last[row] = i;
    }
    freeFrom[row] = std::max(span.limit, span.start + kLeastLength);
    layout.placements.push_back({static_cast<int>(row), kEndlessRoom});
  }
  layout.subRowCount = std::max(1, static_cast<int>(freeFrom.size()));
  return layout;
}

}  // namespace suppertide
