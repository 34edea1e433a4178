// Whole seconds since 1970 in UTC, and their way to the minutes of a line of time.
#pragma once

#include <chrono>

namespace suppertide {

using Instant = std::chrono::sys_seconds;

inline double minutesBetween(Instant base, Instant time) {
  return std::chrono::duration<double, std::ratio<60>>(time - base).count();
}

inline Instant instantAt(Instant base, double minute) {
  return base + std::chrono::seconds(static_cast<long long>(minute * 60));
}

}  // namespace suppertide
