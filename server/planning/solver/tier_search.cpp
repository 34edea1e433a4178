#include "server/planning/solver/tier_search.h"

#include <algorithm>

namespace suppertide::planning {
namespace {

constexpr std::int64_t kConflictsALevel = 1000;
constexpr std::int64_t kAllLevels = std::int64_t{1} << 62;

}  // namespace

TierSearch::TierSearch(Sat& sat, const CostSum& sum, Probe probe, Raised raised, Best best, Pause pause)
    : sat_(sat),
      probe_(std::move(probe)),
      raised_(std::move(raised)),
      best_(std::move(best)),
      pause_(std::move(pause)) {
  bound_ = sum.constant;
  for (const Term& term : sum.terms) addTerm(term.lit, term.weight, term.late);
}

void TierSearch::addTerm(Lit lit, std::int64_t weight, bool late) {
  if (lit == kTrue) bound_ += weight;
  if (lit == kTrue || lit == kFalse || weight == 0) return;
  if (weight < 0) {  // the same as paying for the opposite
    bound_ += weight;
    addTerm(-lit, -weight, late);
    return;
  }
  const auto opposite = weights_.find(-lit);
  if (opposite != weights_.end()) {
    const std::int64_t both = std::min(weight, opposite->second);
    bound_ += both;
    weight -= both;
    opposite->second -= both;
    if (opposite->second == 0) weights_.erase(opposite);
  }
  if (weight == 0) return;
  weights_[lit] += weight;
  if (late) late_.insert(lit);
}

std::vector<Lit> TierSearch::assumptions(std::int64_t least) const {
  std::vector<Lit> lits;
  for (const auto& [lit, weight] : weights_)
    if (weight >= least && counts(lit)) lits.push_back(-lit);
  return lits;
}

// The greatest weight below `below`; 0 when there is none.
std::int64_t TierSearch::nextLevel(std::int64_t below) const {
  std::int64_t level = 0;
  for (const auto& [lit, weight] : weights_)
    if (weight < below && counts(lit)) level = std::max(level, weight);
  return level;
}

// A term dearer than all that is left between bound and best plan is paid by no better plan.
void TierSearch::harden() {
  const std::int64_t room = best_() - bound_;
  for (auto it = weights_.begin(); it != weights_.end();) {
    if (it->second <= room) {
      ++it;
      continue;
    }
    sat_.add({-it->first});
    it = weights_.erase(it);
  }
}

// Keeps only plans that cost what the bound says.
bool TierSearch::settle() {
  for (const auto& [lit, weight] : weights_) sat_.add({-lit});
  weights_.clear();
  return true;
}

bool TierSearch::run() {
  raised_(bound_);
  std::int64_t slice = 2 * kConflictsALevel;
  withLate_ = late_.empty();
  std::int64_t level = nextLevel(kAllLevels);
  while (true) {
    if (best_() <= bound_) return settle();
    harden();
    const std::vector<Lit> assumed = assumptions(std::max<std::int64_t>(1, level));
    const bool last = level <= 1 || nextLevel(level) == 0;
    // More terms make a hard question easier to refute; a plan is wanted from the last level only.
    const Answer answer = probe_(assumed, last ? slice : kConflictsALevel);
    if (answer == Answer::kStopped) return false;
    if (answer == Answer::kTooHard) {
      pause_(slice);
      slice += slice / 2;
    }
    if (last && !withLate_ && answer != Answer::kNone) {
      withLate_ = true;
      level = nextLevel(kAllLevels);
      continue;
    }
    if (answer == Answer::kTooHard && last) continue;
    if (answer == Answer::kPlan || answer == Answer::kTooHard) {
      if (last) return best_() <= bound_ && settle();
      level = nextLevel(level / 2 + 1) > 0 ? nextLevel(level / 2 + 1) : nextLevel(level);
      continue;
    }
    std::vector<Lit> core;
    for (const Lit lit : assumed)
      if (sat_.inCore(lit)) core.push_back(-lit);
    if (core.empty()) return false;
    const auto shrunk = shrink(std::move(core));
    if (!shrunk) return false;
    relax(*shrunk);
    raised_(bound_);
  }
}

// Fewer terms that still cannot all be free; none when the search was stopped.
std::optional<std::vector<Lit>> TierSearch::shrink(std::vector<Lit> core) {
  constexpr int kTries = 2;
  for (int k = 0; k < kTries && core.size() > 1; ++k) {
    std::vector<Lit> assumed;
    for (const Lit lit : core) assumed.push_back(-lit);
    std::reverse(assumed.begin(), assumed.end());
    const Sat::Answer answer = sat_.solve(assumed, 1000);
    if (answer != Sat::Answer::kNo) break;
    const std::size_t before = core.size();
    std::erase_if(core, [&](Lit lit) { return !sat_.inCore(-lit); });
    if (core.size() == before) break;
  }
  if (sat_.stopped()) return std::nullopt;
  return core;
}

void TierSearch::relax(const std::vector<Lit>& core) {
  std::int64_t least = weights_.at(core.front());
  for (const Lit lit : core) least = std::min(least, weights_.at(lit));
  bound_ += least;
  for (const Lit lit : core) {
    if ((weights_[lit] -= least) == 0) weights_.erase(lit);
    const auto found = counters_.find(lit);
    if (found == counters_.end()) continue;
    // One more of an older core is paid: the next of its count can be demanded.
    Counter counter = found->second;
    if (counter.next >= counter.counted.size()) continue;
    const Lit next = counter.counted[counter.next];
    ++counter.next;
    weights_[next] += least;
    if (late_.contains(lit)) late_.insert(next);
    counters_[next] = std::move(counter);
  }
  if (core.size() == 1) {
    sat_.add({core.front()});
    return;
  }
  sat_.add(core);
  Counter counter{count(core), 2};
  const Lit second = counter.counted[1];
  weights_[second] += least;
  if (std::any_of(core.begin(), core.end(), [&](Lit lit) { return late_.contains(lit); }))
    late_.insert(second);
  counters_[second] = std::move(counter);
}

// Literals "at least k + 1 of them": implied by that many, not the other way.
std::vector<Lit> TierSearch::count(const std::vector<Lit>& lits) {
  if (lits.size() == 1) return lits;
  const auto middle = lits.begin() + static_cast<std::ptrdiff_t>(lits.size() / 2);
  const std::vector<Lit> left = count({lits.begin(), middle});
  const std::vector<Lit> right = count({middle, lits.end()});
  std::vector<Lit> sums;
  for (std::size_t k = 0; k < lits.size(); ++k) sums.push_back(sat_.newLit());
  for (std::size_t i = 0; i <= left.size(); ++i)
    for (std::size_t j = 0; j <= right.size(); ++j) {
      if (i + j == 0) continue;
      std::vector<Lit> clause{sums[i + j - 1]};
      if (i > 0) clause.push_back(-left[i - 1]);
      if (j > 0) clause.push_back(-right[j - 1]);
      sat_.add(clause);
    }
  return sums;
}

}  // namespace suppertide::planning
