// A plan as it is drawn: lanes of steps with their places and words. A plain
// value, made anew from the documents on each change and then compared.
#pragma once

#include <QtCore/qstring.h>

#include <vector>

#include "client/timeline/curves.h"
#include "client/ui/symbol.h"
#include "client/words/instant.h"
#include "client/words/time_words.h"

namespace suppertide {

// One bar of one lane. Minutes after the picture's base.
struct StepRow {
  QString id;  // "dish/step"; the same step may stand in several lanes
  QString title;
  QString detail;  // second line: the kind in a word and the dish
  QString spoken;  // "Shape the rolls, 14:05 to 14:30, Ines"
  QString state;   // "Late. Fixed by hand."; empty when there is nothing to say
  int symbol = Symbol::Nothing;
  int kind = 0;  // as v1::StepKind
  double start = 0;
  double length = 0;
  int subRow = 0;
  double roomAfter = 0;
  double slack = 0;      // how far it may slip without moving a serving time
  bool handsOn = false;  // takes most of a cook's attention
  bool late = false;
  bool done = false;
  bool pinned = false;
  bool moved = false;  // by the last change, for a moment
  bool shown = true;   // false: a place in a list that stands empty
  DoughRise rise;      // ferments in their dough's lane only

  double limit() const { return start + length; }
  QString key() const { return id; }
  friend bool operator==(const StepRow&, const StepRow&) = default;
};

enum class LaneKind { kCook, kOven, kDough, kBurners, kPlace, kWaiting };

struct Lane {
  QString id;  // unique in the picture: "oven/large"
  LaneKind kind = LaneKind::kWaiting;
  QString title;
  QString subtitle;
  QString spoken;  // what a person who can't see the lane wants to know first
  int symbol = Symbol::Nothing;
  int subRowCount = 1;
  std::vector<StepRow> steps;  // by start
  OvenCurve curve;             // ovens only
  Ghosts ghosts;               // while something else than the plan is previewed
};

struct CourseRow {
  QString id;
  QString title;   // "18:00 Soup"
  QString spoken;  // "Soup is served at 18:00, 20 min late"
  double minute = 0;
  int subRow = 0;        // they stand in two rows by turns, so that names have room
  double roomAfter = 0;  // minutes until the next one in the same row
  bool late = false;
  QString key() const { return id; }
  friend bool operator==(const CourseRow&, const CourseRow&) = default;
};

struct Picture {
  Instant base{};
  TimeWords words;
  QString title;     // the event
  QString subtitle;  // when and where
  QString leftOut;   // what the plan leaves out, in a sentence; empty: nothing
  bool hasPlan = false;
  double start = 0;  // of the first step, and the end of the last or the last serving
  double limit = 0;
  std::vector<Lane> lanes;
  std::vector<CourseRow> courses;  // by serving
};

}  // namespace suppertide
