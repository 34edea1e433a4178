// A few threads that do what a gRPC thread must not: read the disk, check documents, plan.
#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace suppertide::service {

class Workers {
 public:
  explicit Workers(int threads);
  ~Workers();  // finishes what was posted, then joins

  // Never blocks. Tasks start in order.
  void post(std::function<void()> task);

 private:
  void work();

  std::mutex mutex_;
  std::condition_variable wake_;
  std::deque<std::function<void()>> tasks_;  // guarded by mutex_
  bool closing_ = false;                     // guarded by mutex_
  std::vector<std::thread> threads_;
};

}  // namespace suppertide::service
