// A data file checked, brought forward and ready to be written to.
#pragma once

#include <memory>
#include <string>

#include "absl/status/statusor.h"
#include "server/storage/database.h"
#include "server/storage/store.h"

namespace suppertide::storage {

// The errors of Store::open. Reads the whole file once for its integrity. The
// caller holds the file's lock.
absl::StatusOr<std::unique_ptr<Database>> openFile(const std::string& path, const Store::Options& options);

}  // namespace suppertide::storage
