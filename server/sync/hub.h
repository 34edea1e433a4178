// Tells watchers of a household that something was committed, and keeps the last
// few changes at hand, while somebody watches, so that live watchers need not
// read the log.
//
// The writer never waits for a reader: committed() stores a pointer and calls
// wake functions, which must only note that there is work.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "server/storage/store.h"

namespace suppertide::sync {

class Hub {
 public:
  // How many recent changes are kept by household.
  explicit Hub(std::size_t keep = 256);
  ~Hub();

  // In order of revision. Thread-safe.
  void committed(const std::string& householdId, std::shared_ptr<const storage::Change> change);

  // Calls `wake` after each commit until the handle goes away; after its
  // destructor returns no call is running. `wake` is called without any lock of
  // the hub held and may be called from several threads.
  class Subscription;
  std::unique_ptr<Subscription> subscribe(const std::string& householdId, std::function<void()> wake);

  // Changes after `after` if all of them are still at hand, ascending; nullopt
  // sends the caller to the log. An empty list means up to date.
  struct Recent {
    bool atHand = false;
    std::vector<std::shared_ptr<const storage::Change>> changes;
  };
  Recent recentAfter(const std::string& householdId, std::int64_t after) const;

 private:
  friend class SubscriptionInState;
  struct State;
  std::shared_ptr<State> state_;
};

class Hub::Subscription {
 public:
  virtual ~Subscription() = default;
};

}  // namespace suppertide::sync
