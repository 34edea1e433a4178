// Feeding a levain: starter : flour : water, and how much of each to weigh.
#pragma once

#include <array>

#include "absl/status/statusor.h"

namespace suppertide::bread {

// Share of a build that sticks to jar and spoon; common practice, no source.
inline constexpr double kJarLossShare = 0.10;

// Parts by mass; 1:2:2 is {1, 2, 2}.
struct LevainRatio {
  double starter = 1;
  double flour = 1;
  double water = 1;

  // Starter's flour over all flour: 1/3 for 1:1:1 of a starter with hydration 1.
  double inoculation(double starterHydration = 1.0) const;
  // Starter's mass over all mass.
  double starterShare() const;
  // Water over flour after mixing.
  double hydration(double starterHydration = 1.0) const;
  friend bool operator==(const LevainRatio&, const LevainRatio&) = default;
};

// From the strongest to the leanest feeding that home bakers use.
inline constexpr std::array<LevainRatio, 5> kUsualRatios = {
    LevainRatio{1, 1, 1}, {1, 2, 2}, {1, 3, 3}, {1, 5, 5}, {1, 10, 10}};

struct LevainBuild {
  double starterGrams = 0;
  double flourGrams = 0;
  double waterGrams = 0;
  double totalGrams = 0;  // before the loss
  double hydration = 0;
};

// What to weigh so that `wantedGrams` can be taken out. InvalidArgument when a
// number isn't above 0, or the loss isn't in [0, 1).
absl::StatusOr<LevainBuild> buildLevain(double wantedGrams, const LevainRatio& ratio,
                                        double starterHydration = 1.0, double jarLossShare = kJarLossShare);

}  // namespace suppertide::bread
