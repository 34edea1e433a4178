// Which sets of an oven's pans share a shelf, asked ever more thoroughly; what was found out is kept.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <vector>

#include "server/kitchen/shelf_bounds.h"
#include "server/kitchen/shelf_packing.h"
#include "server/kitchen/shelf_search.h"

namespace suppertide::kitchen {

using PanSet = std::uint32_t;  // a bit for each single pan

// Answers come in four ways: by area, which refuses most of what doesn't fit; quickly, which gives most of
// what does; by straight cuts; and by a search through all packings.
class ShelfBook {
 public:
  enum class Effort { kQuick, kCuts, kSearch };

  // `joins` is a budget that goes down: see straight_cuts.h. The single pans are those of the kinds in
  // their order, at most kMostSearched.
  ShelfBook(int width, int depth, std::vector<Footprint> kinds, long& joins);

  // From here on shelves are looked at so far; with kSearch for so many steps each. What was postponed may
  // be asked about again.
  void look(Effort effort, long shelfSteps = 0);
  Effort effort() const { return effort_; }

  int panCount() const { return static_cast<int>(single_.size()); }
  int kindOf(int pan) const { return single_[static_cast<std::size_t>(pan)]; }
  long areaOf(PanSet pans) const { return area_[pans]; }
  long shelfArea() const { return static_cast<long>(width_) * depth_; }
  // Those like the one pan, with it.
  PanSet alike(PanSet single) const;

  // False when they surely do not, or were not found to as far as is looked. `fits` asks, `isKnownToFit`
  // only tells what was asked before.
  bool fits(PanSet pans);
  bool isKnownToFit(PanSet pans) const { return mayFit(shelf_[pans]); }
  // Decides what `fits` only took for possible.
  bool settle(PanSet pans);
  // Whether some shelf was left undecided since look().
  bool hasPostponed() const { return !postponed_.empty(); }

  // Of pans that fit; a spot's kind is one of the kinds.
  const std::vector<Spot>& spots(PanSet pans) const { return spots_.at(pans); }

 private:
  // Doubtful: only straight cuts or a search can tell; postponed: not since look().
  enum class Shelf : std::uint8_t { kUnasked, kYes, kNo, kDoubtful, kPostponed };

  std::vector<Footprint> footprints(PanSet pans) const;
  void refuseUnlikelyPairs();
  bool mayFit(Shelf shelf) const;
  Shelf asked(PanSet pans);
  Shelf lookedAt(PanSet pans);
  std::vector<Spot> part(const std::vector<Spot>& spots, PanSet pans) const;
  bool cut(PanSet pans);
  bool search(PanSet pans);
  bool keep(PanSet pans, std::vector<Spot> spots);
  void postpone(PanSet pans);
  void refuse(PanSet pans);

  const int width_;
  const int depth_;
  const std::vector<Footprint> kinds_;
  std::vector<int> single_;   // kind of each single pan
  std::vector<Shelf> shelf_;  // by set
  std::vector<bool> cut_;     // by set: straight cuts were tried
  std::vector<long> area_;    // by set
  const ShelfBounds bounds_;
  std::vector<PanSet> fitting_;
  std::vector<PanSet> refused_;  // pairs; what else was refused is so in all sets that hold it
  std::map<PanSet, std::vector<Spot>> spots_;
  Effort effort_ = Effort::kQuick;
  long shelfSteps_ = 0;
  std::unique_ptr<ShelfSearch> search_;  // made when it is needed first
  std::vector<PanSet> postponed_;        // since look()
  long& joins_;
};

}  // namespace suppertide::kitchen
