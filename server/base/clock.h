// The time of day as the rest of the server sees it; tests inject their own.
#pragma once

#include <chrono>
#include <mutex>

namespace suppertide {

using Instant = std::chrono::sys_seconds;

class Clock {
 public:
  virtual ~Clock() = default;
  // The present moment, to the second. Safe from any thread.
  virtual Instant now() const = 0;
};

// The machine's clock.
class SystemClock : public Clock {
 public:
  Instant now() const override;
};

// A clock that stands still until told otherwise.
class ManualClock : public Clock {
 public:
  explicit ManualClock(Instant start) : now_(start) {}
  Instant now() const override;
  void set(Instant now);
  void advance(std::chrono::seconds by);

 private:
  mutable std::mutex mutex_;
  Instant now_;  // guarded by mutex_
};

}  // namespace suppertide
