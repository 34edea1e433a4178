// Tier 3 of the steps: the mode chosen and minutes off its best length, as one ladder a step.
//
// The clauses that tie a ladder to starts and ends are many for long elastic
// steps; beyond a budget they are added only where plans run into them.
#pragma once

#include <map>
#include <optional>
#include <tuple>
#include <vector>

#include "server/planning/solver/cost_ladder.h"
#include "server/planning/solver/encoder.h"

namespace suppertide::planning {

class QualityCosts {
 public:
  QualityCosts(Encoder& encoder, CostSum& sum);
  // Adds clauses where the ladders are below what `plan`, just read, costs; how many.
  int refine(const Schedule& plan);

 private:
  void makeStep(int step);
  void explainStep(int step, const Choice& choice);
  int explain(int step, int mode, Minute start, Minute end);
  int explainAround(int step, int mode, Minute start, Minute end);

  Encoder& encoder_;
  CostSum& sum_;
  std::vector<std::optional<CostLadder>> ladders_;              // by step; none when it costs nothing
  std::map<std::tuple<int, int, Minute, Minute>, bool> known_;  // explained: step, mode, start, end
};

}  // namespace suppertide::planning
