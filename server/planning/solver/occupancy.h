// What is in use at each minute, and how long a step could stay from a minute on.
//
// Starts with what the problem itself takes away (cooks not there, things taken
// by others, closed ovens); placed steps are added and removed again. A length
// of zero uses nothing. Not thread-safe.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <tuple>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

class Occupancy {
 public:
  explicit Occupancy(const Problem& problem);

  void add(int step, const Placement& at);
  void remove(int step, const Placement& at);

  // The last minute at which `step`, started at `start` in `mode` by `cook`,
  // could end without running into anything; below `start` when it can't start.
  // Phases of fixed length are checked as a whole: then it is kNoLimit or -1.
  // Amortised constant time between changes.
  Minute roomUntil(int step, int mode, int cook, Minute start);
  // The same for each of `starts`, into `room`.
  void roomsUntil(int step, int mode, int cook, const std::vector<Minute>& starts, std::vector<Minute>& room);
  bool fits(int step, const Placement& at) {
    return at.start == at.end || roomUntil(step, at.mode, at.cook, at.start) >= at.end;
  }
  // What beginning a task at each minute costs its cook in calm, and what ending one there takes
  // from the task after it. Empty when the problem asks for none.
  const std::vector<int>& calmBefore(int cook);
  const std::vector<int>& calmAfter(int cook);
  // What entering at each minute costs in empty heating, and what leaving then changes for the next
  // one in. Empty when the oven's idle minutes are free.
  const std::vector<int>& heatBefore(int oven, int setpoint);
  const std::vector<int>& heatAfter(int oven);

  // The same answer without remembering: linear in the step's length, cheaper right after a change.
  bool fitsOnce(int step, const Placement& at) const;

 private:
  struct Booking {
    int step;
    int setpoint;
    Interval<Minute> when;
    bool entering;  // the oven must be at its setpoint when this begins
    const Load* load;
  };
  struct Task {
    int step;
    Interval<Minute> when;
  };
  // For each minute the first blocked minute at or after it; `limit` when none.
  using NextBlocked = std::vector<Minute>;

  const NextBlocked& cookRoom(int cook, int attention);
  const NextBlocked& resourceRoom(int resource, int amount);
  const NextBlocked& setpointRoom(int oven, int setpoint, bool entering);
  const NextBlocked& rackRoom(int oven, const Load& load);
  bool ovenFits(int step, const OvenNeed& need, const Placement& at) const;
  Minute ovenRoom(const OvenNeed& need, Minute start);
  std::vector<const Booking*> firstBookings(int oven) const;
  NextBlocked sweep(const std::vector<char>& blocked) const;
  NextBlocked sweepAbove(const std::vector<int>& taken, int most) const;
  void change(int step, const Placement& at, int sign);
  void readSeparations();
  Minute separationRoom(int step, int mode, Minute start) const;
  bool leaves(const Mode& mode) const;

  const Problem& problem_;
  std::vector<std::vector<int>> attention_;     // by cook and minute, 101 when not there
  std::vector<std::vector<int>> amount_;        // by resource and minute
  std::vector<std::vector<Booking>> bookings_;  // by oven
  std::vector<std::vector<Task>> tasks_;        // by cook, of at least kTaskAttention
  std::vector<std::int64_t> gone_;              // by resource, of what is used up
  // By step: the separations it is in, and where it lies if it is in any.
  std::vector<std::vector<int>> separations_;
  std::vector<std::optional<Placement>> separated_;
  std::map<std::tuple<int, int>, NextBlocked> cookRooms_;
  std::map<std::tuple<int, int>, NextBlocked> resourceRooms_;
  std::map<std::tuple<int, bool>, std::vector<int>> calm_;  // by cook, and whether after
  std::map<std::tuple<int, int>, std::vector<int>> heat_;   // by oven and setpoint, -1 for after
  std::map<std::tuple<int, int, bool>, NextBlocked> setpointRooms_;
  std::map<std::tuple<int, int, int, int, int, int>, NextBlocked> rackRooms_;
};

// What a step in `mode` takes of `resource` in all: a mode may name one thing more than once.
int amountOf(const Mode& mode, int resource);

// The bookings of one stay in an oven: each phase with its setpoint.
struct PhaseSpan {
  int setpoint;
  Interval<Minute> when;
  bool entering;  // begins by entering preheated: the change from other setpoints must be over
};
std::vector<PhaseSpan> phaseSpans(const OvenNeed& need, Minute start, Minute end);

}  // namespace suppertide::planning
