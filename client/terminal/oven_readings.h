// Stopwatch and thermometer readings of an oven as a person writes them down.
#pragma once

#include <map>
#include <string>

#include "client/terminal/bundle_file.h"
#include "suppertide/v1/kitchen.pb.h"

namespace suppertide::terminal {

// Lines of a table with commas, semicolons or tabs:
//
//   part,minutes,celsius
//   heating,0,21
//   heating,5,96
//   rise,14,200,22      a timed rise to 200 from 22 degrees
//
// A part is heating, cooling (door closed), ajar (cooling with the door ajar) or
// rise. The first line may name the columns; with "fahrenheit" for the third,
// all temperatures are in it. Empty lines and those that begin with # are passed over.
struct OvenReadings {
  v1::HeatCurve curve;
  Violations mistakes;                       // by "line 3"
  std::map<std::string, std::string> lines;  // "heatCurve.heating[2]" -> "line 4"
  bool fahrenheit = false;
};
OvenReadings readReadings(const std::string& text);

}  // namespace suppertide::terminal
