// Packs rectangles onto one shelf, exactly.
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

// Spots for all footprints on a shelf of `width` x `depth`, or none when they
// cannot lie there without overlap. Turning by 90 degrees is allowed.
// Exponential in the count of rectangles; meant for a dozen.
std::optional<std::vector<Spot>> packShelf(int width, int depth, const std::vector<Footprint>& footprints);

}  // namespace suppertide::kitchen
