// What a thermometer in a bake, or in its oven, tells of when it will be done.
#pragma once

#include <vector>

#include "server/compose/composition.h"

namespace suppertide::compose {

struct BakeReading {
  planning::Minute when = 0;
  bool isCore = false;  // else of the oven
  double celsius = 0;
};

// How long the bake lasts, begun at `start`, by readings in order of time. The centre comes up to the oven as
// a lump does, at the pace that makes the planned minutes right; a reading corrects where it is. An oven
// within 15 K of its setting says nothing, as thermostats swing. Never shorter than until the last reading,
// never longer than three times as planned. `planned` where the recipe gives no temperatures of the centre.
planning::Minute bakeMinutesBySight(const v1::OvenNeed& need, int setpointCelsius, planning::Minute planned,
                                    planning::Minute start, const std::vector<BakeReading>& readings);

}  // namespace suppertide::compose
