#include "server/service/change_messages.h"

#include <grpcpp/impl/codegen/proto_utils.h>

#include <algorithm>

#include "server/service/documents.h"

namespace suppertide::service {
namespace {

constexpr std::size_t kPartBytes = 256 * 1024;
constexpr std::size_t kRemembered = 32;

// The documents over as many messages as they need; `target` is where a message has them.
template <typename Target>
std::vector<v1::WatchResponse> partsOf(const std::vector<storage::Document>& documents, Target target) {
  std::vector<v1::WatchResponse> messages(1);
  std::size_t bytes = 0;
  target(messages.back());
  for (const storage::Document& document : documents) {
    if (bytes > 0 && bytes + document.bytes.size() > kPartBytes) {
      messages.emplace_back();
      bytes = 0;
    }
    *target(messages.back()).Add() = changeOf(document);
    bytes += document.bytes.size();
  }
  return messages;
}

}  // namespace

grpc::ByteBuffer wireOf(const v1::WatchResponse& message) {
  grpc::ByteBuffer bytes;
  bool own = false;
  grpc::SerializationTraits<v1::WatchResponse>::Serialize(message, &bytes, &own);
  return bytes;
}

Messages messagesOf(const storage::Change& change) {
  std::vector<v1::WatchResponse> parts = partsOf(
      change.documents, [&](v1::WatchResponse & message) -> auto& {
        v1::ChangeSet& set = *message.mutable_changes();
        set.set_revision(change.revision);
        set.set_member_id(change.memberId);
        set.mutable_commit_time()->set_seconds(change.commitTime.time_since_epoch().count());
        return *set.mutable_changes();
      });
  Messages messages;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    parts[i].mutable_changes()->set_partial(i + 1 < parts.size());
    messages.push_back(wireOf(parts[i]));
  }
  return messages;
}

Messages snapshotMessages(const std::vector<storage::Document>& documents) {
  Messages messages;
  for (const v1::WatchResponse& part : partsOf(
           documents, [](v1::WatchResponse & message) -> auto& {
             return *message.mutable_snapshot()->mutable_documents();
           }))
    messages.push_back(wireOf(part));
  return messages;
}

std::shared_ptr<const Messages> ChangeMessages::of(const std::shared_ptr<const storage::Change>& change) {
  std::lock_guard lock(mutex_);
  const auto found =
      std::find_if(made_.begin(), made_.end(), [&](const Made& made) { return made.first == change; });
  if (found != made_.end()) return found->second;
  made_.emplace_front(change, std::make_shared<const Messages>(messagesOf(*change)));
  if (made_.size() > kRemembered) made_.pop_back();
  return made_.front().second;
}

}  // namespace suppertide::service
