#include "server/kitchen/rack_search.h"

#include <algorithm>
#include <array>
#include <bit>
#include <limits>
#include <utility>

namespace suppertide::kitchen {
namespace {

constexpr long kJoinsOfChoice = 2;  // that take as long as one choice of a pan for a shelf
// What is left for straight cuts at most, and for the search of one shelf before others get their turn.
constexpr long kCutJoins = 450'000;
constexpr long kFewShelfSteps = 80;
constexpr std::array<long, 2> kShelfSteps = {kMostRackSteps, std::numeric_limits<int>::max()};

std::vector<Footprint> footprintsOf(const std::vector<PanKind>& kinds) {
  std::vector<Footprint> prints;
  for (const PanKind& kind : kinds)
    prints.push_back({kind.width, kind.depth, static_cast<int>(kind.owners.size())});
  return prints;
}

// Of all runs of positions, ascending.
std::vector<int> clearHeights(const Oven& oven) {
  std::vector<int> heights;
  for (auto from = oven.clearHeightsMm.begin(); from != oven.clearHeightsMm.end(); ++from) {
    int height = 0;
    for (auto at = from; at != oven.clearHeightsMm.end(); ++at) heights.push_back(height += *at);
  }
  std::sort(heights.begin(), heights.end());
  return heights;
}

PanSet lowest(PanSet set) {
  return set & (~set + 1);
}

}  // namespace

std::vector<PanKind> kindsOf(const Oven& oven, const std::vector<Pan>& pans) {
  const std::vector<int> heights = clearHeights(oven);
  std::vector<PanKind> kinds;
  for (std::size_t i = 0; i < pans.size(); ++i) {
    const int width = std::max(pans[i].widthMm, pans[i].depthMm);
    const int depth = std::min(pans[i].widthMm, pans[i].depthMm);
    const auto room = std::lower_bound(heights.begin(), heights.end(), pans[i].heightMm);
    const int height = room == heights.end() ? pans[i].heightMm : *room;
    auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const PanKind& k) {
      return k.width == width && k.depth == depth && k.height == height;
    });
    if (kind == kinds.end()) kind = kinds.insert(kinds.end(), {width, depth, height, {}});
    kind->owners.insert(kind->owners.end(), static_cast<std::size_t>(std::max(pans[i].count, 0)),
                        static_cast<int>(i));
  }
  std::sort(kinds.begin(), kinds.end(),
            [](const PanKind& a, const PanKind& b) { return a.width * a.depth > b.width * b.depth; });
  std::erase_if(kinds, [](const PanKind& k) { return k.owners.empty(); });
  return kinds;
}

RackSearch::RackSearch(const Oven& oven, std::vector<PanKind> kinds, long& joins)
    : oven_(oven),
      kinds_(std::move(kinds)),
      joins_(joins),
      book_(oven.shelfWidthMm, oven.shelfDepthMm, footprintsOf(kinds_), joins),
      positions_(static_cast<int>(oven.clearHeightsMm.size())),
      shelves_(oven.shelfCount > 0 ? std::min(oven.shelfCount, positions_) : positions_),
      bulk_(std::size_t{1} << book_.panCount(), 0) {
  for (PanSet set = 1; set < bulk_.size(); ++set) {
    const PanSet rest = set & (set - 1);
    const long area = book_.areaOf(set) - book_.areaOf(rest);
    bulk_[set] = bulk_[rest] + area * positionsOf(heightOf(std::countr_zero(set)));
  }
}

bool RackSearch::run() {
  if (attempt(Effort::kQuick) || attempt(Effort::kSearch, kFewShelfSteps)) return true;
  if (!book_.hasPostponed()) return false;
  const long kept = std::max(0L, joins_ - kCutJoins);
  joins_ -= kept;
  const bool cut = attempt(Effort::kCuts);
  joins_ += kept;
  if (cut) return true;
  for (const long steps : kShelfSteps) {
    if (attempt(Effort::kSearch, steps)) return true;
    if (!book_.hasPostponed()) break;
  }
  return false;
}

