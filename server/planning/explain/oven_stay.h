// One step's stay in an oven, as a sequence of setpoints. Internal to the explainer.
#pragma once

#include <optional>
#include <vector>

#include "server/base/index.h"
#include "server/planning/model/schedule.h"

namespace suppertide::planning {

struct OvenStay {
  struct Phase {
    int setpoint = 0;  // index into Oven::setpoints
    Interval<Minute> when;
  };
  int step = -1;
  int oven = -1;
  Interval<Minute> when;
  std::vector<Phase> phases;  // ascending, without holes; not empty
  bool preheated = true;
  Load load;
};

// The stay of `step` placed at `at`; nothing when its mode needs no oven or it lasts no time.
std::optional<OvenStay> stayOf(const Problem& problem, int step, const Placement& at);

// All stays of served steps, by oven and then by start.
std::vector<std::vector<OvenStay>> staysByOven(const Problem& problem, const Schedule& schedule);

// Whether two stays in `oven` cannot both be: they want different setpoints at
// once, or one enters before the oven has changed over from the other.
bool setpointsClash(const Oven& oven, const OvenStay& a, const OvenStay& b);

// Whether among `stays` there is a minute of `when` at which they do not fit the racks together.
bool racksOverflow(const Oven& oven, const std::vector<const OvenStay*>& stays, Interval<Minute> when);

}  // namespace suppertide::planning
