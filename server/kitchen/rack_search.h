// Fills the shelves of an oven with pans; the work behind racks.h.
#pragma once

#include <cstdint>
#include <unordered_set>
#include <vector>

#include "server/kitchen/racks.h"
#include "server/kitchen/shelf_book.h"

namespace suppertide::kitchen {

// Pans of one size, whoever asked for them. The wide side first, and of heights that fit under the same
// shelves the highest possible: a flat tin and a cake tin of its size are alike where both stand anywhere.
struct PanKind {
  int width = 0;
  int depth = 0;
  int height = 0;
  std::vector<int> owners;  // index of each single pan among those asked about
};

// Large pans first: they decide, and a shelf is tried fullest first.
std::vector<PanKind> kindsOf(const Oven& oven, const std::vector<Pan>& pans);

// Lays shelves from the bottom up. What is only doubtful is decided for the shelves that an answer hangs on
// alone, and one after the other; no shelf is searched for long before each was searched a little.
class RackSearch {
 public:
  // At most kMostPans single pans, each of which fits alone. `joins` is a budget that goes down.
  RackSearch(const Oven& oven, std::vector<PanKind> kinds, long& joins);

  bool run();
  // After run() said no: whether nothing was left untried for lack of time.
  bool isProven() const { return !isSpent() && !book_.hasPostponed(); }
  // Where each single pan stands, after run() said yes.
  std::vector<PanPlace> places(const std::vector<Pan>& pans) const;

 private:
  using Effort = ShelfBook::Effort;
  struct ShelfUse {
    int position = 0;
    PanSet pans = 0;
  };
  struct ShelfChoice {
    int position;
    int next;  // the first position free above it
    int shelves;
    PanSet rest;
    // Area that must go onto this shelf, as the later ones can't take more; and the
    // same of area times positions.
    long least;
    long leastBulk;
  };

  int heightOf(int pan) const { return kinds_[static_cast<std::size_t>(book_.kindOf(pan))].height; }
  int clearHeight(int from, int limit) const;
  int positionsOf(int wantedHeight) const;
  PanSet upTo(int height, PanSet pans) const;
  bool attempt(Effort effort, long shelfSteps = 0);
  bool settleAll();
  // A shelf laid already cannot be as it is, or there is no time left to find out more.
  bool isDead() const { return dead_ < uses_.size() || isSpent(); }
  bool isSpent() const { return book_.effort() != Effort::kQuick && joins_ <= 0; }
  bool fill(int position, int shelves, PanSet rest);
  bool fillFrom(int position, int shelves, PanSet rest);
  bool fillShelf(const ShelfChoice& choice, PanSet chosen, PanSet open);
  bool use(const ShelfChoice& choice, PanSet chosen);
  bool canTakeMore(const ShelfChoice& choice, PanSet chosen) const;

  static constexpr std::size_t kNoneDead = static_cast<std::size_t>(-1);

  const Oven& oven_;
  const std::vector<PanKind> kinds_;
  long& joins_;  // also what the choices of all attempts cost
  ShelfBook book_;
  int positions_ = 0;
  int shelves_ = 0;
  std::vector<long> bulk_;        // by set: area times the positions it takes
  std::size_t dead_ = kNoneDead;  // index of a shelf laid that turned out not to fit
  std::unordered_set<std::uint64_t> failed_;
  std::vector<ShelfUse> uses_;
};

}  // namespace suppertide::kitchen
