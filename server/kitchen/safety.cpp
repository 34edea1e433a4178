#include "server/kitchen/safety.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace suppertide::kitchen {
namespace {

constexpr double kNoise = 1e-6;
constexpr double kPound = 0.45359237;

constexpr Source kThawing{"USDA FSIS, Let's Talk Turkey; Turkey Basics: Safe Thawing", Mark::kExcerpt};

Finding finding(bool safe, Caution caution, double limit, double seen, const Source& source) {
  return {safe ? Caution::kNone : caution, limit, seen, source};
}

Finding atLeast(double seen, double limit, Caution caution, const Source& source) {
  return finding(seen >= limit - kNoise, caution, limit, seen, source);
}

Finding atMost(double seen, double limit, Caution caution, const Source& source) {
  return finding(seen <= limit + kNoise, caution, limit, seen, source);
}

// First minute at which the course is at or below `celsius`, on straight lines.
std::optional<double> firstAtOrBelow(std::span<const CorePoint> course, double celsius) {
  for (std::size_t i = 0; i < course.size(); ++i) {
    if (course[i].celsius > celsius + kNoise) continue;
    if (i == 0) return course[0].minute;
    const CorePoint& before = course[i - 1];
    const double part = (before.celsius - celsius) / (before.celsius - course[i].celsius);
    return before.minute + std::clamp(part, 0.0, 1.0) * (course[i].minute - before.minute);
  }
  return std::nullopt;
}

// Minutes of one straight piece strictly between the limits.
double pieceInside(const CorePoint& from, const CorePoint& to, double cold, double hot) {
  const double length = to.minute - from.minute;
  const double low = std::min(from.celsius, to.celsius);
  const double high = std::max(from.celsius, to.celsius);
  if (high - low < kNoise) return low > cold + kNoise && high < hot - kNoise ? length : 0;
  const double inside = std::min(high, hot) - std::max(low, cold);
  return length * std::max(inside, 0.0) / (high - low);
}

double value(LimitKind kind, RuleSet rules) {
  return limit(kind, rules).value;
}

// One stage: from `start` on, at or below `celsius` within `allowed` minutes.
Finding judgeStage(std::span<const CorePoint> course, double start, double celsius, double allowed,
                   Caution caution, const Source& source) {
  const std::optional<double> reached = firstAtOrBelow(course, celsius);
  return atMost(reached.value_or(course.back().minute) - start, allowed, caution, source);
}

}  // namespace

Finding judgeEnd(FoodClass food, double coreCelsius, double restMinutes, RuleSet rules, double heldSeconds) {
  const EndTemperature& row = endTemperature(food, rules);
  const Finding reached = atLeast(coreCelsius, row.celsius, Caution::kNotDone, row.source);
  if (!reached.safe()) return reached;
  const Finding held = atLeast(heldSeconds, row.heldSeconds, Caution::kNotDone, row.source);
  if (!held.safe()) return held;
  const Finding rested = atLeast(restMinutes, row.restMinutes, Caution::kNotRested, row.source);
  return rested.safe() ? reached : rested;
}

Finding judgeStuffedBird(double birdCelsius, double stuffingCelsius, RuleSet rules) {
  const Finding bird = judgeEnd(FoodClass::kPoultry, birdCelsius, 0, rules);
  if (!bird.safe()) return bird;
  return judgeEnd(FoodClass::kStuffing, stuffingCelsius, 0, rules);
}

Finding judgeRoastHeld(double coreCelsius, double heldMinutes, RuleSet rules) {
  const EndTemperature& end = endTemperature(FoodClass::kWholeMeat, rules);
  if (rules != RuleSet::kFoodService) return atLeast(coreCelsius, end.celsius, Caution::kNotDone, end.source);
  const RoastRow* reached = nullptr;
  for (const RoastRow& row : roastTable()) {
    if (coreCelsius >= row.celsius - kNoise) reached = &row;
  }
  if (!reached) {
    return atLeast(coreCelsius, roastTable().front().celsius, Caution::kNotDone, roastTableSource());
  }
  return atLeast(heldMinutes, reached->minutes, Caution::kNotDone, roastTableSource());
}

