#include "server/kitchen/straight_cuts.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <limits>

namespace suppertide::kitchen {
namespace {

constexpr std::size_t kMostSingles = 12;
constexpr std::size_t kFewSingles = 8;  // up to here the whole answer costs no more than a part of it
constexpr int kLongestSide = 2047;
constexpr int kNoBox = 1 << 29;
constexpr long kSplitsOfJoin = 4;  // that take as long to look at as one join
constexpr long kJoinsOfSet = 12;   // that take as long as to begin with a set
// What a block may lose, against the part of the spare area that falls on it; round by round.
constexpr double kAnyLoss = std::numeric_limits<double>::infinity();
constexpr std::array<double, 5> kMayLose = {0.4, 0.7, 1.1, 1.6, kAnyLoss};

using Set = std::uint32_t;  // a bit for each single rectangle

// The smallest boxes around some rectangles side by side.
struct Box {
  std::int16_t wide = 0;
  std::int16_t deep = 0;
};

// Boxes around one set while they are collected: the least depth for each width.
class Boxes {
 public:
  explicit Boxes(int longest) : least_(static_cast<std::size_t>(longest) + 1) {}

  void add(int wide, int deep) {
    const std::size_t at = static_cast<std::size_t>(wide);
    const std::uint64_t bit = std::uint64_t{1} << (at % 64);
    std::uint64_t& touched = touched_[at / 64];
    if ((touched & bit) != 0 && least_[at] <= deep) return;
    touched |= bit;
    least_[at] = static_cast<std::int16_t>(deep);
  }

  // Moves them, either way round, to the end of `pool`, by rising width and without those that another
  // lies within.
  void moveTo(std::vector<Box>& pool) {
    const std::size_t begin = pool.size();
    takeBest(pool);
    for (std::size_t i = begin; i < pool.size(); ++i) {
      add(pool[i].wide, pool[i].deep);
      add(pool[i].deep, pool[i].wide);
    }
    pool.resize(begin);
    takeBest(pool);
  }

 private:
  void takeBest(std::vector<Box>& pool) {
    int deepest = kLongestSide + 1;
    for (std::size_t k = 0; k * 64 < least_.size(); ++k) {
      for (std::uint64_t rest = touched_[k]; rest != 0; rest &= rest - 1) {
        const std::size_t wide = k * 64 + static_cast<std::size_t>(std::countr_zero(rest));
        if (least_[wide] >= deepest) continue;
        deepest = least_[wide];
        pool.push_back({static_cast<std::int16_t>(wide), least_[wide]});
      }
      touched_[k] = 0;
    }
  }

  std::vector<std::int16_t> least_;
  std::array<std::uint64_t, (kLongestSide + 1) / 64> touched_ = {};
};

// Blocks of ever more rectangles, each two blocks side by side. Every set of boxes holds each box both
// ways round, so one block behind the other is one beside the other seen from the side.
class StraightCuts {
 public:
  StraightCuts(int width, int depth, const std::vector<Footprint>& footprints, long& joins)
      : long_(std::max(width, depth)),
        short_(std::min(width, depth)),
        footprints_(footprints),
        boxes_(long_),
        joins_(joins) {
    for (std::size_t k = 0; k < footprints.size(); ++k)
      for (int i = 0; i < footprints[k].count; ++i) singles_.push_back(static_cast<int>(k));
    if (singles_.size() > kMostSingles) return;
    const std::size_t sets = std::size_t{1} << singles_.size();
    areas_.resize(sets, 0);
    kept_.resize(sets, 0);
    fronts_.resize(sets);
    losses_.resize(sets);
    joins_ -= static_cast<long>(sets) * kJoinsOfSet;
    for (Set set = 1; set < sets; ++set) {
      const Footprint& print = printOf(set);
      areas_[set] = areas_[set & (set - 1)] + static_cast<long>(print.width) * print.depth;
      kept_[set] = firstOfAlike(set);
    }
    spare_ = static_cast<long>(width) * depth - areas_.back();
  }

  bool run() {
    if (areas_.empty() || spare_ < 0) return false;
    const Set all = static_cast<Set>(areas_.size() - 1);
    if (all == 0) return true;
    for (const double mayLose : kMayLose) {
      if (mayLose != kAnyLoss && singles_.size() <= kFewSingles) continue;
      joinAllSets(mayLose, all);
      if (fronts_[all].count > 0) return true;
      if (joins_ <= 0) break;
    }
    joins_ = std::max(joins_, 0L);
    return false;
  }

  std::vector<Spot> spots(int width, int depth) const {
    std::vector<Spot> spots;
    const Set all = static_cast<Set>(areas_.size() - 1);
    if (all == 0) return spots;
    for (const Box& box : front(all)) {
      if (box.wide > width || box.deep > depth) continue;
      lay(all, box, 0, 0, spots);
      break;
    }
    return spots;
  }

 private:
  struct Front {
    std::uint32_t begin = 0;
    std::uint32_t count = 0;
  };
  struct Span {
    const Box* first;
    const Box* last;
    const Box* begin() const { return first; }
    const Box* end() const { return last; }
  };

  static std::size_t lowestBit(Set set) { return static_cast<std::size_t>(std::countr_zero(set)); }
  const Footprint& printOf(Set single) const {
    return footprints_[static_cast<std::size_t>(singles_[lowestBit(single)])];
  }
  Span front(Set set) const {
    const Front& front = fronts_[set];
    const Box* first = pool_.data() + front.begin;
    return {first, first + front.count};
  }

