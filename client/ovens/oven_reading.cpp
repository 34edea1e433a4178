#include "client/ovens/oven_reading.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace suppertide {
namespace {

constexpr std::chrono::minutes kMargin{15};
constexpr std::chrono::minutes kGrid{5};
constexpr double kFirstGap = 15;  // minutes between samples beyond which the oven was off in between
constexpr double kLeastTop = 200;
constexpr double kHeadroom = 1.12;
constexpr int kUsualRacks = 3;

bool covers(const v1::OvenSegment& segment, Instant time) {
  return toInstant(segment.start_time()) <= time && time < toInstant(segment.end_time());
}

std::optional<double> celsiusAt(const v1::OvenProgram& program, Instant time) {
  const v1::TemperatureSample* before = nullptr;
  for (const v1::TemperatureSample& sample : program.temperatures()) {
    const Instant at = toInstant(sample.time());
    if (at > time) {
      if (before == nullptr) return std::nullopt;
      const double part =
          minutesBetween(toInstant(before->time()), time) / minutesBetween(toInstant(before->time()), at);
      return before->celsius() + part * (sample.celsius() - before->celsius());
    }
    before = &sample;
  }
  return std::nullopt;
}

bool isHeld(const v1::OvenProgram& program, Instant from, Instant until) {
  return std::any_of(program.segments().begin(), program.segments().end(), [&](const v1::OvenSegment& s) {
    return toInstant(s.start_time()) <= from && minutesBetween(toInstant(s.end_time()), until) <= kFirstGap;
  });
}

}  // namespace

double HeatAxis::x(Instant time) const {
  return minutesBetween(start, time) / std::max(1.0, minutesBetween(start, limit));
}

Instant HeatAxis::at(double x) const {
  const double minutes = std::clamp(x, 0.0, 1.0) * minutesBetween(start, limit);
  const auto grid = static_cast<double>(kGrid.count());
  // On the clock's own fives, wherever the axis begins.
  const double base = static_cast<double>(start.time_since_epoch().count()) / 60;
  const double whole = std::round((base + minutes) / grid) * grid;
  return Instant(std::chrono::seconds(static_cast<long long>(whole) * 60));
}

double HeatAxis::y(double celsius) const {
  return std::clamp(celsius / top, 0.0, 1.0);
}

std::vector<OvenDay> ovenDays(const PlanView& view) {
  std::vector<OvenDay> days;
  if (view.plan() == nullptr) return days;
  for (const v1::OvenProgram& program : view.plan()->oven_programs()) {
    for (const v1::OvenSegment& segment : program.segments()) {
      const Instant start = toInstant(segment.start_time());
      const Instant limit = toInstant(segment.end_time());
      const QDate date = view.words().local(start).date();
      const auto found =
          std::find_if(days.begin(), days.end(), [&](const OvenDay& day) { return day.date == date; });
      if (found == days.end()) {
        days.push_back({date, start, limit});
      } else {
        found->start = std::min(found->start, start);
        found->limit = std::max(found->limit, limit);
      }
    }
  }
  std::sort(days.begin(), days.end(), [](const OvenDay& a, const OvenDay& b) { return a.date < b.date; });
  return days;
}

HeatAxis heatAxis(const PlanView& view, const OvenDay& day) {
  HeatAxis axis{day.start - kMargin, day.limit + kMargin, kLeastTop};
  for (const v1::OvenProgram& program : view.plan()->oven_programs()) {
    for (const v1::OvenSegment& segment : program.segments())
      axis.top = std::max<double>(axis.top, segment.setpoint_celsius());
    for (const v1::TemperatureSample& sample : program.temperatures())
      axis.top = std::max(axis.top, sample.celsius());
  }
  axis.top *= kHeadroom;
  return axis;
}

OvenAt ovenAt(const PlanView& view, const v1::OvenProgram& program, Instant time) {
  OvenAt at;
  at.celsius = celsiusAt(program, time);
  for (const v1::OvenSegment& segment : program.segments()) {
    if (!covers(segment, time)) continue;
    at.segment = &segment;
    for (const v1::RackUse& use : segment.racks()) {
      const v1::PlannedStep* step = view.step(use.step_id());
      if (step == nullptr || time < toInstant(step->start_time()) || time >= toInstant(step->end_time()))
        continue;
      at.dishes.push_back({step, {use.positions().begin(), use.positions().end()}, use.may_fit()});
    }
  }
  return at;
}

std::vector<QList<QPointF>> temperatureLines(const v1::OvenProgram& program, const HeatAxis& axis) {
  std::vector<QList<QPointF>> lines(1);
  const v1::TemperatureSample* before = nullptr;
  for (const v1::TemperatureSample& sample : program.temperatures()) {
    const Instant time = toInstant(sample.time());
    if (before != nullptr && minutesBetween(toInstant(before->time()), time) > kFirstGap &&
        !isHeld(program, toInstant(before->time()), time))
      lines.emplace_back();
    before = &sample;
    const double x = axis.x(time);
    // One point beyond each edge leads the line out of the chart.
    if (x < -1 || x > 2) continue;
    lines.back() << QPointF(x, axis.y(sample.celsius()));
  }
  lines.erase(std::remove_if(lines.begin(), lines.end(), [](const auto& line) { return line.size() < 2; }),
              lines.end());
  return lines;
}

std::vector<Instant> ovenChanges(const PlanView& view) {
  std::set<Instant> times;
  if (view.plan() == nullptr) return {};
  for (const v1::OvenProgram& program : view.plan()->oven_programs()) {
    for (const v1::OvenSegment& segment : program.segments()) {
      times.insert(toInstant(segment.start_time()));
      times.insert(toInstant(segment.end_time()));
      for (const v1::RackUse& use : segment.racks()) {
        if (const v1::PlannedStep* step = view.step(use.step_id()); step != nullptr) {
          times.insert(toInstant(step->start_time()));
          times.insert(toInstant(step->end_time()));
        }
      }
    }
  }
  return {times.begin(), times.end()};
}

int rackCount(const PlanView& view, const v1::OvenProgram& program) {
  if (view.kitchen() != nullptr) {
    for (const v1::Oven& oven : view.kitchen()->ovens())
      if (oven.id() == program.oven_id() && oven.rack_clear_height_mm_size() > 0)
        return oven.rack_clear_height_mm_size();
  }
  int highest = kUsualRacks;
  for (const v1::OvenSegment& segment : program.segments())
    for (const v1::RackUse& use : segment.racks())
      for (const int position : use.positions()) highest = std::max(highest, position);
  return highest;
}

}  // namespace suppertide
