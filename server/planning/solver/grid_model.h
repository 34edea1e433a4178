// The problem on the grid: for each step the modes, starts and ends it can take
// when only its own dish, the pins and what others already took are counted.
//
// Starts are multiples of the grid; the end of a step of fixed length is its
// start plus that length, also off the grid; an elastic step ends on the grid.
// Pinned minutes are kept as they are. A dish that cannot be served even alone
// is dropped: its steps have no windows and nothing else needs to care for it.
#pragma once

#include <cstdint>
#include <limits>
#include <vector>

#include "server/base/index.h"
#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// The ends a start allows: the candidates of the step inside [first, last].
struct EndRange {
  Minute first = 0;
  Minute last = -1;
  bool empty() const { return first > last; }
};

// One way to do a step that pins and cooks leave open.
struct Choice {
  int mode = 0;
  std::vector<CookOption> cooks;  // empty when nobody is needed; each cook once
};

// What one choice allows at one start: ends by their index among the candidates.
struct StartRow {
  int firstEnd = 0;
  int lastEnd = -1;  // below firstEnd: it cannot start then
  Minute best = 0;   // the best end
};

struct GridStep {
  std::vector<Choice> choices;
  std::vector<Minute> starts;  // ascending candidates
  std::vector<Minute> ends;    // ascending candidates
  Minute fixedLength = -1;     // the one length of all choices, or -1
};

// Least distances between the edges of one dish's steps: from + distance <= to.
// Edge index: 2 * position of the step in `steps`, plus 1 for its end.
struct Distances {
  static constexpr int kNone = std::numeric_limits<int>::min() / 4;
  std::vector<int> steps;
  std::vector<int> least;  // square, row-major; kNone when unrelated
  int edges() const { return 2 * sizeOf(steps); }
  int& of(int from, int to) { return nth(least, from * edges() + to); }
  int of(int from, int to) const { return nth(least, from * edges() + to); }
};

class Occupancy;

class GridModel {
 public:
  // `lateness`: each dish may be at most this late, below its own limit.
  GridModel(const Problem& problem, Minute grid, Minute lateness = kNoLimit);

  const Problem& problem() const { return problem_; }
  Minute grid() const { return grid_; }
  const GridStep& step(int index) const { return nth(steps_, index); }
  bool dropped(int dish) const { return nth(dropped_, dish); }
  bool used(int step) const { return !dropped(nth(problem_.steps, step).dish); }
  // The problem's gaps, and the clocks that are one.
  const std::vector<Gap>& gaps() const { return gaps_; }
  // Indices into gaps() of those that touch the step.
  const std::vector<int>& gapsOf(int step) const { return nth(gapsOf_, step); }
  // The steps with a mode that is linked to one of this step's.
  const std::vector<int>& linkedTo(int step) const { return nth(linkedTo_, step); }
  // The other clocks, by dish: indices into Problem::clocks.
  const std::vector<int>& clocks(int dish) const { return nth(clocks_, dish); }
  const Distances& distances(int dish) const { return nth(distances_, dish); }
  int positionInDish(int step) const { return nth(position_, step); }
  EndRange endRange(int step, int mode, Minute start) const;
  // By candidate start, for the `choice`th choice of the step.
  const std::vector<StartRow>& rows(int step, int choice) const { return nth(nth(rows_, step), choice); }
  // What is left of the step's candidate starts or ends when divided by the grid, each once.
  std::vector<Minute> offGrid(int step, Edge edge) const;
  // What the minutes in [start, end) cost as a cook's unsocial hours.
  std::int64_t unsocialCost(int cook, Minute start, Minute end) const {
    return nth(nth(unsocialUpTo_, cook), end) - nth(nth(unsocialUpTo_, cook), start);
  }
  // Least minutes from one edge to another that their dish forces; kNone when unrelated.
  int leastBetween(int fromStep, Edge fromEdge, int toStep, Edge toEdge) const;

 private:
  void readClocks();
  void indexSteps();
  void chooseModes(int step);
  void measureDish(int dish);
  bool boundDish(int dish);
  bool fillStarts(int dish);
  bool settleWindows(int dish, Occupancy& free);
  void fillEnds(int step);
  void fillRows(int step);
  void sumUnsocial();
  bool filterStep(int step);
  Interval<Minute> lengthSpan(int step) const;

  const Problem& problem_;
  Minute grid_;
  Minute lateness_;
  std::vector<Gap> gaps_;
  std::vector<std::vector<int>> gapsOf_;
  std::vector<std::vector<int>> linkedTo_;
  std::vector<std::vector<int>> clocks_;
  std::vector<Minute> servedFrom_;  // by edge: a clock that runs from it lasts until serving
  std::vector<GridStep> steps_;
  std::vector<std::vector<std::vector<StartRow>>> rows_;  // by step, choice and start
  std::vector<std::vector<std::int64_t>> unsocialUpTo_;   // by cook: cost of all minutes before this one
  std::vector<bool> dropped_;
  std::vector<Distances> distances_;           // by dish
  std::vector<int> position_;                  // of a step in its dish
  std::vector<Interval<Minute>> startBounds_;  // by step, both ends included
  std::vector<Interval<Minute>> endBounds_;
};

}  // namespace suppertide::planning
