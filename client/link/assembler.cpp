#include "client/link/assembler.h"

#include "client/link/replica_changes.h"

namespace suppertide::link {

Assembler::Assembler(std::shared_ptr<const Replica> known)
    : replica_(known != nullptr ? std::move(known) : std::make_shared<const Replica>()),
      resumeAt_(replica_->revision) {}

void Assembler::restart() {
  snapshot_.reset();
  pending_.reset();
}

Assembler::Outcome Assembler::take(const v1::WatchResponse& message) {
  switch (message.kind_case()) {
    case v1::WatchResponse::kChanges:
      return takeChanges(message.changes());
    case v1::WatchResponse::kBookmark:
      return takeBookmark(message.bookmark());
    case v1::WatchResponse::kReset:
      pending_.reset();
      snapshot_ = std::make_unique<Replica>();
      return {};
    case v1::WatchResponse::kSnapshot:
      if (snapshot_ == nullptr) snapshot_ = std::make_unique<Replica>();
      for (const v1::Change& document : message.snapshot().documents()) applyChange(document, *snapshot_);
      return {};
    case v1::WatchResponse::KIND_NOT_SET:
      return {};
  }
  return {};
}

Assembler::Outcome Assembler::takeChanges(const v1::ChangeSet& changes) {
  // During a snapshot only its bookmark gives it a revision; nothing else can be built on it.
  if (snapshot_ != nullptr || changes.revision() <= resumeAt_) return {};
  if (pending_ == nullptr) pending_ = std::make_unique<Replica>(*replica_);
  for (const v1::Change& change : changes.changes()) applyChange(change, *pending_);
  if (changes.partial()) return {};
  pending_->revision = changes.revision();
  resumeAt_ = changes.revision();
  replica_ = std::move(pending_);
  return {.published = Published{replica_, changes.member_id()}};
}

Assembler::Outcome Assembler::takeBookmark(const v1::Bookmark& bookmark) {
  Outcome outcome{.published = std::nullopt, .caughtUp = true};
  if (snapshot_ != nullptr) {
    snapshot_->revision = bookmark.revision();
    replica_ = std::move(snapshot_);
    outcome.published = Published{replica_, ""};
  }
  resumeAt_ = bookmark.revision();
  return outcome;
}

}  // namespace suppertide::link
