#include "server/planning/replan/replan.h"

#include <algorithm>
#include <cstdlib>

#include "server/planning/explain/order_network.h"
#include "server/planning/model/costs/moves.h"
#include "server/planning/solver/plan_rules.h"
#include "server/planning/solver/repair.h"

namespace suppertide::planning {
namespace {

// How far limits are overrun at most for a dish that is under way. Common practice, no source.
constexpr Minute kStrain = 60;

class Replanning {
 public:
  Replanning(const Running& running, const ReplanOptions& options, Monitor* monitor, Remaining remains)
      : running_(running), options_(options), monitor_(monitor) {
    out_.remains = std::move(remains);
    told_ = costOf(problem(), running.plan).total;
  }

  Replanned run() {
    const Schedule& expected = out_.remains.expected;
    const bool stillFits = offer(expected, Replanned::Way::kNothingMoves);
    if (stillFits && !fallsShort()) return finish();
    if (const auto shifted = shift(expected)) offer(*shifted, Replanned::Way::kShifted);
    search(out_.schedule.steps.empty() ? expected : out_.schedule);
    if (fallsShort() && options_.planAnew && !stop()) planAnew();
    if (out_.schedule.steps.empty()) return std::move(out_);
    rescue();
    return finish();
  }

 private:
  const Problem& problem() const { return out_.remains.problem; }
  bool stop() { return monitor_ != nullptr && monitor_->stop(); }
  // Whether it serves less, or later, than the plan that ran was meant to.
  bool fallsShort() const {
    if (out_.schedule.steps.empty()) return true;
    for (const int dish : running_.addedDishes)
      if (out_.schedule.unserved[static_cast<std::size_t>(dish)]) return true;
    const auto unserved = costIn(out_.cost, Tier::kUnserved);
    return unserved > costIn(told_, Tier::kUnserved) ||
           (unserved == costIn(told_, Tier::kUnserved) &&
            costIn(out_.cost, Tier::kLateness) > costIn(told_, Tier::kLateness));
  }

  // Takes a plan that keeps the rules and is better; whether it is kept now.
  bool offer(const Schedule& plan, Replanned::Way way) {
    const TierCosts cost = costOf(problem(), plan).total;
    if (!out_.schedule.steps.empty() && cost >= out_.cost) return false;
    if (!keepsRules(problem(), plan)) return false;
    out_.schedule = plan;
    out_.cost = cost;
    out_.way = way;
    return true;
  }

  // Orders are those of the plan that ran; times start where things stand now.
  std::optional<Schedule> shift(const Schedule& expected) const {
    Schedule from = expected;
    for (std::size_t i = 0; i < from.steps.size(); ++i) {
      if (out_.remains.past[i]) continue;
      Placement& at = from.steps[i];
      const Minute later = std::max(0, problem().steps[i].earliest - at.start);
      at.start += later;
      at.end += later;
    }
    // Of what is over only the order towards the rest counts; the plan that ran has it.
    Schedule order = running_.plan;
    return OrderNetwork(problem(), order).shifted(from, std::max(1, options_.search.grid));
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

  bool begun(int dish) const {
    for (std::size_t i = 0; i < problem().steps.size(); ++i)
      if (problem().steps[i].dish == dish && out_.remains.past[i]) return true;
    return false;
  }

  // Dishes under way that found no place: once more, with some minutes over their own limits,
  // then over those of all dishes under way.
  void rescue() {
    std::vector<int> lost;
    std::vector<int> underWay;
    for (int d = 0; d < static_cast<int>(problem().dishes.size()); ++d) {
      const auto index = static_cast<std::size_t>(d);
      if (running_.plan.unserved[index] || !begun(d)) continue;
      underWay.push_back(d);
      if (out_.schedule.unserved[index]) lost.push_back(d);
    }
    if (lost.empty() || stop()) return;
    RepairOptions options;
    options.search = options_.search;
    options.rounds = options_.repairRounds;
    const Problem patient = strainedBy(lost);
    const auto repaired = repairPlan(patient, out_.schedule, options, monitor_);
    if (repaired && servesMore(*repaired)) return takeStrained(repaired->schedule, lost);
    if (!options_.planAnew || stop()) return;
    const Problem morePatient = strainedBy(underWay);
    const auto made = makePlan(morePatient, options_.search, monitor_);
    if (made.ok() && servesMore(*made)) takeStrained(made->schedule, underWay);
  }

  bool servesMore(const Outcome& outcome) const {
    return costIn(outcome.cost, Tier::kUnserved) < costIn(out_.cost, Tier::kUnserved);
  }

  void takeStrained(const Schedule& plan, const std::vector<int>& dishes) {
    out_.schedule = withPast(plan);
    out_.cost = costOf(problem(), out_.schedule).total;
    out_.way = Replanned::Way::kRepaired;
    for (const int dish : dishes)
      if (overruns(dish)) out_.strained.push_back(dish);
  }

  // Whether the dish keeps not all of its own limits any more.
  bool overruns(int dish) const {
    const auto& steps = out_.schedule.steps;
    const auto index = static_cast<std::size_t>(dish);
    if (out_.schedule.unserved[index]) return false;
    const Dish& served = problem().dishes[index];
    if (steps[static_cast<std::size_t>(served.lastStep)].end > served.serve + served.lateLimit) return true;
    for (std::size_t i = 0; i < steps.size(); ++i)
      if (problem().steps[i].dish == dish && steps[i].end > problem().steps[i].latest) return true;
    const auto minuteOf = [&](int step, Edge edge) {
      const Placement& at = steps[static_cast<std::size_t>(step)];
      return edge == Edge::kStart ? at.start : at.end;
    };
    return std::any_of(problem().gaps.begin(), problem().gaps.end(), [&](const Gap& gap) {
      return problem().steps[static_cast<std::size_t>(gap.from)].dish == dish &&
             minuteOf(gap.to, gap.toEdge) - minuteOf(gap.from, gap.fromEdge) > gap.most;
    });
  }

  Problem strainedBy(const std::vector<int>& dishes) const {
    Problem strained = problem();
    const auto among = [&](int dish) {
      return std::find(dishes.begin(), dishes.end(), dish) != dishes.end();
    };
    const auto is = [&](int step, StepKind kind) {
      return strained.steps[static_cast<std::size_t>(step)].kind == kind;
    };
    // A dough's own patience is overrun, and that of what stays in the fridge meanwhile: how long it may lie
    // there is a clock of its own. Any other limit may be one of food safety.
    const auto isPatience = [&](const Gap& gap) {
      return is(gap.from, StepKind::kFerment) || is(gap.to, StepKind::kFerment) ||
             (is(gap.from, StepKind::kChill) && gap.fromEdge == Edge::kEnd);
    };
    for (Gap& gap : strained.gaps)
      if (gap.most < kNoLimit && among(strained.steps[static_cast<std::size_t>(gap.from)].dish) &&
          isPatience(gap))
        gap.most += kStrain;
    for (Step& step : strained.steps)
      if (step.latest < kNoLimit && among(step.dish)) step.latest += kStrain;
    for (const int dish : dishes) strained.dishes[static_cast<std::size_t>(dish)].lateLimit += kStrain;
    return strained;
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
  TierCosts told_{};  // what the plan that ran was to cost
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
