// Short builders of Watch messages.
#pragma once

#include <cstdint>
#include <string>

#include "suppertide/v1/sync_service.pb.h"

namespace suppertide::link::testing {

inline v1::WatchResponse reset() {
  v1::WatchResponse message;
  message.mutable_reset();
  return message;
}

inline v1::WatchResponse bookmark(std::int64_t revision) {
  v1::WatchResponse message;
  message.mutable_bookmark()->set_revision(revision);
  return message;
}

inline v1::WatchResponse snapshotOfEvent(const std::string& id, const std::string& name) {
  v1::WatchResponse message;
  v1::Event* event = message.mutable_snapshot()->add_documents()->mutable_event();
  event->set_id(id);
  event->set_display_name(name);
  return message;
}

inline v1::WatchResponse eventWritten(std::int64_t revision, const std::string& id, const std::string& name,
                                      const std::string& memberId, bool partial = false) {
  v1::WatchResponse message;
  v1::ChangeSet* changes = message.mutable_changes();
  changes->set_revision(revision);
  changes->set_member_id(memberId);
  changes->set_partial(partial);
  v1::Event* event = changes->add_changes()->mutable_event();
  event->set_id(id);
  event->set_display_name(name);
  return message;
}

inline v1::WatchResponse deleted(std::int64_t revision, const std::string& kind, const std::string& id) {
  v1::WatchResponse message;
  message.mutable_changes()->set_revision(revision);
  v1::DeletedDocument* what = message.mutable_changes()->add_changes()->mutable_deleted();
  what->set_kind(kind);
  what->set_id(id);
  return message;
}

}  // namespace suppertide::link::testing
