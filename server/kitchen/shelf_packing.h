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

// Steps of the search after which a shelf counts as full: about 10 ms. Sets that
// people put on a shelf need some dozens; only many small pans, all of different
// sizes and filling the shelf almost wholly, come here.
inline constexpr int kMostShelfSteps = 20'000;

// Spots for all footprints on a shelf of `width` x `depth`, or none when they
// cannot lie there without overlap. Turning by 90 degrees is allowed.
// Exact within kMostShelfSteps; "none" beyond.
std::optional<std::vector<Spot>> packShelf(int width, int depth, const std::vector<Footprint>& footprints);

}  // namespace suppertide::kitchen
