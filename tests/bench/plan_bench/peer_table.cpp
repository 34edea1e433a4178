#include "tests/bench/plan_bench/peer_table.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace suppertide::planning {
namespace {

constexpr char kRow[] = "%-12s %-9s %3s %5s %9s %9s %9s %7s %7s %8s %8s %8s %9s %8s\n";

struct Times {
  std::vector<double> first, best, proof, startUp;
  int breaches = 0;
};

double firstAt(const Run& run, const TierCosts& best) {
  for (const Found& plan : run.plans)
    if (plan.cost <= best) return plan.when;
  return kNever;
}

Times timesOf(const std::vector<const Measured*>& dinners, std::size_t place) {
  Times times;
  for (const Measured* dinner : dinners) {
    const Run& run = dinner->runs[place];
    const auto served = std::find_if(run.plans.begin(), run.plans.end(), [](const Found& plan) {
      return costIn(plan.cost, Tier::kUnserved) == 0;
    });
    times.first.push_back(served == run.plans.end() ? kNever : served->when);
    times.best.push_back(firstAt(run, dinner->best));
    times.proof.push_back(run.proof);
    times.startUp.push_back(run.startUp);
    times.breaches += std::max(run.breaches, 0);
  }
  return times;
}

double share(const std::vector<double>& times) {
  const auto reached = std::count_if(times.begin(), times.end(), [](double when) { return when < kNever; });
  return 100.0 * static_cast<double>(reached) / static_cast<double>(times.size());
}

std::string ratio(const std::vector<double>& peer, const std::vector<double>& engine, double limitSeconds) {
  const auto capped = [&](double seconds) { return std::clamp(seconds, 1e-3, 2 * limitSeconds); };
  double sum = 0;
  for (std::size_t i = 0; i < peer.size(); ++i) sum += std::log(capped(peer[i]) / capped(engine[i]));
  char text[32];
  std::snprintf(text, sizeof text, "%.1f", std::exp(sum / static_cast<double>(peer.size())));
  return text;
}

std::string perCent(double value) {
  return std::to_string(static_cast<int>(std::lround(value)));
}

}  // namespace

void printPeerHead() {
  std::printf(
      "Every dish served; lateness, then quality. Times without start-up, in seconds; x: times the "
      "engine's.\n");
  std::printf(kRow, "set", "planner", "n", "steps", "first", "best", "proof", "best %", "proof %", "first x",
              "best x", "proof x", "start-up", "breaches");
}

void printPeerRows(const DinnerSet& set, const std::vector<std::string>& planners,
                   const std::vector<Measured>& dinners, double limitSeconds) {
  std::vector<const Measured*> compared;
  std::vector<double> steps;
  for (const Measured& dinner : dinners) {
    const bool served = std::any_of(dinner.runs.begin(), dinner.runs.end(), [](const Run& run) {
      return run.hasPlan() && costIn(run.cost, Tier::kUnserved) == 0;
    });
    if (!served) continue;
    compared.push_back(&dinner);
    steps.push_back(static_cast<double>(dinner.steps));
  }
  if (compared.size() < dinners.size())
    std::printf("%s: %zu of %zu dinners left out, nobody served every dish\n", set.name.c_str(),
                dinners.size() - compared.size(), dinners.size());
  if (compared.empty()) return;
  const Times engine = timesOf(compared, 0);
  for (std::size_t p = 0; p < planners.size(); ++p) {
    const Times times = timesOf(compared, p);
    const auto against = [&](const std::vector<double>& mine, const std::vector<double>& ours) {
      return p == 0 ? std::string("-") : ratio(mine, ours, limitSeconds);
    };
    std::printf(kRow, set.name.c_str(), planners[p].c_str(), std::to_string(compared.size()).c_str(),
                perCent(median(steps)).c_str(), secondsText(median(times.first)).c_str(),
                secondsText(median(times.best)).c_str(), secondsText(median(times.proof)).c_str(),
                perCent(share(times.best)).c_str(), perCent(share(times.proof)).c_str(),
                against(times.first, engine.first).c_str(), against(times.best, engine.best).c_str(),
                against(times.proof, engine.proof).c_str(), secondsText(median(times.startUp)).c_str(),
                std::to_string(times.breaches).c_str());
  }
  std::fflush(stdout);
}

}  // namespace suppertide::planning
