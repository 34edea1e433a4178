// Joins the messages of a Watch stream into whole replicas.
//
// A commit may come in parts and a snapshot in chunks: nothing of either is
// seen before its last piece. What a cut stream left half done is dropped by
// `restart`, so that the next stream continues after the last whole revision.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

#include "client/link/replica.h"
#include "suppertide/v1/sync_service.pb.h"

namespace suppertide::link {

class Assembler {
 public:
  // Continues from what was `known` before; null: from nothing.
  explicit Assembler(std::shared_ptr<const Replica> known = nullptr);

  // A new whole state to be shown.
  struct Published {
    std::shared_ptr<const Replica> replica;
    std::string memberId;  // who wrote; empty: a snapshot or the server
  };
  struct Outcome {
    std::optional<Published> published;
    bool caughtUp = false;  // a bookmark: everything so far is here
  };

  // Before each new stream.
  void restart();
  // Forgets the revision, so that the next stream begins with a snapshot; the
  // replica stays readable until then.
  void forgetRevision() { resumeAt_ = 0; }
  // Takes the next message of the stream. A commit that is already in the replica changes nothing.
  // Copies the replica once per commit.
  Outcome take(const v1::WatchResponse& message);

  // What to ask for: exclusive, zero for a snapshot.
  std::int64_t resumeAfter() const { return resumeAt_; }
  std::shared_ptr<const Replica> replica() const { return replica_; }

 private:
  Outcome takeChanges(const v1::ChangeSet& changes);
  Outcome takeBookmark(const v1::Bookmark& bookmark);

  std::shared_ptr<const Replica> replica_;
  std::int64_t resumeAt_ = 0;
  std::unique_ptr<Replica> snapshot_;  // while one is being received
  std::unique_ptr<Replica> pending_;   // while a commit comes in parts
};

}  // namespace suppertide::link
