#include "server/compose/planner.h"

#include <algorithm>

#include "server/compose/chance_document.h"
#include "server/compose/documents.h"
#include "server/compose/late_fetches.h"
#include "server/compose/remedies/clash_document.h"
#include "server/compose/shelf_fit.h"
#include "server/planning/solver/solver.h"

namespace suppertide::compose {
namespace {

v1::Quality qualityOf(const Composition& composition, const planning::Outcome& outcome) {
  v1::Quality quality;
  *quality.mutable_costs() = costsOf(outcome.cost);
  if (anyDoubts(composition)) return quality;
  planning::TierCosts bounds = outcome.bound;
  for (int t = 0; t < outcome.provenTiers; ++t)
    bounds[static_cast<std::size_t>(t)] = outcome.cost[static_cast<std::size_t>(t)];
  *quality.mutable_bounds() = costsOf(bounds);
  quality.set_proven_tier_count(outcome.provenTiers);
  quality.set_optimal(outcome.optimal());
  return quality;
}

// Simulated for a plan that may yet be bettered, and for the one that is kept.
constexpr int kEveningsOnTheWay = 1'000;
constexpr int kEvenings = 10'000;
// Fewer for a big feast: evenings times steps, about a tenth of a second.
constexpr int kSimulatedSteps = 1'000'000;

int eveningsFor(const Composition& composition) {
  return std::min(kEvenings, kSimulatedSteps / std::max(1, static_cast<int>(composition.steps.size())));
}

class PlanWriter {
 public:
  enum class NaiveClashes { kTold, kLeftOut };
  PlanWriter(const Composition& composition, NaiveClashes naive)
      : composition_(composition),
        clashes_(naive == NaiveClashes::kTold ? planning::naiveOvenClashes(composition.problem)
                                              : std::vector<planning::NaiveClash>{}) {}

  v1::Quality quality(const planning::Outcome& outcome) const { return qualityOf(composition_, outcome); }

  v1::Plan write(const planning::Outcome& outcome, int evenings) const {
    v1::Plan plan;
    const Documents& documents = composition_.documents;
    plan.set_id(documents.event.id());
    plan.set_time_zone(documents.event.time_zone().empty() ? documents.household.time_zone()
                                                           : documents.event.time_zone());
    addSteps(composition_, outcome.schedule, plan);
    addOvens(composition_, outcome.schedule, plan);
    const auto unready = addDoughs(composition_, outcome.schedule, plan);
    addClashes(composition_, outcome.schedule, clashes_, plan);
    addSafetyLimits(composition_, outcome.schedule, plan);
    addFetches(composition_, plan);
    *plan.mutable_quality() = quality(outcome);
    addRackDoubts(composition_, outcome.schedule, plan);
    for (const v1::Breach& breach :
         breachesOf(composition_, planning::audit(composition_.problem, outcome.schedule)))
      *plan.add_breaches() = breach;
    for (const v1::Breach& breach : unready) *plan.add_breaches() = breach;
    for (const v1::Breach& breach : safetyBreaches(composition_, outcome.schedule))
      *plan.add_breaches() = breach;
    addChances(composition_, outcome.schedule, evenings, plan);
    plan.mutable_search()->set_work(outcome.work);
    plan.mutable_search()->set_stopped(outcome.stopped);
    return plan;
  }

 private:
  const Composition& composition_;
  std::vector<planning::NaiveClash> clashes_;
};

class MonitorBridge : public planning::Monitor {
 public:
  MonitorBridge(const PlanWriter& writer, PlanMonitor* monitor) : writer_(writer), monitor_(monitor) {}
  void improved(const planning::Outcome& outcome) override {
    if (monitor_ == nullptr) return;
    monitor_->progressed(writer_.quality(outcome));
    if (!first_ && outcome.schedule == told_) return;
    first_ = false;
    told_ = outcome.schedule;
    monitor_->improved(writer_.write(outcome, kEveningsOnTheWay));
  }
  bool stop() override { return monitor_ != nullptr && monitor_->stop(); }

 private:
  const PlanWriter& writer_;
  PlanMonitor* monitor_;
  planning::Schedule told_;
  bool first_ = true;
};

}  // namespace

absl::StatusOr<v1::Plan> planEvent(const Documents& documents, const PlanOptions& options,
                                   PlanMonitor* monitor) {
  const auto composition = composeProblem(documents);
  if (!composition.ok()) return composition.status();
  const PlanWriter writer(*composition, PlanWriter::NaiveClashes::kTold);
  MonitorBridge bridge(writer, monitor);
  planning::SearchOptions search;
  search.seed = options.seed;
  search.workLimit = options.workLimit;
  auto outcome = planning::makePlan(composition->problem, search, &bridge);
  if (!outcome.ok()) return outcome.status();
  outcome->schedule = withLateFetches(*composition, robust(*composition, outcome->schedule));
  v1::Plan plan = writer.write(*outcome, eveningsFor(*composition));
  plan.mutable_search()->set_seed(options.seed);
  addWishClashes(*composition, outcome->schedule, plan);
  return plan;
}

v1::Plan planDocument(const Composition& composition, const planning::Outcome& outcome, int evenings) {
  return PlanWriter(composition, PlanWriter::NaiveClashes::kLeftOut).write(outcome, evenings);
}

absl::StatusOr<AuditResult> auditPlan(const Documents& documents, const v1::Plan& plan) {
  const auto composition = composeProblem(documents);
  if (!composition.ok()) return composition.status();
  const auto schedule = scheduleOf(*composition, plan);
  if (!schedule.ok()) return schedule.status();
  AuditResult result;
  result.breaches = breachesOf(*composition, planning::audit(composition->problem, *schedule));
  v1::Plan scratch;
  for (v1::Breach& breach : addDoughs(*composition, *schedule, scratch))
    result.breaches.push_back(std::move(breach));
  for (v1::Breach& breach : safetyBreaches(*composition, *schedule))
    result.breaches.push_back(std::move(breach));
  result.costs = costsOf(planning::costOf(composition->problem, *schedule).total);
  return result;
}

}  // namespace suppertide::compose
