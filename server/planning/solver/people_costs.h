// Tier 4 of the steps: their minutes in the cook's unsocial hours, as one ladder a step.
#pragma once

#include <map>
#include <optional>
#include <tuple>
#include <vector>

#include "server/planning/solver/cost_ladder.h"
#include "server/planning/solver/encoder.h"

namespace suppertide::planning {

class PeopleCosts {
 public:
  PeopleCosts(Encoder& encoder, CostSum& sum);
  // Adds clauses where the ladders are below what `plan`, just read, costs; how many.
  int refine(const Schedule& plan);

 private:
  struct Option {
    int mode;
    CookOption cook;
  };
  void makeStep(int step);
  void explainStep(int step, const std::vector<Option>& options);
  std::int64_t leastCost(int step, const Option& option, Minute start) const;
  // Adds, for each level, the runs of starts at which `costs` reach it.
  void addRuns(int step, const std::vector<std::int64_t>& costs, Lit otherMode, Lit otherCook);

  Encoder& encoder_;
  CostSum& sum_;
  std::vector<std::optional<CostLadder>> ladders_;  // by step; none when it costs nothing
};

}  // namespace suppertide::planning
