// The time of day as the rest of the server sees it; tests inject their own.
#pragma once

#include <chrono>
#include <condition_variable>
#include <memory>
#include <mutex>
#include <set>

namespace suppertide {

using Instant = std::chrono::sys_seconds;

// Where a thread sleeps, until a moment or until it is woken. Shared with the clock meanwhile.
struct Sleeper {
  std::mutex mutex;
  std::condition_variable wake;
};

class Clock {
 public:
  virtual ~Clock() = default;
  // The present moment, to the second. Safe from any thread.
  virtual Instant now() const = 0;
  // Waits until `when`, or until somebody notifies the sleeper; perhaps less. `lock` is of its
  // mutex. A clock that is set past `when` ends the wait.
  virtual void sleepUntil(Instant when, const std::shared_ptr<Sleeper>& sleeper,
                          std::unique_lock<std::mutex>& lock) const = 0;
};

// The machine's clock.
class SystemClock : public Clock {
 public:
  Instant now() const override;
  void sleepUntil(Instant when, const std::shared_ptr<Sleeper>& sleeper,
                  std::unique_lock<std::mutex>& lock) const override;
};

// A clock that stands still until told otherwise.
class ManualClock : public Clock {
 public:
  explicit ManualClock(Instant start) : now_(start) {}
  Instant now() const override;
  void sleepUntil(Instant when, const std::shared_ptr<Sleeper>& sleeper,
                  std::unique_lock<std::mutex>& lock) const override;
  void set(Instant now);
  void advance(std::chrono::seconds by);

 private:
  mutable std::mutex mutex_;
  Instant now_;                                             // guarded by mutex_
  mutable std::multiset<std::shared_ptr<Sleeper>> asleep_;  // guarded by mutex_
};

}  // namespace suppertide
