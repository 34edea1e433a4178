// How long the smallest clashes take on dinners that do not fit.
//
//   clash_bench --dishes 6 --seeds 10
//
// Each dinner is a random one made short of time: holds are halved until it is
// proven that not every dish can be served. Prints a row a dinner and medians.
#include <algorithm>
#include <chrono>
#include <iostream>
#include <vector>

#include <CLI/CLI.hpp>

#include "server/planning/clash/wish_clash.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

using SteadyClock = std::chrono::steady_clock;

double millisSince(SteadyClock::time_point begin) {
  return std::chrono::duration<double, std::milli>(SteadyClock::now() - begin).count();
}

class CountingFeasibility : public Feasibility {
 public:
  explicit CountingFeasibility(std::int64_t conflicts) : engine_(kDinnerGrid, conflicts, {}) {}
  Feasible decide(const Problem& problem, Schedule* schedule, std::vector<int>* clashing) override {
    const auto begin = SteadyClock::now();
    const Feasible answer = engine_.decide(problem, schedule, clashing);
    slowest = std::max(slowest, millisSince(begin));
    ++asked;
    open += answer == Feasible::kUnknown ? 1 : 0;
    return answer;
  }
  int asked = 0;
  int open = 0;
  double slowest = 0;

 private:
  EngineFeasibility engine_;
};

bool cannotBeServed(const Problem& dinner, std::int64_t conflicts) {
  std::vector<Wish> served;
  for (int d = 0; d < static_cast<int>(dinner.dishes.size()); ++d) served.push_back({WishKind::kServed, d});
  EngineFeasibility feasibility(kDinnerGrid, conflicts, {});
  return feasibility.decide(relaxed(dinner, served, {})) == Feasible::kNo;
}

Problem twinOf(Problem dinner) {
  for (int round = 0; round < 6 && !cannotBeServed(dinner, 20'000); ++round) {
    for (Dish& dish : dinner.dishes) dish.holdLimit = dish.holdLimit / 2 / kDinnerGrid * kDinnerGrid;
    for (Resource& resource : dinner.resources)
      if (resource.id == "burners") resource.capacity = 1;
  }
  return dinner;
}

double median(std::vector<double> values) {
  if (values.empty()) return 0;
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

int run(int dishes, int seeds, std::int64_t conflicts) {
  std::vector<double> firsts;
  std::vector<double> alls;
  std::cout << "seed steps  sets wishes sure  first ms   all ms  asked  open  slowest ms\n";
  for (int seed = 1; seed <= seeds; ++seed) {
    const DinnerLoad load = seed % 2 == 0 ? DinnerLoad::kMiddling : DinnerLoad::kCrowded;
    const Problem dinner = twinOf(randomDinner(static_cast<std::uint64_t>(seed), dishes, load));
    CountingFeasibility feasibility(conflicts);
    double first = 0;
    const auto begin = SteadyClock::now();
    WishClashOptions options;
    options.found = [&](const WishClash&) { first = first > 0 ? first : millisSince(begin); };
    const auto clashes = wishClashes(dinner, options, feasibility);
    const double all = millisSince(begin);
    std::size_t wishes = 0;
    std::size_t sure = 0;
    for (const WishClash& clash : clashes) {
      wishes += clash.wishes.size();
      sure += clash.irreducible ? 1 : 0;
    }
    std::cout << seed << '\t' << dinner.steps.size() << '\t' << clashes.size() << '\t' << wishes << '\t'
              << sure << '\t' << first << '\t' << all << '\t' << feasibility.asked << '\t' << feasibility.open
              << '\t' << feasibility.slowest << '\n';
    if (clashes.empty()) continue;
    firsts.push_back(first);
    alls.push_back(all);
  }
  std::cout << "median: first set " << median(firsts) << " ms, all sets " << median(alls) << " ms, "
            << firsts.size() << " of " << seeds << " dinners with a clash\n";
  return 0;
}

}  // namespace
}  // namespace suppertide::planning

int main(int argc, char** argv) {
  CLI::App app("Times the search for the smallest clashes");
  int dishes = 6;
  int seeds = 10;
  std::int64_t conflicts = 2'000;
  app.add_option("--dishes", dishes, "6 is about 40 steps, 12 about 80")->check(CLI::Range(1, 40));
  app.add_option("--seeds", seeds)->check(CLI::Range(1, 100));
  app.add_option("--conflicts", conflicts, "Effort a question");
  CLI11_PARSE(app, argc, argv);
  return suppertide::planning::run(dishes, seeds, conflicts);
}
