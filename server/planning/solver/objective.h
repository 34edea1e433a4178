// The tiers of what is better, as sums of literals; equal to costOf on every plan that is read.
#pragma once

#include <memory>
#include <optional>

#include "server/planning/solver/calm_costs.h"
#include "server/planning/solver/idle_heat_costs.h"
#include "server/planning/solver/people_costs.h"
#include "server/planning/solver/quality_costs.h"
#include "server/planning/solver/share_costs.h"

namespace suppertide::planning {

class Objective {
 public:
  explicit Objective(Encoder& encoder) : encoder_(encoder) {}

  // The sum of one tier. Once a tier; adds its literals to the solver.
  CostSum build(Tier tier);
  // Adds clauses where sums built so far are below what `plan`, just read, costs; how many.
  int refine(const Schedule& plan);

 private:
  void addServing(Tier tier, CostSum& sum);
  void addMoves(CostSum& sum);

  Encoder& encoder_;
  CostSum qualitySum_;
  CostSum peopleSum_;
  std::optional<QualityCosts> quality_;
  std::optional<PeopleCosts> people_;
  std::optional<AskingCosts> asking_;
  std::optional<ShareCosts> shares_;
  CostSum calmSum_;
  CostSum ovenSum_;
  std::optional<CalmCosts> calm_;
  std::optional<IdleHeatCosts> idleHeat_;
};

}  // namespace suppertide::planning
