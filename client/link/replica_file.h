// The replica on disk, to begin with when no server can be reached.
#pragma once

#include <chrono>
#include <condition_variable>
#include <filesystem>
#include <memory>
#include <mutex>
#include <thread>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "client/link/replica.h"

namespace suppertide::link {

// Written whole or not at all: a crash leaves the old file. Mode 0600.
absl::Status saveReplica(const std::filesystem::path& path, const Replica& replica);
// NotFound when there is no file; DataLoss when it is cut short or not one of ours.
absl::StatusOr<std::shared_ptr<const Replica>> loadReplica(const std::filesystem::path& path);

// Writes the last replica it was given, on a thread of its own, at most once a pause.
class ReplicaKeeper {
 public:
  ReplicaKeeper(std::filesystem::path path, std::chrono::milliseconds pause);
  ~ReplicaKeeper();  // writes what is not written yet

  void keep(std::shared_ptr<const Replica> replica);

 private:
  void run();

  const std::filesystem::path path_;
  const std::chrono::milliseconds pause_;
  std::mutex mutex_;  // guards all below
  std::condition_variable wake_;
  std::shared_ptr<const Replica> next_;
  bool stopping_ = false;
  std::thread thread_;  // last: begins when all is there
};

}  // namespace suppertide::link
