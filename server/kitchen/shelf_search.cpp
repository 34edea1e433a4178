#include "server/kitchen/shelf_search.h"

#include <algorithm>
#include <bit>
#include <utility>

#include "server/kitchen/length_sums.h"
#include "server/kitchen/shelf_outline.h"

namespace suppertide::kitchen {
namespace {

constexpr std::size_t kUsualWords = 8;    // of shelves up to 511 mm
constexpr std::size_t kWidestWords = 32;  // up to 2047 mm
// Outlines kept that hold nothing more: few at first, as most searches are short.
constexpr std::size_t kFewKept = 1U << 11;
constexpr std::size_t kMostKept = 1U << 15;
using Step = ShelfOutline::Step;
using Set = std::uint32_t;  // a bit for each single rectangle

// Fills the shelf from the front, always at the lowest, leftmost step of the
// outline of what lies there already.
//
// Take a packing that cannot be improved by moving one of those still to come
// left or to the front, and look at that step: its left corner is covered by a
// rectangle lying exactly in it (a), or some rectangle lies on the step further
// right (b), or none lies on it and the step is lost up to its lower neighbour
// (c). In (b) the rectangle would slide left but for one that hangs over the
// step's left wall and touches it above; so it is higher than that wall, and it
// starts where a chain of later rectangles ends that begins at the shelf's side
// or where the outline falls, left of the step. None of this asks how the
// outline came about, so what failed once for an outline and the same
// rectangles fails again.
//
// Lost area is counted, and looked ahead for: over a piece of the outline lies
// at most the longest sum of sides that its room holds, across a gap between
// two walls likewise. Of a packing and its mirror images the one is sought whose
// largest rectangle has its middle in the near left quarter.
template <std::size_t kWords>
class Search final : public ShelfSearch {
 public:
  Search(int width, int depth, const std::vector<Footprint>& kinds)
      : swapped_(width > depth),
        width_(std::min(width, depth)),
        depth_(std::max(width, depth)),
        outline_(width_, depth_),
        singles_(singlesOf(kinds)),
        sums_(singles_),
        dead_(kFewKept, 0) {
    for (std::size_t k = 0; k < kinds.size(); ++k)
      for (int i = 0; i < kinds[k].count; ++i) kindOf_.push_back(static_cast<int>(k));
  }

  std::optional<std::vector<Spot>> search(Set singles, long& steps) override {
    steps_ = steps;
    spots_.clear();
    outline_ = ShelfOutline(width_, depth_);
    spare_ = static_cast<long>(width_) * depth_;
    largest_ = -1;
    for (Set rest = singles; rest != 0; rest &= rest - 1) {
      const int one = std::countr_zero(rest);
      spare_ -= areaOf(one);
      if (largest_ < 0 || areaOf(one) > areaOf(largest_)) largest_ = one;
    }
    const bool found = spare_ >= 0 && place(singles);
    steps = std::max(steps_, 0L);
    if (!found) return std::nullopt;
    return spots_;
  }

 private:
  using Ends = Lengths<kWords>;

  static std::vector<Footprint> singlesOf(const std::vector<Footprint>& kinds) {
    std::vector<Footprint> singles;
    for (const Footprint& kind : kinds)
      for (int i = 0; i < kind.count; ++i) singles.push_back({kind.width, kind.depth, 1});
    return singles;
  }
  const Footprint& print(int one) const { return singles_[static_cast<std::size_t>(one)]; }
  long areaOf(int one) const { return static_cast<long>(print(one).width) * print(one).depth; }
  static Set bit(int one) { return Set{1} << one; }
  bool isAlikeBefore(int one) const {
    return one > 0 && kindOf_[static_cast<std::size_t>(one)] == kindOf_[static_cast<std::size_t>(one) - 1];
  }

  std::uint64_t keyOf(Set rest) const {
    const bool waits = (rest & bit(largest_)) != 0;
    return outline_.mixed(rest | static_cast<std::uint64_t>(waits ? largest_ + 1 : 0) << 32) | 1;
  }

  bool place(Set rest) {
    if (rest == 0) return true;
    if (--steps_ < 0) return false;
    const std::uint64_t key = keyOf(rest);
    if (dead_[slotOf(key)] == key) return false;
    if (placeAtLowest(rest)) return true;
    if (steps_ >= 0) keepDead(key);
    return false;
  }

  std::size_t slotOf(std::uint64_t key) const { return static_cast<std::size_t>(key >> 40) % dead_.size(); }
  void keepDead(std::uint64_t key) {
    if (++kept_ > dead_.size() / 2 && dead_.size() < kMostKept) {
      const std::vector<std::uint64_t> before =
          std::exchange(dead_, std::vector<std::uint64_t>(kMostKept, 0));
      for (const std::uint64_t one : before) dead_[slotOf(one)] = one;
    }
    dead_[slotOf(key)] = key;
  }

  bool placeAtLowest(Set rest) {
    const Ends& sums = sums_.of(rest);
    if (lostAbove(sums) > spare_ || lostBetween(sums) > spare_) return false;
    const Step step = outline_.lowest();
    if (step.y >= depth_) return false;
    if ((rest & bit(largest_)) != 0 && !isNear(largest_, false, 0, step.y) &&
        !isNear(largest_, true, 0, step.y))
      return false;
    for (Set left = rest; left != 0; left &= left - 1) {
      const int one = std::countr_zero(left);
      if (isAlikeBefore(one) && (rest & bit(one - 1)) != 0) continue;
      if (tryOne(step, rest, one, false)) return true;
      if (print(one).width != print(one).depth && tryOne(step, rest, one, true)) return true;
    }
    return lose(step, step.limit, std::min(step.leftWall, step.rightWall), [&] { return place(rest); });
  }

