// Tier kCalm: one ladder a task for the tasks before it, and the air that gaps want.
//
// What a task costs depends on every other task of its cook; those clauses are
// added where plans run into them.
#pragma once

#include <optional>
#include <set>
#include <vector>

#include "server/planning/solver/cost_ladder.h"
#include "server/planning/solver/encoder.h"

namespace suppertide::planning {

class CalmCosts {
 public:
  CalmCosts(Encoder& encoder, CostSum& sum);
  // Adds clauses where the ladders are below what `plan`, just read, costs; how many.
  int refine(const Schedule& plan);

 private:
  const Problem& problem() const { return encoder_.model().problem(); }
  void makeTask(int step, const std::set<Minute>& rests);
  std::set<Minute> restsOfTasks() const;
  void makeGap(const Gap& gap);
  bool isTask(int step, int mode) const;
  bool mayBeTask(int step) const;
  int explain(int before, int task, std::int64_t cost, Minute free);
  int refineTask(int task, const std::vector<int>& others, const Schedule& plan);

  Encoder& encoder_;
  CostSum& sum_;
  std::vector<std::optional<CostLadder>> ladders_;  // by step; none for what is never a task
};

}  // namespace suppertide::planning
