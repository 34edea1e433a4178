#include "server/kitchen/shelf_bounds.h"

#include <algorithm>
#include <bit>
#include <utility>

namespace suppertide::kitchen {
namespace {

using Scale = std::pair<int, int>;  // the least width and depth that count

int scaledLength(int length, int whole, int least) {
  if (length > whole - least) return whole;
  return length < least ? 0 : length;
}

int scaledArea(int width, int depth, const Footprint& print, const Scale& scale) {
  const auto one = [&](int wide, int deep) {
    if (wide > width || deep > depth) return width * depth + 1;
    return scaledLength(wide, width, scale.first) * scaledLength(deep, depth, scale.second);
  };
  return std::min(one(print.width, print.depth), one(print.depth, print.width));
}

std::vector<Scale> scalesOf(int width, int depth, const std::vector<Footprint>& singles) {
  // Beyond half of the shelf nothing lies side by side.
  std::vector<Scale> scales = {{0, 0}, {width / 2, 0}, {0, depth / 2}, {width / 2, depth / 2}};
  for (const Footprint& one : singles) {
    for (const int side : {one.width, one.depth})
      scales.insert(scales.end(), {{side, 0}, {0, side}, {side, side}});
    scales.insert(scales.end(), {{one.width, one.depth}, {one.depth, one.width}});
  }
  std::erase_if(scales, [&](const Scale& s) { return 2 * s.first > width || 2 * s.second > depth; });
  std::sort(scales.begin(), scales.end());
  scales.erase(std::unique(scales.begin(), scales.end()), scales.end());
  return scales;
}

}  // namespace

ShelfBounds::ShelfBounds(int width, int depth, const std::vector<Footprint>& singles)
    : whole_(width * depth), areas_(singles.size(), Areas{}) {
  const std::vector<Scale> scales = scalesOf(width, depth, singles);
  for (std::size_t i = 0; i < singles.size(); ++i)
    for (std::size_t s = 0; s < std::min(scales.size(), kMostScales); ++s)
      areas_[i][s] = scaledArea(width, depth, singles[i], scales[s]);
}

bool ShelfBounds::isTooMuch(std::uint32_t set) const {
  Areas sums{};
  for (; set != 0; set &= set - 1) {
    const Areas& areas = areas_[static_cast<std::size_t>(std::countr_zero(set))];
    for (std::size_t s = 0; s < kMostScales; ++s) sums[s] += areas[s];
  }
  return std::any_of(sums.begin(), sums.end(), [&](std::int32_t sum) { return sum > whole_; });
}

}  // namespace suppertide::kitchen
