// Makes a household with its document and first device inside an open transaction.
#pragma once

#include "absl/status/statusor.h"
#include "server/storage/connection.h"
#include "server/storage/store.h"

namespace suppertide::storage {

// The outcome as Store::createHousehold tells it. On an error the caller takes
// back what was written so far.
absl::StatusOr<WriteResult> createHouseholdIn(Connection& connection, const NewHousehold& wanted,
                                              Instant now);

}  // namespace suppertide::storage
