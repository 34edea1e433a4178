#include "server/kitchen/straight_cuts.h"

#include <algorithm>
#include <bit>
#include <cstdint>

namespace suppertide::kitchen {
namespace {

constexpr std::size_t kMostSingles = 12;
constexpr std::size_t kBlocksOfSet = 2;  // the ones that lose least
// What a block may lose, against the part of the spare area that falls on it; round by round.
constexpr double kMayLose[] = {0.4, 0.8, 1.6};

using Set = std::uint32_t;  // a bit for each single rectangle

// Some rectangles side by side in the smallest box; the wide side first.
struct Block {
  int wide = 0;
  int deep = 0;
  long lost = 0;  // of its area
  // Made of one block of each of two sets, laid one after the other along the box's `across` side;
  // a single rectangle has no first set.
  Set first = 0;
  Set second = 0;
  std::uint8_t firstBlock = 0;
  std::uint8_t secondBlock = 0;
  bool firstTurned = false;  // against its own wide side along the row
  bool secondTurned = false;
  bool rowIsDeep = false;  // the row runs along the deep side
};

class StraightCuts {
 public:
  StraightCuts(int width, int depth, const std::vector<Footprint>& footprints, long& joins)
      : wide_(std::max(width, depth)), deep_(std::min(width, depth)), joins_(joins) {
    for (std::size_t k = 0; k < footprints.size(); ++k)
      for (int i = 0; i < footprints[k].count; ++i) singles_.push_back(static_cast<int>(k));
    if (singles_.size() > kMostSingles) return;
    blocks_.resize(std::size_t{1} << singles_.size());
    areas_.resize(blocks_.size(), 0);
    for (std::size_t i = 0; i < singles_.size(); ++i) {
      const Footprint& print = footprints[static_cast<std::size_t>(singles_[i])];
      const Set single = Set{1} << i;
      areas_[single] = static_cast<long>(print.width) * print.depth;
      Block block;
      block.wide = std::max(print.width, print.depth);
      block.deep = std::min(print.width, print.depth);
      if (block.wide <= wide_ && block.deep <= deep_) blocks_[single].push_back(block);
    }
    for (Set set = 1; set < blocks_.size(); ++set) {
      const Set low = set & (~set + 1);
      if (set != low) areas_[set] = areas_[set ^ low] + areas_[low];
    }
    for (Set set = 0; set < blocks_.size(); ++set) kept_.push_back(firstOfAlike(set));
    spare_ = static_cast<long>(width) * depth - areas_.back();
  }

  bool run() {
    if (blocks_.empty() || spare_ < 0) return false;
    const Set all = static_cast<Set>(blocks_.size() - 1);
    if (all == 0) return true;
    for (const double mayLose : kMayLose) {
      lossAnArea_ = mayLose * static_cast<double>(spare_) / static_cast<double>(areas_.back());
      for (Set set = 1; set <= all; ++set)
        if (std::popcount(set) > 1) blocks_[set].clear();
      for (Set set = 1; set <= all && joins_ > 0; ++set)
        if (std::popcount(set) > 1 && kept_[set] == set) joinAll(set);
      if (!blocks_[all].empty()) return true;
      if (joins_ <= 0) break;
    }
    return false;
  }

  std::vector<Spot> spots(int width, int depth, const std::vector<Footprint>& footprints) {
    std::vector<Spot> spots;
    const Set all = static_cast<Set>(blocks_.size() - 1);
    if (all == 0) return spots;
    const Block& whole = blocks_[all].front();
    const bool along = whole.wide <= width && whole.deep <= depth;
    lay(all, 0, 0, 0, along, footprints, spots);
    return spots;
  }

 private:
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

  void joinAll(Set set) {
    const Set low = set & (~set + 1);
    const Set others = set ^ low;
    for (Set some = others; some != 0; some = (some - 1) & others) {
      const Set second = kept_[some];
      const Set first = kept_[set ^ some];
      const auto& ones = blocks_[first];
      const auto& twos = blocks_[second];
      for (std::size_t a = 0; a < ones.size(); ++a)
        for (std::size_t b = 0; b < twos.size(); ++b) join(set, {first, second, a, b}, ones[a], twos[b]);
    }
  }

