// One row a household: its revision and counters.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "server/storage/database.h"
#include "server/storage/statement.h"

namespace suppertide::storage {

struct HouseholdRow {
  std::string id;
  std::int64_t revision = 0;
  std::int64_t trimmedRevision = 0;  // changes up to and with it are gone from the log
  std::int64_t documentCount = 0;    // without tombstones
  std::int64_t requestCount = 0;     // ever recorded
  std::int64_t logBytes = 0;         // of the documents in the change log
};

class HouseholdsTable {
 public:
  explicit HouseholdsTable(Database& database);

  absl::StatusOr<bool> any();
  absl::StatusOr<std::optional<HouseholdRow>> find(const std::string& id);
  absl::Status add(const HouseholdRow& row);
  absl::Status update(const HouseholdRow& row);

 private:
  Statement any_;
  Statement find_;
  Statement add_;
  Statement update_;
};

}  // namespace suppertide::storage
