#include "server/planning/solver/objective.h"

#include <algorithm>

#include "server/planning/solver/step_cost.h"

namespace suppertide::planning {

CostSum Objective::build(Tier tier) {
  CostSum sum;
  const Problem& problem = encoder_.model().problem();
  switch (tier) {
    case Tier::kUnserved:
      for (int d = 0; d < sizeOf(problem.dishes); ++d)
        sum.add(-encoder_.served(d), at(problem.dishes, d).unservedCost);
      break;
    case Tier::kLateness:
      addServing(tier, sum);
      break;
    case Tier::kQuality:
      quality_.emplace(encoder_, qualitySum_);
      sum = qualitySum_;
      addServing(tier, sum);
      break;
    case Tier::kPeople:
      people_.emplace(encoder_, peopleSum_);
      asking_.emplace(encoder_, peopleSum_);
      shares_.emplace(encoder_, *asking_, peopleSum_);
      sum = peopleSum_;
      break;
  }
  return sum;
}

void Objective::addServing(Tier tier, CostSum& sum) {
  const Problem& problem = encoder_.model().problem();
  for (int d = 0; d < sizeOf(problem.dishes); ++d) {
    const Dish& dish = at(problem.dishes, d);
    if (encoder_.served(d) == kFalse) continue;
    sum.addFunction(encoder_.sat(), encoder_.end(dish.lastStep), -encoder_.served(d), [&](Minute ready) {
      return tier == Tier::kQuality ? waitCost(dish, ready) : std::int64_t{std::max(0, ready - dish.serve)};
    });
  }
}

int Objective::refine(const Schedule& plan) {
  int added = 0;
  if (quality_) added += quality_->refine(plan);
  if (people_) added += people_->refine(plan);
  if (asking_) added += asking_->refine(plan);
  if (shares_) added += shares_->refine(plan);
  return added;
}

}  // namespace suppertide::planning
