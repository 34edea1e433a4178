#include "server/kitchen/racks.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <map>
#include <optional>
#include <unordered_set>

#include "server/kitchen/shelf_packing.h"
#include "server/kitchen/straight_cuts.h"

namespace suppertide::kitchen {
namespace {

// Pans of one size, whoever asked for them.
struct Kind {
  int width = 0;
  int depth = 0;
  int height = 0;
  std::vector<int> owners;  // pan index of each single pan
};

std::vector<Kind> kindsOf(const std::vector<Pan>& pans) {
  std::vector<Kind> kinds;
  for (std::size_t i = 0; i < pans.size(); ++i) {
    const int width = std::max(pans[i].widthMm, pans[i].depthMm);
    const int depth = std::min(pans[i].widthMm, pans[i].depthMm);
    auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const Kind& k) {
      return k.width == width && k.depth == depth && k.height == pans[i].heightMm;
    });
    if (kind == kinds.end()) kind = kinds.insert(kinds.end(), {width, depth, pans[i].heightMm, {}});
    kind->owners.insert(kind->owners.end(), static_cast<std::size_t>(std::max(pans[i].count, 0)),
                        static_cast<int>(i));
  }
  // Large pans first: they decide, and a shelf is tried fullest first.
  std::sort(kinds.begin(), kinds.end(),
            [](const Kind& a, const Kind& b) { return a.width * a.depth > b.width * b.depth; });
  std::erase_if(kinds, [](const Kind& k) { return k.owners.empty(); });
  return kinds;
}

constexpr int kMostMixedTries = 100;   // for one shelf
constexpr long kSearchJoins = 30'000;  // at least left for the search
// Joins that take as long as one choice of a pan for a shelf, one quick look at a shelf.
constexpr long kJoinsOfChoice = 4;
constexpr long kJoinsOfQuickLook = 300;

using Mask = std::uint32_t;  // a bit for each single pan

// Fills shelves from the bottom up. Which pans share a shelf is asked in four
// ways: quickly, which gives most of what fits; by area, which refuses most of
// what doesn't; by straight cuts; and by a search through all packings. The last
// two only for the shelves that an answer hangs on, and one after the other.
class RackSearch {
 public:
  RackSearch(const Oven& oven, std::vector<Kind> kinds) : oven_(oven), kinds_(std::move(kinds)) {
    for (std::size_t k = 0; k < kinds_.size(); ++k)
      for (std::size_t i = 0; i < kinds_[k].owners.size(); ++i) single_.push_back(static_cast<int>(k));
    const std::size_t masks = std::size_t{1} << single_.size();
    shelf_.assign(masks, Shelf::kUnasked);
    area_.assign(masks, 0);
    bulk_.assign(masks, 0);
    positions_ = static_cast<int>(oven_.clearHeightsMm.size());
    for (Mask mask = 1; mask < masks; ++mask) {
      const Mask low = mask & (~mask + 1);
      const int kind = single_[bitOf(low)];
      area_[mask] = area_[mask ^ low] + areaOf(kind);
      bulk_[mask] = bulk_[mask ^ low] + areaOf(kind) * positionsOf(kind);
    }
    refuseUnlikelyPairs();
    shelves_ = oven_.shelfCount > 0 ? std::min(oven_.shelfCount, positions_) : positions_;
  }

  bool run() {
    const Mask all = static_cast<Mask>(shelf_.size() - 1);
    return attempt(all, Effort::kQuick) || attempt(all, Effort::kCuts) || attempt(all, Effort::kSearch);
  }

  // After run() said no: whether nothing was left untried for lack of time.
  bool isProven() const { return !isSpent(); }

  // Where each single pan stands, after run() said yes.
  std::vector<PanPlace> places(const std::vector<Pan>& pans) {
    std::vector<PanPlace> result;
    std::vector<std::size_t> next(kinds_.size(), 0);
    for (const ShelfUse& use : uses_) {
      for (const Spot& spot : spots_.at(use.pans)) {
        const std::size_t k = static_cast<std::size_t>(spot.kind);
        const int owner = kinds_[k].owners[next[k]++];
        const Pan& pan = pans[static_cast<std::size_t>(owner)];
        // A kind is stored wide side first, so a pan given the other way round is turned once more.
        const bool stored = pan.widthMm >= pan.depthMm;
        result.push_back({owner, use.position, spot.x, spot.y, stored ? spot.turned : !spot.turned});
      }
    }
    return result;
  }

