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
  // one finds no place. `noise` minutes, about, are mixed into the priorities.
  bool place(Schedule& plan, Occupancy& occupancy, std::mt19937& random, double noise) const;

 private:
  bool keepsRules(const Schedule& plan) const;
  bool served(int step, const Schedule& plan) const;
  bool keepsGaps(int step, const Schedule& plan) const;
  bool keepsLinks(int step, const Schedule& plan) const;
  bool placeStep(int step, const std::vector<bool>& placed, Schedule& plan, Occupancy& occupancy) const;

  const GridModel& model_;
  int dish_;
  std::vector<std::vector<int>> before_;  // steps that must be placed first, by position in the dish
};

// How many gaps of the dish go beyond a tree.
int ringCount(const GridModel& model, int dish);

}  // namespace suppertide::planning
