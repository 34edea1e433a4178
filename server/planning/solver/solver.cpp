#include "server/planning/solver/solver.h"

#include <algorithm>
#include <cassert>
#include <limits>

#include "server/planning/solver/construct.h"
#include "server/planning/solver/objective.h"
#include "server/planning/solver/plan_rules.h"
#include "server/planning/solver/resource_clauses.h"
#include "server/planning/solver/tier_search.h"

namespace suppertide::planning {
namespace {

// Rounds of taking dishes out and putting them back in a pause of the proof.
constexpr int kPauseRounds = 60;
// A proof that takes longer than this gives as much time to pauses as it takes itself.
constexpr std::int64_t kEasyConflicts = 4000;
constexpr std::int64_t kConflictsARound = 6;
// Tries to make a core of dishes that clash smaller.
constexpr int kCoreTries = 3;

class Engine {
 public:
  Engine(const Problem& problem, const SearchOptions& options, Monitor* monitor)
      : problem_(problem),
        options_(options),
        monitor_(monitor),
        random_(static_cast<unsigned>(options.seed)) {}

  Outcome run() {
    const GridModel wide(problem_, options_.grid);
    const auto stop = [&] { return stopAsked(); };
    const auto better = [&](const Schedule& plan) { take(plan); };
    take(firstPlan(wide, options_.placingOrders, random_, better, stop));
    if (outcome_.schedule.steps.empty()) take(nothingServed());
    if (!servesAll(wide)) prove(wide, false);
    if (!servesAll(wide) || options_.nameClash) return finish();
    improvePlan(wide, outcome_.schedule, {options_.improvingRounds, true}, random_, better, stop);
    if (stopAsked()) return finish();
    // No better plan is later than this one, all dishes together.
    prove(GridModel(problem_, options_.grid, static_cast<Minute>(costIn(outcome_.cost, Tier::kLateness))),
          true);
    return finish();
  }

 private:
  bool stopAsked() { return stopped_ = stopped_ || (monitor_ != nullptr && monitor_->stop()); }

  bool latenessIsOpen() const {
    return costIn(outcome_.bound, Tier::kLateness) < costIn(outcome_.cost, Tier::kLateness);
  }

  bool servesAll(const GridModel& model) const {
    for (int d = 0; d < sizeOf(problem_.dishes); ++d)
      if (outcome_.schedule.unserved[static_cast<std::size_t>(d)] && !model.dropped(d)) return false;
    return true;
  }

  Schedule nothingServed() const {
    return {std::vector<Placement>(problem_.steps.size()), std::vector<bool>(problem_.dishes.size(), true)};
  }

  // Keeps `plan` when it is the best so far. A plan that breaks a rule is let go:
  // a plan not improved is better than one that cannot be cooked.
  void take(const Schedule& plan) {
    const TierCosts cost = costOf(problem_, plan).total;
    if (!outcome_.schedule.steps.empty() && cost >= outcome_.cost) return;
    if (!keepsRules(problem_, plan)) return;
    outcome_.schedule = plan;
    outcome_.cost = cost;
    publish();
  }

  void publish() {
    if (monitor_ != nullptr) monitor_->improved(outcome_);
  }

  void prove(const GridModel& model, bool allServed) {
    Sat sat(options_.seed, options_.workLimit, monitor_,
            options_.easy ? Sat::Deciding::kByRecency : Sat::Deciding::kByActivity);
    Encoder encoder(model, sat, outcome_.schedule, allServed);
    ResourceClauses resources(encoder);
    Objective objective(encoder);
    encoder.prefer(outcome_.schedule);
    const auto probe = [&](const std::vector<Lit>& assumed, std::int64_t conflicts) {
      return findPlan(assumed, conflicts, sat, encoder, resources, objective);
    };
    const auto pause = [&](std::int64_t conflicts) { improve(model, pauseRounds(conflicts), encoder); };
    if (options_.nameClash) return nameClash(sat, encoder, probe);
    for (int t = 0; t < kTierCount; ++t) {
      const auto tier = static_cast<std::size_t>(t);
      const CostSum sum = objective.build(static_cast<Tier>(t));
      const auto raised = [&](std::int64_t bound) {
        if (bound <= outcome_.bound[tier]) return;
        outcome_.bound[tier] = bound;
        publish();
      };
      TierSearch search(
          sat, sum, probe, raised, [&] { return outcome_.cost[tier]; }, pause);
      if (t >= 2 && outcome_.bound[tier] < outcome_.cost[tier]) pause(0);
      const bool proven = search.run();
      outcome_.work = sat.work();
      if (!proven) break;
      outcome_.bound[tier] = outcome_.cost[tier];
      outcome_.provenTiers = t + 1;
      if (!allServed && servesAll(model)) return;  // a smaller model can go on
    }
  }

