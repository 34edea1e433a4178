// How well random dinners are planned, a row for each set: first plan, proofs,
// time to within 1 % of the best known, gap, breaches, memory.
#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <memory>
#include <string>
#include <vector>

#include "tests/bench/plan_bench/run.h"
#include "tests/bench/plan_bench/sets.h"
#include "tests/bench/plan_bench/table.h"

namespace suppertide::planning {
namespace {

struct Options {
  std::vector<std::string> sets;
  int seeds = 10;
  double limit = 10;
  bool verbose = false;
  std::string csv;
};

struct Named {
  std::string name;
  Planner planner;
};

Measured measure(const DinnerSet& set, std::uint64_t seed, const std::vector<Named>& planners, double limit) {
  const Problem problem = dinnerOf(set, seed);
  Measured dinner;
  dinner.seed = seed;
  dinner.steps = problem.steps.size();
  bool any = false;
  for (const Named& each : planners) {
    dinner.runs.push_back(runApart(each.planner, problem, seed, limit));
    const Run& run = dinner.runs.back();
    if (run.breaches != 0 || (any && run.cost >= dinner.best)) continue;
    dinner.best = run.cost;
    any = true;
  }
  return dinner;
}

void runSet(const DinnerSet& set, const Options& options, const std::vector<Named>& planners,
            std::FILE* csv) {
  std::vector<Measured> dinners;
  for (int s = 1; s <= options.seeds; ++s) {
    dinners.push_back(measure(set, static_cast<std::uint64_t>(s), planners, options.limit));
    for (std::size_t p = 0; p < planners.size(); ++p) {
      if (options.verbose) printRun(set, planners[p].name, dinners.back(), p);
      if (csv != nullptr) writeCsvRow(csv, set, planners[p].name, dinners.back(), p);
    }
  }
  for (std::size_t p = 0; p < planners.size(); ++p) printSetRow(set, planners[p].name, p, dinners);
}

bool wanted(const DinnerSet& set, const std::vector<std::string>& names) {
  return names.empty() || std::find(names.begin(), names.end(), set.name) != names.end();
}

void runAll(const Options& options) {
  const std::vector<Named> planners = {{"engine", planWithEngine}};
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> csv(
      options.csv.empty() ? nullptr : std::fopen(options.csv.c_str(), "w"), std::fclose);
  if (csv) writeCsvHead(csv.get());
  for (const bool twins : {false, true}) {
    bool headed = false;
    for (const DinnerSet& set : allSets()) {
      if (set.twin != twins || !wanted(set, options.sets)) continue;
      if (!headed) printSetHead(twins);
      headed = true;
      runSet(set, options, planners, csv.get());
    }
  }
}

}  // namespace
}  // namespace suppertide::planning

int main(int argc, char** argv) {
  suppertide::planning::Options options;
  std::vector<std::string> names;
  for (const auto& set : suppertide::planning::allSets()) names.push_back(set.name);
  CLI::App app{"Times the planning of random dinners."};
  app.add_option("--sets", options.sets,
                 "Which sets, separated by commas: 6-light to 40-crowded-twin; all without")
      ->delimiter(',')
      ->check(CLI::IsMember(names));
  app.add_option("--seeds", options.seeds, "Dinners of each set")
      ->check(CLI::PositiveNumber)
      ->capture_default_str();
  app.add_option("--limit", options.limit, "Seconds for each dinner and planner")
      ->check(CLI::PositiveNumber)
      ->capture_default_str();
  app.add_option("--csv", options.csv, "File for a row of figures of each run");
  app.add_flag("--verbose", options.verbose, "A line for each run");
  CLI11_PARSE(app, argc, argv);
  suppertide::planning::runAll(options);
  return 0;
}
