#include "server/kitchen/shelf_packing.h"

#include <algorithm>
#include <bitset>
#include <cstdint>
#include <iterator>

#include "server/kitchen/shelf_outline.h"

namespace suppertide::kitchen {
namespace {

constexpr int kWidestShelf = 2000;
constexpr int kUsualShelf = 511;  // most are no wider, and then sums of lengths are quick
using Step = ShelfOutline::Step;

// A length over which nothing of at least `least` can lie counts as all of
// `whole`; one shorter than `least` counts as nothing. Areas of such lengths
// still have to fit together (Fekete and Schepers' conservative scales).
long scaled(int length, int whole, int least) {
  if (length > whole - least) return whole;
  return length < least ? 0 : length;
}

long scaledArea(int width, int depth, const std::vector<Footprint>& kinds, int leastWide, int leastDeep) {
  long area = 0;
  for (const Footprint& kind : kinds) {
    const auto one = [&](int wide, int deep) {
      if (wide > width || deep > depth) return static_cast<long>(width) * depth + 1;
      return scaled(wide, width, leastWide) * scaled(deep, depth, leastDeep);
    };
    area += kind.count * std::min(one(kind.width, kind.depth), one(kind.depth, kind.width));
  }
  return area;
}

// Fills the shelf from the front, always at the lowest, leftmost step of the
// outline of what lies there already.
//
// Take a packing that cannot be improved by moving one rectangle left or to the
// front, and look at that step: its left corner is covered by a rectangle lying
// exactly in it (a), or some rectangle lies on the step further right (b), or
// none lies on it and the step is lost up to its lower neighbour (c). In (b)
// the rectangle would slide left but for one that hangs over the step's left
// wall and touches it above; so it is higher than that wall, and it starts where
// a chain of later rectangles from some edge left of the step ends. Each packing
// has one such story, and lost area is counted, so few stories are read.
template <int kWidest>
class ShelfSearch {
 public:
  ShelfSearch(int width, int depth, std::vector<Footprint> kinds, int& steps)
      : width_(width), depth_(depth), kinds_(std::move(kinds)), outline_(width, depth), steps_(steps) {
    spare_ = static_cast<long>(width_) * depth_;
    for (const Footprint& kind : kinds_) {
      spare_ -= static_cast<long>(kind.width) * kind.depth * kind.count;
      left_ += kind.count;
    }
  }

  bool run() { return spare_ >= 0 && place(); }
  const std::vector<Spot>& spots() const { return spots_; }

 private:
  using Ends = std::bitset<static_cast<std::size_t>(kWidest) + 1>;

  bool place() {
    if (left_ == 0) return true;
    if (steps_ == 0) return false;
    --steps_;
    const Step step = outline_.lowest();
    if (step.y >= depth_) return false;
    for (std::size_t k = 0; k < kinds_.size(); ++k) {
      if (tryKind(step, k, false)) return true;
      if (kinds_[k].width != kinds_[k].depth && tryKind(step, k, true)) return true;
    }
    return lose(step, step.limit, std::min(step.leftWall, step.rightWall), [&] { return place(); });
  }

  bool tryKind(const Step& step, std::size_t k, bool turned) {
    if (kinds_[k].count == 0) return false;
    const int wide = turned ? kinds_[k].depth : kinds_[k].width;
    const int deep = turned ? kinds_[k].width : kinds_[k].depth;
    if (wide > step.limit - step.x || step.y + deep > depth_) return false;
    if (put(step, k, turned, step.x)) return true;
    if (step.x == 0 || step.y + deep <= step.leftWall) return false;
    // Beyond this the lost corner alone is more than can be spared.
    const long affordable = step.x + spare_ / (step.leftWall - step.y);
    const int last = static_cast<int>(std::min<long>(step.limit - wide, affordable));
    if (last <= step.x) return false;
    const Ends ends = chainEnds(step, k);
    for (int x = step.x + 1; x <= last; ++x) {
      if (!ends[static_cast<std::size_t>(x)]) continue;
      const bool done = lose(step, x, step.leftWall, [&] {
        const Step rest = outline_.lowest();
        return rest.x == x && rest.y == step.y && put(rest, k, turned, x);
      });
      if (done) return true;
    }
    return false;
  }

