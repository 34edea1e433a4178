// A cost that is linear between knots and level outside them.
#pragma once

#include <vector>

namespace suppertide::planning {

struct CostCurve {
  struct Knot {
    int at = 0;
    int cost = 0;
  };
  std::vector<Knot> knots;  // ascending in `at`; none means no cost anywhere

  // Rounded down; linear in the knots.
  int at(int position) const;
};

}  // namespace suppertide::planning
