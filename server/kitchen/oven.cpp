#include "server/kitchen/oven.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"

namespace suppertide::kitchen {
namespace {

// At 177 C the air of an open oven falls by 56 K in a minute (McGee, measured)
// and comes back at that pace, because the walls have stayed hot.
constexpr double kOpenAirMinutes = 2.25;
constexpr double kAirBackKelvinPerMinute = 56;
// A loaded shelf costs 3 to 5 minutes (from memory).
constexpr double kLoadedShelfMinutes = 4;
// Doors closed again over warm walls push the air up once more; common practice, no source.
constexpr double kProofSettleMinutes = 10;
// Thirty minutes with the light on before a dough goes in (cookbook advice).
constexpr double kLightWarmMinutes = 30;

absl::Status bad(const char* what, double value) {
  return absl::InvalidArgumentError(absl::StrCat("check oven: ", what, " cannot be ", value));
}

double heatingMinutes(const ThermalCurve& curve, double from, double to) {
  return curve.heatMinutes * std::log((curve.maximumCelsius - from) / (curve.maximumCelsius - to));
}

double coolingTau(const ThermalCurve& curve, Door door) {
  return door == Door::kClosed ? curve.closedMinutes : curve.ajarMinutes;
}

int roundedUp(double minutes) {
  return static_cast<int>(std::ceil(minutes - 1e-9));
}

bool isProofing(const Oven& oven, int setpoint) {
  return oven.lightCelsius && std::lround(*oven.lightCelsius) == setpoint;
}

absl::StatusOr<int> changeMinutes(const Oven& oven, int from, int to, Door coolingDoor) {
  const bool proofing = isProofing(oven, to);
  absl::StatusOr<double> minutes = minutesBetween(oven.curve, from, to, coolingDoor);
  if (!minutes.ok() || from == to) return minutes.ok() ? absl::StatusOr<int>(0) : minutes.status();
  return roundedUp(*minutes + (proofing ? kProofSettleMinutes : 0));
}

absl::StatusOr<int> coldMinutes(const Oven& oven, int to) {
  if (isProofing(oven, to)) return roundedUp(kLightWarmMinutes);
  absl::StatusOr<double> minutes = minutesFromCold(oven.curve, to);
  if (!minutes.ok()) return minutes.status();
  return roundedUp(*minutes);
}

absl::Status checkSetpoints(const Oven& oven, const std::vector<int>& setpoints) {
  for (std::size_t i = 0; i < setpoints.size(); ++i) {
    const int setpoint = setpoints[i];
    if (i > 0 && setpoint <= setpoints[i - 1]) {
      return absl::InvalidArgumentError(
          absl::StrCat("oven ", oven.id, ": setpoints do not ascend at ", setpoint));
    }
    const bool onDial = setpoint >= oven.leastCelsius && setpoint <= oven.mostCelsius;
    if (!onDial && !isProofing(oven, setpoint)) {
      return absl::InvalidArgumentError(
          absl::StrCat("oven ", oven.id, ": ", setpoint, " C is not on its dial"));
    }
  }
  return absl::OkStatus();
}

}  // namespace

absl::Status check(const ThermalCurve& curve) {
  if (!(curve.roomCelsius >= -10 && curve.roomCelsius <= 50))
    return bad("room temperature", curve.roomCelsius);
  if (!(curve.maximumCelsius >= curve.roomCelsius + 50 && curve.maximumCelsius <= 5000)) {
    return bad("maximum temperature", curve.maximumCelsius);
  }
  if (!(curve.heatMinutes > 0 && curve.heatMinutes <= 1000))
    return bad("heating constant", curve.heatMinutes);
  if (!(curve.soakMinutes >= 0 && curve.soakMinutes <= 120)) return bad("soak", curve.soakMinutes);
  if (!(curve.ajarMinutes > 0 && curve.ajarMinutes <= curve.closedMinutes)) {
    return bad("cooling constant with the door ajar", curve.ajarMinutes);
  }
  if (!(curve.closedMinutes <= 2000))
    return bad("cooling constant with the door closed", curve.closedMinutes);
  return absl::OkStatus();
}

absl::Status check(const Oven& oven) {
  if (absl::Status status = check(oven.curve); !status.ok()) return status;
  if (!(oven.leastCelsius >= 30 && oven.leastCelsius < oven.mostCelsius)) {
    return bad("lowest setting", oven.leastCelsius);
  }
  if (!(oven.mostCelsius < oven.curve.maximumCelsius)) return bad("highest setting", oven.mostCelsius);
  if (!(oven.stepCelsius > 0)) return bad("dial step", oven.stepCelsius);
  if (oven.clearHeightsMm.empty()) return bad("count of rack positions", 0);
  for (int height : oven.clearHeightsMm) {
    if (height <= 0) return bad("clear height", height);
  }
  if (oven.shelfCount < 0) return bad("count of shelves", oven.shelfCount);
  if (oven.shelfWidthMm <= 0) return bad("shelf width", oven.shelfWidthMm);
  if (oven.shelfDepthMm <= 0) return bad("shelf depth", oven.shelfDepthMm);
  // A light that does not warm, or warms beyond what dough bears, makes no proofing place.
  if (oven.lightCelsius && !(*oven.lightCelsius > oven.curve.roomCelsius && *oven.lightCelsius <= 45)) {
    return bad("light-on temperature", *oven.lightCelsius);
  }
  return absl::OkStatus();
}

double nearestSetting(const Oven& oven, double celsius) {
  const double inside = std::clamp(celsius, oven.leastCelsius, oven.mostCelsius);
  const double steps = std::floor((inside - oven.leastCelsius) / oven.stepCelsius + 0.5);
  const double setting = oven.leastCelsius + steps * oven.stepCelsius;
  return setting <= oven.mostCelsius ? setting : setting - oven.stepCelsius;
}

absl::StatusOr<double> minutesBetween(const ThermalCurve& curve, double fromCelsius, double toCelsius,
                                      Door door) {
  if (fromCelsius == toCelsius) return 0.0;
  if (toCelsius > fromCelsius) {
    if (!(toCelsius < curve.maximumCelsius)) {
      return absl::OutOfRangeError(
          absl::StrCat("heat oven to ", toCelsius, " C: its curve ends at ", curve.maximumCelsius));
    }
    return heatingMinutes(curve, fromCelsius, toCelsius) + curve.soakMinutes;
  }
  if (!(toCelsius > curve.roomCelsius)) {
    return absl::OutOfRangeError(
        absl::StrCat("cool oven to ", toCelsius, " C: the room has ", curve.roomCelsius));
  }
  return coolingTau(curve, door) *
         std::log((fromCelsius - curve.roomCelsius) / (toCelsius - curve.roomCelsius));
}

absl::StatusOr<double> minutesFromCold(const ThermalCurve& curve, double toCelsius, HeavyWare ware) {
  absl::StatusOr<double> minutes = minutesBetween(curve, curve.roomCelsius, toCelsius, Door::kClosed);
  if (!minutes.ok()) return minutes;
  return *minutes + extraSoakMinutes(ware);
}

double extraSoakMinutes(HeavyWare ware) {
  switch (ware) {
    case HeavyWare::kNone:
      return 0;
    case HeavyWare::kStone:
      return 30;
    case HeavyWare::kSteelPlate:
      return 30;
    case HeavyWare::kHeavyPot:
      return 20;
  }
  return 0;
}

double temperatureAfter(const ThermalCurve& curve, double fromCelsius, std::optional<double> setpoint,
                        Door door, double minutes) {
  const double passed = std::max(minutes, 0.0);
  if (setpoint && *setpoint >= fromCelsius) {
    const double gap = (curve.maximumCelsius - fromCelsius) * std::exp(-passed / curve.heatMinutes);
    return std::min(*setpoint, curve.maximumCelsius - gap);
  }
  const double excess = (fromCelsius - curve.roomCelsius) * std::exp(-passed / coolingTau(curve, door));
  const double cooled = curve.roomCelsius + excess;
  return setpoint ? std::max(*setpoint, cooled) : cooled;
}

double doorDropKelvin(const ThermalCurve& curve, double celsius, double openMinutes) {
  const double above = std::max(celsius - curve.roomCelsius, 0.0);
  return above * (1 - std::exp(-std::max(openMinutes, 0.0) / kOpenAirMinutes));
}

double doorRecoveryMinutes(const ThermalCurve& curve, double celsius, double openMinutes, int loadedShelves) {
  return doorDropKelvin(curve, celsius, openMinutes) / kAirBackKelvinPerMinute +
         kLoadedShelfMinutes * std::max(loadedShelves, 0);
}

absl::StatusOr<ChangeTable> changeTable(const Oven& oven, const std::vector<int>& setpoints,
                                        Door coolingDoor) {
  if (absl::Status status = checkSetpoints(oven, setpoints); !status.ok()) return status;
  ChangeTable table{.setpoints = setpoints, .change = {}, .fromCold = {}};
  for (int from : setpoints) {
    std::vector<int>& row = table.change.emplace_back();
    for (int to : setpoints) {
      absl::StatusOr<int> minutes = changeMinutes(oven, from, to, coolingDoor);
      if (!minutes.ok()) return minutes.status();
      row.push_back(*minutes);
    }
    absl::StatusOr<int> cold = coldMinutes(oven, from);
    if (!cold.ok()) return cold.status();
    table.fromCold.push_back(*cold);
  }
  return table;
}

double standardEnergyKwh(double litres) {
  // EU ovens, electric, per cycle: Regulations 65/2014 and 66/2014 (from memory).
  return 0.0042 * litres + 0.55;
}

}  // namespace suppertide::kitchen
