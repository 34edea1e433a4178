// Tier 4 between the cooks: started blocks of work above each one's fair share.
//
// The work of a cook is summed by a tree of partial sums. Where work depends on
// modes or lengths the tree counts the least of it and the most of all work for
// the fair share; what that misses is added where plans run into it.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "server/planning/solver/cost_ladder.h"
#include "server/planning/solver/encoder.h"

namespace suppertide::planning {

class ShareCosts {
 public:
  ShareCosts(Encoder& encoder, CostSum& sum);
  // Adds clauses where the ladders are below what `plan`, just read, costs; how many.
  int refine(const Schedule& plan);

 private:
  using Sums = std::map<std::int64_t, Lit>;  // "at least this much work"
  struct Part {
    Lit lit;  // true: the cook does this step
    std::int64_t least;
    std::int64_t most;
  };

  std::vector<Part> partsOf(int cook) const;
  std::int64_t mostWork() const;
  void makeCook(int cook);
  Sums sumUp(std::vector<Sums> parts, std::int64_t enough);
  Sums merge(const Sums& a, const Sums& b, std::int64_t enough);
  void forbid(int cook, std::int64_t cost, const Schedule& plan);

  Encoder& encoder_;
  CostSum& sum_;
  std::int64_t shares_ = 0;
  std::vector<std::optional<CostLadder>> ladders_;  // by cook; none when never above
};

}  // namespace suppertide::planning
