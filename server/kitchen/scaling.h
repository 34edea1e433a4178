// What another size of a recipe does: whole eggs and packets, bakes, loads of an oven.
//
// Time follows mass and thickness, never the number of pieces. It is always a
// range: the thin bound is that of a piece whose surface limits the heat, the
// thick one that of a piece whose inside does (time as its length squared).
#pragma once

#include <string_view>
#include <vector>

#include "server/kitchen/racks.h"

namespace suppertide::kitchen {

// `exact` pieces of what is counted, as a cook can take them: whole and at least one;
// yolks and whites, lemons and onions by halves. 0 stays 0.
double wholePieces(std::string_view name, double exact);

// Half or whole packets of `size`, above 0, nearest to `exact`, where that is not off by more than a
// tenth: 0.5, 1, 1.5, ... Else 0: then it is weighed.
double halfPackets(double exact, double size);

struct BakeMinutes {
  double least = 0;
  double most = 0;
};

// A piece of the same shape with `massFactor` times the mass, above 0: m^(1/3) to m^(2/3).
BakeMinutes minutesAtMass(double minutes, double massFactor);

// A roast may grow longer, and then takes no more time, or thicker: 1 to m^(2/3).
BakeMinutes minutesOfRoast(double minutes, double massFactor);

// A pan filled `depthFactor` times as deep: d to d squared.
BakeMinutes minutesAtDepth(double minutes, double depthFactor);

struct PanLoads {
  int count = 0;            // 0: not even one pan fits
  bool fewerMayDo = false;  // no way to lay more at once was found, nor is it proven that there is none
};

// How many goes `count` equal pans need in an oven.
PanLoads loadsOf(const Oven& oven, const Pan& pan, int count);

}  // namespace suppertide::kitchen
