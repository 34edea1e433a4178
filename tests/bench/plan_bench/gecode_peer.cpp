#include <chrono>
#include <gecode/search.hh>
#include <memory>
#include <utility>
#include <vector>

#include "tests/bench/plan_bench/gecode_model.h"
#include "tests/bench/plan_bench/peers.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {

Run planWithGecode(const Problem& problem, std::uint64_t seed, double limitSeconds) {
  constexpr unsigned kFailures = 100;
  const auto since = [](std::chrono::steady_clock::time_point begin) {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  };
  Run run;
  const auto building = std::chrono::steady_clock::now();
  const auto dinner = std::make_unique<GecodeDinner>(problem, kDinnerGrid, static_cast<unsigned>(seed));
  run.startUp = since(building);
  const auto begin = std::chrono::steady_clock::now();
  Gecode::Search::TimeStop stop(static_cast<unsigned long>(1000 * limitSeconds));
  Gecode::Search::Options options;
  options.stop = &stop;
  options.cutoff = Gecode::Search::Cutoff::luby(kFailures);
  Gecode::RBS<GecodeDinner, Gecode::BAB> search(dinner.get(), options);
  std::vector<std::pair<double, std::vector<Placement>>> found;
  while (const std::unique_ptr<GecodeDinner> plan{search.next()})
    found.emplace_back(since(begin), plan->places());
  if (!search.stopped()) run.proof = since(begin);
  for (const auto& [when, places] : found) addPlan(problem, places, when, run);
  return run;
}

}  // namespace suppertide::planning
