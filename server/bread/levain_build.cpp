#include "server/bread/levain_build.h"

#include <cmath>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace suppertide::bread {
namespace {

bool isAmount(double value) {
  return std::isfinite(value) && value > 0;
}

}  // namespace

double LevainRatio::inoculation(double starterHydration) const {
  const double starterFlour = starter / (1 + starterHydration);
  return starterFlour / (starterFlour + flour);
}

double LevainRatio::starterShare() const {
  return starter / (starter + flour + water);
}

double LevainRatio::hydration(double starterHydration) const {
  const double starterFlour = starter / (1 + starterHydration);
  return (starter - starterFlour + water) / (starterFlour + flour);
}

absl::StatusOr<LevainBuild> buildLevain(double wantedGrams, const LevainRatio& ratio, double starterHydration,
                                        double jarLossShare) {
  if (!isAmount(wantedGrams) || !isAmount(ratio.starter) || !isAmount(ratio.flour) ||
      !isAmount(ratio.water) || !isAmount(starterHydration)) {
    return absl::InvalidArgumentError(absl::StrCat(
        "build levain: wanted mass, starter, flour, water and hydration must be above 0, but are ",
        wantedGrams, ", ", ratio.starter, ", ", ratio.flour, ", ", ratio.water, ", ", starterHydration));
  }
  if (!(jarLossShare >= 0 && jarLossShare < 1)) {
    return absl::InvalidArgumentError(
        absl::StrCat("build levain: jar loss share ", jarLossShare, " is not in [0, 1)"));
  }
  const double total = wantedGrams / (1 - jarLossShare);
  const double gramsPerPart = total / (ratio.starter + ratio.flour + ratio.water);
  return LevainBuild{ratio.starter * gramsPerPart, ratio.flour * gramsPerPart, ratio.water * gramsPerPart,
                     total, ratio.hydration(starterHydration)};
}

}  // namespace suppertide::bread
