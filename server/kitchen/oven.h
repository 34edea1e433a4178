// An oven: its dial, its racks, and how its temperature moves over time.
//
// Heating with a fixed power approaches a maximum that the dial never lets it
// reach; cooling is Newton's law towards the room. The air gets there before
// the walls do, so every rise ends with a soak. Temperatures are degrees
// Celsius, times are minutes. The defaults are those of a built-in electric
// oven of 60-70 litres; the owner's own readings replace them (oven_fit.h).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"

namespace suppertide::kitchen {

enum class Door { kClosed, kAjar };

// Things that take up heat after the air is hot.
enum class HeavyWare { kNone, kStone, kSteelPlate, kHeavyPot };

struct ThermalCurve {
  double roomCelsius = 22;
  double maximumCelsius = 360;  // where full power would level off
  double heatMinutes = 16;      // time constant of that approach
  double soakMinutes = 5;       // walls after air, at the end of each rise
  double closedMinutes = 80;    // time constants of cooling
  double ajarMinutes = 12;
};

// OK, or InvalidArgument naming the parameter that no oven has.
absl::Status check(const ThermalCurve& curve);

struct Oven {
  std::string id;
  double leastCelsius = 50;  // dial range, both ends included
  double mostCelsius = 250;
  double stepCelsius = 5;
  std::vector<int>
      clearHeightsMm;  // one a rack position, from the bottom: up to the next position or the roof
  int shelfCount = 0;  // shelves at hand; 0 means one for each position
  int shelfWidthMm = 0;
  int shelfDepthMm = 0;
  double litres = 0;
  bool fan = false;
  std::optional<double> lightCelsius;  // with only the light on; none when it is no warm place
  ThermalCurve curve;
};

// OK, or InvalidArgument naming what is missing or contradictory.
absl::Status check(const Oven& oven);

// The nearest setting of the oven's own dial, inside its range.
double nearestSetting(const Oven& oven, double celsius);

// Minutes from `fromCelsius` to `toCelsius`: full power and soak upwards,
// cooling by the door downwards, 0 when equal. OutOfRange when the target is at
// or above the curve's maximum, or a cooling target is not above the room.
absl::StatusOr<double> minutesBetween(const ThermalCurve& curve, double fromCelsius, double toCelsius,
                                      Door door);

// Minutes from switched off and cold (at room temperature) until ready, with
// the extra soak of `ware`. Same errors as minutesBetween.
absl::StatusOr<double> minutesFromCold(const ThermalCurve& curve, double toCelsius,
                                       HeavyWare ware = HeavyWare::kNone);

// Soak beyond that of the walls (common practice, no source).
double extraSoakMinutes(HeavyWare ware);

// Estimated temperature `minutes` after the dial was turned to `setpoint`, or
// off when empty, starting at `fromCelsius`. A reached setpoint is held.
double temperatureAfter(const ThermalCurve& curve, double fromCelsius, std::optional<double> setpoint,
                        Door door, double minutes);

// Air temperature lost while the door stands open at `celsius`, and the minutes
// after closing until the air is back; each loaded shelf put in adds its part.
double doorDropKelvin(const ThermalCurve& curve, double celsius, double openMinutes);
double doorRecoveryMinutes(const ThermalCurve& curve, double celsius, double openMinutes, int loadedShelves);

// Whole minutes, rounded up, for the changes a plan may ask of one oven.
struct ChangeTable {
  std::vector<int> setpoints;            // degrees Celsius, ascending, as asked
  std::vector<std::vector<int>> change;  // [from][to]; 0 on the diagonal; triangle inequality holds
  std::vector<int> fromCold;
};

// Table for the ascending `setpoints`. A setpoint equal to the rounded light
// temperature is the proofing place: after baking it is reached by cooling and
// then settling with the light on, from cold by the light alone. Every fall
// happens with the door as `coolingDoor` says: a table that mixed both doors
// would offer detours through the colder setting. InvalidArgument for setpoints
// that are not ascending or not on the dial (range; steps are not enforced).
absl::StatusOr<ChangeTable> changeTable(const Oven& oven, const std::vector<int>& setpoints,
                                        Door coolingDoor = Door::kAjar);

// Standard energy of one EU test cycle, electric, in kilowatt hours.
double standardEnergyKwh(double litres);

}  // namespace suppertide::kitchen
