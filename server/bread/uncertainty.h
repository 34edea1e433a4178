// How unsure a forecast is, and what the unsure things are.
//
// Three things vary from the likely case: the vigour of culture or yeast, the
// adaptation it still has before it, and the temperature of its places. A Shift
// says by how much in one case, an Uncertainty how much to expect.
#pragma once

#include <array>
#include <span>
#include <vector>

#include "server/bread/fermentation.h"

namespace suppertide::bread {

constexpr double kNinthDecile = 1.2816;  // of the standard normal distribution

// Standard deviations; all assumed until calibrated. Two starters differed by a
// factor 2 in gas (Houn and Hsu 2013, abstract), hence the vigour's.
struct Uncertainty {
  double logVigour = 0.20;
  double placeKelvin = 0.7;
  double lag = 0.3;  // of h0, times its own value
  // Correlations, -1 to 1; none until observations tie the three together.
  double vigourWithLag = 0;
  double vigourWithPlace = 0;
  double lagWithPlace = 0;
};

// One case against the likely one.
struct Shift {
  double logVigour = 0;
  double lag = 0;  // h0 times 1 plus this, at least 0
  double placeKelvin = 0;
};

// `state` just after mixing; later its adaptation shifts by the same power.
DoughState shifted(DoughState state, const Shift& shift);
std::vector<Stay> shifted(std::span<const Stay> stays, const Shift& shift);

// Three shifts of independent causes, one standard deviation each, that together
// have the stated deviations and correlations (columns of the Cholesky factor).
std::array<Shift, 3> independentCauses(const Uncertainty& uncertainty);

}  // namespace suppertide::bread
