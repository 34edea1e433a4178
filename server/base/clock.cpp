#include "server/base/clock.h"

namespace suppertide {

Instant SystemClock::now() const {
  return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
}

void SystemClock::sleepUntil(Instant when, const std::shared_ptr<Sleeper>& sleeper,
                             std::unique_lock<std::mutex>& lock) const {
  sleeper->wake.wait_until(lock, std::chrono::system_clock::time_point(when));
}

Instant ManualClock::now() const {
  std::lock_guard lock(mutex_);
  return now_;
}

void ManualClock::sleepUntil(Instant when, const std::shared_ptr<Sleeper>& sleeper,
                             std::unique_lock<std::mutex>& lock) const {
  {
    std::lock_guard guard(mutex_);
    if (now_ >= when) return;
    asleep_.insert(sleeper);
  }
  sleeper->wake.wait(lock);
  std::lock_guard guard(mutex_);
  if (const auto one = asleep_.find(sleeper); one != asleep_.end()) asleep_.erase(one);
}

void ManualClock::set(Instant now) {
  std::multiset<std::shared_ptr<Sleeper>> asleep;
  {
    std::lock_guard lock(mutex_);
    now_ = now;
    asleep = asleep_;
  }
  for (const auto& sleeper : asleep) {
    // Who is on the way to sleep holds it: they are asleep once it is had.
    { std::lock_guard lock(sleeper->mutex); }
    sleeper->wake.notify_all();
  }
}

void ManualClock::advance(std::chrono::seconds by) {
  set(now() + by);
}

}  // namespace suppertide
