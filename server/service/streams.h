// The open streams, so that they can be ended: all of them when the server
// stops, those of a device when it is revoked.
#pragma once

#include <grpcpp/support/status.h>

#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <string>

namespace suppertide::service {

class Streams {
 public:
  using End = std::function<void(const grpc::Status&)>;

  // `end` may be called once, from any thread. After closing, it is called at once.
  // Returns a number for remove().
  int add(const std::string& deviceId, End end) {
    {
      std::lock_guard lock(mutex_);
      if (!closed_) {
        ends_[++last_] = {deviceId, std::move(end)};
        return last_;
      }
    }
    end(stopping());
    return 0;
  }
  std::size_t size() {
    std::lock_guard lock(mutex_);
    return ends_.size();
  }
  void remove(int number) {
    std::lock_guard lock(mutex_);
    ends_.erase(number);
  }
  void endDevice(const std::string& deviceId) {
    endWhere([&](const std::string& id) { return id == deviceId; },
             grpc::Status(grpc::StatusCode::UNAUTHENTICATED, "this device was taken off the household"),
             false);
  }
  void close() {
    endWhere([](const std::string&) { return true; }, stopping(), true);
  }

 private:
  static grpc::Status stopping() { return {grpc::StatusCode::UNAVAILABLE, "the server is stopping"}; }

  template <typename Where>
  void endWhere(Where where, const grpc::Status& status, bool closing) {
    std::map<int, std::pair<std::string, End>> ending;
    {
      std::lock_guard lock(mutex_);
      closed_ = closed_ || closing;
      for (auto it = ends_.begin(); it != ends_.end();) {
        const auto here = it++;
        if (where(here->second.first)) ending.insert(ends_.extract(here));
      }
    }
    for (auto& [number, entry] : ending) entry.second(status);
  }

  std::mutex mutex_;
  std::map<int, std::pair<std::string, End>> ends_;  // guarded by mutex_
  int last_ = 0;                                     // guarded by mutex_
  bool closed_ = false;                              // guarded by mutex_
};

}  // namespace suppertide::service
