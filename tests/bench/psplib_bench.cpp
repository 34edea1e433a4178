// The engine on published project schedules: result, proof and time per instance, and a row for each set.
//
// An instance becomes one dish that is served when its longest chain ends, so
// that lateness is how far the project runs over it (tests/support/psplib).
// A result is wrong when it contradicts the published bounds, leaves unserved
// what has a schedule, serves what has none, or breaks a rule.
#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>
#include <vector>

#include "CLI/CLI.hpp"
#include "server/planning/audit/audit.h"
#include "server/planning/solver/solver.h"
#include "tests/bench/cpu_time.h"
#include "tests/support/psplib/bounds.h"
#include "tests/support/psplib/project.h"

namespace suppertide::planning {
namespace {

namespace fs = std::filesystem;

class TimeLimit : public Monitor {
 public:
  explicit TimeLimit(double seconds) : seconds_(seconds) {}
  double elapsed() const { return watch_.seconds(); }
  bool stop() override { return elapsed() > seconds_; }

 private:
  double seconds_;
  CpuWatch watch_;
};

struct Set {
  const char* name;
  const char* folder;  // below the data's
  const char* ending;
  const char* bounds;  // the same
};
constexpr Set kSets[] = {
    {"j30", "j30", ".sm", "j30_bounds.csv"},
    {"j60", "j60", ".sm", "j60_bounds.csv"},
    {"max-j10", "rcpsp-max/j10", ".sch", "rcpsp-max/j10_bounds.csv"},
    {"max-j20", "rcpsp-max/j20", ".sch", "rcpsp-max/j20_bounds.csv"},
    {"max-ubo10", "rcpsp-max/ubo10", ".sch", "rcpsp-max/ubo10_bounds.csv"},
    {"max-ubo20", "rcpsp-max/ubo20", ".sch", "rcpsp-max/ubo20_bounds.csv"},
    {"mm-j10", "mm/j10", ".mm", "mm_bounds.csv"},
};

struct Totals {
  int count = 0;
  int proven = 0;       // optimal or unsat
  int equal = 0;        // to the published upper bound
  int unsatProven = 0;  // of those published as unsat
  int unsatKnown = 0;
  int wrong = 0;
  double seconds = 0;
  double slowest = 0;
  std::string slowestName;
};

struct Result {
  bool unsat = false;
  int makespan = 0;
  bool proven = false;
  bool sound = true;  // keeps every rule
};

Result read(const Problem& problem, const Outcome& outcome) {
  Result result;
  result.unsat = outcome.schedule.unserved.front();
  result.makespan = problem.dishes.front().serve + static_cast<int>(costIn(outcome.cost, Tier::kLateness));
  result.proven = outcome.provenTiers >= (result.unsat ? 1 : 2);
  result.sound = result.unsat || audit(problem, outcome.schedule).empty();
  return result;
}

// Whether `known` and `result` cannot both be right.
bool contradicts(const Result& result, const psplib::Bounds& known) {
  if (known.unsat) return !result.unsat;
  if (result.unsat) return result.proven;
  return result.makespan < known.lower || (result.proven && result.makespan > known.upper);
}

absl::StatusOr<Problem> readProblem(const fs::path& path) {
  std::ifstream in(path);
  auto project = path.extension() == ".sch" ? psplib::readLagProject(in) : psplib::readProject(in);
  if (!project.ok()) return project.status();
  return psplib::toProblem(*project);
}

void addTime(const std::string& name, double seconds, Totals& totals) {
  ++totals.count;
  totals.seconds += seconds;
  if (seconds <= totals.slowest) return;
  totals.slowest = seconds;
  totals.slowestName = name;
}

void addResult(const Result& result, const psplib::Bounds* known, Totals& totals) {
  totals.proven += result.proven;
  bool wrong = !result.sound;
  if (known != nullptr) {
    wrong = wrong || contradicts(result, *known);
    totals.equal += !known->unsat && !result.unsat && result.makespan == known->upper;
    totals.unsatKnown += known->unsat;
    totals.unsatProven += known->unsat && result.unsat && result.proven;
  }
  totals.wrong += wrong;
}

void solveOne(const fs::path& path, double limit, const psplib::Bounds* known, bool verbose, Totals& totals) {
  const std::string name = path.stem().string();
  const auto problem = readProblem(path);
  if (!problem.ok()) {
    ++totals.wrong;
    std::printf("%s: %s\n", name.c_str(), std::string(problem.status().message()).c_str());
    return;
  }
  TimeLimit time(limit);
  const auto outcome = makePlan(*problem, {.seed = 1, .workLimit = 0, .grid = 1}, &time);
  const double seconds = time.elapsed();
  addTime(name, seconds, totals);
  if (!outcome.ok()) {
    ++totals.wrong;
    std::printf("%s: %s\n", name.c_str(), std::string(outcome.status().message()).c_str());
    return;
  }
  const Result result = read(*problem, *outcome);
  const int wrongBefore = totals.wrong;
  addResult(result, known, totals);
  const bool wrong = totals.wrong > wrongBefore;
  if (!verbose && !wrong && result.proven) return;
  std::printf("%s %s %s %.3f%s\n", name.c_str(),
              result.unsat ? "unsat" : std::to_string(result.makespan).c_str(),
              result.proven ? "proven" : "open", seconds, wrong ? " WRONG" : "");
  std::fflush(stdout);
}

std::vector<fs::path> instancesIn(const fs::path& folder, const Set& set, const std::string& filter) {
  std::vector<fs::path> paths;
  for (const auto& entry : fs::directory_iterator(folder))
    if (entry.path().extension() == set.ending &&
        entry.path().stem().string().find(filter) != std::string::npos)
      paths.push_back(entry.path());
  std::sort(paths.begin(), paths.end());
  return paths;
}

constexpr char kHead[] = "%-10s %6s %9s %13s %13s %6s %9s %9s  %s\n";

void printTotals(const Set& set, const Totals& totals) {
  const auto of = [](int part, int whole) { return std::to_string(part) + "/" + std::to_string(whole); };
  char total[32];
  char slowest[32];
  std::snprintf(total, sizeof total, "%.2f", totals.seconds);
  std::snprintf(slowest, sizeof slowest, "%.3f", totals.slowest);
  std::printf(kHead, set.name, std::to_string(totals.count).c_str(), of(totals.proven, totals.count).c_str(),
              of(totals.equal, totals.count - totals.unsatKnown).c_str(),
              of(totals.unsatProven, totals.unsatKnown).c_str(), std::to_string(totals.wrong).c_str(), total,
              slowest, totals.slowestName.c_str());
  std::fflush(stdout);
}

// How many results were wrong; a set whose data is not there is passed over.
int runSet(const Set& set, const fs::path& data, const std::string& filter, double limit, bool verbose) {
  const fs::path folder = data / set.folder;
  if (!fs::is_directory(folder)) {
    std::printf("%s: skipped, there is no folder %s\n", set.name, folder.string().c_str());
    return 0;
  }
  std::ifstream boundsFile(data / set.bounds);
  const auto bounds = psplib::readBounds(boundsFile);
  if (!bounds.ok()) std::printf("%s: %s\n", set.name, std::string(bounds.status().message()).c_str());
  Totals totals;
  for (const auto& path : instancesIn(folder, set, filter)) {
    const psplib::Bounds* known = nullptr;
    if (bounds.ok())
      if (const auto found = bounds->find(path.stem().string()); found != bounds->end())
        known = &found->second;
    solveOne(path, limit, known, verbose, totals);
  }
  printTotals(set, totals);
  return totals.wrong;
}

}  // namespace
}  // namespace suppertide::planning

