// Codes that let a new device in, each known by its hash and gone once used.
#pragma once

#include <optional>
#include <string>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "server/storage/database.h"
#include "server/storage/statement.h"
#include "server/storage/store.h"

namespace suppertide::storage {

class CodesTable {
 public:
  explicit CodesTable(Database& database);

  // Absent also when it expired at or before `now`.
  absl::StatusOr<std::optional<Code>> find(const std::string& hash, Instant now);
  // Takes the place of one with the same hash.
  absl::Status add(const std::string& hash, const Code& code);
  absl::Status remove(const std::string& hash);
  absl::Status removeAll(Code::Purpose purpose);
  absl::Status removeExpired(Instant now);

 private:
  Statement find_;
  Statement add_;
  Statement remove_;
  Statement removeAll_;
  Statement removeExpired_;
};

}  // namespace suppertide::storage
