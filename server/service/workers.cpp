#include "server/service/workers.h"

#include <utility>

namespace suppertide::service {

Workers::Workers(int threads, std::size_t mostOfAKey) : mostOfAKey_(mostOfAKey) {
  for (int i = 0; i < threads; ++i) threads_.emplace_back([this] { work(); });
}

Workers::~Workers() {
  {
    std::lock_guard lock(mutex_);
    closing_ = true;
  }
  wake_.notify_all();
  for (std::thread& thread : threads_) thread.join();
}

void Workers::add(const std::string& key, std::function<void()> task) {
  auto& waiting = tasks_[key];
  if (waiting.empty()) turns_.push_back(key);
  waiting.push_back(std::move(task));
}

void Workers::post(std::function<void()> task, const std::string& key) {
  {
    std::lock_guard lock(mutex_);
    add(key, std::move(task));
  }
  wake_.notify_one();
}

bool Workers::offer(const std::string& key, std::function<void()> task) {
  {
    std::lock_guard lock(mutex_);
    const auto waiting = tasks_.find(key);
    if (waiting != tasks_.end() && waiting->second.size() >= mostOfAKey_) return false;
    add(key, std::move(task));
  }
  wake_.notify_one();
  return true;
}

std::size_t Workers::waiting() {
  std::lock_guard lock(mutex_);
  std::size_t count = 0;
  for (const auto& [key, tasks] : tasks_) count += tasks.size();
  return count;
}

void Workers::work() {
  for (;;) {
    std::function<void()> task;
    {
      std::unique_lock lock(mutex_);
      wake_.wait(lock, [this] { return closing_ || !turns_.empty(); });
      if (turns_.empty()) return;
      std::string key = std::move(turns_.front());
      turns_.pop_front();
      const auto waiting = tasks_.find(key);
      task = std::move(waiting->second.front());
      waiting->second.pop_front();
      if (waiting->second.empty())
        tasks_.erase(waiting);
      else
        turns_.push_back(std::move(key));
    }
    task();
  }
}

}  // namespace suppertide::service
