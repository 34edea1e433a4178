#include "client/link/error_detail.h"

#include <string>

#include "absl/strings/cord.h"

namespace suppertide::link {
namespace {

constexpr char kTrailer[] = "suppertide-error-bin";
constexpr char kPayload[] = "type.suppertide/suppertide.v1.ErrorDetail";

}  // namespace

absl::Status toStatus(const grpc::Status& status, const grpc::ClientContext& context) {
  if (status.ok()) return absl::OkStatus();
  absl::Status result(static_cast<absl::StatusCode>(status.error_code()), status.error_message());
  const auto& trailers = context.GetServerTrailingMetadata();
  const auto found = trailers.find(kTrailer);
  if (found != trailers.end()) {
    result.SetPayload(kPayload, absl::Cord(std::string(found->second.data(), found->second.size())));
  }
  return result;
}

std::optional<v1::ErrorDetail> errorDetail(const absl::Status& status) {
  const auto payload = status.GetPayload(kPayload);
  v1::ErrorDetail detail;
  if (!payload || !detail.ParseFromString(std::string(*payload))) return std::nullopt;
  return detail;
}

std::string detailBytes(const absl::Status& status) {
  const auto payload = status.GetPayload(kPayload);
  return payload ? std::string(*payload) : std::string();
}

absl::Status statusWithDetail(absl::StatusCode code, const std::string& message,
                              const std::string& detailBytes) {
  absl::Status status(code, message);
  if (!detailBytes.empty()) status.SetPayload(kPayload, absl::Cord(detailBytes));
  return status;
}

}  // namespace suppertide::link
