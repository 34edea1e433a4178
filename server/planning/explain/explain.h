// Why each step sits where it does, how far it can slip, what the ovens do, and
// which oven clashes naive timing would have had. Facts only; text is made at the edge.
#pragma once

#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

enum class Cause {
  kServing,       // the course waits for it: served then, or held no longer than it may be
  kFollows,       // directly after the step before it, or the next directly after it
  kMustFollow,    // no later than its limit after the step before it, or before the next
  kReadiness,     // the readiness window of its ferment, or the lengths any other step may have
  kCookBusy,      // its cook is at another step
  kCookAway,      // its cook is not there earlier or later
  kOvenSetpoint,  // the oven is at another temperature, or changing
  kOvenFull,      // no rack free
  kThingBusy,     // a burner, pan, mixer or place is in use
  kPinned,        // a person said so, or it may not be earlier or later on the axis
  kFoodSafety,    // a clock of its dish would run over
  kKeptApart,     // it is kept apart from a step that handles an allergen, or handles one itself
  kBest,          // nothing pushes it: this is its best time
};

// Why a step is neither earlier nor later: the tightest neighbour on the side
// that would be better for it. A step of elastic length is moved by its end
// alone, any other as a whole, all else staying in place. Where neither side is
// cheaper, what it touches counts: its serving time, then the earlier side, then
// the later one; kBest when it touches nothing or either side would cost more.
struct Reason {
  Cause cause = Cause::kBest;
  int blockingStep = -1;  // the step in its way, or -1
  int thing = -1;         // cook, resource, oven, clock or separation index, or -1
  // Minutes it could move to that side before something other than `cause`
  // stops it; with kBest, before anything stops it, on the tighter side.
  Minute room = 0;
};

// `slackLater` is how far the step alone may end later without moving any
// serving time, others being allowed to move right after it in the same order.
struct StepNote {
  Reason reason;
  Minute slackLater = 0;
};

// One note a step. Unserved dishes' steps get an empty note. `schedule` keeps the
// hard rules. Cost: for each step the minutes it could move times the steps.
std::vector<StepNote> explain(const Problem& problem, const Schedule& schedule);

// An oven's program: contiguous from switching on to switching off, ascending.
struct OvenSegment {
  enum class Kind { kHeating, kHolding, kCooling, kProofing };
  Kind kind = Kind::kHolding;
  Interval<Minute> when;
  int setpoint = 0;        // degrees Celsius aimed at
  std::vector<int> steps;  // what stands in it
};
struct OvenProgram {
  int oven = 0;
  std::vector<OvenSegment> segments;  // a hole between two means switched off
};
// Programs of every oven, also unused ones (no segments). The oven is switched
// off when it would idle longer than cooling to its lowest setpoint and heating
// from cold again. It cools as soon as it may and heats as late as it can. Where
// what stands in it stays (its own phases, cold starts), the change has it in.
std::vector<OvenProgram> ovenPrograms(const Problem& problem, const Schedule& schedule);

// Two bakes that would collide if each dish were made at its own best time.
struct NaiveClash {
  int stepA = -1;
  int stepB = -1;
  int oven = 0;
  int setpointA = 0;  // degrees Celsius
  int setpointB = 0;
  Interval<Minute> whenA;
  Interval<Minute> whenB;
};
// How a clash was settled in a schedule; several may hold. All empty when one of
// the two dishes is unserved. `sharedSetpoint`: both at one setpoint in one oven.
struct Settlement {
  bool otherOven = false;
  bool sharedSetpoint = false;
  Minute movedA = 0;  // minutes later (+) or earlier (-) than naive
  Minute movedB = 0;
  int degreesA = 0;  // setpoint change against naive
  int degreesB = 0;
};
// The clashes of naive timing: each dish alone, at least cost, all things free,
// on a grid of 5 minutes; cooks still keep their hours. A gap that closes a ring
// of steps inside a dish is left out. Each pair of bakes of different dishes
// once: different setpoints closer than the change takes, or more than the racks
// hold. Ascending by time. About ten milliseconds a dish.
std::vector<NaiveClash> naiveOvenClashes(const Problem& problem);
Settlement settlementOf(const Problem& problem, const Schedule& schedule, const NaiveClash& clash);

}  // namespace suppertide::planning
