// Moves a step of a plan earlier, and with it whatever must then be earlier too.
#pragma once

#include <optional>
#include <vector>

#include "server/planning/chance/plan_order.h"

namespace suppertide::planning {

// What becomes of an elastic step of which one edge is moved.
enum class Elastic {
  kKept,       // the other edge is moved by as much
  kStretched,  // the other edge stays, while the length is one it may have
};

class EarlierShift {
 public:
  // `grid`: edges move by multiples of it.
  EarlierShift(const Problem& problem, const Schedule& schedule, Minute grid);

  // The schedule with `step` starting `minutes` earlier, in the same order as
  // before; nothing when that would need a time before 0 or moves what is
  // pinned. May break rules that no order tells, as cooks' hours: audit it.
  std::optional<Schedule> earlier(int step, Minute minutes, Elastic elastic) const;

 private:
  // times[b] - times[a] is at least `least`: whoever breaks it, `a` is what moves.
  struct Bound {
    int a = 0;
    int b = 0;
    Minute least = 0;
  };
  class Move;

  const Problem& problem_;
  const Schedule& schedule_;
  Minute grid_;
  std::vector<Bound> bounds_;
  std::vector<std::vector<int>> boundsOf_;  // by event b
};

}  // namespace suppertide::planning
