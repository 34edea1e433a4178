#include "server/kitchen/shelf_packing.h"

#include <algorithm>
#include <set>

namespace suppertide::kitchen {
namespace {

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
class ShelfSearch {
 public:
  ShelfSearch(int width, int depth, std::vector<Footprint> kinds)
      : width_(width), depth_(depth), kinds_(std::move(kinds)), outline_{{0, 0}} {
    spare_ = static_cast<long>(width_) * depth_;
    for (const Footprint& kind : kinds_) {
      spare_ -= static_cast<long>(kind.width) * kind.depth * kind.count;
      left_ += kind.count;
    }
  }

  bool run() { return spare_ >= 0 && !tooMuchByLength() && place(); }
  const std::vector<Spot>& spots() const { return spots_; }

 private:
  // From `x` to the next corner's x, taken or lost up to `y`.
  struct Corner {
    int x;
    int y;
  };
  using Outline = std::vector<Corner>;

  struct Step {
    std::size_t index = 0;
    int x = 0;
    int limit = 0;
    int y = 0;
    int leftWall = 0;  // height of the neighbours; the shelf's depth stands for its side
    int rightWall = 0;
  };

  // A length over which nothing of at least `least` can lie counts as all of
  // `whole`; one shorter than `least` counts as nothing. Areas of such lengths
  // still have to fit together (Fekete and Schepers' conservative scales).
  static long scaled(int length, int whole, int least) {
    if (length > whole - least) return whole;
    return length < least ? 0 : length;
  }

  bool tooMuchByLength() const {
    std::set<int> sides = {0};
    for (const Footprint& kind : kinds_) sides.insert({kind.width, kind.depth});
    for (int leastWide : sides) {
      if (2 * leastWide > width_) break;
      for (int leastDeep : sides) {
        if (2 * leastDeep > depth_) break;
        if (scaledArea(leastWide, leastDeep) > static_cast<long>(width_) * depth_) return true;
      }
    }
    return false;
  }

  long scaledArea(int leastWide, int leastDeep) const {
    long area = 0;
    for (const Footprint& kind : kinds_) {
      const auto one = [&](int wide, int deep) {
        if (wide > width_ || deep > depth_) return static_cast<long>(width_) * depth_ + 1;
        return scaled(wide, width_, leastWide) * scaled(deep, depth_, leastDeep);
      };
      area += kind.count * std::min(one(kind.width, kind.depth), one(kind.depth, kind.width));
    }
    return area;
  }

  int limitOf(std::size_t i) const { return i + 1 < outline_.size() ? outline_[i + 1].x : width_; }

  Step lowestStep() const {
    std::size_t lowest = 0;
    for (std::size_t i = 1; i < outline_.size(); ++i) {
      if (outline_[i].y < outline_[lowest].y) lowest = i;
    }
    return {.index = lowest,
            .x = outline_[lowest].x,
            .limit = limitOf(lowest),
            .y = outline_[lowest].y,
            .leftWall = lowest > 0 ? outline_[lowest - 1].y : depth_,
            .rightWall = lowest + 1 < outline_.size() ? outline_[lowest + 1].y : depth_};
  }

  // Raises [x, limit), which lies on one step, to `y` and joins equal neighbours.
  void raise(const Step& step, int x, int limit, int y) {
    Outline next(outline_.begin(), outline_.begin() + static_cast<std::ptrdiff_t>(step.index));
    const auto add = [&](Corner corner) {
      if (next.empty() || next.back().y != corner.y) next.push_back(corner);
    };
    if (x > step.x) add({step.x, step.y});
    add({x, y});
    if (limit < step.limit) add({limit, step.y});
    for (std::size_t i = step.index + 1; i < outline_.size(); ++i) add(outline_[i]);
    outline_ = std::move(next);
  }

  bool place() {
    if (left_ == 0) return true;
    if (--readings_ < 0) return false;
    const Step step = lowestStep();
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
    for (int x : chainEnds(step, k, step.limit - wide)) {
      const bool done = lose(step, x, step.leftWall, [&] {
        const Step rest = lowestStep();
        return rest.x == x && rest.y == step.y && put(rest, k, turned, x);
      });
      if (done) return true;
    }
    return false;
  }

  bool put(const Step& step, std::size_t k, bool turned, int x) {
    const int wide = turned ? kinds_[k].depth : kinds_[k].width;
    const int deep = turned ? kinds_[k].width : kinds_[k].depth;
    const Outline before = outline_;
    raise(step, x, x + wide, step.y + deep);
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
    const Outline before = outline_;
    spare_ -= lost;
    raise(step, step.x, limit, y);
    if (rest()) return true;
    spare_ += lost;
    outline_ = before;
    return false;
  }

  // Where a chain of rectangles other than one of kind `k`, begun at an edge
  // left of the step, may end on it: in (step.x, most], nearest first.
  std::set<int> chainEnds(const Step& step, std::size_t k, int most) {
    // Beyond this the lost corner alone is more than can be spared.
    const long affordable = step.x + spare_ / (step.leftWall - step.y);
    const int last = static_cast<int>(std::min<long>(most, affordable));
    std::set<int> ends;
    if (last <= step.x) return ends;
    std::vector<bool> reached(static_cast<std::size_t>(last) + 1);
    reached[0] = true;
    for (const Spot& spot : spots_) {
      const Footprint& print = kinds_[static_cast<std::size_t>(spot.kind)];
      const int edge = spot.x + (spot.turned ? print.depth : print.width);
      if (edge < step.x) reached[static_cast<std::size_t>(edge)] = true;
    }
    for (std::size_t other = 0; other < kinds_.size(); ++other) {
      const int count = kinds_[other].count - (other == k ? 1 : 0);
      for (int i = 0; i < count; ++i) extend(reached, kinds_[other]);
    }
    for (int x = step.x + 1; x <= last; ++x) {
      if (reached[static_cast<std::size_t>(x)]) ends.insert(x);
    }
    return ends;
  }

  static void extend(std::vector<bool>& reached, const Footprint& print) {
    const int size = static_cast<int>(reached.size());
    for (int x = size - 1; x >= 0; --x) {
      const int byWidth = x - print.width;
      const int byDepth = x - print.depth;
      const bool ends = (byWidth >= 0 && reached[static_cast<std::size_t>(byWidth)]) ||
                        (byDepth >= 0 && reached[static_cast<std::size_t>(byDepth)]);
      if (ends) reached[static_cast<std::size_t>(x)] = true;
    }
  }

  int width_;
  int depth_;
  std::vector<Footprint> kinds_;  // counts of what is still to be placed
  Outline outline_;
  std::vector<Spot> spots_;
  long spare_ = 0;  // area that may still be lost
  int left_ = 0;
  int readings_ = kMostShelfSteps;
};

}  // namespace

std::optional<std::vector<Spot>> packShelf(int width, int depth, const std::vector<Footprint>& footprints) {
  ShelfSearch search(width, depth, footprints);
  if (!search.run()) return std::nullopt;
  return search.spots();
}

}  // namespace suppertide::kitchen
