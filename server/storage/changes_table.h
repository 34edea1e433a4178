// The change log: each committed write whole, by household and revision.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "server/storage/database.h"
#include "server/storage/statement.h"
#include "server/storage/store.h"

namespace suppertide::storage {

class ChangesTable {
 public:
  explicit ChangesTable(Database& database);

  // `change` has documents; they carry its revision, writer and time.
  absl::Status add(const std::string& householdId, const Change& change);
  // With a revision above `after`, ascending, at most `limit`.
  absl::StatusOr<std::vector<Change>> after(const std::string& householdId, std::int64_t after, int limit);
  // Forgets changes with a revision up to and with this one; gives the bytes of their documents.
  absl::StatusOr<std::int64_t> drop(const std::string& householdId, std::int64_t upToRevision);
  // The last of the oldest changes that weigh `bytes` together, or the newest if all weigh less; 0 without
  // any.
  absl::StatusOr<std::int64_t> oldestWeighing(const std::string& householdId, std::int64_t bytes);

 private:
  Statement add_;
  Statement after_;
  Statement bytesUpTo_;
  Statement weights_;
  Statement drop_;
};

}  // namespace suppertide::storage
