#include "server/planning/solver/objective.h"

#include <algorithm>

#include "server/planning/model/costs/moves.h"
#include "server/planning/model/costs/quality.h"

namespace suppertide::planning {

CostSum Objective::build(Tier tier) {
  CostSum sum;
  const Problem& problem = encoder_.model().problem();
  switch (tier) {
    case Tier::kUnserved:
      for (int d = 0; d < sizeOf(problem.dishes); ++d)
        sum.add(-encoder_.served(d), nth(problem.dishes, d).unservedCost);
      break;
    case Tier::kLateness:
      addServing(tier, sum);
      break;
    case Tier::kQuality:
      quality_.emplace(encoder_, qualitySum_);
      sum = qualitySum_;
      addServing(tier, sum);
      break;
    case Tier::kMoves:
      addMoves(sum);
      break;
    case Tier::kCalm:
      calm_.emplace(encoder_, calmSum_);
      sum = calmSum_;
      break;
    case Tier::kOvens:
      idleHeat_.emplace(encoder_, ovenSum_);
      sum = ovenSum_;
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
    const Dish& dish = nth(problem.dishes, d);
    if (encoder_.served(d) == kFalse) continue;
    sum.addFunction(encoder_.sat(), encoder_.end(dish.lastStep), -encoder_.served(d), [&](Minute ready) {
      return tier == Tier::kQuality ? waitCost(dish, ready) : std::int64_t{std::max(0, ready - dish.serve)};
    });
  }
}

// A term for each part of Announced that the step may leave.
void Objective::addMoves(CostSum& sum) {
  const GridModel& model = encoder_.model();
  for (int i = 0; i < sizeOf(model.problem().steps); ++i) {
    const Step& step = nth(model.problem().steps, i);
    if (!step.announced || !model.used(i)) continue;
    const Announced& told = *step.announced;
    const Lit served = encoder_.servedStep(i);
    sum.addFunction(encoder_.sat(), encoder_.start(i), -served, [&](Minute start) {
      return moveCost(step, {start, start, told.mode, told.cook});
    });
    const Lit otherMode = encoder_.sat().newLit();
    const Lit otherCook = encoder_.sat().newLit();
    for (const Choice& choice : model.step(i).choices) {
      const Lit notThis = -encoder_.mode(i, choice.mode);
      if (choice.mode != told.mode) encoder_.sat().add({-served, notThis, otherMode});
      const bool needsCook = !choice.cooks.empty();
      if (needsCook && told.cook < 0) encoder_.sat().add({-served, notThis, otherCook});
      if (needsCook && told.cook >= 0)
        encoder_.sat().add({-served, notThis, encoder_.cook(i, told.cook), otherCook});
      if (!needsCook && told.cook != step.pin.cook.value_or(-1))
        encoder_.sat().add({-served, notThis, otherCook});
    }
    sum.add(otherMode, moveCost(step, {told.start, told.start, told.mode + 1, told.cook}));
    sum.add(otherCook, moveCost(step, {told.start, told.start, told.mode, told.cook + 1}));
  }
}

int Objective::refine(const Schedule& plan) {
  int added = 0;
  if (quality_) added += quality_->refine(plan);
  if (people_) added += people_->refine(plan);
  if (asking_) added += asking_->refine(plan);
  if (shares_) added += shares_->refine(plan);
  if (calm_) added += calm_->refine(plan);
  if (idleHeat_) added += idleHeat_->refine(plan);
  return added;
}

}  // namespace suppertide::planning