int main(int argc, char** argv) {
  using suppertide::planning::kSets;
  CLI::App app("Plans published project schedules and compares with the published bounds");
  std::string data;
  std::vector<std::string> names;
  for (const auto& set : kSets) names.emplace_back(set.name);
  std::vector<std::string> wanted = names;
  std::string filter;
  double limit = 10;
  bool verbose = false;
  app.add_option("--data", data, "Folder with j30, j60, rcpsp-max, mm and their bounds")
      ->envname("SUPPERTIDE_PSPLIB")
      ->required();
  app.add_option("--sets", wanted, "Which sets, separated by commas")
      ->delimiter(',')
      ->check(CLI::IsMember(names))
      ->capture_default_str();
  app.add_option("--limit", limit, "Seconds for each instance")->capture_default_str();
  app.add_option("--filter", filter, "Only instances whose name holds this text");
  app.add_flag("--verbose", verbose, "A line for every instance, not only for those not proven or wrong");
  CLI11_PARSE(app, argc, argv);
  std::printf(suppertide::planning::kHead, "set", "count", "proven", "equal", "unsat proven", "wrong",
              "total s", "slowest s", "slowest");
  int wrong = 0;
  for (const auto& set : kSets)
    if (std::find(wanted.begin(), wanted.end(), set.name) != wanted.end())
      wrong += suppertide::planning::runSet(set, data, filter, limit, verbose);
  return wrong == 0 ? 0 : 1;
}