 private:
  enum class Effort { kQuick, kCuts, kSearch };
  // Doubtful: only straight cuts or a search can tell; uncut: only a search.
  enum class Shelf : std::uint8_t { kUnasked, kYes, kNo, kDoubtful, kUncut };
  struct ShelfUse {
    int position = 0;
    Mask pans = 0;
  };

  static std::size_t bitOf(Mask single) { return static_cast<std::size_t>(std::countr_zero(single)); }
  long areaOf(int kind) const {
    const Kind& pan = kinds_[static_cast<std::size_t>(kind)];
    return static_cast<long>(pan.width) * pan.depth;
  }
  long shelfArea() const { return static_cast<long>(oven_.shelfWidthMm) * oven_.shelfDepthMm; }

  // The fewest positions that a pan of the kind takes anywhere.
  int positionsOf(int kind) const {
    const int wanted = kinds_[static_cast<std::size_t>(kind)].height;
    int fewest = positions_;
    for (int from = 0; from < positions_; ++from) {
      int height = 0;
      for (int p = from; p < positions_; ++p) {
        height += oven_.clearHeightsMm[static_cast<std::size_t>(p)];
        if (height < wanted) continue;
        fewest = std::min(fewest, p - from + 1);
        break;
      }
    }
    return fewest;
  }

  // Two pans that cannot share a shelf refuse every choice that has both.
  void refuseUnlikelyPairs() {
    for (std::size_t i = 0; i < single_.size(); ++i)
      for (std::size_t j = i + 1; j < single_.size(); ++j) {
        const Mask pair = (Mask{1} << i) | (Mask{1} << j);
        if (!packShelf(oven_.shelfWidthMm, oven_.shelfDepthMm, footprints(pair))) refused_.push_back(pair);
      }
  }

  std::vector<Footprint> footprints(Mask pans) const {
    std::vector<Footprint> prints;
    for (const Kind& kind : kinds_) prints.push_back({kind.width, kind.depth, 0});
    for (Mask rest = pans; rest != 0; rest &= rest - 1)
      ++prints[static_cast<std::size_t>(single_[bitOf(rest)])].count;
    return prints;
  }

  bool fitsShelf(Mask pans) {
    if (area_[pans] > shelfArea()) return false;
    Shelf& shelf = shelf_[pans];
    if (shelf == Shelf::kUnasked) shelf = asked(pans);
    return mayFit(shelf);
  }

  // As far as this attempt looks.
  bool mayFit(Shelf shelf) const {
    if (shelf == Shelf::kDoubtful) return effort_ != Effort::kQuick;
    if (shelf == Shelf::kUncut) return effort_ == Effort::kSearch;
    return shelf == Shelf::kYes;
  }

  Shelf asked(Mask pans) {
    for (const Mask no : refused_)
      if ((pans & no) == no) return Shelf::kNo;
    for (const Mask yes : fitting_) {
      if ((pans & yes) != pans) continue;
      spots_[pans] = part(spots_.at(yes), pans);
      return Shelf::kYes;
    }
    joins_ -= kJoinsOfQuickLook;
    const std::vector<Footprint> prints = footprints(pans);
    if (auto spots = packShelfQuickly(oven_.shelfWidthMm, oven_.shelfDepthMm, prints)) {
      keep(pans, *std::move(spots));
      return Shelf::kYes;
    }
    if (!isTooMuch(oven_.shelfWidthMm, oven_.shelfDepthMm, prints)) return Shelf::kDoubtful;
    refused_.push_back(pans);
    return Shelf::kNo;
  }

