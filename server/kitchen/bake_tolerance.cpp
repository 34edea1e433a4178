#include "server/kitchen/bake_tolerance.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"
#include "server/kitchen/conduction.h"

namespace suppertide::kitchen {
namespace {

// Heat transfer of a household oven and conductivity of moist food, textbook
// magnitudes from memory: only their quotient matters, to place a dish between the bounds.
constexpr double kSurfaceTransfer = 20;  // W/(m2 K)
constexpr double kConductivity = 0.5;    // W/(m K)
constexpr double kSpread = 0.10;         // recipes and ovens differ by this; common practice, no source
constexpr double kLeastDrive = 5;        // K between oven and end temperature

constexpr Source kDelicate{"25 F either way for yeast bread, custard, sponge", Mark::kMemory};
constexpr Source kRobust{"50 F either way for casseroles and roasts", Mark::kMemory};
constexpr Source kLikeDelicate{"as yeast bread", Mark::kPractice};
constexpr Source kLikeRobust{"as casseroles", Mark::kPractice};

constexpr std::array<ClassTolerance, 7> kTolerances = {{
    {BakeClass::kYeastBread, 14, 80, kDelicate},
    {BakeClass::kCustard, 14, 40, kDelicate},
    {BakeClass::kSponge, 14, 45, kDelicate},
    {BakeClass::kPastry, 14, 30, kLikeDelicate},
    {BakeClass::kCasserole, 28, 50, kRobust},
    {BakeClass::kVegetables, 28, 25, kLikeRobust},
    {BakeClass::kRoast, 28, 110, kRobust},
}};

Shape shapeOf(BakeClass bakeClass) {
  const bool round = bakeClass == BakeClass::kRoast || bakeClass == BakeClass::kYeastBread;
  return round ? Shape::kSphere : Shape::kSlab;
}

double biotOf(const Bake& bake) {
  const double thickness = bake.thicknessMm.value_or(toleranceOf(bake.bakeClass).typicalThicknessMm);
  return kSurfaceTransfer * (thickness / 2000) / kConductivity;
}

absl::Status checkBake(const Bake& bake) {
  if (!(bake.minutes > 0))
    return absl::InvalidArgumentError(absl::StrCat("bake time: ", bake.minutes, " minutes"));
  if (!(bake.endCelsius > bake.startCelsius)) {
    return absl::InvalidArgumentError(absl::StrCat("bake time: ends at ", bake.endCelsius,
                                                   " C, not above its start of ", bake.startCelsius));
  }
  if (bake.thicknessMm && !(*bake.thicknessMm > 0)) {
    return absl::InvalidArgumentError(absl::StrCat("bake time: ", *bake.thicknessMm, " mm thick"));
  }
  return absl::OkStatus();
}

}  // namespace

const ClassTolerance& toleranceOf(BakeClass bakeClass) {
  const auto* row = std::find_if(kTolerances.begin(), kTolerances.end(),
                                 [&](const ClassTolerance& r) { return r.bakeClass == bakeClass; });
  return row == kTolerances.end() ? kTolerances.front() : *row;
}

SetpointRange allowedSetpoints(const Bake& bake) {
  const double kelvin = toleranceOf(bake.bakeClass).kelvin;
  SetpointRange range{bake.leastCelsius.value_or(bake.setpointCelsius - kelvin),
                      bake.mostCelsius.value_or(bake.setpointCelsius + kelvin)};
  range.leastCelsius = std::max(range.leastCelsius, bake.endCelsius + kLeastDrive);
  return range;
}

absl::StatusOr<BakeTime> bakeTimeAt(const Bake& bake, double setpointCelsius) {
  if (absl::Status status = checkBake(bake); !status.ok()) return status;
  const Shape shape = shapeOf(bake.bakeClass);
  const auto ratio = [&](double biot) {
    return timeRatio(shape, biot, bake.setpointCelsius, setpointCelsius, bake.startCelsius, bake.endCelsius);
  };
  const absl::StatusOr<double> lumped = ratio(0);
  if (!lumped.ok()) return lumped.status();
  // The bounds can only fail together: they share their temperatures.
  const double thick = *ratio(std::numeric_limits<double>::infinity());
  const double likely = *ratio(biotOf(bake));
  return BakeTime{.checkFrom = bake.minutes * std::min(*lumped, thick) * (1 - kSpread),
                  .likely = bake.minutes * likely,
                  .atMost = bake.minutes * std::max(*lumped, thick) * (1 + kSpread)};
}

double fanCorrected(double celsius, bool recipeForFan, bool ovenHasFan) {
  constexpr double kFanKelvin = 20;
  if (recipeForFan == ovenHasFan) return celsius;
  return ovenHasFan ? celsius - kFanKelvin : celsius + kFanKelvin;
}

double degreesOff(const Bake& bake, double setpointCelsius) {
  return std::abs(setpointCelsius - bake.setpointCelsius);
}

}  // namespace suppertide::kitchen
