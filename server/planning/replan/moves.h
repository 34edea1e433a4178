// What moved from one schedule to another, and why: facts for people, text is made at the edge.
#pragma once

#include <vector>

#include "server/planning/model/schedule.h"
#include "server/planning/replan/happened.h"

namespace suppertide::planning {

enum class MoveCause {
  kReported,  // somebody said that it began, ended or is put off
  kFollows,   // a step of its dish that it is tied to moved: `step`
  kCook,      // its cook is away then, or at `step`
  kOven,      // its oven is closed then, full or at another temperature, by `step`
  kThing,     // a burner, pan, mixer or place is in use then, by `step`
  kNotBegun,  // it should have begun and had not
  kLength,    // it may not last as long any more, or has other limits
  kServing,   // its dish would be too late there, or held too long
  kPinned,    // a person put it elsewhere
  kDish,      // its dish is served by one of the two only
  kMadeRoom,  // it could have stayed
};

struct Move {
  int step = -1;
  MoveCause cause = MoveCause::kMadeRoom;
  int causeStep = -1;  // the step that made it move, or -1
  int thing = -1;      // cook, oven or resource index, or -1
  Placement before;
  Placement after;
};

// Steps whose start is elsewhere by kMoveFrom minutes or more, whose mode or cook
// is another, or whose dish only one of the two serves; by their new start.
// `remains.problem` is what `after` keeps. `before` and `after` are as its steps.
std::vector<Move> movesBetween(const Remaining& remains, const Running& running, const Schedule& after);

}  // namespace suppertide::planning