  // The spots of some of the pans that lie at `spots`.
  std::vector<Spot> part(const std::vector<Spot>& spots, Mask pans) const {
    std::vector<Footprint> wanted = footprints(pans);
    std::vector<Spot> kept;
    for (const Spot& spot : spots)
      if (wanted[static_cast<std::size_t>(spot.kind)].count-- > 0) kept.push_back(spot);
    return kept;
  }

  // Decides a shelf that only might fit, as far as this attempt looks.
  bool settle(Mask pans) {
    Shelf& shelf = shelf_[pans];
    if (shelf == Shelf::kYes) return true;
    if (effort_ != Effort::kSearch && shelf == Shelf::kUncut) return false;
    const std::vector<Footprint> prints = footprints(pans);
    if (shelf == Shelf::kDoubtful) {
      if (auto spots = packByStraightCuts(oven_.shelfWidthMm, oven_.shelfDepthMm, prints, joins_))
        return keep(pans, *std::move(spots));
      shelf = Shelf::kUncut;
    }
    if (effort_ != Effort::kSearch) return false;
    if (auto spots = searched(prints)) return keep(pans, *std::move(spots));
    if (steps_ > 0) refuse(pans);
    return false;
  }

  std::optional<std::vector<Spot>> searched(const std::vector<Footprint>& prints) {
    const int tries = std::min(mixedTries_, kMostMixedTries);
    mixedTries_ -= tries;
    if (auto spots = packShelfQuickly(oven_.shelfWidthMm, oven_.shelfDepthMm, prints, tries)) return spots;
    return packShelf(oven_.shelfWidthMm, oven_.shelfDepthMm, prints, steps_);
  }

  bool keep(Mask pans, std::vector<Spot> spots) {
    shelf_[pans] = Shelf::kYes;
    fitting_.push_back(pans);
    spots_[pans] = std::move(spots);
    return true;
  }

  void refuse(Mask pans) {
    refused_.push_back(pans);
    forget(pans);
  }

  // What was only doubtful holds too much when a part of it does.
  void forget(Mask no) {
    for (std::size_t pans = 0; pans < shelf_.size(); ++pans)
      if ((shelf_[pans] == Shelf::kDoubtful || shelf_[pans] == Shelf::kUncut) && (pans & no) == no)
        shelf_[pans] = Shelf::kNo;
  }

  bool attempt(Mask all, Effort effort) {
    effort_ = effort;
    if (effort == Effort::kSearch) joins_ = std::max(joins_, kSearchJoins);
    dead_ = kNoneDead;
    failed_.clear();
    uses_.clear();
    return fill(0, shelves_, all);
  }

  // Everything lies on a shelf: whether that is true of those that only might fit.
  bool settleAll() {
    for (std::size_t i = 0; i < uses_.size(); ++i)
      if (!settle(uses_[i].pans)) {
        dead_ = i;
        return false;
      }
    return true;
  }
  // A shelf laid already cannot be as it is, or there is no time left to find out more.
  bool isDead() const { return dead_ < uses_.size() || isSpent(); }
  bool isSpent() const { return effort_ != Effort::kQuick && (joins_ <= 0 || steps_ <= 0); }

  std::uint64_t keyOf(int position, int shelves, Mask rest) const {
    return (static_cast<std::uint64_t>(position) << 40) | (static_cast<std::uint64_t>(shelves) << 32) | rest;
  }

  bool fill(int position, int shelves, Mask rest) {
    if (rest == 0) return settleAll();
    if (position == positions_ || shelves == 0) return false;
    const int usable = std::min(shelves, positions_ - position);
    if (area_[rest] > usable * shelfArea()) return false;
    // A shelf over several positions costs them all, and what stands on it needs no more of them.
    if (bulk_[rest] > (positions_ - position) * shelfArea()) return false;
    const std::uint64_t key = keyOf(position, usable, rest);
    if (failed_.contains(key)) return false;
    if (fillFrom(position, shelves, rest)) return true;
    if (!isDead()) failed_.insert(key);
    return false;
  }

