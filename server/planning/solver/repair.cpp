#include "server/planning/solver/repair.h"

#include <algorithm>
#include <numeric>

#include "server/planning/solver/construct.h"
#include "server/planning/solver/draft.h"
#include "server/planning/solver/plan_rules.h"

namespace suppertide::planning {
namespace {

constexpr int kTries = 20;   // orders of a ringed dish's steps
constexpr int kOrders = 12;  // orders in which broken dishes are put back

class Mending {
 public:
  Mending(const Problem& problem, const Schedule& old, const RepairOptions& options, Monitor* monitor)
      : problem_(problem),
        old_(old),
        options_(options),
        monitor_(monitor),
        model_(problem, options.search.grid),
        random_(static_cast<unsigned>(options.search.seed)) {}

  std::optional<Outcome> run() {
    if (stop()) return std::nullopt;
    const Schedule kept = whatFits();
    take(kept);
    putBack(kept);
    const int rounds = options_.rounds + options_.rounds * sizeOf(broken_) / 2;
    if (rounds > 0)
      improvePlan(
          model_, outcome_.schedule, {rounds, false}, random_, [&](const Schedule& plan) { take(plan); },
          [&] { return stop(); });
    outcome_.stopped = true;
    return std::move(outcome_);
  }

 private:
  bool stop() { return monitor_ != nullptr && monitor_->stop(); }

  // When a dish's work that is still to be moved begins.
  Minute nextStart(int dish) const {
    Minute next = kNoLimit;
    for (const int i : model_.distances(dish).steps)
      if (!nth(problem_.steps, i).pin.start) next = std::min(next, nth(old_.steps, i).start);
    return next;
  }

  // The old plan without the dishes that break a rule by themselves, or beside one that is due sooner.
  Schedule whatFits() {
    std::vector<int> order(problem_.dishes.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return nextStart(a) < nextStart(b); });
    Schedule kept = old_;
    std::fill(kept.unserved.begin(), kept.unserved.end(), true);
    for (const int dish : order) {
      if (model_.dropped(dish)) continue;
      const auto index = static_cast<std::size_t>(dish);
      kept.unserved[index] = old_.unserved[index];
      if (!old_.unserved[index] && keepsRules(problem_, kept)) continue;
      kept.unserved[index] = true;
      broken_.push_back(dish);
    }
    return kept;
  }

  // Tries orders of the broken dishes until one serves them all, a bounded number of times.
  void putBack(const Schedule& kept) {
    for (int attempt = 0; attempt < kOrders && !broken_.empty() && !(attempt > 0 && stop()); ++attempt) {
      Draft draft(model_);
      draft.load(kept);
      bool all = true;
      for (const int dish : broken_) all = draft.put(dish, random_, kTries) && all;
      take(draft.plan());
      if (all || broken_.size() < 2) break;
      std::shuffle(broken_.begin(), broken_.end(), random_);
    }
  }

  void take(const Schedule& plan) {
    const TierCosts cost = costOf(problem_, plan).total;
    if (!outcome_.schedule.steps.empty() && cost >= outcome_.cost) return;
    if (!keepsRules(problem_, plan)) return;
    outcome_.schedule = plan;
    outcome_.cost = cost;
    if (monitor_ != nullptr) monitor_->improved(outcome_);
  }

  const Problem& problem_;
  const Schedule& old_;
  const RepairOptions& options_;
  Monitor* monitor_;
  const GridModel model_;
  std::mt19937 random_;
  std::vector<int> broken_;
  Outcome outcome_;
};

}  // namespace

std::optional<Outcome> repairPlan(const Problem& problem, const Schedule& old, const RepairOptions& options,
                                  Monitor* monitor) {
  return Mending(problem, old, options, monitor).run();
}

}  // namespace suppertide::planning
