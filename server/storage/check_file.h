// Whether a data file is whole.
#pragma once

#include <string>
#include <vector>

#include "absl/status/status.h"
#include "server/storage/database.h"

namespace suppertide::storage {

// What SQLite says of damage, a line each, without its headings.
std::vector<std::string> damageLines(const std::string& answer);

// DATA_LOSS when SQLite finds the file damaged; UNAVAILABLE when the disk would
// not give it. Reads the whole file once.
absl::Status checkIntegrity(Database& database);

// FAILED_PRECONDITION when nothing was ever written to it.
absl::Status checkIsNotEmpty(Database& database);

}  // namespace suppertide::storage
