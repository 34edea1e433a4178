// How fast random dinners are planned: time to the first plan, to within 1 % of
// the best bound, to the full proof, and memory. Each run has a process of its
// own, so that its peak memory is its own.
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <limits>
#include <string>
#include <vector>

#include "server/planning/audit/audit.h"
#include "server/planning/solver/solver.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();

// What one run has to say; passed through a pipe, so plain data only.
struct Figures {
  double firstPlan = kNever;  // seconds, like the two below
  double nearBound = kNever;
  double proof = kNever;
  double memoryMegabytes = 0;
  TierCosts cost{};
  TierCosts bound{};
  int provenTiers = 0;
  int breaches = -1;  // -1: the run did not come back with a plan
};

class Stopwatch : public Monitor {
 public:
  explicit Stopwatch(double limitSeconds) : limit_(limitSeconds) {}
  double seconds() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start_).count();
  }
  void improved(const Outcome& outcome) override { plans_.push_back({seconds(), outcome.cost}); }
  bool stop() override { return seconds() > limit_; }

  double firstPlan() const { return plans_.empty() ? kNever : plans_.front().when; }
  // When a plan first was at most 1 % above `bound` in every tier up to the first that is not proven.
  double firstNear(const TierCosts& bound, int provenTiers) const {
    const std::size_t tiers = static_cast<std::size_t>(std::min(provenTiers + 1, kTierCount));
    for (const Found& plan : plans_) {
      bool near = true;
      for (std::size_t t = 0; t < tiers; ++t) near = near && 100 * plan.cost[t] <= 101 * bound[t];
      if (near) return plan.when;
    }
    return kNever;
  }

 private:
  struct Found {
    double when;
    TierCosts cost;
  };
  double limit_;
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
  std::vector<Found> plans_;
};

Figures runOnce(const Problem& problem, std::uint64_t seed, double limitSeconds) {
  Figures figures;
  Stopwatch watch(limitSeconds);
  const auto outcome = makePlan(problem, {.seed = seed, .workLimit = 0, .grid = kDinnerGrid}, &watch);
  const double end = watch.seconds();
  if (!outcome.ok()) {
    std::fprintf(stderr, "seed %llu: %s\n", static_cast<unsigned long long>(seed),
                 outcome.status().ToString().c_str());
    return figures;
  }
  figures.firstPlan = std::min(end, watch.firstPlan());
  figures.nearBound = watch.firstNear(outcome->bound, outcome->provenTiers);
  if (outcome->optimal()) figures.proof = end;
  figures.cost = outcome->cost;
  figures.bound = outcome->bound;
  figures.provenTiers = outcome->provenTiers;
  figures.breaches = static_cast<int>(audit(problem, outcome->schedule).size());
  return figures;
}

// Runs in a child process and waits for it; a child that dies leaves figures without a plan.
Figures runApart(const Problem& problem, std::uint64_t seed, double limitSeconds) {
  int ends[2];
  if (pipe(ends) != 0) return {};
  std::fflush(stdout);
  const pid_t child = fork();
  if (child == 0) {
    const Figures figures = runOnce(problem, seed, limitSeconds);
    const bool written = write(ends[1], &figures, sizeof figures) == sizeof figures;
    _exit(written ? 0 : 1);
  }
  close(ends[1]);
  Figures figures;
  if (read(ends[0], &figures, sizeof figures) != sizeof figures) figures = {};
  close(ends[0]);
  rusage usage{};
  int status = 0;
  if (child > 0 && wait4(child, &status, 0, &usage) == child)
    figures.memoryMegabytes = static_cast<double>(usage.ru_maxrss) / 1024.0;
  return figures;
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t middle = values.size() / 2;
  return values.size() % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
}

std::string text(double seconds) {
  if (seconds == kNever) return "-";
  char buffer[32];
  std::snprintf(buffer, sizeof buffer, seconds < 0.1 ? "%.4f" : "%.2f", seconds);
  return buffer;
}