  bool put(const Step& step, std::size_t k, bool turned, int x) {
    const int wide = turned ? kinds_[k].depth : kinds_[k].width;
    const int deep = turned ? kinds_[k].width : kinds_[k].depth;
    const ShelfOutline before = outline_;
    outline_.raise(step, x, x + wide, step.y + deep);
    --kinds_[k].count;
    --left_;
    spots_.push_back({static_cast<int>(k), x, step.y, turned});
    if (place()) return true;
    spots_.pop_back();
    ++left_;
    ++kinds_[k].count;
    outline_ = before;
    return false;
  }

  // Gives up the step's area from its left end to `limit`, up to `y`, and goes on.
  template <typename Rest>
  bool lose(const Step& step, int limit, int y, const Rest& rest) {
    const long lost = static_cast<long>(limit - step.x) * (y - step.y);
    if (lost > spare_) return false;
    const ShelfOutline before = outline_;
    spare_ -= lost;
    outline_.raise(step, step.x, limit, y);
    if (rest()) return true;
    spare_ += lost;
    outline_ = before;
    return false;
  }

  // Where a chain of rectangles other than one of kind `k`, begun at an edge
  // left of the step, may end.
  Ends chainEnds(const Step& step, std::size_t k) const {
    Ends reached;
    reached[0] = true;
    for (const Spot& spot : spots_) {
      const Footprint& print = kinds_[static_cast<std::size_t>(spot.kind)];
      const int edge = spot.x + (spot.turned ? print.depth : print.width);
      if (edge < step.x) reached[static_cast<std::size_t>(edge)] = true;
    }
    for (std::size_t other = 0; other < kinds_.size(); ++other) {
      const Footprint& print = kinds_[other];
      const int count = print.count - (other == k ? 1 : 0);
      for (int i = 0; i < count; ++i)
        reached |= (reached << static_cast<std::size_t>(print.width)) |
                   (reached << static_cast<std::size_t>(print.depth));
    }
    return reached;
  }

  int width_;
  int depth_;
  std::vector<Footprint> kinds_;  // counts of what is still to be placed
  ShelfOutline outline_;
  std::vector<Spot> spots_;
  long spare_ = 0;  // area that may still be lost
  int left_ = 0;
  int& steps_;
};

int countOf(const std::vector<Footprint>& footprints) {
  int count = 0;
  for (const Footprint& print : footprints) count += print.count;
  return count;
}

template <int kWidest>
std::optional<std::vector<Spot>> searched(int width, int depth, const std::vector<Footprint>& footprints,
                                          int& steps) {
  ShelfSearch<kWidest> search(width, depth, footprints, steps);
  if (!search.run()) return std::nullopt;
  return search.spots();
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

std::optional<std::vector<Spot>> packShelf(int width, int depth, const std::vector<Footprint>& footprints,
                                           int& steps) {
  const bool inReach =
      countOf(footprints) < ShelfOutline::kMostCorners && width <= kWidestShelf && depth <= kWidestShelf;
  if (!inReach || isTooMuch(width, depth, footprints)) return std::nullopt;
  return width <= kUsualShelf ? searched<kUsualShelf>(width, depth, footprints, steps)
                              : searched<kWidestShelf>(width, depth, footprints, steps);
}

std::optional<std::vector<Spot>> packShelf(int width, int depth, const std::vector<Footprint>& footprints) {
  int steps = kMostShelfSteps;
  return packShelf(width, depth, footprints, steps);
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

bool isTooMuch(int width, int depth, const std::vector<Footprint>& footprints) {
  const long whole = static_cast<long>(width) * depth;
  long area = 0;
  for (const Footprint& kind : footprints) area += static_cast<long>(kind.width) * kind.depth * kind.count;
  if (area > whole) return true;
  // Half empty, such lengths prove nothing but what lies in no way at all.
  if (area * 4 < whole * 3) return scaledArea(width, depth, footprints, 0, 0) > whole;
  const auto proves = [&](int leastWide, int leastDeep) {
    if (2 * leastWide > width || 2 * leastDeep > depth) return false;
    return scaledArea(width, depth, footprints, leastWide, leastDeep) > whole;
  };
  for (const Footprint& kind : footprints) {
    if (kind.count == 0) continue;
    for (const int side : {kind.width, kind.depth})
      if (proves(side, 0) || proves(0, side) || proves(side, side)) return true;
    if (proves(kind.width, kind.depth) || proves(kind.depth, kind.width)) return true;
  }
  return false;
}

}  // namespace suppertide::kitchen
