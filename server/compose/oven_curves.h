// An oven's curve from the readings in its document.
#pragma once

#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/compose/validate.h"
#include "server/kitchen/oven.h"
#include "suppertide/v1/kitchen.pb.h"

namespace suppertide::compose {

// The oven as its document says, with the usual curve; readings are not looked at.
kitchen::Oven plainOven(const v1::Oven& oven);

struct FittedReading {
  std::string path;  // from the oven down: "heatCurve.heating[2]"
  double minutes = 0;
  double celsius = 0;  // for a rise: where it ended
  double before = 0;   // by the usual curve and by the fitted one
  double after = 0;
  bool leftOut = false;
};

struct FittedOven {
  kitchen::ThermalCurve before;
  kitchen::ThermalCurve after;
  std::vector<FittedReading> readings;  // in the order of HeatCurve's fields
  double residualBefore = 0;            // root mean square, kelvin, of those not left out; rises aside
  double residualAfter = 0;
  // Every reading that no oven can give and every list that no curve fits; then
  // `after` is not to be used. Paths as above.
  Violations violations;
};

// Fits heating, cooling with the door closed and ajar, then learns from the timed rises.
FittedOven fitOven(const v1::Oven& oven);

}  // namespace suppertide::compose
