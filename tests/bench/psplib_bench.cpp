// The engine on published project schedules (PSPLIB, single mode): result, proof and time per instance.
//
// An instance becomes one dish: its jobs are steps, the resources things, and
// the dish is served when the critical path ends, so that lateness is how far
// the project runs over it. Compare the results with the published bounds.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <map>
#include <numeric>
#include <sstream>
#include <string>
#include <vector>

#include "CLI/CLI.hpp"
#include "server/planning/audit/audit.h"
#include "server/planning/solver/solver.h"

namespace suppertide::planning {
namespace {

struct Project {
  struct Job {
    Minute length = 0;
    std::vector<int> next;
    std::vector<int> uses;
  };
  std::vector<Job> jobs;  // the first is the source, the last the sink
  std::vector<int> capacities;
};

// Skips lines up to and including one that holds `text`; false at the end of the file.
bool skipTo(std::istream& in, const std::string& text, int linesAfter = 0) {
  std::string line;
  while (std::getline(in, line)) {
    if (line.find(text) == std::string::npos) continue;
    while (linesAfter-- > 0) std::getline(in, line);
    return true;
  }
  return false;
}

int numberAfterColon(const std::string& line) {
  return std::stoi(line.substr(line.find(':') + 1));
}

Project readProject(const std::filesystem::path& path) {
  std::ifstream in(path);
  std::string line;
  Project project;
  std::size_t resources = 0;
  while (std::getline(in, line) && line.find("PRECEDENCE") == std::string::npos) {
    if (line.find("jobs (incl") != std::string::npos)
      project.jobs.resize(static_cast<std::size_t>(numberAfterColon(line)));
    if (line.find("- renewable") != std::string::npos)
      resources = static_cast<std::size_t>(numberAfterColon(line));
  }
  std::getline(in, line);
  int job = 0;
  int modes = 0;
  for (auto& entry : project.jobs) {
    std::size_t count = 0;
    in >> job >> modes >> count;
    entry.next.resize(count);
    for (int& next : entry.next) {
      in >> next;
      --next;
    }
  }
  skipTo(in, "REQUESTS/DURATIONS", 2);
  for (auto& entry : project.jobs) {
    in >> job >> modes >> entry.length;
    entry.uses.resize(resources);
    for (int& use : entry.uses) in >> use;
  }
  skipTo(in, "RESOURCEAVAILABILITIES", 1);
  project.capacities.resize(resources);
  for (int& capacity : project.capacities) in >> capacity;
  return project;
}

// Minutes from the start of the project to the end of its longest chain.
Minute criticalPath(const Project& project) {
  std::vector<Minute> start(project.jobs.size(), 0);
  for (std::size_t round = 0; round < project.jobs.size(); ++round)
    for (std::size_t i = 0; i < project.jobs.size(); ++i)
      for (const int next : project.jobs[i].next) {
        Minute& after = start[static_cast<std::size_t>(next)];
        after = std::max(after, start[i] + project.jobs[i].length);
      }
  return start.back();
}

Problem toProblem(const Project& project) {
  Problem problem;
  Minute all = 0;
  for (const auto& job : project.jobs) all += job.length;
  problem.limit = all + 1;
  for (std::size_t r = 0; r < project.capacities.size(); ++r)
    problem.resources.push_back({"R" + std::to_string(r + 1), project.capacities[r], {}});
  for (std::size_t i = 0; i < project.jobs.size(); ++i) {
    const auto& job = project.jobs[i];
    Step step;
    step.id = std::to_string(i + 1);
    step.kind = StepKind::kWait;
    Mode mode;
    mode.name = "only";
    mode.length = LengthTable::fixed(job.length);
    for (std::size_t r = 0; r < job.uses.size(); ++r)
      if (job.uses[r] > 0) mode.uses.push_back({static_cast<int>(r), job.uses[r]});
    step.modes.push_back(mode);
    problem.steps.push_back(step);
    for (const int next : job.next)
      problem.gaps.push_back({static_cast<int>(i), Edge::kEnd, next, Edge::kStart});
  }
  Dish dish;
  dish.id = "project";
  dish.lastStep = static_cast<int>(project.jobs.size()) - 1;
  dish.serve = criticalPath(project);
  dish.lateLimit = all - dish.serve;
  problem.dishes.push_back(dish);
  return problem;
}

class TimeLimit : public Monitor {
 public:
  explicit TimeLimit(double seconds) : seconds_(seconds) {}
  double elapsed() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin_).count();
  }
  bool stop() override { return elapsed() > seconds_; }

