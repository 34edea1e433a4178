// A schedule with all its orders kept: a simple temporal network.
//
// Who comes before whom at each cook, thing and oven stays as it is; only times
// may move. Then every rule is a least distance between two edges of steps, and
// how late each may be is a matter of longest paths. Sums of attention and
// amounts are kept by handing units on from step to step (a chain for each
// unit), so any times that keep the distances keep the capacities too. Modes,
// cooks and the stretch of a cook's day or of an oven's opening that a step
// lies in do not change. Internal to the explainer.
#pragma once

#include <optional>
#include <vector>

#include "server/planning/explain/oven_stay.h"

namespace suppertide::planning {

class OrderNetwork {
 public:
  // `schedule` keeps the hard rules; otherwise the times found may break more of them.
  OrderNetwork(const Problem& problem, const Schedule& schedule);

  // Every step as late as it can be without serving anything later than the
  // schedule does, or than its course where that is later. Keeps all hard rules.
  // Cost: a few passes over the distances, at most their number times the steps.
  Schedule latest() const;

  // Every step at its least time when none begins before `from` has it, each ends no sooner
  // than `from` has it by its length, all distances are kept and starts lie on `grid`: the
  // right shift. Bounds and availability are not looked at. nullopt when a pinned start would
  // have to move or there is no end to it. Cost as latest().
  std::optional<Schedule> shifted(const Schedule& from, Minute grid) const;

 private:
  struct Distance {
    int from;  // edge: 2 * step, plus 1 for its end
    int to;
    Minute least;  // time of `to` - time of `from` >= least
  };
  // What is handed on from use to use: a cook's attention or a thing's units.
  struct Use {
    int step;  // -1: something outside the plan
    Interval<Minute> when;
    int amount;
  };

  bool isServed(int step) const;
  Minute timeOf(int edge) const;
  void limitTo(int edge, Minute latest);
  void atLeast(int from, int to, Minute least) { distances_.push_back({from, to, least}); }
  void addBounds(int step);
  void addGaps();
  void addCooks();
  void addResources();
  void handOn(std::vector<Use> uses, int capacity);
  void addOvens();
  void addSeparations();
  void addClocks();
  void keepWithoutLength(int step);
  void addOvenPair(const Oven& oven, const OvenStay& early, const OvenStay& late, bool allFit);
  bool tightenLength(int step, std::vector<Minute>& latest) const;
  bool stretchLength(int step, Minute lasts, Minute grid, std::vector<Minute>& times) const;

  const Problem& problem_;
  const Schedule& schedule_;
  std::vector<Distance> distances_;
  std::vector<Minute> limits_;  // by edge, latest times that hold alone
};

}  // namespace suppertide::planning
