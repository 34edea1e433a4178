// Packs rectangles onto one shelf: a quick try, quick refusals, and the exact search.
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

// Steps of the exact search after which a shelf counts as full, some 10 ms. Sets
// that people put on a shelf need some dozens; only many small pans, all of
// different sizes and filling the shelf almost wholly, come here.
inline constexpr int kMostShelfSteps = 100'000;

// Spots for all footprints, at most 15 rectangles, on a shelf of `width` x `depth`
// (at most 2000 mm), or none when they cannot lie there without overlap. Turning by
// 90 degrees is allowed.
// Exact within kMostShelfSteps; "none" beyond.
std::optional<std::vector<Spot>> packShelf(int width, int depth, const std::vector<Footprint>& footprints);

// The same with a budget of steps that goes down; 0 afterwards means that it ran
// out, and "none" then only that no spots were found.
std::optional<std::vector<Spot>> packShelf(int width, int depth, const std::vector<Footprint>& footprints,
                                           int& steps);

// Spots found by laying the best next one at the lowest place, by several ideas
// of best, then by `mixedTries` runs that mix them. None says nothing. A few
// microseconds, and one or two for each mixed try.
std::optional<std::vector<Spot>> packShelfQuickly(int width, int depth,
                                                  const std::vector<Footprint>& footprints,
                                                  int mixedTries = 0);

// True when their areas, also with lengths that nothing can share counted whole, are too
// much for the shelf; false says nothing.
bool isTooMuch(int width, int depth, const std::vector<Footprint>& footprints);

}  // namespace suppertide::kitchen