  struct Parts {
    Set first;
    Set second;
    std::size_t firstBlock;
    std::size_t secondBlock;
  };

  void join(Set set, const Parts& parts, const Block& one, const Block& two) {
    --joins_;
    for (const bool turnOne : {false, true})
      for (const bool turnTwo : {false, true}) {
        const int row = (turnOne ? one.deep : one.wide) + (turnTwo ? two.deep : two.wide);
        const int side = std::max(turnOne ? one.wide : one.deep, turnTwo ? two.wide : two.deep);
        Block block;
        block.wide = std::max(row, side);
        block.deep = std::min(row, side);
        if (block.wide > wide_ || block.deep > deep_) continue;
        block.lost = static_cast<long>(row) * side - areas_[set];
        if (block.lost > mayLose(set)) continue;
        block.first = parts.first;
        block.second = parts.second;
        block.firstBlock = static_cast<std::uint8_t>(parts.firstBlock);
        block.secondBlock = static_cast<std::uint8_t>(parts.secondBlock);
        block.firstTurned = turnOne;
        block.secondTurned = turnTwo;
        block.rowIsDeep = row < side;
        add(blocks_[set], block);
      }
  }

  long mayLose(Set set) const {
    if (set + 1 == blocks_.size()) return spare_;
    return std::min(spare_, static_cast<long>(lossAnArea_ * static_cast<double>(areas_[set])));
  }

  static void add(std::vector<Block>& blocks, const Block& block) {
    for (const Block& other : blocks)
      if (other.wide <= block.wide && other.deep <= block.deep) return;
    std::erase_if(blocks,
                  [&](const Block& other) { return block.wide <= other.wide && block.deep <= other.deep; });
    blocks.push_back(block);
    if (blocks.size() <= kBlocksOfSet) return;
    blocks.erase(std::max_element(blocks.begin(), blocks.end(),
                                  [](const Block& a, const Block& b) { return a.lost < b.lost; }));
  }

  // `along`: its wide side lies along x.
  void lay(Set set, std::size_t index, int x, int y, bool along, const std::vector<Footprint>& footprints,
           std::vector<Spot>& spots) const {
    const Block& block = blocks_[set][index];
    if (block.first == 0) {
      const int kind = singles_[static_cast<std::size_t>(std::countr_zero(set))];
      const Footprint& print = footprints[static_cast<std::size_t>(kind)];
      const int wide = along ? block.wide : block.deep;
      spots.push_back({kind, x, y, print.width != wide});
      return;
    }
    const Set second = block.second;
    const Block& one = blocks_[block.first][block.firstBlock];
    const bool rowAlong = along != block.rowIsDeep;
    lay(block.first, block.firstBlock, x, y, rowAlong != block.firstTurned, footprints, spots);
    const int step = block.firstTurned ? one.deep : one.wide;
    lay(second, block.secondBlock, rowAlong ? x + step : x, rowAlong ? y : y + step,
        rowAlong != block.secondTurned, footprints, spots);
  }

  const int wide_;
  const int deep_;
  std::vector<int> singles_;                // kind of each single rectangle; alike ones side by side
  std::vector<Set> kept_;                   // by set: the one with the same kinds whose blocks are kept
  std::vector<std::vector<Block>> blocks_;  // by set
  std::vector<long> areas_;                 // by set
  long spare_ = 0;
  double lossAnArea_ = 0;
  long& joins_;
};

}  // namespace

std::optional<std::vector<Spot>> packByStraightCuts(int width, int depth,
                                                    const std::vector<Footprint>& footprints, long& joins) {
  StraightCuts cuts(width, depth, footprints, joins);
  if (!cuts.run()) return std::nullopt;
  return cuts.spots(width, depth, footprints);
}

}  // namespace suppertide::kitchen
