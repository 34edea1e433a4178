#include "server/bread/uncertainty.h"

#include <algorithm>
#include <cmath>

namespace suppertide::bread {

DoughState shifted(DoughState state, const Shift& shift) {
  state.vigour *= std::exp(shift.logVigour);
  // The active share is exp(-h0), so a factor on h0 is a power of the share.
  if (state.activeShare < 1) state.activeShare = std::pow(state.activeShare, std::max(0.0, 1 + shift.lag));
  return state;
}

std::vector<Stay> shifted(std::span<const Stay> stays, const Shift& shift) {
  std::vector<Stay> result(stays.begin(), stays.end());
  for (Stay& stay : result) stay.air = stay.air.warmerBy(shift.placeKelvin);
  return result;
}

std::array<Shift, 3> independentCauses(const Uncertainty& uncertainty) {
  const double lagOwn = std::sqrt(std::max(0.0, 1 - uncertainty.vigourWithLag * uncertainty.vigourWithLag));
  const double placeByLag =
      lagOwn > 0
          ? (uncertainty.lagWithPlace - uncertainty.vigourWithLag * uncertainty.vigourWithPlace) / lagOwn
          : 0.0;
  const double placeOwn = std::sqrt(
      std::max(0.0, 1 - uncertainty.vigourWithPlace * uncertainty.vigourWithPlace - placeByLag * placeByLag));
  return {Shift{uncertainty.logVigour, uncertainty.lag * uncertainty.vigourWithLag,
                uncertainty.placeKelvin * uncertainty.vigourWithPlace},
          Shift{0, uncertainty.lag * lagOwn, uncertainty.placeKelvin * placeByLag},
          Shift{0, 0, uncertainty.placeKelvin * placeOwn}};
}

}  // namespace suppertide::bread
