// How many calls of each household are being worked on, and how many may be.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <string>

namespace suppertide::service {

// Counts by name; a place is free again when its ticket goes. Outlives its tickets.
class InFlight {
 public:
  explicit InFlight(int most) : most_(most) {}

  // Null when `name` has all the places it may have.
  std::shared_ptr<void> enter(const std::string& name) {
    {
      std::lock_guard lock(mutex_);
      int& count = counts_[name];
      if (count >= most_) return nullptr;
      ++count;
    }
    return std::shared_ptr<void>(this, [this, name](void*) { leave(name); });
  }

 private:
  void leave(const std::string& name) {
    std::lock_guard lock(mutex_);
    const auto found = counts_.find(name);
    if (--found->second == 0) counts_.erase(found);
  }

  const int most_;
  std::mutex mutex_;
  std::map<std::string, int> counts_;  // guarded by mutex_; none zero
};

}  // namespace suppertide::service
