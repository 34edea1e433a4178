#include "server/planning/model/costs/quality.h"

namespace suppertide::planning {

std::int64_t qualityCost(const Mode& mode, Minute start, Minute end) {
  const Minute over = end - start - mode.length.at(start).best;
  return mode.qualityCost +
         std::int64_t{over < 0 ? -over : over} * (over < 0 ? mode.shortMinuteCost : mode.longMinuteCost);
}

std::int64_t waitCost(const Dish& dish, Minute ready) {
  return ready <= dish.serve ? dish.waitCost.at(dish.serve - ready) : 0;
}

}  // namespace suppertide::planning