// A tier's cost, with its bound where that is lower.
std::string text(const Figures& run) {
  std::string all;
  for (int t = 0; t < kTierCount; ++t) {
    const auto tier = static_cast<std::size_t>(t);
    if (t > 0) all += " ";
    all += std::to_string(run.cost[tier]);
    if (t >= run.provenTiers) all += "(" + std::to_string(run.bound[tier]) + ")";
  }
  return all;
}

constexpr char kRow[] = "%-6s %-9s %5s %10s %10s %10s %8s %8s %9s  %s\n";

void printHead() {
  std::printf(kRow, "steps", "load", "seed", "first s", "near s", "proof s", "proved", "MB", "breaches",
              "unserved late quality people (bound where not proven)");
}

void printRun(int steps, const char* load, std::uint64_t seed, const Figures& run) {
  std::printf(kRow, std::to_string(steps).c_str(), load, std::to_string(seed).c_str(),
              text(run.firstPlan).c_str(), text(run.nearBound).c_str(), text(run.proof).c_str(),
              run.provenTiers == kTierCount ? "yes" : "no",
              std::to_string(static_cast<int>(run.memoryMegabytes)).c_str(),
              std::to_string(run.breaches).c_str(), text(run).c_str());
}

void printMedians(int steps, const char* load, const std::vector<Figures>& runs) {
  std::vector<double> first, near, proof, memory;
  int proved = 0;
  int breaches = 0;
  for (const Figures& run : runs) {
    first.push_back(run.firstPlan);
    near.push_back(run.nearBound);
    proof.push_back(run.proof);
    memory.push_back(run.memoryMegabytes);
    proved += run.provenTiers == kTierCount ? 1 : 0;
    breaches += run.breaches < 0 ? 1 : run.breaches;  // no plan is a breach too
  }
  const std::string provedOf = std::to_string(proved) + "/" + std::to_string(runs.size());
  std::printf(kRow, std::to_string(steps).c_str(), load, "all", text(median(first)).c_str(),
              text(median(near)).c_str(), text(median(proof)).c_str(), provedOf.c_str(),
              std::to_string(static_cast<int>(median(memory))).c_str(), std::to_string(breaches).c_str(),
              "medians");
}

struct NamedLoad {
  const char* name;
  DinnerLoad load;
};
constexpr NamedLoad kLoads[] = {
    {"light", DinnerLoad::kLight}, {"middling", DinnerLoad::kMiddling}, {"crowded", DinnerLoad::kCrowded}};

// About 6.7 steps a dish.
int dishesFor(int steps) {
  return std::max(1, (3 * steps + 10) / 20);
}

}  // namespace
}  // namespace suppertide::planning

int main(int argc, char** argv) {
  using namespace suppertide::planning;
  std::vector<int> steps = {40, 80, 160};
  int seeds = 5;
  double limit = 10;
  std::string only = "all";
  CLI::App app{"Times the planning of random dinners."};
  app.add_option("--steps", steps, "Sizes in steps, separated by commas")
      ->delimiter(',')
      ->capture_default_str();
  app.add_option("--seeds", seeds, "Dinners of each size and load")
      ->check(CLI::PositiveNumber)
      ->capture_default_str();
  app.add_option("--limit", limit, "Seconds for each dinner")
      ->check(CLI::PositiveNumber)
      ->capture_default_str();
  app.add_option("--load", only, "How much there is to do for kitchen and cooks")
      ->check(CLI::IsMember({"light", "middling", "crowded", "all"}))
      ->capture_default_str();
  CLI11_PARSE(app, argc, argv);
  printHead();
  for (const int size : steps) {
    for (const NamedLoad& load : kLoads) {
      if (only != "all" && only != load.name) continue;
      std::vector<Figures> runs;
      for (int s = 1; s <= seeds; ++s) {
        const auto seed = static_cast<std::uint64_t>(s);
        const Problem problem = randomDinner(seed, dishesFor(size), load.load);
        runs.push_back(runApart(problem, seed, limit));
        printRun(static_cast<int>(problem.steps.size()), load.name, seed, runs.back());
      }
      printMedians(size, load.name, runs);
    }
  }
  return 0;
}
