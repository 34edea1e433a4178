#include "server/planning/chance/robustness.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

#include "server/planning/audit/audit.h"
#include "server/planning/chance/draws.h"
#include "server/planning/chance/earlier.h"

namespace suppertide::planning {
namespace {

// Below these a difference is noise, or not worth moving anything.
constexpr double kChanceGain = 0.002;
constexpr double kMinuteGain = 0.02;
// Shifts tried for each simulation allowed: most are too dear, which costs little to see.
constexpr int kShiftsPerTrial = 20;

struct Worth {
  double leastChance = 1;
  double sumOfChances = 0;
  double lateMinutes = 0;
};

Worth worthOf(const Chances& chances) {
  Worth worth;
  for (const double chance : chances.byCourse) worth.leastChance = std::min(worth.leastChance, chance);
  worth.sumOfChances = std::accumulate(chances.byCourse.begin(), chances.byCourse.end(), 0.0);
  worth.lateMinutes = std::accumulate(chances.lateMinutes.begin(), chances.lateMinutes.end(), 0.0);
  return worth;
}

// The least chance first, then all chances, then minutes: those tell which way
// to go while it takes several moves until a chance grows.
bool isBetter(const Worth& a, const Worth& b) {
  if (a.leastChance < b.leastChance) return false;
  if (a.leastChance > b.leastChance + kChanceGain) return true;
  if (a.sumOfChances < b.sumOfChances - kChanceGain / 2) return false;
  return a.sumOfChances > b.sumOfChances + kChanceGain || a.lateMinutes < b.lateMinutes - kMinuteGain;
}

class Buyer {
 public:
  Buyer(const Problem& problem, const Schedule& schedule, const RobustnessOptions& options)
      : problem_(problem),
        options_(options),
        costs_(costOf(problem, schedule).total),
        draws_(problem, schedule, options.evenings.seed),
        trialsLeft_(options.trials),
        shiftsLeft_(options.trials * kShiftsPerTrial),
        best_(schedule) {}

  Schedule run() {
    options_.evenings.bands = false;
    if (trialsLeft_ <= 0) return best_;
    chances_ = simulate(best_);
    while (goesOn() && improveOnce()) {
    }
    return best_;
  }

 private:
  bool goesOn() const { return trialsLeft_ > 0 && shiftsLeft_ > 0; }

  Chances simulate(const Schedule& schedule) {
    --trialsLeft_;
    return chancesOf(problem_, schedule, options_.evenings, draws_);
  }

  // Goes through the steps that late courses waited for, most often first; false when no move helped.
  bool improveOnce() {
    const std::vector<double> waitedFor = chances_.waitedFor;
    std::vector<int> steps;
    for (int i = 0; i < static_cast<int>(waitedFor.size()); ++i)
      if (waitedFor[static_cast<std::size_t>(i)] > 0) steps.push_back(i);
    std::stable_sort(steps.begin(), steps.end(), [&](int a, int b) {
      return waitedFor[static_cast<std::size_t>(a)] > waitedFor[static_cast<std::size_t>(b)];
    });
    bool improved = false;
    for (const int step : steps) {
      if (!goesOn()) break;
      improved = move(step) || improved;
    }
    return improved;
  }

  // The best of some shifts of one step, the shortest of equals.
  bool move(int step) {
    const Schedule from = best_;
    const EarlierShift shift(problem_, from, options_.grid);
    std::vector<Schedule> tried;
    bool improved = false;
    for (Minute by = options_.grid; by <= 16 * options_.grid && goesOn(); by *= 2) {
      for (const Elastic elastic : {Elastic::kKept, Elastic::kStretched}) {
        --shiftsLeft_;
        const auto moved = shift.earlier(step, by, elastic);
        if (!moved || isDearer(*moved) || std::find(tried.begin(), tried.end(), *moved) != tried.end())
          continue;
        tried.push_back(*moved);
        if (!goesOn()) break;
        const Chances chances = simulate(*moved);
        if (!isBetter(worthOf(chances), worthOf(chances_)) || !audit(problem_, *moved).empty()) continue;
        best_ = *moved;
        chances_ = chances;
        improved = true;
      }
    }
    return improved;
  }

  bool isDearer(const Schedule& schedule) const {
    const TierCosts costs = costOf(problem_, schedule).total;
    for (std::size_t t = 0; t < costs.size(); ++t)
      if (costs[t] > costs_[t]) return true;
    return false;
  }

  const Problem& problem_;
  RobustnessOptions options_;
  TierCosts costs_;
  Draws draws_;
  int trialsLeft_;
  int shiftsLeft_;
  Schedule best_;
  Chances chances_;  // of best_
};

}  // namespace

Schedule buyRobustness(const Problem& problem, const Schedule& schedule, const RobustnessOptions& options) {
  return Buyer(problem, schedule, options).run();
}

}  // namespace suppertide::planning
