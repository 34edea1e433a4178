// A refused call as absl::Status, with the server's detail kept inside it.
#pragma once

#include <optional>
#include <string>

#include <grpcpp/client_context.h>
#include <grpcpp/support/status.h>

#include "absl/status/status.h"
#include "suppertide/v1/common.pb.h"

namespace suppertide::link {

// The outcome of a finished call: the code and words of `status`, and the
// ErrorDetail of the trailer "suppertide-error-bin" when there is one.
absl::Status toStatus(const grpc::Status& status, const grpc::ClientContext& context);

// The detail of a status made by toStatus; absent when the server sent none that can be read.
std::optional<v1::ErrorDetail> errorDetail(const absl::Status& status);

// For keeping a refusal: the detail's bytes, empty when it has none, and a status made of them again.
std::string detailBytes(const absl::Status& status);
absl::Status statusWithDetail(absl::StatusCode code, const std::string& message,
                              const std::string& detailBytes);

}  // namespace suppertide::link
