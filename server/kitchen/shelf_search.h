// The exact search through packings of one shelf: the last resort, where neither a quick try nor
// straight cuts lay the pans, and no area refuses them.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "server/kitchen/shelf_packing.h"

namespace suppertide::kitchen {

inline constexpr int kMostSearched = 12;  // rectangles

// What was found out for some rectangles of a shelf serves others of the same shelf, too.
class ShelfSearch {
 public:
  virtual ~ShelfSearch() = default;
  // Spots for these rectangles, a bit for each one of the kinds in their order; of alike ones the first
  // bits. `steps` goes down, one for some 0.15 microseconds; 0 afterwards means that it ran out, and
  // none then only that no spots were found. None while some is left is exact.
  virtual std::optional<std::vector<Spot>> search(std::uint32_t singles, long& steps) = 0;
};

// Null for more than kMostSearched rectangles or a shelf of more than kWidestShelf mm.
std::unique_ptr<ShelfSearch> makeShelfSearch(int width, int depth, const std::vector<Footprint>& kinds);

}  // namespace suppertide::kitchen
