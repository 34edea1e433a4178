// Packings of a shelf that straight cuts from edge to edge take apart: most of what people lay
// side by side, and all of them in far less time than a search for any packing takes.
#pragma once

#include <optional>
#include <vector>

#include "server/kitchen/shelf_packing.h"

namespace suppertide::kitchen {

// Blocks put together in all searches of one oven, some 2 ms.
inline constexpr long kMostJoins = 40'000;

// Spots for all footprints, at most 12 rectangles; none when no such packing was found, which says
// nothing of others. `joins` is a budget that goes down. A dozen unlike rectangles take 0.5 to 3 ms,
// six some 20 microseconds.
std::optional<std::vector<Spot>> packByStraightCuts(int width, int depth,
                                                    const std::vector<Footprint>& footprints, long& joins);

}  // namespace suppertide::kitchen
