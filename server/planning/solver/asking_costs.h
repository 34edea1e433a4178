// Tier 4 of asking a cook at all: what each cook's steps cost together, as one ladder a cook.
#pragma once

#include <optional>
#include <vector>

#include "server/planning/solver/cost_ladder.h"
#include "server/planning/solver/encoder.h"

namespace suppertide::planning {

// What one step adds to a cook's work.
struct WorkPart {
  Lit does;  // the cook does it
  int step;
  std::int64_t least;
  std::int64_t most;
};
// The steps that `cook` may do, whatever their work.
std::vector<WorkPart> workParts(Encoder& encoder, int cook);

class AskingCosts {
 public:
  AskingCosts(Encoder& encoder, CostSum& sum);
  // Adds clauses where the ladders are below what `plan`, just read, costs; how many.
  int refine(const Schedule& plan);

  bool costs(int cook) const { return nth(ladders_, cook).has_value(); }
  // "The cook's steps cost at least what `work` minutes of this cook's work cost";
  // kTrue when that is nothing, kFalse when the cook cannot do so much.
  Lit atLeast(int cook, std::int64_t work) const;

 private:
  void makeCook(int cook);
  std::int64_t costOfStep(int step, int mode, int cook) const;

  Encoder& encoder_;
  CostSum& sum_;
  std::vector<std::optional<CostLadder>> ladders_;       // by cook; none when asking is free
  std::vector<std::vector<std::int64_t>> leastForWork_;  // by cook and minutes of work
};

}  // namespace suppertide::planning
