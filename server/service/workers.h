// A few threads that do what a gRPC thread must not: read the disk, check documents, plan.
//
// Tasks of several keys take turns, so that one device with many calls does not
// make all others wait for them.
#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <map>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace suppertide::service {

class Workers {
 public:
  // At most `mostOfAKey` tasks wait under one key given to offer().
  explicit Workers(int threads, std::size_t mostOfAKey = 128);
  ~Workers();  // finishes what was posted, then joins

  // Never blocks. Tasks of a key start in order.
  void post(std::function<void()> task, const std::string& key = "");
  // As post(), but false, and nothing done, when too many wait under `key`.
  bool offer(const std::string& key, std::function<void()> task);
  // Tasks that no thread has taken yet.
  std::size_t waiting();

 private:
  void add(const std::string& key, std::function<void()> task);  // mutex_ held
  void work();

  const std::size_t mostOfAKey_;
  std::mutex mutex_;
  std::condition_variable wake_;
  std::map<std::string, std::deque<std::function<void()>>> tasks_;  // guarded by mutex_; none empty
  std::deque<std::string> turns_;                                   // guarded by mutex_; the keys of tasks_
  bool closing_ = false;                                            // guarded by mutex_
  std::vector<std::thread> threads_;
};

}  // namespace suppertide::service
