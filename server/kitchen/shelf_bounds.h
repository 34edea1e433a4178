// Which of a shelf's rectangles are too much for it, by areas alone.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "server/kitchen/shelf_packing.h"

namespace suppertide::kitchen {

// A length over which nothing of at least `least` can lie counts as all of the shelf's; one shorter than
// `least` counts as nothing. Areas of such lengths still have to fit together (Fekete and Schepers'
// conservative scales). The scaled area of every rectangle is worked out once for each pair of scales that
// the rectangles' own sides give, so that a set is a few sums.
class ShelfBounds {
 public:
  static constexpr std::size_t kMostRectangles = 12;

  // At most kMostRectangles, each of which lies on the shelf alone.
  ShelfBounds(int width, int depth, const std::vector<Footprint>& singles);

  // Of a set of bits, one for each rectangle. False says nothing.
  bool isTooMuch(std::uint32_t set) const;

 private:
  static constexpr std::size_t kMostScales = 8 * kMostRectangles + 4;
  using Areas = std::array<std::int32_t, kMostScales>;  // by scale

  const std::int32_t whole_;
  std::vector<Areas> areas_;  // by rectangle
};

}  // namespace suppertide::kitchen
