// Where the axis carries marks: at whole local hours and minutes, and at midnight.
#pragma once

#include <vector>

#include "client/words/instant.h"
#include "client/words/time_words.h"

namespace suppertide {

struct TickMark {
  double minute = 0;
  bool midnight = false;
};

// The least of 5, 10, 15 and 30 minutes, 1, 2, 3, 6 and 12 hours and a day that
// puts `leastPixels` between two marks.
double tickStep(double pixelsPerMinute, double leastPixels);

// The marks in [start, limit), counted from each local midnight, so that a change
// to or from summer time moves none off its hour. Instants that the clocks skip have none.
std::vector<TickMark> tickMarks(Instant base, const TimeWords& words, double start, double limit,
                                double stepMinutes);

// Spans, half-open.
struct DaySpan {
  double start = 0;
  double limit = 0;
};
// The nights, 22:00 to 06:00 local time, that touch [start, limit).
std::vector<DaySpan> nightsBetween(Instant base, const TimeWords& words, double start, double limit);

}  // namespace suppertide
