// The one thread that writes: takes what is waiting, commits it together, answers.
//
// With many requests waiting, one sync to disk serves them all.
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
  // Called on the writing thread after each commit that changed something, in
  // order of revision, before that write's Done.
  using Committed = std::function<void(const std::string& householdId, std::shared_ptr<const Change>)>;

  // `store` outlives the queue.
  WriteQueue(Store& store, Committed committed);
  ~WriteQueue();  // finishes what was submitted, then joins

  // Never blocks. `done` is called once, on the writing thread.
  void submit(WriteRequest request, Done done);
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
