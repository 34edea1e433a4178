#include <gecode/search.hh>
#include <memory>
#include <utility>
#include <vector>

#include "tests/bench/cpu_time.h"
#include "tests/bench/plan_bench/gecode_model.h"
#include "tests/bench/plan_bench/peers.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

class CpuStop : public Gecode::Search::Stop {
 public:
  CpuStop(const CpuWatch& watch, double limitSeconds) : watch_(watch), limit_(limitSeconds) {}
  bool stop(const Gecode::Search::Statistics&, const Gecode::Search::Options&) override {
    return watch_.seconds() > limit_;
  }

 private:
  const CpuWatch& watch_;
  double limit_;
};

}  // namespace

Run planWithGecode(const Problem& problem, std::uint64_t seed, double limitSeconds) {
  constexpr unsigned kFailures = 100;
  Run run;
  const CpuWatch building;
  const auto dinner = std::make_unique<GecodeDinner>(problem, kDinnerGrid, static_cast<unsigned>(seed));
  run.startUp = building.seconds();
  const CpuWatch watch;
  CpuStop stop(watch, limitSeconds);
  Gecode::Search::Options options;
  options.stop = &stop;
  options.cutoff = Gecode::Search::Cutoff::luby(kFailures);
  Gecode::RBS<GecodeDinner, Gecode::BAB> search(dinner.get(), options);
  std::vector<std::pair<double, std::vector<Placement>>> found;
  while (const std::unique_ptr<GecodeDinner> plan{search.next()})
    found.emplace_back(watch.seconds(), plan->places());
  if (!search.stopped()) run.proof = watch.seconds();
  for (const auto& [when, places] : found) addPlan(problem, places, when, run);
  return run;
}

}  // namespace suppertide::planning