  // Lays a shelf at `position` that takes one, two, ... positions, or none there.
  bool fillFrom(int position, int shelves, Mask rest) {
    int height = 0;
    Mask before = 0;
    for (int next = position + 1; next <= positions_; ++next) {
      height += oven_.clearHeightsMm[static_cast<std::size_t>(next - 1)];
      Mask most = 0;
      for (Mask pans = rest; pans != 0; pans &= pans - 1)
        if (kinds_[static_cast<std::size_t>(single_[bitOf(pans)])].height <= height)
          most |= pans & (~pans + 1);
      if (most == before) continue;  // a lower shelf could hold the same
      before = most;
      const long later = std::min(shelves - 1, positions_ - next) * shelfArea();
      const long laterBulk = (positions_ - next) * shelfArea();
      const ShelfChoice choice{position, next, shelves, rest, area_[rest] - later, bulk_[rest] - laterBulk};
      if (fillShelf(choice, 0, most)) return true;
      if (isDead()) return false;
    }
    return fill(position + 1, shelves, rest);
  }

  struct ShelfChoice {
    int position;
    int next;  // the first position free above it
    int shelves;
    Mask rest;
    // Area that must go onto this shelf, as the later ones can't take more; and the
    // same of area times positions.
    long least;
    long leastBulk;
  };

  // Tries all choices for one shelf: `chosen` surely, any of `open`, fullest first.
  bool fillShelf(const ShelfChoice& choice, Mask chosen, Mask open) {
    joins_ -= kJoinsOfChoice;
    if (area_[chosen] > shelfArea() || area_[chosen] + area_[open] < choice.least ||
        bulk_[chosen] + bulk_[open] < choice.leastBulk)
      return false;
    if (chosen != 0 && !fitsShelf(chosen)) return false;
    if (open == 0) {
      if (chosen == 0 || canTakeMore(choice, chosen)) return false;
      uses_.push_back({choice.position, chosen});
      if (fill(choice.next, choice.shelves - 1, choice.rest & ~chosen)) return true;
      uses_.pop_back();
      if (dead_ == uses_.size()) dead_ = kNoneDead;
      return false;
    }
    const Mask single = open & (~open + 1);
    const Mask rest = open & ~single;
    if (fillShelf(choice, chosen | single, rest)) return true;
    if (isDead()) return false;
    // Of pans alike the first ones go.
    return fillShelf(choice, chosen, rest & ~alike(single));
  }

  Mask alike(Mask single) const {
    Mask mask = 0;
    const std::size_t bit = bitOf(single);
    for (std::size_t i = 0; i < single_.size(); ++i)
      if (single_[i] == single_[bit]) mask |= Mask{1} << i;
    return mask;
  }

  // Whether one more pan fits, as far as is known: then the fuller shelf was tried and failed,
  // and this one leaves even more to place.
  bool canTakeMore(const ShelfChoice& choice, Mask chosen) const {
    int height = 0;
    for (int p = choice.position; p < choice.next; ++p)
      height += oven_.clearHeightsMm[static_cast<std::size_t>(p)];
    for (Mask pans = choice.rest & ~chosen; pans != 0; pans &= pans - 1) {
      const Mask single = pans & (~pans + 1);
      if (kinds_[static_cast<std::size_t>(single_[bitOf(single)])].height > height) continue;
      if (mayFit(shelf_[chosen | single])) return true;
    }
    return false;
  }

  const Oven& oven_;
  std::vector<Kind> kinds_;
  std::vector<int> single_;  // kind of each single pan, largest first
  int positions_ = 0;
  int shelves_ = 0;
  std::vector<Shelf> shelf_;  // by mask
  std::vector<long> area_;    // by mask
  std::vector<long> bulk_;    // by mask: area times the positions it takes
  std::vector<Mask> fitting_;
  std::vector<Mask> refused_;
  std::map<Mask, std::vector<Spot>> spots_;
  Effort effort_ = Effort::kQuick;
  int steps_ = kMostRackSteps;
  long joins_ = kMostJoins;  // also what the choices of all attempts cost
  int mixedTries_ = 3 * kMostMixedTries;
  static constexpr std::size_t kNoneDead = static_cast<std::size_t>(-1);
  std::size_t dead_ = kNoneDead;  // index of a shelf laid that turned out not to fit
  std::unordered_set<std::uint64_t> failed_;
  std::vector<ShelfUse> uses_;
};

