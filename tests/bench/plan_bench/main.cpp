// How well random dinners are planned, a row for each set: first plan, proofs,
// time to within 1 % of the best known, gap, breaches, memory. With --peer the
// dinners are reduced to what the peers know, and the rows compare.
#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "tests/bench/plan_bench/peer_table.h"
#include "tests/bench/plan_bench/peers.h"
#include "tests/bench/plan_bench/run.h"
#include "tests/bench/plan_bench/sets.h"
#include "tests/bench/plan_bench/table.h"

namespace suppertide::planning {
namespace {

struct Options {
  std::vector<std::string> sets;
  int seeds = 10;
  int firstSeed = 1;
  double limit = 10;
  bool verbose = false;
  std::string csv;
  std::vector<std::string> peers;
  PeerPaths paths;
};

Measured measure(const DinnerSet& set, std::uint64_t seed, const std::vector<Peer>& planners,
                 const Options& options) {
  Problem problem = dinnerOf(set, seed);
  if (!options.peers.empty()) problem = reduced(std::move(problem));
  Measured dinner;
  dinner.seed = seed;
  dinner.steps = problem.steps.size();
  bool any = false;
  for (const Peer& each : planners) {
    dinner.runs.push_back(runApart(each.planner, problem, seed, options.limit));
    const Run& run = dinner.runs.back();
    if (run.breaches != 0 || (any && run.cost >= dinner.best)) continue;
    dinner.best = run.cost;
    any = true;
  }
  return dinner;
}

void runSet(const DinnerSet& set, const Options& options, const std::vector<Peer>& planners, std::FILE* csv) {
  std::vector<Measured> dinners;
  for (int s = options.firstSeed; s < options.firstSeed + options.seeds; ++s) {
    dinners.push_back(measure(set, static_cast<std::uint64_t>(s), planners, options));
    for (std::size_t p = 0; p < planners.size(); ++p) {
      if (options.verbose) printRun(set, planners[p].name, dinners.back(), p);
      if (csv != nullptr) writeCsvRow(csv, set, planners[p].name, dinners.back(), p);
    }
  }
  if (options.peers.empty()) {
    printSetRow(set, planners.front().name, 0, dinners);
    return;
  }
  std::vector<std::string> names;
  for (const Peer& planner : planners) names.push_back(planner.name);
  printPeerRows(set, names, dinners, options.limit);
}

bool wanted(const DinnerSet& set, const std::vector<std::string>& names) {
  return names.empty() || std::find(names.begin(), names.end(), set.name) != names.end();
}

// The engine, then each peer that is at hand; says which are not.
std::vector<Peer> plannersFor(const Options& options) {
  std::vector<Peer> planners = {{"engine", planWithEngine}};
  for (const std::string& name : options.peers) {
    const auto peer = peerOf(name, options.paths);
    if (peer.ok()) {
      planners.push_back(*peer);
    } else {
      std::printf("%s: skipped, %s\n", name.c_str(), std::string(peer.status().message()).c_str());
    }
  }
  return planners;
}

void runAll(const Options& options) {
  const std::vector<Peer> planners = plannersFor(options);
  if (!options.peers.empty() && planners.size() == 1) return;
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> csv(
      options.csv.empty() ? nullptr : std::fopen(options.csv.c_str(), "w"), std::fclose);
  if (csv) writeCsvHead(csv.get());
  for (const bool twins : {false, true}) {
    bool headed = false;
    for (const DinnerSet& set : allSets()) {
      if (set.twin != twins || !wanted(set, options.sets)) continue;
      if (!headed) options.peers.empty() ? printSetHead(twins) : printPeerHead();
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
  app.add_option("--first-seed", options.firstSeed, "Of the first dinner of each set")
      ->capture_default_str()
      ->check(CLI::PositiveNumber);
  app.add_option("--seeds", options.seeds, "Dinners of each set")
      ->check(CLI::PositiveNumber)
      ->capture_default_str();
  app.add_option("--limit", options.limit, "Seconds for each dinner and planner")
      ->check(CLI::PositiveNumber)
      ->capture_default_str();
  app.add_option("--csv", options.csv, "File for a row of figures of each run");
  app.add_option("--peer", options.peers, "Other solvers to run beside the engine, separated by commas")
      ->delimiter(',')
      ->check(CLI::IsMember(suppertide::planning::peerNames()));
  app.add_option("--node", options.paths.node, "The Node program for minizinc")
      ->envname("SUPPERTIDE_NODE")
      ->capture_default_str();
  app.add_option("--minizinc", options.paths.minizinc, "Folder of the Node package minizinc")
      ->envname("SUPPERTIDE_MINIZINC");
  app.add_flag("--verbose", options.verbose, "A line for each run");
  CLI11_PARSE(app, argc, argv);
  suppertide::planning::runAll(options);
  return 0;
}
