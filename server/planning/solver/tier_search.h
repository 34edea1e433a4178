// Makes one sum of literals as small as the clauses allow, and proves it.
//
// Core-guided: each set of terms that cannot all be free raises the bound by its
// least weight and is counted from then on by how many of them are paid. Plans
// met on the way give the other end; a term that weighs more than the distance
// between the two is ruled out for good.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <vector>

#include "server/planning/solver/cost_ladder.h"

namespace suppertide::planning {

class TierSearch {
 public:
  enum class Answer { kPlan, kNone, kTooHard, kStopped };
  // Asked under assumptions: whether a plan that keeps all rules exists. kTooHard
  // after about so many conflicts, when that is not 0.
  using Probe = std::function<Answer(const std::vector<Lit>&, std::int64_t conflicts)>;
  // Called when the bound rose; and for the cost of the best plan known so far.
  using Raised = std::function<void(std::int64_t bound)>;
  using Best = std::function<std::int64_t()>;
  // Called now and then in a long search, to look for better plans another way, with the conflicts
  // spent since the last time.
  using Pause = std::function<void(std::int64_t conflicts)>;

  TierSearch(Sat& sat, const CostSum& sum, Probe probe, Raised raised, Best best, Pause pause);

  // True when the best plan's cost is proven least. Then the clauses hold only
  // plans of that cost; otherwise they are as they were but for what was proven.
  bool run();
  std::int64_t bound() const { return bound_; }

 private:
  struct Counter {
    std::vector<Lit> counted;  // by number: "at least this many plus one of the core are paid"
    std::size_t next = 0;
  };
  void addTerm(Lit lit, std::int64_t weight, bool late);
  bool counts(Lit lit) const { return withLate_ || !late_.contains(lit); }
  bool settle();
  void harden();
  std::vector<Lit> assumptions(std::int64_t least) const;
  std::int64_t nextLevel(std::int64_t below) const;
  std::optional<std::vector<Lit>> shrink(std::vector<Lit> core);
  void relax(const std::vector<Lit>& core);
  std::vector<Lit> count(const std::vector<Lit>& lits);

  Sat& sat_;
  Probe probe_;
  Raised raised_;
  Best best_;
  Pause pause_;
  std::int64_t bound_ = 0;
  std::map<Lit, std::int64_t> weights_;  // of terms not yet in the bound
  std::set<Lit> late_;                   // of those, the ones looked at last
  bool withLate_ = false;
  std::map<Lit, Counter> counters_;  // by the literal that is assumed false now
};

}  // namespace suppertide::planning
