#include <algorithm>

#include "absl/strings/str_cat.h"
#include "tests/support/psplib/project.h"

namespace suppertide::planning::psplib {
namespace {

Minute shortest(const Project::Job& job) {
  Minute length = kNoLimit;
  for (const auto& mode : job.modes) length = std::min(length, mode.length);
  return length;
}

Minute longest(const Project::Job& job) {
  Minute length = 0;
  for (const auto& mode : job.modes) length = std::max(length, mode.length);
  return length;
}

// If there is a schedule at all, there is one that ends by then: no optimal one
// has a minute in which nobody waits for a job or for a lag.
Minute latestEnd(const Project& project) {
  Minute all = 0;
  for (const auto& job : project.jobs) {
    Minute most = longest(job);
    for (const auto& lag : job.lags)
      most = std::max(most, lag.from == Edge::kStart ? lag.least : longest(job) + lag.least);
    all += most;
  }
  return all;
}

void addUses(const std::vector<int>& amounts, int firstResource, Mode& mode) {
  for (std::size_t r = 0; r < amounts.size(); ++r)
    if (amounts[r] > 0) mode.uses.push_back({firstResource + static_cast<int>(r), amounts[r]});
}

bool within(const std::vector<int>& amounts, const std::vector<int>& most) {
  for (std::size_t r = 0; r < amounts.size(); ++r)
    if (amounts[r] > most[r]) return false;
  return true;
}

// Without the modes that need more than there is. A job left without any gets
// one that is longer than the whole axis, as it fits nowhere.
Step stepFor(const Project& project, const Project::Job& job, std::size_t index, Minute axis) {
  Step step;
  step.id = absl::StrCat("job ", index);
  step.kind = StepKind::kWait;
  for (const auto& entry : job.modes) {
    if (!within(entry.uses, project.capacities) || !within(entry.consumes, project.stocks)) continue;
    Mode mode;
    mode.name = absl::StrCat("mode ", step.modes.size() + 1);
    mode.length = LengthTable::fixed(entry.length);
    addUses(entry.uses, 0, mode);
    addUses(entry.consumes, static_cast<int>(project.capacities.size()), mode);
    step.modes.push_back(mode);
  }
  if (step.modes.empty()) {
    step.modes.emplace_back();
    step.modes.back().name = "none";
    step.modes.back().length = LengthTable::fixed(axis + 1);
  }
  return step;
}

}  // namespace

Minute longestChain(const Project& project) {
  std::vector<Minute> start(project.jobs.size(), 0);
  bool moved = true;
  for (std::size_t round = 0; moved && round < project.jobs.size(); ++round) {
    moved = false;
    for (std::size_t i = 0; i < project.jobs.size(); ++i)
      for (const auto& lag : project.jobs[i].lags) {
        const Minute from = start[i] + (lag.from == Edge::kEnd ? shortest(project.jobs[i]) : 0);
        Minute& to = start[static_cast<std::size_t>(lag.to)];
        moved |= from + lag.least > to;
        to = std::max(to, from + lag.least);
      }
  }
  return start.back() + shortest(project.jobs.back());
}

absl::StatusOr<Problem> toProblem(const Project& project) {
  Problem problem;
  problem.limit = latestEnd(project) + 1;
  for (const int capacity : project.capacities)
    problem.resources.push_back({absl::StrCat("R", problem.resources.size() + 1), capacity, {}});
  for (const int stock : project.stocks)
    problem.resources.push_back({absl::StrCat("N", problem.resources.size() + 1), stock, {}, true});
  for (std::size_t i = 0; i < project.jobs.size(); ++i) {
    problem.steps.push_back(stepFor(project, project.jobs[i], i, problem.limit));
    for (const Mode& mode : problem.steps.back().modes)
      if (mode.length.rows.front().longest == 0 && !mode.uses.empty())
        return absl::InvalidArgumentError(absl::StrCat("job ", i, ": lasts no time and needs a resource"));
    for (const auto& lag : project.jobs[i].lags)
      problem.gaps.push_back({static_cast<int>(i), lag.from, lag.to, Edge::kStart, lag.least});
  }
  Dish dish;
  dish.id = "project";
  dish.lastStep = static_cast<int>(project.jobs.size()) - 1;
  dish.serve = std::min(longestChain(project), problem.limit);
  dish.lateLimit = problem.limit - dish.serve;
  problem.dishes.push_back(dish);
  return problem;
}

}  // namespace suppertide::planning::psplib
