// The least disturbing plan from a running one, or the news that nothing has to move.
//
// In this order: the old plan, when it still keeps every rule and serves nothing
// later than it was meant to; a right shift with all orders kept; local search from what still
// fits. The planner as a whole looks too when that
// leaves dishes later than they were meant to be, or unserved.
#pragma once

#include <optional>

#include "absl/status/statusor.h"
#include "server/planning/replan/happened.h"
#include "server/planning/replan/moves.h"
#include "server/planning/solver/solver.h"

namespace suppertide::planning {

struct ReplanOptions {
  SearchOptions search;  // workLimit: of the planner as a whole; its grid holds throughout
  int repairRounds = 8;  // of local search
  bool planAnew = true;  // whether the planner as a whole may look when something is late
};

struct Replanned {
  enum class Way {
    kNothingMoves,  // the old plan, with true times
    kShifted,       // right shift, then improved or not
    kRepaired,      // dishes taken out and put back
    kPlannedAnew,   // by the planner as a whole
  };
  Way way = Way::kNothingMoves;
  Remaining remains;  // what the new plan keeps
  Schedule schedule;  // true times for what has happened
  TierCosts cost{};   // by remains.problem
  std::vector<Move> moves;
  // Dishes under way that fit only by overrunning a gap or their lateness: food that has been
  // begun is not thrown away for some minutes. The auditor tells which rules they break.
  std::vector<int> strained;
  std::int64_t work = 0;
};

// Replans `running`, whose plan need not fit `problem` any more. Dishes that fit
// nowhere are unserved, as in makePlan(); one under way may be `strained` instead. The monitor hears of each
// better plan; when it stops the search the best so far is returned. InvalidArgument when check() refuses the
// problem or the lists differ in length; DeadlineExceeded when it was stopped before there was any plan.
absl::StatusOr<Replanned> replan(const Problem& problem, const Running& running, const ReplanOptions& options,
                                 Monitor* monitor = nullptr);

}  // namespace suppertide::planning
