// How fast and how calmly a running dinner is replanned: random disturbances of
// random dinners, each new plan audited.
#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <string>
#include <vector>

#include "server/planning/audit/audit.h"
#include "server/planning/replan/replan.h"
#include "tests/bench/cpu_time.h"
#include "tests/support/breach_text.h"
#include "tests/support/disturbance.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

class TimeUp : public Monitor {
 public:
  explicit TimeUp(double limitSeconds) : limit_(limitSeconds) {}
  double seconds() const { return watch_.seconds(); }
  bool stop() override { return seconds() > limit_; }

 private:
  double limit_;
  CpuWatch watch_;
};

struct Tally {
  std::vector<double> seconds;
  std::vector<double> searched;  // where something had to move
  std::vector<double> moved;     // steps, where any did
  int nothingMoved = 0;
  int shifted = 0;
  int anew = 0;
  int breaches = 0;
  int lessServed = 0;
  int later = 0;
  int strained = 0;  // under way, served by overrunning a limit
};

double part(std::vector<double> values, double share) {
  if (values.empty()) return 0;
  std::sort(values.begin(), values.end());
  return values[std::min(values.size() - 1,
                         static_cast<std::size_t>(share * static_cast<double>(values.size())))];
}

struct Options {
  int dishes = 12;
  int dinners = 20;
  int disturbances = 10;  // of each dinner
  double planSeconds = 2;
  double replanSeconds = 1;
  std::string load = "middling";
  bool verbose = false;
};

void runOne(const Problem& problem, const Schedule& plan, std::uint64_t seed, const Options& options,
            Tally& tally) {
  const Disturbed disturbed = randomDisturbance(problem, plan, seed);
  ReplanOptions how;
  how.search.grid = kDinnerGrid;
  TimeUp time(options.replanSeconds);
  const auto result = replan(disturbed.problem, disturbed.running, how, &time);
  const double seconds = time.seconds();
  if (!result.ok()) {
    std::printf("seed %llu: %s\n", static_cast<unsigned long long>(seed), result.status().ToString().c_str());
    ++tally.breaches;
    return;
  }
  tally.seconds.push_back(seconds);
  if (!result->strained.empty()) ++tally.strained;
  for (const auto& text : breachTexts(result->remains.problem, result->schedule)) {
    if (!result->strained.empty()) break;
    ++tally.breaches;
    std::printf("seed %llu, %s: %s\n", static_cast<unsigned long long>(seed), disturbed.what.c_str(),
                text.c_str());
  }
  const auto told = costOf(disturbed.problem, plan).total;
  if (costIn(result->cost, Tier::kUnserved) > costIn(told, Tier::kUnserved)) ++tally.lessServed;
  if (costIn(result->cost, Tier::kLateness) > costIn(told, Tier::kLateness)) ++tally.later;
  int moved = 0;
  for (const Move& move : result->moves) moved += move.cause == MoveCause::kReported ? 0 : 1;
  if (result->way == Replanned::Way::kNothingMoves) {
    ++tally.nothingMoved;
  } else {
    tally.searched.push_back(seconds);
    tally.moved.push_back(moved);
    tally.shifted += result->way == Replanned::Way::kShifted ? 1 : 0;
    tally.anew += result->way == Replanned::Way::kPlannedAnew ? 1 : 0;
  }
  if (options.verbose)
    std::printf("%6llu %-40s way %d %7.1f ms, %d moved, unserved %lld late %lld moves %lld\n",
                static_cast<unsigned long long>(seed), disturbed.what.c_str(), static_cast<int>(result->way),
                seconds * 1000, moved, static_cast<long long>(costIn(result->cost, Tier::kUnserved)),
                static_cast<long long>(costIn(result->cost, Tier::kLateness)),
                static_cast<long long>(costIn(result->cost, Tier::kMoves)));
}

int run(const Options& options) {
  const DinnerLoad load = options.load == "light"     ? DinnerLoad::kLight
                          : options.load == "crowded" ? DinnerLoad::kCrowded
                                                      : DinnerLoad::kMiddling;
  Tally tally;
  std::size_t steps = 0;
  for (int dinner = 1; dinner <= options.dinners; ++dinner) {
    const Problem problem = randomDinner(static_cast<std::uint64_t>(dinner), options.dishes, load);
    TimeUp time(options.planSeconds);
    const auto planned = makePlan(problem, {.seed = 1, .workLimit = 0, .grid = kDinnerGrid}, &time);
    if (!planned.ok()) continue;
    steps += problem.steps.size();
    for (int k = 0; k < options.disturbances; ++k)
      runOne(problem, planned->schedule, static_cast<std::uint64_t>(dinner * 1000 + k), options, tally);
  }
  const auto all = tally.seconds.size();
  std::printf("%zu disturbances of %d %s dinners of %zu steps on average\n", all, options.dinners,
              options.load.c_str(), steps / static_cast<std::size_t>(std::max(1, options.dinners)));
  std::printf("replan ms:   median %.1f, p90 %.1f, max %.1f\n", 1000 * part(tally.seconds, 0.5),
              1000 * part(tally.seconds, 0.9), 1000 * part(tally.seconds, 1));
  std::printf("  searched:  median %.1f, p90 %.1f, max %.1f (%zu)\n", 1000 * part(tally.searched, 0.5),
              1000 * part(tally.searched, 0.9), 1000 * part(tally.searched, 1), tally.searched.size());
  std::printf("nothing moved: %d (%.0f %%); shifted %d, planned anew %d\n", tally.nothingMoved,
              100.0 * tally.nothingMoved / static_cast<double>(std::max<std::size_t>(1, all)), tally.shifted,
              tally.anew);
  std::printf("moved steps, where any: median %.0f, p90 %.0f, max %.0f\n", part(tally.moved, 0.5),
              part(tally.moved, 0.9), part(tally.moved, 1));
  std::printf("served less than before: %d, later: %d, under way and over a limit: %d, breaches: %d\n",
              tally.lessServed, tally.later, tally.strained, tally.breaches);
  return tally.breaches == 0 ? 0 : 1;
}

}  // namespace
}  // namespace suppertide::planning

int main(int argc, char** argv) {
  suppertide::planning::Options options;
  CLI::App app{
      "Replans random running dinners and audits every answer.\n\n"
      "Example: replan_bench --dishes 12 --dinners 20 --disturbances 10"};
  app.add_option("--dishes", options.dishes, "About 6.5 steps each");
  app.add_option("--dinners", options.dinners);
  app.add_option("--disturbances", options.disturbances, "Of each dinner");
  app.add_option("--plan-seconds", options.planSeconds, "Longest search for the plan that runs");
  app.add_option("--replan-seconds", options.replanSeconds, "Longest replanning");
  app.add_option("--load", options.load)->check(CLI::IsMember({"light", "middling", "crowded"}));
  app.add_flag("--verbose", options.verbose, "One line for each disturbance");
  CLI11_PARSE(app, argc, argv);
  return suppertide::planning::run(options);
}