int singles(const std::vector<Pan>& pans) {
  int count = 0;
  for (const Pan& pan : pans) count += std::max(pan.count, 0);
  return count;
}

Misfit aloneMisfit(const Oven& oven, const Pan& pan) {
  const bool straight = pan.widthMm <= oven.shelfWidthMm && pan.depthMm <= oven.shelfDepthMm;
  const bool turned = pan.depthMm <= oven.shelfWidthMm && pan.widthMm <= oven.shelfDepthMm;
  if (!straight && !turned) return Misfit::kTooWide;
  int height = 0;
  for (int clear : oven.clearHeightsMm) height += clear;
  return pan.heightMm > height ? Misfit::kTooTall : Misfit::kNone;
}

RackPlan refusal(Misfit misfit, std::size_t pan) {
  RackPlan plan;
  plan.misfit = misfit;
  plan.misfitPan = static_cast<int>(pan);
  return plan;
}

}  // namespace

double areaFactor(const Pan& from, const Pan& to) {
  return static_cast<double>(to.widthMm) * to.depthMm / (static_cast<double>(from.widthMm) * from.depthMm);
}

bool fitsRacks(const Oven& oven, const std::vector<Pan>& pans) {
  if (singles(pans) > kMostPans) return false;
  for (const Pan& pan : pans) {
    if (pan.count > 0 && aloneMisfit(oven, pan) != Misfit::kNone) return false;
  }
  return RackSearch(oven, kindsOf(pans)).run();
}

std::optional<Pan> panThatWould(const Oven& oven, const std::vector<Pan>& pans, int misfit) {
  constexpr int kPitchMm = 5;
  std::vector<Pan> some(pans.begin(), pans.begin() + misfit + 1);
  const Pan wanted = some.back();
  const int longSide = std::max(wanted.widthMm, wanted.depthMm);
  int clear = 0;
  for (const int height : oven.clearHeightsMm) clear += height;
  const auto shrunk = [&](int side) {
    const auto part = [&](int length) {
      return static_cast<int>(static_cast<long>(length) * side / longSide);
    };
    return Pan{part(wanted.widthMm), part(wanted.depthMm), std::min(wanted.heightMm, clear), wanted.count};
  };
  const auto fits = [&](int side) {
    some.back() = shrunk(side);
    return fitsRacks(oven, some);
  };
  // What fits shrunk, fits shrunk further; so the largest is found by halving.
  int low = (longSide / 2 + kPitchMm - 1) / kPitchMm * kPitchMm;
  int high = longSide / kPitchMm * kPitchMm;
  if (!fits(low)) return std::nullopt;
  while (low < high) {
    const int middle = (low + high + kPitchMm) / (2 * kPitchMm) * kPitchMm;
    if (fits(middle))
      low = middle;
    else
      high = middle - kPitchMm;
  }
  return shrunk(low);
}

RackPlan packRacks(const Oven& oven, const std::vector<Pan>& pans) {
  for (std::size_t i = 0; i < pans.size(); ++i) {
    const Misfit misfit = pans[i].count > 0 ? aloneMisfit(oven, pans[i]) : Misfit::kNone;
    if (misfit != Misfit::kNone) return refusal(misfit, i);
  }
  bool proven = true;
  if (singles(pans) <= kMostPans) {
    RackSearch search(oven, kindsOf(pans));
    if (search.run()) {
      RackPlan plan;
      plan.places = search.places(pans);
      return plan;
    }
    proven = search.isProven();
  }
  std::vector<Pan> some;
  for (std::size_t i = 0; i < pans.size(); ++i) {
    some.push_back(pans[i]);
    if (singles(some) > kMostPans) return refusal(Misfit::kTooManyPans, i);
    if (fitsRacks(oven, some)) continue;
    RackPlan plan = refusal(Misfit::kNoRoom, i);
    plan.proven = proven;
    return plan;
  }
  return refusal(Misfit::kNoRoom, pans.size() - 1);
}

}  // namespace suppertide::kitchen
