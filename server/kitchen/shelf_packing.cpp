#include "server/kitchen/shelf_packing.h"

#include <algorithm>
#include <cstdint>
#include <iterator>

#include "server/kitchen/shelf_outline.h"

namespace suppertide::kitchen {
namespace {

using Step = ShelfOutline::Step;

int countOf(const std::vector<Footprint>& footprints) {
  int count = 0;
  for (const Footprint& print : footprints) count += print.count;
  return count;
}

// What is best to lay next on a step: more is better. `fills` is the width that stays free beside it.
enum class Idea { kFillsStep, kLargest, kWidest, kDeepest, kLevels };
constexpr std::size_t kBestIdeas = 2;  // the first ones find most
constexpr Idea kIdeas[] = {Idea::kFillsStep, Idea::kLargest, Idea::kWidest, Idea::kDeepest, Idea::kLevels};

long worth(Idea idea, const Step& step, int wide, int deep) {
  const long free = step.limit - step.x - wide;
  const long area = static_cast<long>(wide) * deep;
  switch (idea) {
    case Idea::kFillsStep:
      return -free * 4'000'000 + area;
    case Idea::kLargest:
      return area * 4'000 - free;
    case Idea::kWidest:
      return wide * 4'000L + deep;
    case Idea::kDeepest:
      return deep * 4'000L + wide;
    case Idea::kLevels: {
      const int wall = std::max(step.leftWall, step.rightWall);
      return -std::abs(step.y + deep - wall) * 4'000L - free;
    }
  }
  return 0;
}

// One run: lays the best that fits at the lowest step, or gives the step up.
// `nextIdea` is asked at each step.
template <typename NextIdea>
bool layBy(const NextIdea& nextIdea, int width, int depth, std::vector<Footprint> kinds,
           std::vector<Spot>& spots) {
  ShelfOutline outline(width, depth);
  spots.clear();
  int left = 0;
  long spare = static_cast<long>(width) * depth;
  for (const Footprint& kind : kinds) {
    left += kind.count;
    spare -= static_cast<long>(kind.width) * kind.depth * kind.count;
  }
  while (left > 0) {
    const Step step = outline.lowest();
    if (step.y >= depth) return false;
    const Idea idea = nextIdea();
    int best = -1;
    bool bestTurned = false;
    long bestWorth = 0;
    for (std::size_t k = 0; k < kinds.size(); ++k) {
      if (kinds[k].count == 0) continue;
      for (const bool turned : {false, true}) {
        const int wide = turned ? kinds[k].depth : kinds[k].width;
        const int deep = turned ? kinds[k].width : kinds[k].depth;
        if (wide > step.limit - step.x || step.y + deep > depth) continue;
        const long here = worth(idea, step, wide, deep);
        if (best >= 0 && here <= bestWorth) continue;
        best = static_cast<int>(k);
        bestTurned = turned;
        bestWorth = here;
      }
    }
    if (best < 0) {
      const int wall = std::min(step.leftWall, step.rightWall);
      spare -= static_cast<long>(step.limit - step.x) * (wall - step.y);
      if (spare < 0) return false;
      outline.raise(step, step.x, step.limit, wall);
      continue;
    }
    Footprint& kind = kinds[static_cast<std::size_t>(best)];
    const int wide = bestTurned ? kind.depth : kind.width;
    const int deep = bestTurned ? kind.width : kind.depth;
    outline.raise(step, step.x, step.x + wide, step.y + deep);
    spots.push_back({best, step.x, step.y, bestTurned});
    --kind.count;
    --left;
  }
  return true;
}

}  // namespace

bool fitPair(int width, int depth, const Footprint& one, const Footprint& other) {
  const auto beside = [&](int wide, int deep, int otherWide, int otherDeep) {
    return (wide + otherWide <= width && std::max(deep, otherDeep) <= depth) ||
           (deep + otherDeep <= depth && std::max(wide, otherWide) <= width);
  };
  return beside(one.width, one.depth, other.width, other.depth) ||
         beside(one.width, one.depth, other.depth, other.width) ||
         beside(one.depth, one.width, other.width, other.depth) ||
         beside(one.depth, one.width, other.depth, other.width);
}

std::optional<std::vector<Spot>> packShelfQuickly(int width, int depth,
                                                  const std::vector<Footprint>& footprints, int mixedTries) {
  if (countOf(footprints) >= ShelfOutline::kMostCorners || std::max(width, depth) > kWidestShelf)
    return std::nullopt;
  std::vector<Spot> spots;
  const auto laid = [&](const auto& nextIdea) {
    if (layBy(nextIdea, width, depth, footprints, spots)) return true;
    // Seen from the other side, other things are lowest.
    if (!layBy(nextIdea, depth, width, footprints, spots)) return false;
    for (Spot& spot : spots) {
      std::swap(spot.x, spot.y);
      spot.turned = !spot.turned;
    }
    return true;
  };
  for (std::size_t i = 0; i < (mixedTries > 0 ? std::size(kIdeas) : kBestIdeas); ++i)
    if (laid([i] { return kIdeas[i]; })) return spots;
  std::uint32_t dice = 1;
  const auto thrown = [&dice] {
    dice = dice * 1'664'525U + 1'013'904'223U;
    return kIdeas[(dice >> 24) % std::size(kIdeas)];
  };
  for (int i = 0; i < mixedTries; ++i)
    if (laid(thrown)) return spots;
  return std::nullopt;
}

}  // namespace suppertide::kitchen
