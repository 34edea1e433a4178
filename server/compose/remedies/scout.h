// A second thread that goes ahead of the first along the same list.
//
// It only ever finds out what the first will want to know; whatever it does or does not get done, the
// first finds the same.
#pragma once

#include <atomic>
#include <condition_variable>
#include <cstddef>
#include <functional>
#include <mutex>
#include <thread>

namespace suppertide::compose {

class Scout {
 public:
  using Look = std::function<void(std::size_t k)>;

  Scout() = default;
  ~Scout();
  Scout(const Scout&) = delete;
  Scout& operator=(const Scout&) = delete;

  // Ends what it is at. Then calls `look` on its thread for those of `count` that the first has not come
  // to, in their order.
  void begin(std::size_t count, Look look);
  // The first has come to the `k`th.
  void reached(std::size_t k) { reached_ = k; }
  // Waits until nothing of `look` runs any more.
  void end();

  // Asked by what it runs: whether to come to an end at once, and whether `k` is still ahead.
  bool ended() const { return ended_; }
  bool isAhead(std::size_t k) const { return !ended_ && k > reached_; }

 private:
  void run();
  void lookAt(std::size_t count, const Look& look);

  std::atomic<bool> ended_{true};
  std::atomic<std::size_t> reached_{0};
  std::mutex mutex_;
  std::condition_variable changed_;
  std::size_t count_ = 0;  // these guarded by mutex_
  Look look_;
  bool busy_ = false;
  bool over_ = false;
  std::thread thread_;
};

}  // namespace suppertide::compose