  // Whether a spot is one that the largest may have.
  bool isNear(int one, bool turned, int x, int y) const {
    if (one != largest_) return true;
    return 2 * x + wide(one, turned) <= width_ && 2 * y + deep(one, turned) <= depth_;
  }
  int wide(int one, bool turned) const { return turned ? print(one).depth : print(one).width; }
  int deep(int one, bool turned) const { return turned ? print(one).width : print(one).depth; }

  bool tryOne(const Step& step, Set rest, int one, bool turned) {
    if (wide(one, turned) > step.limit - step.x || step.y + deep(one, turned) > depth_) return false;
    if (put(step, rest, one, turned, step.x)) return true;
    if (step.x == 0 || step.y + deep(one, turned) <= step.leftWall) return false;
    // Beyond this the lost corner alone is more than can be spared.
    const long affordable = step.x + spare_ / (step.leftWall - step.y);
    const int last = static_cast<int>(std::min<long>(step.limit - wide(one, turned), affordable));
    if (last <= step.x) return false;
    const Ends ends = chainEnds(step, rest & ~bit(one));
    for (int x = step.x + 1; x <= last; ++x) {
      if (!ends.contains(x)) continue;
      const bool done = lose(step, x, step.leftWall, [&] {
        const Step there = outline_.lowest();
        return there.x == x && there.y == step.y && put(there, rest, one, turned, x);
      });
      if (done) return true;
    }
    return false;
  }

  bool put(const Step& step, Set rest, int one, bool turned, int x) {
    const Set others = rest & ~bit(one);
    if (!isNear(one, turned, x, step.y) || losesTooMuch(step, others, one, turned)) return false;
    const ShelfOutline before = outline_;
    outline_.raise(step, x, x + wide(one, turned), step.y + deep(one, turned));
    const int kind = kindOf_[static_cast<std::size_t>(one)];
    if (swapped_)
      spots_.push_back({kind, step.y, x, !turned});
    else
      spots_.push_back({kind, x, step.y, turned});
    if (place(others)) return true;
    spots_.pop_back();
    outline_ = before;
    return false;
  }

  // Beside it on the step, or above it: the same look ahead as for all of the outline, but sooner.
  bool losesTooMuch(const Step& step, Set others, int one, bool turned) {
    const Ends& sums = sums_.of(others);
    const int top = step.y + deep(one, turned);
    const int gap = step.limit - step.x - wide(one, turned);
    const long beside = gap - sums.longestUpTo(gap);
    if (beside * (std::min(top, step.rightWall) - step.y) > spare_) return true;
    const long above = depth_ - top - sums.longestUpTo(depth_ - top);
    return above * wide(one, turned) > spare_;
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

  // Where a chain of `others` may end that begins left of the step.
  Ends chainEnds(const Step& step, Set others) {
    const Ends& sums = sums_.of(others);
    Ends ends;
    for (int i = 0; i < step.index; ++i)
      if (outline_.fallsAt(i)) ends.addShifted(sums, outline_.xOf(i));
    return ends;
  }

  // At least so much of the room behind the outline stays empty: along its pieces.
  long lostAbove(const Ends& sums) const {
    long lost = 0;
    for (int i = 0; i < outline_.count(); ++i) {
      const int room = depth_ - outline_.yOf(i);
      lost += static_cast<long>(outline_.limitOf(i) - outline_.xOf(i)) * (room - sums.longestUpTo(room));
    }
    return lost;
  }

  // The same across: in each band between two heights of the outline, wall to wall.
  long lostBetween(const Ends& sums) const {
    long lost = 0;
    for (int from = outline_.lowest().y; from < depth_;) {
      int until = depth_;
      long gaps = 0;
      for (int i = 0; i < outline_.count(); ++i) {
        if (outline_.yOf(i) > from) {
          until = std::min(until, outline_.yOf(i));
          continue;
        }
        const int left = outline_.xOf(i);
        while (i + 1 < outline_.count() && outline_.yOf(i + 1) <= from) ++i;
        gaps += outline_.limitOf(i) - left - sums.longestUpTo(outline_.limitOf(i) - left);
      }
      lost += gaps * (until - from);
      from = until;
    }
    return lost;
  }

  const bool swapped_;  // rows along the shorter side are fewer to choose from
  const int width_;
  const int depth_;
  ShelfOutline outline_;
  std::vector<Footprint> singles_;
  std::vector<int> kindOf_;  // by single
  LengthSums<kWords> sums_;
  std::vector<std::uint64_t>
      dead_;  // keys of outlines that take no more of what was left, by a part of the key
  std::size_t kept_ = 0;
  std::vector<Spot> spots_;
  long spare_ = 0;  // area that may still be lost
  int largest_ = -1;
  long steps_ = 0;
};

}  // namespace

std::unique_ptr<ShelfSearch> makeShelfSearch(int width, int depth, const std::vector<Footprint>& kinds) {
  int count = 0;
  for (const Footprint& kind : kinds) count += kind.count;
  const int longest = std::max(width, depth);
  if (count > kMostSearched || longest > kWidestShelf) return nullptr;
  if (longest <= Lengths<kUsualWords>::kLongest)
    return std::make_unique<Search<kUsualWords>>(width, depth, kinds);
  return std::make_unique<Search<kWidestWords>>(width, depth, kinds);
}

}  // namespace suppertide::kitchen
