// The planning problem: one dinner as steps, people and things, in plain types.
//
// Time is whole minutes on one axis, counted from an origin that the caller
// chose; calendars and clock changes were resolved before. Spans are half-open.
// A Problem is a value: build it, check() it, hand it to the engine, the
// auditor or the explainer. Nothing here knows bread, kitchens or documents.
//
// The one distinction people miss: a *length range* (shortest..longest) is the
// planner's to choose from, as when a dough may be shaped at any minute of its
// readiness window; a *spread* is what nature chooses, and the plan only counts
// on the likely value.
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "server/base/interval.h"
#include "server/planning/model/cost_curve.h"
#include "server/planning/model/rack_fit.h"

namespace suppertide::planning {

using Minute = int;
inline constexpr Minute kNoLimit = std::numeric_limits<int>::max() / 4;

enum class StepKind {
  kHandsOn,  // someone works
  kWait,     // nothing but time
  kFerment,  // a dough or levain stands in a place until its readiness window
  kBake,     // in an oven at a setpoint
  kCook,     // on a burner
  kChill,    // in the fridge
  kThaw,     // from frozen, in the fridge
  kRest,     // out of the heat before carving or cutting
  kHold,     // kept hot, warm or cold between done and served
};

// How long a step may last when it starts at a certain minute.
struct Length {
  Minute shortest = 0;
  Minute best = 0;
  Minute longest = 0;
  bool possible() const { return shortest <= longest; }
};

// Length by start minute. One row holds at every start. With more rows, row k
// holds for starts in [origin + k*pitch, origin + (k+1)*pitch); starts outside
// all rows, and rows that are not possible(), cannot be chosen.
struct LengthTable {
  Minute origin = 0;
  Minute pitch = 0;  // 0 only with a single row
  std::vector<Length> rows;

