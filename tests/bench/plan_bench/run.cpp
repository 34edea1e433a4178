#include "tests/bench/plan_bench/run.h"

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstddef>
#include <cstdio>
#include <string>
#include <type_traits>

#include "server/planning/audit/audit.h"
#include "server/planning/solver/solver.h"
#include "tests/bench/cpu_time.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

class Stopwatch : public Monitor {
 public:
  Stopwatch(Run& run, double limitSeconds) : run_(run), limit_(limitSeconds) {}
  double seconds() const { return watch_.seconds(); }
  void improved(const Outcome& outcome) override {
    if (run_.plans.empty() || outcome.cost < run_.plans.back().cost)
      run_.plans.push_back({seconds(), outcome.cost});
    if (costIn(outcome.bound, Tier::kUnserved) > 0)
      run_.unservedProof = std::min(run_.unservedProof, seconds());
  }
  bool stop() override { return seconds() > limit_; }

 private:
  Run& run_;
  double limit_;
  CpuWatch watch_;
};

// A run without its list of plans, as it goes through the pipe.
struct Flat {
  double proof, unservedProof, startUp;
  TierCosts cost, bound;
  int provenTiers, breaches;
};
static_assert(std::is_trivially_copyable_v<Flat> && std::is_trivially_copyable_v<Found>);

void writeAll(int file, const void* data, std::size_t size) {
  const char* bytes = static_cast<const char*>(data);
  while (size > 0) {
    const ssize_t written = write(file, bytes, size);
    if (written <= 0) return;
    bytes += written;
    size -= static_cast<std::size_t>(written);
  }
}

void send(int file, const Run& run) {
  const Flat flat{run.proof, run.unservedProof, run.startUp, run.cost,
                  run.bound, run.provenTiers,   run.breaches};
  writeAll(file, &flat, sizeof flat);
  for (const Found& plan : run.plans) writeAll(file, &plan, sizeof plan);
}

template <typename T>
bool readOne(int file, T& value) {
  char* bytes = reinterpret_cast<char*>(&value);
  std::size_t size = sizeof value;
  while (size > 0) {
    const ssize_t got = read(file, bytes, size);
    if (got <= 0) return false;
    bytes += got;
    size -= static_cast<std::size_t>(got);
  }
  return true;
}

Run receive(int file) {
  Run run;
  Flat flat;
  if (!readOne(file, flat)) return run;
  run.proof = flat.proof;
  run.unservedProof = flat.unservedProof;
  run.startUp = flat.startUp;
  run.cost = flat.cost;
  run.bound = flat.bound;
  run.provenTiers = flat.provenTiers;
  run.breaches = flat.breaches;
  for (Found plan; readOne(file, plan);) run.plans.push_back(plan);
  return run;
}

}  // namespace

double Run::firstNear(const TierCosts& best) const {
  for (const Found& plan : plans) {
    bool near = true;
    for (std::size_t t = 0; t < best.size(); ++t) near = near && 100 * plan.cost[t] <= 101 * best[t];
    if (near || plan.cost <= best) return plan.when;
  }
  return kNever;
}

double Run::gap() const {
  if (provenTiers == kTierCount) return 0;
  const auto tier = static_cast<std::size_t>(provenTiers);
  if (cost[tier] == 0) return 0;
  return static_cast<double>(cost[tier] - bound[tier]) / static_cast<double>(cost[tier]);
}

Run planWithEngine(const Problem& problem, std::uint64_t seed, double limitSeconds) {
  Run run;
  Stopwatch watch(run, limitSeconds);
  const auto outcome = makePlan(problem, {.seed = seed, .workLimit = 0, .grid = kDinnerGrid}, &watch);
  const double now = watch.seconds();
  if (!outcome.ok()) {
    std::fprintf(stderr, "seed %llu: %s\n", static_cast<unsigned long long>(seed),
                 outcome.status().ToString().c_str());
    return run;
  }
  if (outcome->optimal()) run.proof = now;
  run.cost = outcome->cost;
  run.bound = outcome->bound;
  run.provenTiers = outcome->provenTiers;
  run.breaches = static_cast<int>(audit(problem, outcome->schedule).size());
  return run;
}

Run runApart(const Planner& planner, const Problem& problem, std::uint64_t seed, double limitSeconds) {
  int ends[2];
  if (pipe(ends) != 0) return {};
  std::fflush(nullptr);
  const pid_t child = fork();
  if (child == 0) {
    close(ends[0]);
    send(ends[1], planner(problem, seed, limitSeconds));
    _exit(0);
  }
  close(ends[1]);
  Run run = receive(ends[0]);
  close(ends[0]);
  rusage usage{};
  int status = 0;
  if (child > 0 && wait4(child, &status, 0, &usage) == child)
    run.memoryMegabytes = static_cast<double>(usage.ru_maxrss) / 1024.0;
  return run;
}

}  // namespace suppertide::planning
