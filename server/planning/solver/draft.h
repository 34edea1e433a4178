// A plan being worked on: dishes put in, taken out, given to other cooks, always within the rules.
#pragma once

#include <random>
#include <vector>

#include "server/planning/solver/dish_placer.h"
#include "server/planning/solver/serial_placer.h"

namespace suppertide::planning {

class Draft {
 public:
  // Starts with every dish unserved. `model` must outlive it.
  explicit Draft(const GridModel& model);
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;

  const GridModel& model() const { return model_; }
  const Schedule& plan() const { return plan_; }
  bool served(int dish) const { return !plan_.unserved[static_cast<std::size_t>(dish)]; }

  // Serves an unserved dish at least cost beside the others; false when it has no
  // place. A dish with many rings is tried in `tries` orders of its steps.
  bool put(int dish, std::mt19937& random, int tries);
  void take(int dish);
  // Becomes `other`, which must keep the rules.
  void load(const Schedule& other);

  // Gives a step to another cook, or swaps the cooks of two; false when nothing changed.
  bool moveCooks(std::mt19937& random);
  void undoCooks();

 private:
  struct StepCook {
    int step;
    int cook;
  };
  bool putInOrders(int dish, std::mt19937& random, int tries);
  bool isLate(int dish) const;
  bool sameDish(int dish, const Schedule& other) const;
  const std::vector<CookOption>& cooksOf(int step) const;
  int pickStep(std::mt19937& random) const;
  bool assign(const std::vector<StepCook>& wanted);

  const GridModel& model_;
  Schedule plan_;
  Occupancy occupancy_;
  DishPlacer placer_;
  std::vector<SerialPlacer> orders_;            // by dish
  std::vector<std::vector<Placement>> before_;  // by dish: where its steps were put in orders, if ever
  std::vector<bool> ringed_;                    // by dish: too many rings for the tree
  std::vector<int> steps_;
  std::vector<StepCook> moved_;  // what undoCooks() gives back
};

}  // namespace suppertide::planning
