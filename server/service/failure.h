// Why a call is refused: a canonical status and what a program may read of it.
// The only place that turns our errors into gRPC's.
#pragma once

#include <grpcpp/server_context.h>
#include <grpcpp/support/status.h>

#include <string>

#include "absl/status/status.h"
#include "server/compose/validate.h"
#include "suppertide/v1/common.pb.h"

namespace suppertide::service {

struct Failure {
  absl::Status status;
  v1::ErrorDetail detail;
  bool failed() const { return !status.ok(); }
};

// `reason` is upper snake case and stable.
Failure failure(absl::Status status, const std::string& reason);
// INVALID_ARGUMENT with every violation, also in the message.
Failure invalid(const compose::Violations& violations);
// One violation made on the spot.
Failure invalidField(const std::string& path, const std::string& value, const std::string& allowed);
// RESOURCE_EXHAUSTED: a household has all it may have of this kind.
Failure tooMany(const std::string& kind, int most);
// What storage answers, with the current document for a stale etag.
Failure fromStorage(const absl::Status& status);

// Puts the detail into the trailer and gives the status to finish with. Before Finish.
grpc::Status finishWith(grpc::CallbackServerContext& context, const Failure& failure);

}  // namespace suppertide::service
