// Calls back at a moment of a clock: one thread, no polling.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <thread>

#include "server/base/clock.h"

namespace suppertide {

class Timer {
 public:
  // `due` is called on the timer's thread, once for each moment set. `clock` outlives the timer.
  Timer(const Clock& clock, std::function<void()> due);
  ~Timer();  // waits for a call that runs

  // Replaces the moment set before, if any; one in the past is due at once.
  void set(std::optional<Instant> when);

 private:
  void run();

  const Clock& clock_;
  const std::function<void()> due_;
  const std::shared_ptr<Sleeper> sleeper_;
  std::optional<Instant> when_;  // guarded by the sleeper's mutex
  bool ending_ = false;          // guarded by the sleeper's mutex
  std::thread thread_;
};

}  // namespace suppertide
