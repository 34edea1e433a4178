#include "server/base/timer.h"

#include <utility>

namespace suppertide {

Timer::Timer(const Clock& clock, std::function<void()> due)
    : clock_(clock),
      due_(std::move(due)),
      sleeper_(std::make_shared<Sleeper>()),
      thread_([this] { run(); }) {}

Timer::~Timer() {
  {
    std::lock_guard lock(sleeper_->mutex);
    ending_ = true;
  }
  sleeper_->wake.notify_all();
  thread_.join();
}

void Timer::set(std::optional<Instant> when) {
  {
    std::lock_guard lock(sleeper_->mutex);
    when_ = when;
  }
  sleeper_->wake.notify_all();
}

void Timer::run() {
  std::unique_lock lock(sleeper_->mutex);
  while (!ending_) {
    if (!when_) {
      sleeper_->wake.wait(lock);
    } else if (clock_.now() < *when_) {
      clock_.sleepUntil(*when_, sleeper_, lock);
    } else {
      when_.reset();
      lock.unlock();
      due_();
      lock.lock();
    }
  }
}

}  // namespace suppertide
