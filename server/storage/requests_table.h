// Requests that were carried out, so that a repeat gets its first outcome.
//
// Only successes are kept: a refused request changed nothing, so carrying out
// its repeat is as good as remembering the refusal.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "server/storage/database.h"
#include "server/storage/statement.h"
#include "server/storage/store.h"

namespace suppertide::storage {

struct RequestRow {
  std::string householdId;  // empty for making a household and for joining one
  std::string requestId;
  std::int64_t number = 0;  // HouseholdRow::requestCount when recorded; without household seconds since 1970
  std::string fingerprint;
  std::int64_t revision = 0;
  std::vector<DocumentKey> keys;
  std::string deviceId;  // let in by it, else empty
};

class RequestsTable {
 public:
  explicit RequestsTable(Database& database);

  absl::StatusOr<std::optional<RequestRow>> find(const std::string& householdId,
                                                 const std::string& requestId);
  absl::Status add(const RequestRow& row);
  absl::Status setDevice(const std::string& householdId, const std::string& requestId,
                         const std::string& deviceId);
  // Forgets requests with a number up to and with this one.
  absl::Status drop(const std::string& householdId, std::int64_t upToNumber);

 private:
  Statement find_;
  Statement add_;
  Statement setDevice_;
  Statement drop_;
};

}  // namespace suppertide::storage
