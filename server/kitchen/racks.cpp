#include "server/kitchen/racks.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <tuple>

#include "server/kitchen/shelf_packing.h"

namespace suppertide::kitchen {
namespace {

// Pans of one size, whoever asked for them.
struct Kind {
  int width = 0;
  int depth = 0;
  int height = 0;
  std::vector<int> owners;  // pan index of each single pan
};

using Counts = std::vector<int>;  // how many of each kind

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

struct ShelfUse {
  int position = 0;
  Counts counts;
};

// Fills shelves from the bottom up, remembering what has failed from each
// position on and what has been tried on a shelf.
class RackSearch {
 public:
  RackSearch(const Oven& oven, std::vector<Kind> kinds) : oven_(oven), kinds_(std::move(kinds)) {
    for (const Kind& kind : kinds_) all_.push_back(static_cast<int>(kind.owners.size()));
  }

  bool run() {
    const int positions = static_cast<int>(oven_.clearHeightsMm.size());
    const int shelves = oven_.shelfCount > 0 ? std::min(oven_.shelfCount, positions) : positions;
    return fill(0, shelves, all_);
  }

  // Where each single pan stands, after run() said yes.
  std::vector<PanPlace> places(const std::vector<Pan>& pans) {
    std::vector<PanPlace> result;
    Counts next(kinds_.size(), 0);
    for (const ShelfUse& use : uses_) {
      for (const Spot& spot : *shelf(use.counts)) {
        const std::size_t k = static_cast<std::size_t>(spot.kind);
        const int owner = kinds_[k].owners[static_cast<std::size_t>(next[k]++)];
        const Pan& pan = pans[static_cast<std::size_t>(owner)];
        // A kind is stored wide side first, so a pan given the other way round is turned once more.
        const bool stored = pan.widthMm >= pan.depthMm;
        result.push_back({owner, use.position, spot.x, spot.y, stored ? spot.turned : !spot.turned});
      }
    }
    return result;
  }

 private:
  static bool none(const Counts& counts) {
    return std::all_of(counts.begin(), counts.end(), [](int count) { return count == 0; });
  }

  long areaOf(const Counts& counts) const {
    long area = 0;
    for (std::size_t k = 0; k < counts.size(); ++k) {
      area += static_cast<long>(counts[k]) * kinds_[k].width * kinds_[k].depth;
    }
    return area;
  }

  const std::optional<std::vector<Spot>>& shelf(const Counts& counts) {
    const auto known = shelves_.find(counts);
    if (known != shelves_.end()) return known->second;
    std::vector<Footprint> footprints;
    for (std::size_t k = 0; k < counts.size(); ++k) {
      footprints.push_back({kinds_[k].width, kinds_[k].depth, counts[k]});
    }
    return shelves_.emplace(counts, packShelf(oven_.shelfWidthMm, oven_.shelfDepthMm, footprints))
        .first->second;
  }

  bool fill(int position, int shelves, const Counts& rest) {
    if (none(rest)) return true;
    const int positions = static_cast<int>(oven_.clearHeightsMm.size());
    if (position == positions || shelves == 0) return false;
    const int usable = std::min(shelves, positions - position);
    if (areaOf(rest) > usable * static_cast<long>(oven_.shelfWidthMm) * oven_.shelfDepthMm) return false;
    if (failed_.contains({position, shelves, rest})) return false;
    if (fillFrom(position, shelves, rest)) return true;
    failed_.insert({position, shelves, rest});
    return false;
  }

  // Lays a shelf at `position` that takes one, two, ... positions, or none there.
  bool fillFrom(int position, int shelves, const Counts& rest) {
    const int positions = static_cast<int>(oven_.clearHeightsMm.size());
    int height = 0;
    int heightBefore = -1;
    for (int next = position + 1; next <= positions; ++next) {
      height += oven_.clearHeightsMm[static_cast<std::size_t>(next - 1)];
      Counts most = rest;
      bool anyNew = false;
      for (std::size_t k = 0; k < most.size(); ++k) {
        if (kinds_[k].height > height) most[k] = 0;
        anyNew = anyNew || (most[k] > 0 && kinds_[k].height > heightBefore);
      }
      heightBefore = height;
      if (!anyNew) continue;  // a lower shelf could hold the same
      Counts chosen(most.size(), 0);
      if (fillShelf(position, next, shelves, rest, most, chosen, 0)) return true;
    }
    return fill(position + 1, shelves, rest);
  }

  // Tries all choices out of `most` for one shelf, fullest first.
  bool fillShelf(int position, int next, int shelves, const Counts& rest, const Counts& most, Counts& chosen,
                 std::size_t k) {
    if (areaOf(chosen) > static_cast<long>(oven_.shelfWidthMm) * oven_.shelfDepthMm) return false;
    if (k == most.size()) {
      if (none(chosen) || extendable(most, chosen) || !shelf(chosen)) return false;
      Counts after = rest;
      for (std::size_t i = 0; i < after.size(); ++i) after[i] -= chosen[i];
      uses_.push_back({position, chosen});
      if (fill(next, shelves - 1, after)) return true;
      uses_.pop_back();
      return false;
    }
    for (int count = most[k]; count >= 0; --count) {
      chosen[k] = count;
      if (fillShelf(position, next, shelves, rest, most, chosen, k + 1)) return true;
    }
    chosen[k] = 0;
    return false;
  }

  // Whether one more pan is already known to fit beside `chosen`: then the
  // fuller shelf was tried and failed, and this one leaves even more to place.
  bool extendable(const Counts& most, const Counts& chosen) const {
    Counts more = chosen;
    for (std::size_t k = 0; k < most.size(); ++k) {
      if (chosen[k] == most[k]) continue;
      ++more[k];
      const auto known = shelves_.find(more);
      if (known != shelves_.end() && known->second) return true;
      --more[k];
    }
    return false;
  }

  const Oven& oven_;
  std::vector<Kind> kinds_;
  Counts all_;
  std::map<Counts, std::optional<std::vector<Spot>>> shelves_;
  std::set<std::tuple<int, int, Counts>> failed_;
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
  return {.misfit = misfit, .misfitPan = static_cast<int>(pan), .places = {}};
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

RackPlan packRacks(const Oven& oven, const std::vector<Pan>& pans) {
  for (std::size_t i = 0; i < pans.size(); ++i) {
    const Misfit misfit = pans[i].count > 0 ? aloneMisfit(oven, pans[i]) : Misfit::kNone;
    if (misfit != Misfit::kNone) return refusal(misfit, i);
  }
  if (singles(pans) <= kMostPans) {
    RackSearch search(oven, kindsOf(pans));
    if (search.run()) return {.misfit = Misfit::kNone, .misfitPan = -1, .places = search.places(pans)};
  }
  std::vector<Pan> some;
  for (std::size_t i = 0; i < pans.size(); ++i) {
    some.push_back(pans[i]);
    if (singles(some) > kMostPans) return refusal(Misfit::kTooManyPans, i);
    if (!fitsRacks(oven, some)) return refusal(Misfit::kNoRoom, i);
  }
  return refusal(Misfit::kNoRoom, pans.size() - 1);
}

}  // namespace suppertide::kitchen
