#include "server/planning/clash/best_broken.h"

#include <algorithm>

namespace suppertide::planning {
namespace {

constexpr int kServingTiers = 2;  // unserved and lateness

class UntilServedBest : public Monitor {
 public:
  explicit UntilServedBest(Monitor* monitor) : monitor_(monitor) {}
  void improved(const Outcome& outcome) override {
    if (monitor_ != nullptr) monitor_->improved(outcome);
    const bool noneBroken =
        costIn(outcome.cost, Tier::kUnserved) == 0 && costIn(outcome.cost, Tier::kLateness) == 0;
    done_ = done_ || noneBroken || outcome.provenTiers >= kServingTiers;
  }
  bool stop() override { return done_ || (monitor_ != nullptr && monitor_->stop()); }

 private:
  Monitor* monitor_;
  bool done_ = false;
};

}  // namespace

std::vector<BrokenWish> brokenBy(const Problem& problem, const Schedule& schedule) {
  std::vector<BrokenWish> broken;
  for (std::size_t d = 0; d < problem.dishes.size(); ++d) {
    const Dish& dish = problem.dishes[d];
    BrokenWish wish{static_cast<int>(d), schedule.unserved[d], 0};
    if (!wish.unserved)
      wish.late = std::max(0, schedule.steps[static_cast<std::size_t>(dish.lastStep)].end - dish.serve);
    if (wish.unserved || wish.late > 0) broken.push_back(wish);
  }
  return broken;
}

absl::StatusOr<Outcome> bestBroken(const Problem& problem, const SearchOptions& options, Monitor* monitor) {
  UntilServedBest until(monitor);
  return makePlan(problem, options, &until);
}

}  // namespace suppertide::planning
