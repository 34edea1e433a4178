// A sync service whose every stream is written by the test, and a listener that
// remembers what it was told.
#pragma once

#include <algorithm>
#include <chrono>
#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <string>
#include <thread>
#include <utility>
#include <vector>

#include "client/link/link.h"
#include "suppertide/v1/sync_service.grpc.pb.h"

namespace suppertide::link::testing {

constexpr std::chrono::seconds kPatience{20};

// Opened once; waits for it end in any case.
class Gate {
 public:
  void open() {
    const std::lock_guard<std::mutex> lock(mutex_);
    open_ = true;
    changed_.notify_all();
  }
  bool wait() {
    std::unique_lock<std::mutex> lock(mutex_);
    return changed_.wait_for(lock, kPatience, [this] { return open_; });
  }

 private:
  std::mutex mutex_;
  std::condition_variable changed_;
  bool open_ = false;
};

class ScriptedSync : public v1::SyncService::Service {
 public:
  using Writer = grpc::ServerWriter<v1::WatchResponse>;
  using Stream = std::function<grpc::Status(Writer&, grpc::ServerContext&)>;

  // The streams in the order they are opened; one more than these is UNAVAILABLE.
  void add(Stream stream) {
    const std::lock_guard<std::mutex> lock(mutex_);
    streams_.push_back(std::move(stream));
  }
  // The stream writes these and stays open until the caller goes or `until` opens.
  void addOpen(std::vector<v1::WatchResponse> messages) {
    add([messages = std::move(messages)](Writer& writer, grpc::ServerContext& context) {
      for (const v1::WatchResponse& message : messages) writer.Write(message);
      return stayOpen(context);
    });
  }
  void addCut(std::vector<v1::WatchResponse> messages, grpc::Status status) {
    add([messages = std::move(messages), status = std::move(status)](Writer& writer, grpc::ServerContext&) {
      for (const v1::WatchResponse& message : messages) writer.Write(message);
      return status;
    });
  }
  static grpc::Status stayOpen(grpc::ServerContext& context) {
    while (!context.IsCancelled()) std::this_thread::yield();
    return grpc::Status::CANCELLED;
  }

  grpc::Status Watch(grpc::ServerContext* context, const v1::WatchRequest* request, Writer* writer) override {
    Stream stream;
    {
      const std::lock_guard<std::mutex> lock(mutex_);
      asked_.push_back(request->after_revision());
      for (const auto& [key, value] : context->client_metadata()) {
        if (key == "authorization") tokens_.emplace_back(value.data(), value.size());
      }
      if (!streams_.empty()) {
        stream = std::move(streams_.front());
        streams_.pop_front();
      }
    }
    if (!stream) return {grpc::StatusCode::UNAVAILABLE, "no more streams"};
    return stream(*writer, *context);
  }

  std::vector<std::int64_t> asked() const {
    const std::lock_guard<std::mutex> lock(mutex_);
    return asked_;
  }
  std::vector<std::string> tokens() const {
    const std::lock_guard<std::mutex> lock(mutex_);
    return tokens_;
  }

 private:
  mutable std::mutex mutex_;
  std::deque<Stream> streams_;
  std::vector<std::int64_t> asked_;
  std::vector<std::string> tokens_;
};

class Recorder : public LinkListener {
 public:
  struct Seen {
    std::shared_ptr<const Replica> replica;
    std::string memberId;
  };

  void linkStateChanged(LinkState state, const std::string& why) override {
    const std::lock_guard<std::mutex> lock(mutex_);
    states_.push_back(state);
    whys_.push_back(why);
    changed_.notify_all();
  }
  void replicaChanged(std::shared_ptr<const Replica> replica, const std::string& memberId) override {
    const std::lock_guard<std::mutex> lock(mutex_);
    seen_.push_back({std::move(replica), memberId});
    changed_.notify_all();
  }

  bool waitForState(LinkState state, std::size_t times = 1) {
    std::unique_lock<std::mutex> lock(mutex_);
    return changed_.wait_for(lock, kPatience, [&] {
      return static_cast<std::size_t>(std::count(states_.begin(), states_.end(), state)) >= times;
    });
  }
  bool waitForReplicas(std::size_t count) {
    std::unique_lock<std::mutex> lock(mutex_);
    return changed_.wait_for(lock, kPatience, [&] { return seen_.size() >= count; });
  }
  std::vector<LinkState> states() const {
    const std::lock_guard<std::mutex> lock(mutex_);
    return states_;
  }
  std::vector<Seen> seen() const {
    const std::lock_guard<std::mutex> lock(mutex_);
    return seen_;
  }
  std::string lastWhy() const {
    const std::lock_guard<std::mutex> lock(mutex_);
    return whys_.empty() ? "" : whys_.back();
  }

 private:
  mutable std::mutex mutex_;
  std::condition_variable changed_;
  std::vector<LinkState> states_;
  std::vector<std::string> whys_;
  std::vector<Seen> seen_;
};

}  // namespace suppertide::link::testing
