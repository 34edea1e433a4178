// Places one dish step by step, each as early as it fits, in an order of priorities.
//
// For dishes whose gaps close many rings, where DishPlacer's tree sees too
// little. Fast and plain; called many times with varied priorities.
#pragma once

#include <random>
#include <vector>

#include "server/planning/solver/grid_model.h"
#include "server/planning/solver/occupancy.h"

namespace suppertide::planning {

class SerialPlacer {
 public:
  SerialPlacer(const GridModel& model, int dish);

  // Puts the steps into `plan` and the occupancy; false, with nothing changed, when
  // one finds no place. `noise` minutes, about, are mixed into the priorities, which come
  // from where the steps lie in `plan` with `like`, else from how late they may be.
  bool place(Schedule& plan, Occupancy& occupancy, std::mt19937& random, double noise, bool like) const;

  // Moves the placed steps as late as the last one's place allows, then as early as they fit again
  // (double justification; Valls, Ballestin and Quintanilla, EJOR 165, 2005): the dish mostly ends
  // earlier. False, with nothing changed, when a step found no place on the way.
  bool justify(Schedule& plan, Occupancy& occupancy) const;

 private:
  enum class Side { kEarly, kLate };

  // Steps of least priority first, each on that side of what is free; `done` are placed.
  bool placeAll(const std::vector<double>& priority, Side side, std::vector<int>& done, Schedule& plan,
                Occupancy& occupancy) const;
  bool keepsRules(const Schedule& plan) const;
  bool served(int step, const Schedule& plan) const;
  bool keepsGaps(int step, const Schedule& plan) const;
  bool keepsLinks(int step, const Schedule& plan) const;
  bool placeStep(int step, Side side, const std::vector<bool>& placed, Schedule& plan,
                 Occupancy& occupancy) const;
  bool placeAt(int step, Minute start, const Interval<Minute>& ends, Schedule& plan,
               Occupancy& occupancy) const;

  const GridModel& model_;
  int dish_;
  // By position in the dish: steps that must be placed first on the early side, and on the late one.
  std::vector<std::vector<int>> before_;
  std::vector<std::vector<int>> after_;
};

// How many gaps of the dish go beyond a tree.
int ringCount(const GridModel& model, int dish);

}  // namespace suppertide::planning
