#include "server/planning/clash/feasibility.h"

#include <algorithm>

#include "server/planning/solver/plan_rules.h"
#include "server/planning/solver/solver.h"

namespace suppertide::planning {
namespace {

// A dinner that fits is mostly placed by the first; the proof is quicker than more of them.
constexpr int kOrders = 1;

// Stops the search once all is served, or it is proven that something is not.
class UntilKnown : public Monitor {
 public:
  explicit UntilKnown(const std::function<bool()>& stop) : stop_(stop) {}
  void improved(const Outcome& outcome) override {
    if (costIn(outcome.cost, Tier::kUnserved) == 0) known_ = true;
    if (costIn(outcome.bound, Tier::kUnserved) > 0) known_ = true;
  }
  bool stop() override { return known_ || (stop_ && stop_()); }

 private:
  const std::function<bool()>& stop_;
  bool known_ = false;
};

}  // namespace

bool servesAll(const Problem& problem, const Schedule& schedule) {
  return schedule.steps.size() == problem.steps.size() && schedule.unserved.size() == problem.dishes.size() &&
         std::find(schedule.unserved.begin(), schedule.unserved.end(), true) == schedule.unserved.end() &&
         keepsRules(problem, schedule);
}

Feasible EngineFeasibility::decide(const Problem& problem, Schedule* schedule, std::vector<int>* clashing) {
  if (problem.dishes.empty()) return Feasible::kYes;
  if (stop_ && stop_()) return Feasible::kUnknown;
  SearchOptions options;
  options.grid = grid_;
  options.workLimit = conflicts_;
  options.placingOrders = kOrders;
  options.improvingRounds = 0;
  options.easy = true;
  options.nameClash = clashing != nullptr;
  UntilKnown monitor(stop_);
  auto outcome = makePlan(problem, options, &monitor);
  if (!outcome.ok()) return Feasible::kUnknown;
  if (schedule != nullptr) *schedule = std::move(outcome->schedule);
  if (costIn(outcome->cost, Tier::kUnserved) == 0) return Feasible::kYes;
  if (clashing != nullptr) *clashing = std::move(outcome->clashing);
  const bool proven = outcome->provenTiers > 0 || costIn(outcome->bound, Tier::kUnserved) > 0;
  return proven ? Feasible::kNo : Feasible::kUnknown;
}

}  // namespace suppertide::planning
