// Brings a data file forward to the schema this program knows.
//
// The version is SQLite's user_version: the number of migrations applied. A
// migration is never changed once released; a new one is added at the end.
#pragma once

#include <string>
#include <vector>

#include "absl/status/status.h"
#include "server/storage/database.h"

namespace suppertide::storage {

// Marks a file as Suppertide's, in SQLite's application_id: "Supr".
inline constexpr int kApplicationId = 0x53757072;

// The migrations of this program; version n is reached by the first n.
const std::vector<std::string>& migrations();

// Whether this program may write to the file. FAILED_PRECONDITION for another
// program's file and for a schema version above `known`. Changes nothing.
absl::Status checkIdentity(Database& database, int known);

// Applies what is missing of `steps`, each in a transaction of its own with its
// version: stopped half-way, the next call goes on from there.
absl::Status migrate(Database& database, const std::vector<std::string>& steps);

}  // namespace suppertide::storage
