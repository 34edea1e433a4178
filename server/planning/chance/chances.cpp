#include "server/planning/chance/chances.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "server/base/index.h"
#include "server/planning/chance/draws.h"
#include "server/planning/chance/evening_network.h"

namespace suppertide::planning {
namespace {

// The tenth and the ninetieth percentile of `times`, which it reorders.
Band bandOf(std::vector<float>& times) {
  const auto nth = [&](std::size_t rank) {
    std::nth_element(times.begin(), times.begin() + static_cast<std::ptrdiff_t>(rank), times.end());
    return times[rank];
  };
  const float early = nth(times.size() / 10);
  const float late = nth(times.size() - 1 - times.size() / 10);
  return {static_cast<Minute>(std::floor(early)), static_cast<Minute>(std::ceil(late))};
}

class Simulation {
 public:
  Simulation(const Problem& problem, const Schedule& schedule, const EveningOptions& options, Draws& draws)
      : problem_(problem),
        schedule_(schedule),
        options_(options),
        network_(problem, schedule),
        draws_(draws),
        factors_(problem.steps.size()),
        times_(2 * problem.steps.size()),
        inTime_(problem.dishes.size(), 0),
        late_(problem.dishes.size(), 0),
        waitedFor_(problem.steps.size(), 0),
        courseInTime_(options.courses.size(), 0),
        blamed_(options.courses.size(), std::vector<int>(problem.steps.size() + 1, 0)) {
    for (Lanes& factors : factors_) factors.fill(1);
    for (int i = 0; i < static_cast<int>(problem.steps.size()); ++i)
      if (isServed(problem, schedule, i) && draws_.varies(i)) varying_.push_back(i);
    if (options.bands) all_.assign(network_.order().size(), std::vector<float>(at(options.evenings)));
  }

  Chances run() {
    for (int first = 0; first < options_.evenings; first += kLanes) {
      draws_.beginBlock(first);
      for (const int step : varying_) factors_[at(step)] = draws_.factors(step);
      network_.run(factors_, times_);
      count(first, std::min(kLanes, options_.evenings - first));
    }
    return answer();
  }

 private:
  bool served(int dish) const { return !schedule_.unserved[at(dish)]; }

  float lateBy(int dish, std::size_t lane) const {
    const Dish& what = problem_.dishes[at(dish)];
    return times_[at(endOf(what.lastStep))][lane] - static_cast<float>(what.serve + options_.grace);
  }

  void count(int first, int lanes) {
    for (std::size_t e = 0; e < all_.size(); ++e) {
      const Lanes& times = times_[at(network_.order()[e])];
      std::copy_n(times.begin(), lanes, all_[e].begin() + first);
    }
    for (std::size_t lane = 0; lane < at(lanes); ++lane) {
      for (int d = 0; d < static_cast<int>(problem_.dishes.size()); ++d) countDish(d, lane);
      for (std::size_t c = 0; c < options_.courses.size(); ++c) countCourse(c, lane);
    }
  }

  void countDish(int dish, std::size_t lane) {
    if (!served(dish)) return;
    const float late = lateBy(dish, lane);
    if (late <= 0) {
      ++inTime_[at(dish)];
    } else {
      late_[at(dish)] += late;
    }
  }

  void countCourse(std::size_t course, std::size_t lane) {
    int latest = -1;
    for (const int dish : options_.courses[course])
      if (served(dish) && (latest < 0 || lateBy(dish, lane) > lateBy(latest, lane))) latest = dish;
    if (latest < 0) return;
    if (lateBy(latest, lane) <= 0) {
      ++courseInTime_[course];
    } else {
      ++blamed_[course][at(blameFor(latest, lane) + 1)];
    }
  }

  // Of the steps that the dish waited for, all counted, the one that ran longest over its planned length.
  int blameFor(int dish, std::size_t lane) {
    int step = -1;
    float worst = 0;
    for (const int event : network_.chainTo(endOf(problem_.dishes[at(dish)].lastStep), times_, lane)) {
      if (event % 2 == 0) continue;
      ++waitedFor_[at(event / 2)];
      const Placement& place = schedule_.steps[at(event / 2)];
      const float over =
          times_[at(event)][lane] - times_[at(event - 1)][lane] - static_cast<float>(place.end - place.start);
      if (over <= worst) continue;
      worst = over;
      step = event / 2;
    }
    return step;
  }

  Blame blameOf(std::size_t course) const {
    const std::vector<int>& counts = blamed_[course];
    int late = 0;
    for (const int count : counts) late += count;
    const auto most = std::max_element(counts.begin() + 1, counts.end());
    if (most == counts.end() || *most == 0) return {};
    return {static_cast<int>(most - counts.begin()) - 1, static_cast<double>(*most) / late};
  }

  Chances answer() {
    Chances chances;
    const auto part = [&](int count) { return static_cast<double>(count) / options_.evenings; };
    for (const int count : inTime_) chances.byDish.push_back(part(count));
    for (const double minutes : late_) chances.lateMinutes.push_back(minutes / options_.evenings);
    for (const int count : waitedFor_) chances.waitedFor.push_back(part(count));
    for (std::size_t c = 0; c < options_.courses.size(); ++c) {
      chances.byCourse.push_back(part(courseInTime_[c]));
      chances.blame.push_back(blameOf(c));
    }
    if (options_.bands) addBands(chances);
    return chances;
  }

  void addBands(Chances& chances) {
    for (const Placement& place : schedule_.steps) {
      chances.starts.push_back({place.start, place.start});
      chances.ends.push_back({place.end, place.end});
    }
    for (std::size_t e = 0; e < all_.size(); ++e) {
      const int event = network_.order()[e];
      auto& bands = event % 2 == 0 ? chances.starts : chances.ends;
      bands[at(event / 2)] = bandOf(all_[e]);
    }
  }

  const Problem& problem_;
  const Schedule& schedule_;
  const EveningOptions& options_;
  EveningNetwork network_;
  Draws& draws_;
  std::vector<int> varying_;    // steps
  std::vector<Lanes> factors_;  // by step
  std::vector<Lanes> times_;    // by event
  std::vector<int> inTime_;     // by dish
  std::vector<double> late_;    // by dish, minutes of all evenings
  std::vector<int> waitedFor_;  // by step
  std::vector<int> courseInTime_;
  std::vector<std::vector<int>> blamed_;  // by course: nobody, then by step
  std::vector<std::vector<float>> all_;   // by place in the network's order, by evening
};

}  // namespace

Chances chancesOf(const Problem& problem, const Schedule& schedule, const EveningOptions& options) {
  Draws draws(problem, schedule, options.seed);
  return chancesOf(problem, schedule, options, draws);
}

Chances chancesOf(const Problem& problem, const Schedule& schedule, const EveningOptions& options,
                  Draws& draws) {
  return Simulation(problem, schedule, options, draws).run();
}

}  // namespace suppertide::planning
