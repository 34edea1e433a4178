// What one watcher gets, in order: reset and snapshot or backlog, bookmark, then
// live changes. Plain data, no network: the service writes each item to its stream.
//
// The promises: ordered, unique, atomic, reliable, resumable, bookmarkable.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "absl/status/statusor.h"
#include "server/storage/store.h"
#include "server/sync/hub.h"

namespace suppertide::sync {

struct Reset {};
struct SnapshotPart {
  std::vector<storage::Document> documents;
};
struct Bookmark {
  std::int64_t revision = 0;
};
struct Nothing {};  // up to date; wait for the hub's wake
using FeedItem = std::variant<Nothing, Reset, SnapshotPart, Bookmark, std::shared_ptr<const storage::Change>>;

// Not thread-safe: one caller at a time. Reads the store, so not for a gRPC callback thread.
class Feed {
 public:
  // `after` 0 starts with a snapshot. Hub and store outlive the feed.
  Feed(Hub& hub, storage::Store& store, std::string householdId, std::int64_t after);

  // The next item. INVALID_ARGUMENT once when `after` lies in the future, then as
  // if it were the present; store errors as they come, and a call after one goes
  // on where it was. After Nothing, call again when woken.
  absl::StatusOr<FeedItem> next();
  // Whether next() would give Nothing, as far as that is known without reading the disk.
  bool isUpToDate() const;
  // A bookmark at what was delivered so far, for a silence.
  Bookmark bookmark() const { return {delivered_}; }

 private:
  absl::Status start();
  absl::Status refill();
  absl::Status readSnapshot();

  Hub& hub_;
  storage::Store& store_;
  std::string householdId_;
  std::int64_t delivered_;
  bool started_ = false;
  bool bookmarkDue_ = true;
  std::vector<FeedItem> ready_;  // reversed: next at the back
};

}  // namespace suppertide::sync
