// Simulated evenings: ten thousand of one plan, and buying robustness.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <cstdlib>
#include <map>

#include "server/planning/chance/robustness.h"
#include "server/planning/solver/solver.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

struct Planned {
  Problem problem;
  Schedule schedule;
};

// A middling dinner with spreads everywhere, planned once.
const Planned& dinnerOf(int dishes) {
  static std::map<int, Planned> made;
  const auto found = made.find(dishes);
  if (found != made.end()) return found->second;
  Planned planned;
  planned.problem = randomDinner(1, dishes, DinnerLoad::kMiddling, {.spreads = true});
  const auto outcome = makePlan(planned.problem, {.seed = 1, .workLimit = 200, .grid = kDinnerGrid});
  if (!outcome.ok()) std::abort();
  planned.schedule = outcome->schedule;
  return made.emplace(dishes, std::move(planned)).first->second;
}

// Courses of the dishes that are planned in time: one planned late is late on every evening.
EveningOptions optionsFor(const Planned& planned, int evenings) {
  EveningOptions options;
  options.evenings = evenings;
  std::map<Minute, std::vector<int>> courses;
  for (std::size_t d = 0; d < planned.problem.dishes.size(); ++d) {
    const Dish& dish = planned.problem.dishes[d];
    const Minute ready = planned.schedule.steps[static_cast<std::size_t>(dish.lastStep)].end;
    if (!planned.schedule.unserved[d] && ready <= dish.serve)
      courses[dish.serve].push_back(static_cast<int>(d));
  }
  for (auto& [serve, dishes] : courses) options.courses.push_back(dishes);
  return options;
}

void tenThousandEvenings(benchmark::State& state) {
  const Planned& planned = dinnerOf(static_cast<int>(state.range(0)));
  const EveningOptions options = optionsFor(planned, 10'000);
  double least = 1;
  for (auto _ : state) {
    const Chances chances = chancesOf(planned.problem, planned.schedule, options);
    for (const double chance : chances.byCourse) least = std::min(least, chance);
  }
  state.counters["steps"] = static_cast<double>(planned.problem.steps.size());
  state.counters["least_chance"] = least;
}
void buyingRobustness(benchmark::State& state) {
  const Planned& planned = dinnerOf(static_cast<int>(state.range(0)));
  RobustnessOptions options;
  options.evenings.courses = optionsFor(planned, 1).courses;
  EveningOptions fresh = optionsFor(planned, 10'000);
  fresh.seed = 99;
  const auto least = [&](const Schedule& schedule) {
    double chance = 1;
    for (const double course : chancesOf(planned.problem, schedule, fresh).byCourse)
      chance = std::min(chance, course);
    return chance;
  };
  Schedule bought;
  for (auto _ : state) bought = buyRobustness(planned.problem, planned.schedule, options);
  state.counters["before"] = least(planned.schedule);
  state.counters["after"] = least(bought);
}
BENCHMARK(buyingRobustness)->Arg(6)->Arg(12)->Arg(24)->Unit(benchmark::kMillisecond);
BENCHMARK(tenThousandEvenings)->Arg(6)->Arg(12)->Arg(24)->Arg(46)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace suppertide::planning