  // A core of the dishes' served literals; asked for again in other orders, it mostly gets smaller.
  void nameClash(Sat& sat, const Encoder& encoder, const TierSearch::Probe& probe) {
    std::vector<int> dishes = dishesToServe(encoder.model());
    if (dishes.empty()) return;
    if (encoder.served(dishes.front()) != kFalse) {
      for (int k = 0; k < kCoreTries && dishes.size() > 1; ++k) {
        std::vector<Lit> assumed;
        for (const int dish : dishes) assumed.push_back(encoder.served(dish));
        const bool clash = probe(assumed, 0) == TierSearch::Answer::kNone;
        if (!clash && k == 0) return;
        if (!clash) break;  // stopped: they are still a core
        const std::size_t before = dishes.size();
        std::erase_if(dishes, [&](int dish) { return !sat.inCore(encoder.served(dish)); });
        if (k > 0 && dishes.size() == before) break;
        std::shuffle(dishes.begin(), dishes.end(), random_);
      }
      if (dishes.empty()) return;
      std::sort(dishes.begin(), dishes.end());
    }
    outcome_.clashing = std::move(dishes);
    int least = std::numeric_limits<int>::max();
    for (const int dish : outcome_.clashing) least = std::min(least, nth(problem_.dishes, dish).unservedCost);
    outcome_.bound.front() = least;
  }

  // All of them, or one that cannot even be served alone.
  std::vector<int> dishesToServe(const GridModel& model) const {
    std::vector<int> dishes;
    for (int d = 0; d < sizeOf(problem_.dishes); ++d) {
      if (model.dropped(d)) return {d};
      dishes.push_back(d);
    }
    return dishes;
  }

  // With a single dish there is little that taking out and putting back could find.
  int pauseRounds(std::int64_t conflicts) const {
    if (problem_.dishes.size() < 2) return kPauseRounds;
    const std::int64_t rounds = (conflicts - kEasyConflicts) / kConflictsARound;
    return static_cast<int>(std::max<std::int64_t>(kPauseRounds, rounds));
  }

  // Improves the best plan by local search and makes the solver try the outcome first.
  void improve(const GridModel& model, int rounds, Encoder& encoder) {
    const TierCosts before = outcome_.cost;
    improvePlan(
        model, outcome_.schedule, {rounds, latenessIsOpen()}, random_,
        [&](const Schedule& plan) { take(plan); }, [&] { return stopAsked(); });
    if (outcome_.cost < before) encoder.prefer(outcome_.schedule);
  }

  // Solves until a plan keeps every rule and is charged what it costs.
  TierSearch::Answer findPlan(const std::vector<Lit>& assumed, std::int64_t conflicts, Sat& sat,
                              Encoder& encoder, ResourceClauses& resources, Objective& objective) {
    const std::int64_t limit = sat.work() + conflicts;
    while (true) {
      if (conflicts > 0 && sat.work() >= limit) return TierSearch::Answer::kTooHard;
      const Sat::Answer answer = sat.solve(assumed, conflicts > 0 ? limit - sat.work() : 0);
      if (answer == Sat::Answer::kNo) return TierSearch::Answer::kNone;
      if (answer == Sat::Answer::kStopped)
        return sat.stopped() ? TierSearch::Answer::kStopped : TierSearch::Answer::kTooHard;
      const Schedule plan = encoder.read();
      const auto clashes = findClashes(problem_, plan, random_);
      int added = objective.refine(plan);
      for (const Clash& clash : clashes) added += resources.add(clash, plan);
      if (added > 0) continue;
      assert(clashes.empty() && "a clash that no clause forbids");
      if (!clashes.empty()) return TierSearch::Answer::kStopped;
      if (costOf(problem_, plan).total < outcome_.cost) {
        take(plan);
        encoder.prefer(plan);
      }
      return TierSearch::Answer::kPlan;
    }
  }

  Outcome finish() {
    outcome_.stopped = outcome_.provenTiers < kTierCount;
    return std::move(outcome_);
  }

  const Problem& problem_;
  const SearchOptions& options_;
  Monitor* monitor_;
  std::mt19937 random_;
  Outcome outcome_;
  bool stopped_ = false;
};

}  // namespace

absl::StatusOr<Outcome> makePlan(const Problem& problem, const SearchOptions& options, Monitor* monitor) {
  if (auto status = check(problem); !status.ok()) return status;
  return Engine(problem, options, monitor).run();
}

}  // namespace suppertide::planning
