// What watchers are sent, ready for the wire: a change is put into words once,
// however many watch its household.
#pragma once

#include <grpcpp/support/byte_buffer.h>

#include <deque>
#include <memory>
#include <mutex>
#include <utility>
#include <vector>

#include "server/storage/store.h"
#include "suppertide/v1/sync_service.pb.h"

namespace suppertide::service {

// The messages of one item, in order. Copies of a message share its bytes.
using Messages = std::vector<grpc::ByteBuffer>;

grpc::ByteBuffer wireOf(const v1::WatchResponse& message);
// Large ones in several parts.
Messages messagesOf(const storage::Change& change);
Messages snapshotMessages(const std::vector<storage::Document>& documents);

// Remembers the messages of the last few changes. Thread-safe.
class ChangeMessages {
 public:
  std::shared_ptr<const Messages> of(const std::shared_ptr<const storage::Change>& change);

 private:
  using Made = std::pair<std::shared_ptr<const storage::Change>, std::shared_ptr<const Messages>>;
  std::mutex mutex_;
  std::deque<Made> made_;  // guarded by mutex_; the newest first
};

}  // namespace suppertide::service
