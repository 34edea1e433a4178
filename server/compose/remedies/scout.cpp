#include "server/compose/remedies/scout.h"

#include <algorithm>
#include <utility>

namespace suppertide::compose {

Scout::~Scout() {
  end();
  {
    std::lock_guard lock(mutex_);
    over_ = true;
  }
  changed_.notify_all();
  if (thread_.joinable()) thread_.join();
}

void Scout::begin(std::size_t count, Look look) {
  end();
  reached_ = 0;
  ended_ = false;
  {
    std::lock_guard lock(mutex_);
    count_ = count;
    look_ = std::move(look);
    busy_ = true;
    if (!thread_.joinable()) thread_ = std::thread([this] { run(); });
  }
  changed_.notify_all();
}

void Scout::end() {
  ended_ = true;
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return !busy_; });
}

void Scout::run() {
  std::unique_lock lock(mutex_);
  while (true) {
    changed_.wait(lock, [this] { return busy_ || over_; });
    if (over_) return;
    const Look look = std::exchange(look_, nullptr);
    const std::size_t count = count_;
    lock.unlock();
    lookAt(count, look);
    lock.lock();
    busy_ = false;
    changed_.notify_all();
  }
}

void Scout::lookAt(std::size_t count, const Look& look) {
  for (std::size_t k = 1; k < count && !ended_; k = std::max(k, reached_.load()) + 1) look(k);
}

}  // namespace suppertide::compose
