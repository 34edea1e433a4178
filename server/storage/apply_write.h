// Carries out one write request inside an open transaction.
#pragma once

#include <string>

#include "absl/status/statusor.h"
#include "server/storage/connection.h"
#include "server/storage/store.h"

namespace suppertide::storage {

// The outcome of `request` as Store::write tells it. On an error, and after
// validateOnly, the caller takes back what was written so far.
absl::StatusOr<WriteResult> applyWrite(Connection& connection, const Store::Options& options,
                                       const WriteRequest& request, Instant now);

// What a request that was carried out before gives now. INVALID_ARGUMENT when
// `fingerprint` is of something else.
absl::StatusOr<WriteResult> replay(Connection& connection, const std::string& householdId,
                                   const RequestRow& known, const std::string& fingerprint);

// Notes that a request was carried out, under the next number of `household`.
absl::Status recordRequest(Connection& connection, HouseholdRow& household, RequestRow row);

// Different for every write of every document, also after an older file was put back.
std::string newEtag(std::int64_t revision);

}  // namespace suppertide::storage
