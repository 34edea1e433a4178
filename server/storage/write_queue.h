// Writes one after the other: what is waiting is committed together, on the writing thread.
//
// With many requests waiting, one sync to disk serves them all; a single one may be
// written by the thread that brings it, which saves waking another.
#pragma once

#include <functional>
#include <memory>
#include <string>

#include "absl/status/statusor.h"
#include "server/storage/store.h"

namespace suppertide::storage {

class WriteQueue {
 public:
  using Done = std::function<void(absl::StatusOr<WriteResult>)>;
  // Called by the thread that wrote after each commit that changed something, in
  // order of revision, one at a time, before that write's Done.
  using Committed = std::function<void(const std::string& householdId, std::shared_ptr<const Change>)>;

  // `store` outlives the queue.
  WriteQueue(Store& store, Committed committed);
  ~WriteQueue();  // finishes what was submitted, then joins

  // Never blocks. `done` is called once, on the writing thread.
  void submit(WriteRequest request, Done done);
  // As submit(), but when nothing is being written the calling thread writes and
  // calls `done` itself: for threads that may wait for the disk. `done` must not
  // need a lock that the caller holds.
  void writeNow(WriteRequest request, Done done);
  // Lets a device in. As submit().
  void redeem(Redemption redemption, std::function<void(absl::StatusOr<Redeemed>)> done);
  // Writes and tasks that are not begun yet. Any thread.
  std::size_t waiting() const;
  // Runs `task` on the writing thread in turn; for reads and rarer writes that
  // must not block a caller.
  void run(std::function<void(Store&)> task);

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace suppertide::storage
