// What SQLite's result codes mean to callers of the store: see the table in store.h.
#pragma once

#include <string>

#include "absl/status/status.h"

namespace suppertide::storage {

// The error for a result code of SQLite; `doing` opens the message: "write".
// Never shows SQL. Not for SQLITE_OK, SQLITE_ROW and SQLITE_DONE.
absl::Status storageError(int code, const std::string& doing);

// UNAVAILABLE for a call on the file system that has just failed, with errno in words.
absl::Status fileError(const std::string& doing, const std::string& path);

}  // namespace suppertide::storage