std::vector<PanPlace> RackSearch::places(const std::vector<Pan>& pans) const {
  std::vector<PanPlace> result;
  std::vector<std::size_t> next(kinds_.size(), 0);
  for (const ShelfUse& use : uses_) {
    for (const Spot& spot : book_.spots(use.pans)) {
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

int RackSearch::clearHeight(int from, int limit) const {
  int height = 0;
  for (int p = from; p < limit; ++p) height += oven_.clearHeightsMm[static_cast<std::size_t>(p)];
  return height;
}

// The fewest positions that a pan so high takes anywhere.
int RackSearch::positionsOf(int wantedHeight) const {
  int fewest = positions_;
  for (int from = 0; from < positions_; ++from)
    for (int limit = from + 1; limit <= positions_; ++limit) {
      if (clearHeight(from, limit) < wantedHeight) continue;
      fewest = std::min(fewest, limit - from);
      break;
    }
  return fewest;
}

PanSet RackSearch::upTo(int height, PanSet pans) const {
  PanSet low = 0;
  for (; pans != 0; pans &= pans - 1)
    if (heightOf(std::countr_zero(pans)) <= height) low |= lowest(pans);
  return low;
}

bool RackSearch::attempt(Effort effort, long shelfSteps) {
  book_.look(effort, shelfSteps);
  dead_ = kNoneDead;
  failed_.clear();
  uses_.clear();
  return fill(0, shelves_, static_cast<PanSet>(bulk_.size() - 1));
}

// Everything lies on a shelf: whether that is true of those that only might fit.
bool RackSearch::settleAll() {
  for (std::size_t i = 0; i < uses_.size(); ++i)
    if (!book_.settle(uses_[i].pans)) {
      dead_ = i;
      return false;
    }
  return true;
}

bool RackSearch::fill(int position, int shelves, PanSet rest) {
  if (rest == 0) return settleAll();
  if (position == positions_ || shelves == 0) return false;
  const int usable = std::min(shelves, positions_ - position);
  if (book_.areaOf(rest) > usable * book_.shelfArea()) return false;
  // A shelf over several positions costs them all, and what stands on it needs no more of them.
  if (bulk_[rest] > (positions_ - position) * book_.shelfArea()) return false;
  const std::uint64_t key =
      (static_cast<std::uint64_t>(position) << 40) | (static_cast<std::uint64_t>(usable) << 32) | rest;
  if (failed_.contains(key)) return false;
  if (fillFrom(position, shelves, rest)) return true;
  if (!isDead()) failed_.insert(key);
  return false;
}

// Lays a shelf at `position` that takes one, two, ... positions, or none there.
bool RackSearch::fillFrom(int position, int shelves, PanSet rest) {
  PanSet before = 0;
  for (int next = position + 1; next <= positions_; ++next) {
    const PanSet most = upTo(clearHeight(position, next), rest);
    if (most == before) continue;  // a lower shelf could hold the same
    before = most;
    const long later = std::min(shelves - 1, positions_ - next) * book_.shelfArea();
    const long laterBulk = (positions_ - next) * book_.shelfArea();
    const ShelfChoice choice{
        position, next, shelves, rest, book_.areaOf(rest) - later, bulk_[rest] - laterBulk};
    if (fillShelf(choice, 0, most)) return true;
    if (isDead()) return false;
  }
  return fill(position + 1, shelves, rest);
}

// Tries all choices for one shelf: `chosen` surely, any of `open`, fullest first.
bool RackSearch::fillShelf(const ShelfChoice& choice, PanSet chosen, PanSet open) {
  joins_ -= kJoinsOfChoice;
  const long area = book_.areaOf(chosen);
  if (area > book_.shelfArea() || area + book_.areaOf(open) < choice.least ||
      bulk_[chosen] + bulk_[open] < choice.leastBulk)
    return false;
  // Little always fits, nearly, and what it becomes part of is asked about anyway.
  const bool isMuch = area * 4 > book_.shelfArea() * 3;
  if (chosen != 0 && (open == 0 || isMuch) && !book_.fits(chosen)) return false;
  if (open == 0) return use(choice, chosen);
  const PanSet single = lowest(open);
  const PanSet rest = open & ~single;
  if (fillShelf(choice, chosen | single, rest)) return true;
  if (isDead()) return false;
  // Of pans alike the first ones go.
  return fillShelf(choice, chosen, rest & ~book_.alike(single));
}

bool RackSearch::use(const ShelfChoice& choice, PanSet chosen) {
  if (chosen == 0 || canTakeMore(choice, chosen)) return false;
  uses_.push_back({choice.position, chosen});
  if (fill(choice.next, choice.shelves - 1, choice.rest & ~chosen)) return true;
  uses_.pop_back();
  if (dead_ == uses_.size()) dead_ = kNoneDead;
  return false;
}

// Whether one more pan fits, as far as is known: then the fuller shelf was tried and failed,
// and this one leaves even more to place.
bool RackSearch::canTakeMore(const ShelfChoice& choice, PanSet chosen) const {
  const int height = clearHeight(choice.position, choice.next);
  for (PanSet more = upTo(height, choice.rest & ~chosen); more != 0; more &= more - 1)
    if (book_.isKnownToFit(chosen | lowest(more))) return true;
  return false;
}

}  // namespace suppertide::kitchen
