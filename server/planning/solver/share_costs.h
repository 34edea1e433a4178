// Tier 4 between the cooks: started blocks of work above each one's fair share.
//
// The work of a cook is summed by a tree of partial sums. Where work depends on
// modes or lengths the tree counts the least of it and the most of all work for
// the fair share; what that misses is added where plans run into it.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "server/planning/solver/asking_costs.h"
#include "server/planning/solver/cost_ladder.h"
#include "server/planning/solver/weighted_sum.h"

namespace suppertide::planning {

class ShareCosts {
 public:
  ShareCosts(Encoder& encoder, const AskingCosts& asking, CostSum& sum);
  // Adds clauses where the ladders are below what `plan`, just read, costs; how many.
  int refine(const Schedule& plan);

 private:
  std::int64_t mostWork() const;
  void makeCook(int cook);
  void addCapacities();
  void addCapacity(const std::vector<int>& cooks, std::int64_t demand, int helper);
  void addRest(int helper);
  std::int64_t leastWork(int step) const;
  std::int64_t reachable(int cook, std::int64_t most) const;
  void excuseWork(std::vector<Lit>& clause, int step, const Placement& place, bool atLeast);
  void forbid(int cook, std::int64_t cost, const Schedule& plan);

  Encoder& encoder_;
  const AskingCosts& asking_;
  CostSum& sum_;
  std::int64_t shares_ = 0;
  std::vector<std::optional<CostLadder>> ladders_;  // by cook; none when never above
  std::vector<std::vector<bool>> reach_;            // by cook: the amounts of work steps can add up to
  std::vector<std::int64_t> fair_;                  // by cook, at most
};

}  // namespace suppertide::planning
