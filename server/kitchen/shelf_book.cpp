#include "server/kitchen/shelf_book.h"

#include <algorithm>
#include <bit>
#include <optional>
#include <utility>

#include "server/kitchen/straight_cuts.h"

namespace suppertide::kitchen {
namespace {

// Joins that take as long as one look at a shelf's areas, one quick look, one mixed try, one step of a
// search.
constexpr long kJoinsOfBounds = 20;
constexpr long kJoinsOfQuickLook = 60;
constexpr long kJoinsOfMixedTry = 150;
constexpr long kJoinsOfStep = 16;
constexpr long kRefusalsOfJoin = 4;  // sets that are refused in the time of one join
constexpr int kMany = 9;             // pans on one shelf: too many for a search that is not lucky
constexpr int kMixedTries = 100;
static_assert(kMostSearched <= ShelfBounds::kMostRectangles);

std::vector<int> singlesOf(const std::vector<Footprint>& kinds) {
  std::vector<int> singles;
  for (std::size_t k = 0; k < kinds.size(); ++k)
    singles.insert(singles.end(), static_cast<std::size_t>(kinds[k].count), static_cast<int>(k));
  return singles;
}

std::vector<Footprint> printsOf(const std::vector<int>& singles, const std::vector<Footprint>& kinds) {
  std::vector<Footprint> prints;
  for (const int kind : singles) prints.push_back(kinds[static_cast<std::size_t>(kind)]);
  return prints;
}

}  // namespace

ShelfBook::ShelfBook(int width, int depth, std::vector<Footprint> kinds, long& joins)
    : width_(width),
      depth_(depth),
      kinds_(std::move(kinds)),
      single_(singlesOf(kinds_)),
      bounds_(width, depth, printsOf(single_, kinds_)),
      joins_(joins) {
  const std::size_t sets = std::size_t{1} << single_.size();
  shelf_.assign(sets, Shelf::kUnasked);
  cut_.assign(sets, false);
  area_.assign(sets, 0);
  for (PanSet set = 1; set < sets; ++set) {
    const Footprint& kind = kinds_[static_cast<std::size_t>(kindOf(std::countr_zero(set)))];
    area_[set] = area_[set & (set - 1)] + static_cast<long>(kind.width) * kind.depth;
  }
  refuseUnlikelyPairs();
}

void ShelfBook::look(Effort effort, long shelfSteps) {
  effort_ = effort;
  shelfSteps_ = shelfSteps;
  for (const PanSet pans : postponed_)
    if (shelf_[pans] == Shelf::kPostponed) shelf_[pans] = Shelf::kDoubtful;
  postponed_.clear();
}

PanSet ShelfBook::alike(PanSet single) const {
  PanSet set = 0;
  const int kind = kindOf(std::countr_zero(single));
  for (int i = 0; i < panCount(); ++i)
    if (kindOf(i) == kind) set |= PanSet{1} << i;
  return set;
}

bool ShelfBook::fits(PanSet pans) {
  if (area_[pans] > shelfArea()) return false;
  if (shelf_[pans] == Shelf::kUnasked) shelf_[pans] = asked(pans);
  return mayFit(shelf_[pans]);
}

bool ShelfBook::settle(PanSet pans) {
  if (shelf_[pans] == Shelf::kYes) return true;
  if (shelf_[pans] == Shelf::kNo) return false;  // found out meanwhile for a part of it
  return effort_ == Effort::kCuts ? cut(pans) : search(pans);
}

// Two pans that cannot share a shelf refuse every choice that has both.
void ShelfBook::refuseUnlikelyPairs() {
  const auto print = [&](int pan) { return kinds_[static_cast<std::size_t>(kindOf(pan))]; };
  for (int i = 0; i < panCount(); ++i)
    for (int j = i + 1; j < panCount(); ++j)
      if (!fitPair(width_, depth_, print(i), print(j)))
        refused_.push_back((PanSet{1} << i) | (PanSet{1} << j));
}

std::vector<Footprint> ShelfBook::footprints(PanSet pans) const {
  std::vector<Footprint> prints = kinds_;
  for (Footprint& print : prints) print.count = 0;
  for (PanSet rest = pans; rest != 0; rest &= rest - 1)
    ++prints[static_cast<std::size_t>(kindOf(std::countr_zero(rest)))].count;
  return prints;
}

bool ShelfBook::mayFit(Shelf shelf) const {
  return shelf == Shelf::kYes || (shelf == Shelf::kDoubtful && effort_ != Effort::kQuick);
}

ShelfBook::Shelf ShelfBook::asked(PanSet pans) {
  for (const PanSet no : refused_)
    if ((pans & no) == no) return Shelf::kNo;
  for (const PanSet yes : fitting_) {
    if ((pans & yes) != pans) continue;
    spots_[pans] = part(spots_.at(yes), pans);
    return Shelf::kYes;
  }
  return lookedAt(pans);
}

ShelfBook::Shelf ShelfBook::lookedAt(PanSet pans) {
  joins_ -= kJoinsOfBounds;
  if (bounds_.isTooMuch(pans)) {
    refuse(pans);
    return Shelf::kNo;
  }
  joins_ -= kJoinsOfQuickLook;
  std::vector<Footprint> prints = footprints(pans);
  std::vector<int> kinds;
  for (std::size_t k = 0; k < prints.size(); ++k)
    if (prints[k].count > 0) kinds.push_back(static_cast<int>(k));
  std::erase_if(prints, [](const Footprint& print) { return print.count == 0; });
  if (auto spots = packShelfQuickly(width_, depth_, prints)) {
    for (Spot& spot : *spots) spot.kind = kinds[static_cast<std::size_t>(spot.kind)];
    keep(pans, *std::move(spots));
    return Shelf::kYes;
  }
  return Shelf::kDoubtful;
}

// The spots of some of the pans that lie at `spots`.
std::vector<Spot> ShelfBook::part(const std::vector<Spot>& spots, PanSet pans) const {
  std::vector<Footprint> wanted = footprints(pans);
  std::vector<Spot> kept;
  for (const Spot& spot : spots)
    if (wanted[static_cast<std::size_t>(spot.kind)].count-- > 0) kept.push_back(spot);
  return kept;
}

bool ShelfBook::cut(PanSet pans) {
  if (!cut_[pans]) {
    cut_[pans] = true;
    const std::vector<Footprint> prints = footprints(pans);
    if (std::popcount(pans) >= kMany) {
      joins_ -= kMixedTries * kJoinsOfMixedTry;
      if (auto spots = packShelfQuickly(width_, depth_, prints, kMixedTries))
        return keep(pans, *std::move(spots));
    }
    if (auto spots = packByStraightCuts(width_, depth_, prints, joins_)) return keep(pans, *std::move(spots));
  }
  postpone(pans);
  return false;
}

bool ShelfBook::search(PanSet pans) {
  if (search_ == nullptr) search_ = makeShelfSearch(width_, depth_, kinds_);
  const long given = std::min(shelfSteps_, std::max(joins_, 0L) / kJoinsOfStep + 1);
  long steps = search_ == nullptr ? 0 : given;
  auto spots = search_ == nullptr ? std::nullopt : search_->search(pans, steps);
  joins_ -= (given - steps) * kJoinsOfStep;
  if (spots) return keep(pans, *std::move(spots));
  if (steps > 0)
    refuse(pans);
  else
    postpone(pans);
  return false;
}

bool ShelfBook::keep(PanSet pans, std::vector<Spot> spots) {
  shelf_[pans] = Shelf::kYes;
  fitting_.push_back(pans);
  spots_[pans] = std::move(spots);
  return true;
}

void ShelfBook::postpone(PanSet pans) {
  shelf_[pans] = Shelf::kPostponed;
  postponed_.push_back(pans);
}

// Every set holds too much when a part of it does.
void ShelfBook::refuse(PanSet no) {
  const PanSet others = static_cast<PanSet>(shelf_.size() - 1) & ~no;
  joins_ -= (1L << std::popcount(others)) / kRefusalsOfJoin + 1;
  for (PanSet more = others;; more = (more - 1) & others) {
    shelf_[no | more] = Shelf::kNo;
    if (more == 0) break;
  }
}

}  // namespace suppertide::kitchen
