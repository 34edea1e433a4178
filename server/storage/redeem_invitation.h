// Lets a device in by an invitation inside an open transaction.
#pragma once

#include <chrono>
#include <string>

#include "absl/status/statusor.h"
#include "server/storage/connection.h"
#include "server/storage/store.h"

namespace suppertide::storage {

// The outcome as Store::redeemInvitation tells it. On an error the caller takes
// back what was written so far.
absl::StatusOr<Redeemed> redeemInvitationIn(Connection& connection, const Store::Options& options,
                                            const Redemption& wanted, Instant now);

// Requests of people who are in no household yet are remembered under no household, by time.
inline const std::string kNoHousehold;
inline constexpr std::chrono::hours kStrangersRequestsKept{24};
absl::Status recordStrangersRequest(Connection& connection, RequestRow row, Instant now);

// Puts `device` with its token in place of the one that a request let in, for the
// same member. NOT_FOUND when that was revoked meanwhile.
absl::StatusOr<Device> letInAgain(Connection& connection, const RequestRow& known, Device device,
                                  const std::string& tokenHash);

}  // namespace suppertide::storage
