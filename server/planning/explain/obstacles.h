// What stops one step from moving when all others stay. Internal to the explainer.
#pragma once

#include <vector>

#include "server/planning/explain/explain.h"
#include "server/planning/explain/oven_stay.h"
#include "server/planning/explain/side_order.h"

namespace suppertide::planning {

class Obstacles {
 public:
  Obstacles(const Problem& problem, const Schedule& schedule);

  // What `step` would run into at `moved` (its mode and cook unchanged); empty
  // when it could lie there. `room` is 0 in each.
  std::vector<Reason> at(int step, const Placement& moved) const;

 private:
  void addBounds(int step, const Placement& moved, std::vector<Reason>& found) const;
  void addServing(int step, const Placement& moved, std::vector<Reason>& found) const;
  void addGaps(int step, const Placement& moved, std::vector<Reason>& found) const;
  void addCook(int step, const Placement& moved, std::vector<Reason>& found) const;
  void addResources(int step, const Placement& moved, std::vector<Reason>& found) const;
  void addOven(int step, const Placement& moved, std::vector<Reason>& found) const;
  void addSeparations(int step, const Placement& moved, std::vector<Reason>& found) const;
  void addClocks(int step, const Placement& moved, std::vector<Reason>& found) const;
  int endOf(const TimedSpan& span) const;
  bool isServed(int step) const;
  const Mode& mode(int step) const;
  // The step that overlaps `when`, uses the same by `amountOf`, and with others exceeds `capacity`; -1 when
  // none, -2 when the sum is too high without any step to name.
  template <typename AmountOf>
  int overloadedBy(int step, Interval<Minute> when, int capacity, const std::vector<Resource::Taken>& taken,
                   AmountOf amountOf) const;

  const Problem& problem_;
  const Schedule& schedule_;
  std::vector<std::vector<OvenStay>> stays_;   // by oven
  std::vector<std::vector<KeptApart>> kept_;   // by step, those it is in; twice in all
  std::vector<std::vector<TimedSpan>> spans_;  // by step, those it begins or ends; until served: the last one
  std::vector<std::vector<int>> gaps_;         // by step, indices of the gaps it is in
};

}  // namespace suppertide::planning
