// Packs rectangles onto one shelf: a quick try.
#pragma once

#include <optional>
#include <vector>

namespace suppertide::kitchen {

// Rectangles of one size; `count` of them are alike.
struct Footprint {
  int width = 0;
  int depth = 0;
  int count = 0;
};

struct Spot {
  int kind = 0;  // index into the footprints asked about
  int x = 0;
  int y = 0;
  bool turned = false;
};

inline constexpr int kWidestShelf = 2000;  // mm, either way

// Whether two rectangles can lie on the shelf together, each either way round.
bool fitPair(int width, int depth, const Footprint& one, const Footprint& other);

// Spots found by laying the best next one at the lowest place, by several ideas
// of best, then by `mixedTries` runs that mix them. None says nothing. A few
// microseconds, and one or two for each mixed try.
std::optional<std::vector<Spot>> packShelfQuickly(int width, int depth,
                                                  const std::vector<Footprint>& footprints,
                                                  int mixedTries = 0);

}  // namespace suppertide::kitchen
