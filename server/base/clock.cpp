#include "server/base/clock.h"

namespace suppertide {

Instant SystemClock::now() const {
  return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
}

Instant ManualClock::now() const {
  std::lock_guard lock(mutex_);
  return now_;
}

void ManualClock::set(Instant now) {
  std::lock_guard lock(mutex_);
  now_ = now;
}

void ManualClock::advance(std::chrono::seconds by) {
  std::lock_guard lock(mutex_);
  now_ += by;
}

}  // namespace suppertide
