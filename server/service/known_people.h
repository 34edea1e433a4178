// Who stands behind a token: read from the disk once, and known by heart until anything about people changes.
#pragma once

#include <cstdint>
#include <mutex>
#include <string>
#include <unordered_map>

#include "absl/status/statusor.h"
#include "server/base/clock.h"
#include "server/storage/store.h"
#include "suppertide/v1/household.pb.h"

namespace suppertide::service {

// Who makes a call, as its token says.
struct Caller {
  std::string householdId;
  std::string memberId;
  std::string deviceId;
  std::string tokenHash;
  v1::Role role = v1::ROLE_UNSPECIFIED;
};

// Any thread. What is known by heart is as fresh as what the disk says: a device revoked is unknown from
// the moment on at which revoking it is answered, and a role taken away is gone likewise.
class KnownPeople {
 public:
  // Both outlive it.
  KnownPeople(storage::Store& store, const Clock& clock) : store_(store), clock_(clock) {}

  // ROLE_UNSPECIFIED when the household has no such member any more. NOT_FOUND when the token is
  // unknown or revoked. Reads the disk where it must.
  absl::StatusOr<Caller> find(const std::string& token);

 private:
  struct Person {
    Caller caller;
    Instant until;  // from then on storage is to note again that the device was seen
  };
  absl::StatusOr<Person> read(const std::string& tokenHash);

  storage::Store& store_;
  const Clock& clock_;
  std::mutex mutex_;
  std::uint64_t version_ = 0;                       // guarded by mutex_; storage's when people_ was read
  std::unordered_map<std::string, Person> people_;  // guarded by mutex_; by the token's hash
};

}  // namespace suppertide::service
