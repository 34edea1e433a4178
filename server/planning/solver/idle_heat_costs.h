// Tier kOvens: one ladder a bake for the minutes its oven is heated empty before it.
//
// What a bake costs depends on every other one in its oven; those clauses are
// added where plans run into them.
#pragma once

#include <map>
#include <optional>
#include <tuple>
#include <vector>

#include "server/planning/solver/cost_ladder.h"
#include "server/planning/solver/encoder.h"

namespace suppertide::planning {

class IdleHeatCosts {
 public:
  IdleHeatCosts(Encoder& encoder, CostSum& sum);
  // Adds clauses where the ladders are below what `plan`, just read, costs; how many.
  int refine(const Schedule& plan);

 private:
  const Problem& problem() const { return encoder_.model().problem(); }
  const Mode& mode(int step, int mode) const { return nth(nth(problem().steps, step).modes, mode); }
  void makeStep(int step);
  Minute coldMinutes(int step, int mode) const;
  int explain(int step, int oven, Minute pause);
  Lit useBefore(int other, int step, int oven, Minute pause);

  Encoder& encoder_;
  CostSum& sum_;
  std::vector<std::optional<CostLadder>> ladders_;               // by step; none when it costs nothing
  std::map<std::tuple<int, int, int, Minute>, Lit> usesBefore_;  // by other, step, oven and pause
  std::map<std::tuple<int, int, Minute>, bool> known_;           // explained: step, oven, pause
};

}  // namespace suppertide::planning
