#include "server/planning/solver/step_cost.h"

#include "server/planning/solver/indexing.h"

namespace suppertide::planning {

std::int64_t qualityCost(const Mode& mode, Minute start, Minute end) {
  const Minute over = end - start - mode.length.at(start).best;
  return mode.qualityCost +
         std::int64_t{over < 0 ? -over : over} * (over < 0 ? mode.shortMinuteCost : mode.longMinuteCost);
}

std::int64_t cookCost(const Problem& problem, const Mode& mode, int cook, int optionCost, Minute start,
                      Minute end) {
  if (cook < 0 || mode.attention == 0) return 0;
  std::int64_t cost = optionCost;
  for (const Cook::SoftHours& hours : at(problem.cooks, cook).unsocial) {
    const auto inside = hours.when.intersect({start, end});
    if (!inside.empty()) cost += std::int64_t{inside.limit - inside.start} * hours.minuteCost;
  }
  return cost;
}

std::int64_t waitCost(const Dish& dish, Minute ready) {
  return ready <= dish.serve ? dish.waitCost.at(dish.serve - ready) : 0;
}

std::int64_t workMinutes(const Mode& mode, Minute start, Minute end) {
  return std::int64_t{mode.attention} * (end - start) / 100;
}

}  // namespace suppertide::planning
