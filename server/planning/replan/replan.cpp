#include "server/planning/replan/replan.h"

#include <algorithm>
#include <cstdlib>
#include <memory>

#include "server/planning/model/costs/moves.h"
#include "server/planning/replan/rescue.h"
#include "server/planning/solver/grid_model.h"
#include "server/planning/solver/plan_rules.h"
#include "server/planning/solver/repair.h"

namespace suppertide::planning {
namespace {

class Replanning {
 public:
  Replanning(const Running& running, const ReplanOptions& options, Monitor* monitor, Remaining remains)
      : running_(running),
        options_(options),
        monitor_(monitor),
        rescue_(out_.remains, running_, options_.search) {
    out_.remains = std::move(remains);
    told_ = costOf(problem(), running.plan).total;
    toldOverrun_ = rescue_.overrun(running.plan);
  }

  Replanned run() {
    const Schedule& expected = out_.remains.expected;
    const bool stillFits = offer(expected, Replanned::Way::kNothingMoves) || offerAsStrained(expected);
    if (stillFits && !fallsShort()) return finish();
    if (const auto shifted = shiftedRight(problem(), out_.remains, running_, options_.search.grid))
      offer(*shifted, Replanned::Way::kShifted);
    search(out_.schedule.steps.empty() ? expected : out_.schedule);
    if (out_.schedule.steps.empty()) return std::move(out_);
    if (rescue_.losesBegun(out_.schedule))
      if (const auto mended = rescue_.mended(out_.schedule)) takeStrained(*mended, Replanned::Way::kRepaired);
    if (fallsShort() && options_.planAnew && !stop()) planAnew();
    if (rescue_.losesBegun(out_.schedule) && options_.planAnew && !stop())
      if (const auto anew = rescue_.plannedAnew(out_.schedule, monitor_))
        takeStrained(*anew, Replanned::Way::kPlannedAnew);
    return finish();
  }

 private:
  const Problem& problem() const { return out_.remains.problem; }
  bool stop() { return monitor_ != nullptr && monitor_->stop(); }
  // Whether a dish is left out that could be served, or one is later than the plan that ran meant it to be.
  bool fallsShort() {
    if (out_.schedule.steps.empty()) return true;
    for (int d = 0; d < static_cast<int>(problem().dishes.size()); ++d)
      if (out_.schedule.unserved[static_cast<std::size_t>(d)] && canBeServed(d)) return true;
    return costIn(out_.cost, Tier::kLateness) + overrun_ > costIn(told_, Tier::kLateness) + toldOverrun_;
  }

  // Takes a plan that keeps the rules and is better; whether it is kept now.
  bool offer(const Schedule& plan, Replanned::Way way) {
    const TierCosts cost = costOf(problem(), plan).total;
    TierCosts best = out_.cost;
    costIn(best, Tier::kLateness) += overrun_;
    if (!out_.schedule.steps.empty() && cost >= best) return false;
    if (!keepsRules(problem(), plan)) return false;
    out_.schedule = plan;
    out_.cost = cost;
    out_.way = way;
    out_.strained.clear();
    overrun_ = 0;
    return true;
  }

  // What the plan that ran overran already it may go on overrunning.
  bool offerAsStrained(const Schedule& expected) {
    if (toldOverrun_ == 0 || rescue_.overrun(expected) > toldOverrun_ || !rescue_.keepsAllElse(expected))
      return false;
    takeStrained(expected, Replanned::Way::kNothingMoves);
    return true;
  }

  void search(const Schedule& from) {
    RepairOptions options;
    options.search = options_.search;
    options.rounds = options_.repairRounds;
    const bool shifted = !out_.schedule.steps.empty();
    // Some plan there must be, however little time is left.
    const auto repaired = repairPlan(problem(), from, options, shifted ? monitor_ : nullptr);
    if (!repaired) return;
    offer(withPast(repaired->schedule), shifted ? Replanned::Way::kShifted : Replanned::Way::kRepaired);
  }

  void planAnew() {
    const auto made = makePlan(problem(), options_.search, monitor_);
    if (!made.ok()) return;
    out_.work = made->work;
    offer(withPast(made->schedule), Replanned::Way::kPlannedAnew);
  }

  // Takes a plan that goes over limits of patience; what it overruns counts as late.
  void takeStrained(const Schedule& plan, Replanned::Way way) {
    out_.schedule = withPast(plan);
    out_.cost = costOf(problem(), out_.schedule).total;
    out_.way = way;
    out_.strained.clear();
    for (int d = 0; d < static_cast<int>(problem().dishes.size()); ++d)
      if (rescue_.overrun(out_.schedule, d) > 0) out_.strained.push_back(d);
    overrun_ = rescue_.overrun(out_.schedule);
  }

  // A dish that cannot be made in time even with the kitchen to itself is not looked for again.
  bool canBeServed(int dish) {
    if (alone_ == nullptr) alone_ = std::make_unique<GridModel>(problem(), std::max(1, options_.search.grid));
    return !alone_->dropped(dish);
  }

  // The solver names no cook where none is needed; who did a finished step is known.
  Schedule withPast(Schedule plan) const {
    for (std::size_t i = 0; i < plan.steps.size(); ++i)
      if (out_.remains.past[i]) plan.steps[i].cook = out_.remains.expected.steps[i].cook;
    return plan;
  }

  // Nobody is told of moves below kMoveFrom: they are undone where the rules allow it.
  void steady() {
    for (std::size_t i = 0; i < out_.schedule.steps.size(); ++i) {
      const Step& step = problem().steps[i];
      if (out_.remains.past[i] || !step.announced) continue;
      Placement& at = out_.schedule.steps[i];
      const Placement& old = running_.plan.steps[i];
      const Minute by = std::abs(at.start - old.start);
      if (by == 0 || by >= kMoveFrom || at.mode != old.mode || !out_.strained.empty()) continue;
      Schedule still = out_.schedule;
      still.steps[i].start = old.start;
      still.steps[i].end = old.end;
      const TierCosts cost = costOf(problem(), still).total;
      if (costIn(cost, Tier::kLateness) > costIn(out_.cost, Tier::kLateness) || !keepsRules(problem(), still))
        continue;
      out_.schedule = std::move(still);
      out_.cost = cost;
    }
  }

  Replanned finish() {
    if (out_.way != Replanned::Way::kNothingMoves) steady();
    out_.moves = movesBetween(out_.remains, running_, out_.schedule);
    return std::move(out_);
  }

  const Running& running_;
  const ReplanOptions& options_;
  Monitor* monitor_;
  Replanned out_;
  const Rescue rescue_;
  std::unique_ptr<const GridModel> alone_;  // once asked
  Minute overrun_ = 0;                      // of limits of patience
  TierCosts told_{};                        // what the plan that ran was to cost
  Minute toldOverrun_ = 0;                  // and to overrun
};

}  // namespace

absl::StatusOr<Replanned> replan(const Problem& problem, const Running& running, const ReplanOptions& options,
                                 Monitor* monitor) {
  if (auto status = check(problem); !status.ok()) return status;
  if (running.plan.steps.size() != problem.steps.size() || running.states.size() != problem.steps.size() ||
      running.plan.unserved.size() != problem.dishes.size())
    return absl::InvalidArgumentError("the running plan is not one of this problem");
  Remaining remains = whatRemains(problem, running, options.search.grid);
  if (auto status = check(remains.problem); !status.ok()) return status;
  Replanned made = Replanning(running, options, monitor, std::move(remains)).run();
  if (made.schedule.steps.empty())
    return absl::DeadlineExceededError("the search was stopped before it had any plan");
  return made;
}

}  // namespace suppertide::planning