  bool liesAlone(Set single) const { return std::max(printOf(single).width, printOf(single).depth) <= long_; }

  // Of rectangles alike only the first ones make a set: the others would say the same again.
  Set firstOfAlike(Set set) const {
    Set out = 0;
    for (std::size_t i = 0; i < singles_.size();) {
      std::size_t end = i;
      std::size_t next = i;
      for (; end < singles_.size() && singles_[end] == singles_[i]; ++end)
        if ((set >> end & 1U) != 0) out |= Set{1} << next++;
      i = end;
    }
    return out;
  }

  void joinAllSets(double mayLose, Set all) {
    pool_.clear();
    for (Set set = 1; set <= all && joins_ > 0; ++set) {
      const Set kept = kept_[set];
      if (kept == set) {
        mostLoss_ = lossOf(set, mayLose, all);
        if (std::popcount(set) == 1 && liesAlone(set))
          offer(printOf(set).width, printOf(set).depth, areas_[set]);
        if (std::popcount(set) > 1) joinAll(set);
        keepFront(set);
      }
      losses_[set] = losses_[kept];
    }
    if (joins_ <= 0) fronts_[all] = {};
  }

  long lossOf(Set set, double mayLose, Set all) const {
    if (set == all || mayLose == kAnyLoss) return spare_;
    const double share = mayLose * static_cast<double>(spare_) / static_cast<double>(areas_[all]);
    return std::min(spare_, static_cast<long>(share * static_cast<double>(areas_[set])));
  }

  void keepFront(Set set) {
    Front& front = fronts_[set];
    front.begin = static_cast<std::uint32_t>(pool_.size());
    boxes_.moveTo(pool_);
    front.count = static_cast<std::uint32_t>(pool_.size()) - front.begin;
    losses_[set] = kNoBox;
    for (const Box& box : this->front(set))
      losses_[set] = std::min(losses_[set], static_cast<int>(long{box.wide} * box.deep - areas_[set]));
  }

  void offer(int wide, int deep, long area) {
    if (static_cast<long>(wide) * deep - area <= mostLoss_ && std::min(wide, deep) <= short_)
      boxes_.add(wide, deep);
  }

  void joinAll(Set set) {
    const Set others = set & (set - 1);
    for (Set some = others; some != 0; some = (some - 1) & others)
      if (losses_[set ^ some] + losses_[some] <= mostLoss_)
        join(front(kept_[set ^ some]), front(kept_[some]), areas_[set]);
    joins_ -= (1L << std::popcount(others)) / kSplitsOfJoin;
  }

  // Side by side. Of each pair only the narrowest boxes for each depth of the row are worth a look.
  void join(Span ones, Span twos, long area) {
    const Box* one = ones.first;
    const Box* two = twos.first;
    while (one != ones.last && two != twos.last && one->wide + two->wide <= long_) {
      --joins_;
      const std::int16_t deep = std::max(one->deep, two->deep);
      offer(one->wide + two->wide, deep, area);
      if (one->deep == deep) ++one;
      if (two->deep == deep) ++two;
    }
  }

  void lay(Set set, const Box& box, int x, int y, std::vector<Spot>& spots) const {
    if (std::popcount(set) == 1) {
      spots.push_back({singles_[lowestBit(set)], x, y, printOf(set).width != box.wide});
      return;
    }
    const Set others = set & (set - 1);
    for (Set some = others; some != 0; some = (some - 1) & others)
      if (layParts(set ^ some, some, box, x, y, spots)) return;
  }

  // True when these two make the box, side by side or one behind the other.
  bool layParts(Set first, Set second, const Box& box, int x, int y, std::vector<Spot>& spots) const {
    for (const Box& one : front(kept_[first]))
      for (const Box& two : front(kept_[second])) {
        const bool beside = one.wide + two.wide == box.wide && std::max(one.deep, two.deep) == box.deep;
        const bool behind = one.deep + two.deep == box.deep && std::max(one.wide, two.wide) == box.wide;
        if (!beside && !behind) continue;
        lay(kept_[first], one, x, y, spots);
        lay(kept_[second], two, beside ? x + one.wide : x, beside ? y : y + one.deep, spots);
        return true;
      }
    return false;
  }

  const int long_;
  const int short_;
  const std::vector<Footprint>& footprints_;
  std::vector<int> singles_;   // kind of each single rectangle; alike ones side by side
  std::vector<long> areas_;    // by set
  std::vector<Set> kept_;      // by set: the one with the same kinds whose boxes are kept
  std::vector<Front> fronts_;  // by set: its boxes in the pool
  std::vector<Box> pool_;
  Boxes boxes_;
  std::vector<int> losses_;  // by set: what its best box loses; kNoBox without one
  long mostLoss_ = 0;        // of the set at hand
  long spare_ = 0;
  long& joins_;
};

}  // namespace

std::optional<std::vector<Spot>> packByStraightCuts(int width, int depth,
                                                    const std::vector<Footprint>& footprints, long& joins) {
  if (std::max(width, depth) > kLongestSide) return std::nullopt;
  StraightCuts cuts(width, depth, footprints, joins);
  if (!cuts.run()) return std::nullopt;
  return cuts.spots(width, depth);
}

}  // namespace suppertide::kitchen