  static LengthTable fixed(Minute length) { return {0, 0, {{length, length, length}}}; }
  static LengthTable range(Minute shortest, Minute best, Minute longest) {
    return {0, 0, {{shortest, best, longest}}};
  }
  // The length range for a start at `start`; not possible() when it can't start then.
  Length at(Minute start) const;
};

// An amount of a resource taken from the step's start to its end.
struct Use {
  int resource = 0;  // index into Problem::resources
  int amount = 1;
};

// One setpoint held for some minutes inside an oven; `setpoint` indexes Oven::setpoints.
struct OvenPhase {
  int setpoint = 0;
  Minute length = 0;
};

// What a mode needs of an oven. The phases follow each other without a gap from
// the step's start and add up to its (then fixed) length; a single phase of
// length 0 lasts as long as the step does, also when the step is elastic.
struct OvenNeed {
  int oven = 0;  // index into Problem::ovens
  std::vector<OvenPhase> phases;
  Load load;
  bool preheated = true;  // false: may enter while the oven still changes temperature
};

// A cook who may do the step, with the tier-4 cost of asking this one.
struct CookOption {
  int cook = 0;  // index into Problem::cooks
  int cost = 0;
};

// Choosing this mode asks `step` to be in one of `modes`.
struct ModeLink {
  int step = 0;
  std::vector<int> modes;
};

// How far a step's real length may be from the planned one, as ratios to it:
// nature's choice, not the planner's. What follows an unknown is multiplied by
// its factor to `power` on top.
struct Spread {
  struct Follows {
    int unknown = 0;  // index into Problem::unknowns
    double power = 1;
  };
  double least = 1;  // in (0, 1]
  double most = 1;   // at least 1
  std::vector<Follows> follows;
};

// One way to do a step.
struct Mode {
  std::string name;  // for people and mapping back: "large oven, 200"; unique in its step
  LengthTable length = LengthTable::fixed(0);
  int attention = 0;              // per cent of one cook, 0 to 100, all through; 0 needs no cook
  std::vector<CookOption> cooks;  // who may do it; not empty when attention > 0
  std::vector<Use> uses;
  std::optional<OvenNeed> oven;
  std::vector<ModeLink> links;
  int qualityCost = 0;      // tier 3, for choosing this mode at all
  int shortMinuteCost = 0;  // tier 3, per minute shorter than Length::best
  int longMinuteCost = 0;   // tier 3, per minute longer than Length::best
  Spread spread;
  // What `length` would be if somebody were there at all hours; absent when it
  // does not depend on anybody's being there.
  std::optional<LengthTable> anyHour;
};

// What has already happened or what a person decided; each part may be absent.
struct Pin {
  std::optional<Minute> start;
  std::optional<Minute> end;
  std::optional<int> mode;
  std::optional<int> cook;
};

// Where people were told that a step lies. Being elsewhere costs in the moves
// tier `weight` times: a start moved by 5 minutes or more its minutes and 10
// more, another mode 10, another cook 15. Smaller moves of the start are free.
struct Announced {
  Minute start = 0;
  int mode = 0;
  int cook = -1;
  int weight = 1;
};

struct Step {
  std::string id;  // unique in the problem
  StepKind kind = StepKind::kHandsOn;
  int dish = 0;  // index into Problem::dishes
  std::vector<Mode> modes;
  Minute earliest = 0;       // start at or after
  Minute latest = kNoLimit;  // end at or before
  Pin pin;
  std::optional<Announced> announced;
};

enum class Edge { kStart, kEnd };

// `least <= to - from <= most`, between an edge of one step and an edge of another.
struct Gap {
  int from = 0;
  Edge fromEdge = Edge::kEnd;
  int to = 0;
  Edge toEdge = Edge::kStart;
  Minute least = 0;
  Minute most = kNoLimit;
  Minute air = 0;  // wanted beyond `least`; each minute short of it costs 1 in the calm tier
};

// Rule 8: minutes that count together, as a dish's time at room temperature.
// The sum of all spans is at most `most`. A span runs from an edge of `from` to
// an edge of `to`, or with `to` = -1 until its dish is served (when it is ready,
// if that is later); a negative one counts as 0. With `modes` not empty it
// counts only when `from` is in one of them. All steps are of one dish.
struct Clock {
  struct Span {
    int from = 0;
    Edge fromEdge = Edge::kStart;
    int to = 0;
    Edge toEdge = Edge::kEnd;
    std::vector<int> modes;
  };
  std::string id;  // the limit it keeps, for people and mapping back
  std::vector<Span> spans;
  Minute most = 0;
};

// Rule 10: a step free of an allergen and one that handles it, with something in
// common. In those modes (empty: any) `clean` ends before `other` starts, or
// starts at least `cleaning` after it ends; kNoLimit: it must go first. A step
// that lasts no time, or whose dish is unserved, is not asked.
struct Separation {
  std::string id;  // the thing in common
  int clean = 0;
  int other = 0;
  std::vector<int> cleanModes;
  std::vector<int> otherModes;
  Minute cleaning = kNoLimit;
};

// Something nobody knows before the day, shared by all steps that follow it: a
// starter's vigour, a room's warmth. A factor with median 1, its logarithm
// normal with deviation `sigma`.
struct Unknown {
  std::string id;
  double sigma = 0;
};

// What is served. Ready when `lastStep` ends. It may be up to `holdLimit`
// minutes early and, at a tier-2 cost of 1 a minute, up to `lateLimit` late.
// A dish that fits nowhere is unserved (tier 1): its steps then use nothing.
struct Dish {
  std::string id;
  int lastStep = 0;
  Minute serve = 0;
  Minute holdLimit = 0;
  Minute lateLimit = 0;
  CostCurve waitCost;  // tier 3 by minutes between ready and served, 0 when late
  int unservedCost = 1;
};

// Burners of one kind, pans of one name, a mixer, litres of a fridge or a place.
struct Resource {
  struct Taken {
    Interval<Minute> when;
    int amount = 0;
  };
  std::string id;
  int capacity = 1;
  std::vector<Taken> taken;  // already in use by something outside the plan
  bool usedUp = false;       // not given back: all uses together are at most `capacity`
};

struct Oven {
  std::string id;
  std::vector<int> setpoints;  // degrees Celsius, ascending; includes a proofing temperature if it can proof
  // Minutes from the moment nothing stands at setpoint a until something may
  // enter at setpoint b; 0 on the diagonal; triangle inequality holds.
  std::vector<std::vector<Minute>> change;
  std::vector<Minute> heatFromCold;  // minutes from switched off and cold to each setpoint
  std::shared_ptr<const RackFit> racks;
  std::vector<Interval<Minute>> closed;  // broken, or somebody else's
  int idleMinuteCost = 0;                // oven tier, per minute heated with nothing in it
};

struct Cook {
  struct SoftHours {
    Interval<Minute> when;
    int minuteCost = 1;  // tier 4, per minute of work inside
  };
  std::string id;
  std::vector<Interval<Minute>> available;  // disjoint, ascending; hard
  std::vector<SoftHours> unsocial;          // disjoint, ascending
  int share = 1;                            // wanted part of all hands-on minutes, against the others' shares
};

struct Problem {
  Minute limit = 0;  // every step lies in [0, limit)
  std::vector<Step> steps;
  std::vector<Gap> gaps;
  std::vector<Dish> dishes;
  std::vector<Resource> resources;
  std::vector<Oven> ovens;
  std::vector<Cook> cooks;
  std::vector<Clock> clocks;
  std::vector<Separation> separations;
  std::vector<Unknown> unknowns;
  // Calm tier: minutes wanted between tasks of different dishes at one cook, and
  // the cost of beginning one in the middle of another; 0 turns each off.
  Minute airBetweenTasks = 0;
  int interruptionCost = 0;
  // Tier 4: each started block of `shareBlock` hands-on minutes (attention
  // weighted) that a cook has beyond the fair share costs `shareBlockCost`; 0 turns it off.
  Minute shareBlock = 30;
  int shareBlockCost = 10;
};

// OK, or InvalidArgument naming the first thing that is out of range, unknown
// or contradictory. The engine and the auditor expect a checked problem.
absl::Status check(const Problem& problem);

}  // namespace suppertide::planning
