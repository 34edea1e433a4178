// What a cooking day told of an oven: temperatures that were reported, against what the plan had the
// oven do then.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "suppertide/v1/kitchen.pb.h"
#include "suppertide/v1/plan.pb.h"
#include "suppertide/v1/progress.pb.h"

namespace suppertide::compose {

// What became of a reported temperature; the call's OvenReportFate says what each means.
enum class OvenFate { kUsed, kHeld, kImpossible, kLeftOut, kNotOn };

struct DayReading {
  std::string reportId;
  std::int64_t seconds = 0;  // unix
  double celsius = 0;
  OvenFate fate = OvenFate::kNotOn;
  int setpointCelsius = 0;  // what the plan had the oven set to; 0: off
};

struct OvenLearning {
  v1::Oven oven;                     // with the timed rises and falls of the day in its curve
  bool told = false;                 // there is something new in it
  std::vector<DayReading> uses;      // one a standing report of this oven, by time
  std::optional<double> dialOffset;  // middle of what it ran hotter than set, kelvin; of two or more
};

// Readings at least three minutes apart in one stretch of heating or of cooling with the door ajar make
// a timed rise or fall each; the first of a rise is timed from the switching on. Rises that no oven can
// do are refused, and what is far from the others is left out, each by its report; what the oven's
// curve then is, fitOven() tells. Readings that are in the oven's curve already are not added again.
OvenLearning learnFromDay(const v1::Oven& oven, const v1::Plan& plan, const v1::Progress& progress);

}  // namespace suppertide::compose