 private:
  double seconds_;
  std::chrono::steady_clock::time_point begin_ = std::chrono::steady_clock::now();
};

struct Published {
  int lower = 0;
  int upper = 0;
};

std::map<std::string, Published> readBounds(const std::string& path) {
  std::map<std::string, Published> bounds;
  std::ifstream in(path);
  std::string line;
  std::getline(in, line);  // the heading
  while (std::getline(in, line)) {
    std::replace(line.begin(), line.end(), ',', ' ');
    std::istringstream fields(line);
    std::string name;
    Published published;
    if (fields >> name >> published.lower >> published.upper) bounds[name] = published;
  }
  return bounds;
}

struct Totals {
  int count = 0;
  int proven = 0;
  int equal = 0;
  int wrong = 0;
  double seconds = 0;
};

void solveOne(const std::filesystem::path& path, double limit, const std::map<std::string, Published>& bounds,
              Totals& totals) {
  const Problem problem = toProblem(readProject(path));
  TimeLimit time(limit);
  const auto outcome = makePlan(problem, {.seed = 1, .workLimit = 0, .grid = 1}, &time);
  const double seconds = time.elapsed();
  const std::string name = path.stem().string();
  ++totals.count;
  totals.seconds += seconds;
  if (!outcome.ok()) {
    ++totals.wrong;
    std::printf("%s: %s\n", name.c_str(), std::string(outcome.status().message()).c_str());
    return;
  }
  const auto result = problem.dishes.front().serve + static_cast<int>(costIn(outcome->cost, Tier::kLateness));
  const bool proven = outcome->provenTiers >= 2;
  bool wrong = outcome->schedule.unserved.front() || !audit(problem, outcome->schedule).empty();
  totals.proven += proven;
  if (const auto known = bounds.find(name); known != bounds.end()) {
    totals.equal += result == known->second.upper;
    wrong |= result < known->second.lower || (proven && result != known->second.upper);
  }
  totals.wrong += wrong;
  std::printf("%s %d %s %.3f%s\n", name.c_str(), result, proven ? "proven" : "open", seconds,
              wrong ? " WRONG" : "");
  std::fflush(stdout);
}

}  // namespace
}  // namespace suppertide::planning

int main(int argc, char** argv) {
  CLI::App app("Plans published project schedules and compares with the published bounds");
  std::string instances;
  std::string boundsPath;
  std::string filter;
  double limit = 10;
  app.add_option("--instances", instances, "folder of .sm files")->required();
  app.add_option("--bounds", boundsPath, "CSV: instance,lower,upper");
  app.add_option("--limit", limit, "seconds for each");
  app.add_option("--filter", filter, "only instances whose name holds this text");
  CLI11_PARSE(app, argc, argv);
  if (!std::filesystem::is_directory(instances)) {
    std::printf("skipped: no folder %s\n", instances.c_str());
    return 0;
  }
  const auto bounds = suppertide::planning::readBounds(boundsPath);
  std::vector<std::filesystem::path> paths;
  for (const auto& entry : std::filesystem::directory_iterator(instances))
    if (entry.path().extension() == ".sm" && entry.path().stem().string().find(filter) != std::string::npos)
      paths.push_back(entry.path());
  std::sort(paths.begin(), paths.end());
  suppertide::planning::Totals totals;
  for (const auto& path : paths) suppertide::planning::solveOne(path, limit, bounds, totals);
  std::printf("instances %d, proven %d, equal to published %d, wrong %d, seconds %.1f\n", totals.count,
              totals.proven, totals.equal, totals.wrong, totals.seconds);
  return totals.wrong == 0 ? 0 : 1;
}
