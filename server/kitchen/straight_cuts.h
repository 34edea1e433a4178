// Packings of a shelf that straight cuts from edge to edge take apart: most of what people lay
// side by side, and all of them in far less time than a search for any packing takes.
#pragma once

#include <optional>
#include <vector>

#include "server/kitchen/shelf_packing.h"

namespace suppertide::kitchen {

// Blocks put together in all searches of one oven, some 4 ms.
inline constexpr long kMostJoins = 470'000;

// Spots for all footprints, at most 12 rectangles. `joins` is a budget that goes down: none while some is
// left means that no such packing exists; 0 afterwards that none was found in time. Other packings may
// exist all the same from four rectangles on, around a hole. A dozen unlike rectangles that fill the shelf
// almost wholly take 0.3 to 3 ms, six some 5 microseconds.
std::optional<std::vector<Spot>> packByStraightCuts(int width, int depth,
                                                    const std::vector<Footprint>& footprints, long& joins);

}  // namespace suppertide::kitchen
