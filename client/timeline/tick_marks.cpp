#include "client/timeline/tick_marks.h"

#include <QtCore/qdatetime.h>

#include <array>

namespace suppertide {
namespace {

constexpr std::array<double, 10> kSteps = {5, 10, 15, 30, 60, 120, 180, 360, 720, 1440};
constexpr int kNightStart = 22;
constexpr int kNightLimit = 6;

double minuteOf(Instant base, const QDateTime& local) {
  return minutesBetween(base, Instant(std::chrono::seconds(local.toSecsSinceEpoch())));
}

}  // namespace

double tickStep(double pixelsPerMinute, double leastPixels) {
  for (const double step : kSteps) {
    if (step * pixelsPerMinute >= leastPixels) return step;
  }
  return kSteps.back();
}

std::vector<TickMark> tickMarks(Instant base, const TimeWords& words, double start, double limit,
                                double stepMinutes) {
  std::vector<TickMark> marks;
  const QTimeZone& zone = words.zone();
  const int step = static_cast<int>(stepMinutes);
  QDate day = words.local(instantAt(base, start)).date();
  for (double midnight = start; midnight < limit; day = day.addDays(1)) {
    midnight = minuteOf(base, day.startOfDay(zone));
    for (int minute = 0; minute < 24 * 60; minute += step) {
      const QTime time(minute / 60, minute % 60);
      const QDateTime local(day, time, zone);
      const double at = minute == 0 ? midnight : minuteOf(base, local);
      const bool skipped = words.local(instantAt(base, at)).time() != time;  // by the clocks
      if (skipped && minute > 0) continue;
      if (at >= start && at < limit) marks.push_back({at, minute == 0});
    }
  }
  return marks;
}

std::vector<DaySpan> nightsBetween(Instant base, const TimeWords& words, double start, double limit) {
  std::vector<DaySpan> nights;
  const QTimeZone& zone = words.zone();
  QDate evening = words.local(instantAt(base, start)).date().addDays(-1);
  for (double from = start; from < limit; evening = evening.addDays(1)) {
    from = minuteOf(base, QDateTime(evening, QTime(kNightStart, 0), zone));
    const double until = minuteOf(base, QDateTime(evening.addDays(1), QTime(kNightLimit, 0), zone));
    if (from < limit && until > start) nights.push_back({from, until});
  }
  return nights;
}

}  // namespace suppertide
