// Clauses about what steps share, added for the clashes that plans run into.
//
// Each clause is as general as its reason allows: every cook who could do the
// steps, every pair of modes in an oven. Each is added once.
#pragma once

#include <set>
#include <vector>

#include "server/planning/solver/clashes.h"
#include "server/planning/solver/encoder.h"

namespace suppertide::planning {

class ResourceClauses {
 public:
  explicit ResourceClauses(Encoder& encoder) : encoder_(encoder) { addUsedUp(); }

  // Adds what forbids `clash`; the number of clauses that are new.
  int add(const Clash& clash, const Schedule& plan);

 private:
  using Needs = std::vector<std::vector<int>>;  // modes, by step of the set

  const Problem& problem() const { return encoder_.model().problem(); }
  const Mode& modeOf(int step, int mode) const { return nth(nth(problem().steps, step).modes, mode); }
  int addAttention(const Clash& clash, const Schedule& plan);
  int addAmount(const Clash& clash, const Schedule& plan);
  int addSetpoints(int a, int b);
  int addSetpoints(int a, int modeA, int b, int modeB);
  int addRacks(const Clash& clash, const Schedule& plan);
  void addUsedUp();
  int addUsedUp(const Clash& clash, const Schedule& plan);
  int addClock(int clock, const Schedule& plan);
  Lit endsBy(const Clock::Span& span, Minute minutes);
  int addSeparation(int separation);
  bool addRacks(int oven, const std::vector<int>& steps, const std::vector<Load>& loads);
  // Adds to `clause` what lets the steps of the set use less: other modes, not overlapping, not served.
  void excuse(std::vector<Lit>& clause, const std::vector<int>& steps, const Needs& needs);
  void apart(std::vector<Lit>& clause, int a, int b);
  bool keep(std::vector<Lit> clause);

  Encoder& encoder_;
  std::set<std::vector<Lit>> known_;
  std::set<std::pair<int, int>> exclusive_;
};

}  // namespace suppertide::planning