Finding judgeReheated(double coreCelsius, RuleSet rules) {
  const Limit& row = limit(LimitKind::kReheat, rules);
  return atLeast(coreCelsius, row.value, Caution::kReheatedTooLittle, row.source);
}

double minutesInDangerZone(std::span<const CorePoint> course, RuleSet rules) {
  const double cold = value(LimitKind::kColdHold, rules);
  const double hot = value(LimitKind::kHotHold, rules);
  double minutes = 0;
  for (std::size_t i = 1; i < course.size(); ++i) minutes += pieceInside(course[i - 1], course[i], cold, hot);
  return minutes;
}

Finding judgeRoomTime(double minutesOut, double roomCelsius, RuleSet rules) {
  const bool veryWarm = roomCelsius > value(LimitKind::kVeryWarmRoom, rules) + kNoise;
  const Limit& row = limit(veryWarm ? LimitKind::kVeryWarmRoomTime : LimitKind::kRoomTime, rules);
  return atMost(minutesOut, row.value, veryWarm ? Caution::kTooLongVeryWarm : Caution::kTooLongWarm,
                row.source);
}

Finding judgeHotHold(double celsius, RuleSet rules) {
  const Limit& row = limit(LimitKind::kHotHold, rules);
  return atLeast(celsius, row.value, Caution::kHeldTooCool, row.source);
}

Finding judgeColdHold(double celsius, RuleSet rules) {
  const Limit& row = limit(LimitKind::kColdHold, rules);
  return atMost(celsius, row.value, Caution::kHeldTooWarm, row.source);
}

Finding judgeCooling(std::span<const CorePoint> course, RuleSet rules) {
  const Limit& first = limit(LimitKind::kCoolFirstTime, rules);
  const Limit& total = limit(LimitKind::kCoolTotalTime, rules);
  const std::optional<double> start = firstAtOrBelow(course, value(LimitKind::kHotHold, rules));
  if (!start) return {Caution::kNone, first.value, 0, first.source};
  const Finding warm = judgeStage(course, *start, value(LimitKind::kCoolFirstTo, rules), first.value,
                                  Caution::kCooledTooSlowly, first.source);
  if (!warm.safe()) return warm;
  return judgeStage(course, *start, value(LimitKind::kColdHold, rules), total.value,
                    Caution::kChilledTooSlowly, total.source);
}

std::chrono::sys_days keepThrough(std::chrono::sys_days cooked, RuleSet rules) {
  return cooked + std::chrono::days(static_cast<int>(value(LimitKind::kKeepDays, rules)));
}

HourRange thawHours(double kilograms, ThawWay way) {
  const double pounds = kilograms / kPound;
  switch (way) {
    case ThawWay::kFridge:
      return {24 * pounds / 5, 24 * pounds / 4};
    case ThawWay::kColdWater:
      return {pounds / 2, pounds / 2};
    case ThawWay::kMicrowave:
      return {0, 0};
    case ThawWay::kCounter:
      break;
  }
  return {1, 0};
}

Source thawSource() {
  return kThawing;
}

int waterChanges(double hours) {
  constexpr double kEveryHours = 0.5;
  return std::max(0, static_cast<int>(std::ceil(hours / kEveryHours - kNoise)) - 1);
}

DayRange thawedDays(RawClass food, ThawWay way) {
  if (way != ThawWay::kFridge) return {0, 0};
  return food == RawClass::kRedMeat ? DayRange{3, 5} : DayRange{1, 2};
}

Finding judgeThawedWait(RawClass food, ThawWay way, double waitMinutes) {
  if (way == ThawWay::kCounter) return {Caution::kThawOnCounter, 0, waitMinutes, kThawing};
  const double allowed = thawedDays(food, way).most * 24.0 * 60;
  const Caution caution = allowed > 0 ? Caution::kThawedTooLongAgo : Caution::kCookAtOnce;
  return atMost(waitMinutes, allowed, caution, kThawing);
}

double fromFrozenMinutes(double thawedMinutes) {
  return 1.5 * thawedMinutes;
}

}  // namespace suppertide::kitchen
