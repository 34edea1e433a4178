// Dishes under way that fit nowhere any more: food that has been begun is not thrown away for some minutes.
//
// Limits that say how good a dish gets are overrun, as little as helps: gaps that are patient, a course's
// latest serving. Clocks are never touched, which hold what is safe to eat.
#pragma once

#include <optional>
#include <vector>

#include "server/planning/replan/happened.h"
#include "server/planning/solver/solver.h"

namespace suppertide::planning {

class Rescue {
 public:
  // All must outlive it.
  Rescue(const Remaining& remains, const Running& running, const SearchOptions& search)
      : remains_(remains), running_(running), search_(search) {}

  // A plan that serves more than `plan` does: the orders of the plan that ran, or else dishes put back.
  // nullopt for none. It takes some dozen placings of dishes, however little time is left.
  std::optional<Schedule> mended(const Schedule& plan) const;
  // The same by the planner as a whole, for as long as the monitor lets it.
  std::optional<Schedule> plannedAnew(const Schedule& plan, Monitor* monitor) const;

  // Whether the plan leaves out a dish that was begun.
  bool losesBegun(const Schedule& plan) const { return !lost(plan).empty(); }
  // Minutes beyond the dish's own limits; beyond its latest serving they are late as well.
  Minute overrun(const Schedule& plan, int dish) const;
  Minute overrun(const Schedule& plan) const;
  // Whether it keeps every rule but what dishes under way may overrun.
  bool keepsAllElse(const Schedule& plan) const;

 private:
  const Problem& problem() const { return remains_.problem; }
  bool isPatient(std::size_t gap) const;
  bool hasBegun(int dish) const;
  std::vector<int> lost(const Schedule& plan) const;
  std::vector<int> underWay() const;
  bool anyFits(const Problem& patient, const std::vector<int>& dishes) const;
  Problem strained(const std::vector<int>& dishes, Minute by) const;

  const Remaining& remains_;
  const Running& running_;
  const SearchOptions& search_;
};

// The running plan with all its orders, each step as soon as `problem` lets it from where things stand.
// Bounds and availability are not looked at; nullopt when a pinned start would have to move.
std::optional<Schedule> shiftedRight(const Problem& problem, const Remaining& remains, const Running& running,
                                     Minute grid);

}  // namespace suppertide::planning
