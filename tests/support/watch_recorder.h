// What one watcher was given, checked against what was committed.
//
// The six promises of a watch, each with a validator of its own that answers
// with complaints; no complaint, kept promise.
//   ordered       revisions never go back within a stream
//   unique        no change comes twice, also not on the next stream
//   atomic        a change comes whole, as committed
//   reliable      nothing is left out between the first and the last delivered
//   resumable     a stream after N goes on with N + 1, or starts over with a reset
//   bookmarkable  at a bookmark N the replica is what the household was at N
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "server/storage/store.h"
#include "server/sync/feed.h"

namespace suppertide {

// Documents by name, tombstones left out.
using Replica = std::map<storage::DocumentKey, storage::Document>;
using Changes = std::vector<std::shared_ptr<const storage::Change>>;
using Complaints = std::vector<std::string>;

// Puts a change onto a replica.
void apply(const storage::Change& change, Replica& replica);

class WatchRecorder {
 public:
  // A new stream; `after` is what it was asked for.
  void begin(std::int64_t after);
  // Not for Nothing.
  void take(const sync::FeedItem& item);

  // Where to go on: the last revision wholly applied; 0 in the middle of a snapshot.
  std::int64_t revision() const { return revision_; }
  const Replica& replica() const { return replica_; }
  bool sawReset() const { return sawReset_; }

 private:
  friend class WatchValidator;

  struct Event {
    enum class Kind { kBegin, kReset, kChange, kBookmark };
    Kind kind = Kind::kBegin;
    std::int64_t revision = 0;                      // asked for, of the change, of the bookmark
    std::shared_ptr<const storage::Change> change;  // of a change
    Replica replica;                                // at a bookmark
  };

  std::vector<Event> events_;
  Replica replica_;
  std::int64_t revision_ = 0;
  bool sawReset_ = false;
};

class WatchValidator {
 public:
  // `committed` is every change of the household from revision 1 on.
  WatchValidator(const WatchRecorder& recorder, const Changes& committed)
      : events_(recorder.events_), committed_(committed) {}

  Complaints ordered() const;
  Complaints unique() const;
  Complaints atomic() const;
  Complaints reliable() const;
  Complaints resumable() const;
  Complaints bookmarkable() const;
  // All six, each complaint led by its promise.
  Complaints all() const;

 private:
  using Event = WatchRecorder::Event;
  using Kind = Event::Kind;

  const std::vector<Event>& events_;
  const Changes& committed_;
};

}  // namespace suppertide
