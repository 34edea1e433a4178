#include "server/service/failure.h"

#include "absl/strings/str_cat.h"
#include "server/storage/store.h"

namespace suppertide::service {
namespace {

constexpr char kTrailer[] = "suppertide-error-bin";
// gRPC takes at most 8 KB of trailers unless told otherwise: this much for the
// detail, this much for the message, the rest for their frames.
constexpr std::size_t kMostDetailBytes = 5'000;
constexpr std::size_t kMostFailureBytes = 2'400;

const char* reasonOf(absl::StatusCode code) {
  switch (code) {
    case absl::StatusCode::kNotFound:
      return "NO_SUCH_DOCUMENT";
    case absl::StatusCode::kAlreadyExists:
      return "ID_TAKEN";
    case absl::StatusCode::kAborted:
      return "STALE_ETAG";
    case absl::StatusCode::kInvalidArgument:
      return "REQUEST_ID_REUSED";
    case absl::StatusCode::kResourceExhausted:
      return "LIMIT_EXCEEDED";
    case absl::StatusCode::kUnavailable:
      return "STORAGE_BUSY";
    default:
      return "INTERNAL";
  }
}

// As gRPC sends a message: what is not plain ASCII takes three bytes each.
std::size_t sentBytes(const std::string& text) {
  std::size_t bytes = 0;
  for (const char c : text) bytes += c < ' ' || c > '~' || c == '%' ? 3 : 1;
  return bytes;
}

// A line for each violation, as long as there is room.
std::string textOf(const compose::Violations& violations) {
  std::string text =
      violations.size() == 1 ? "one field is wrong" : absl::StrCat(violations.size(), " fields are wrong");
  std::size_t bytes = sentBytes(text);
  for (std::size_t i = 0; i < violations.size(); ++i) {
    const std::string line = absl::StrCat("\n", violations[i].field_path(), ": ", violations[i].value(), ": ",
                                          violations[i].description());
    bytes += sentBytes(line);
    if (bytes > kMostFailureBytes) return absl::StrCat(text, "\nand ", violations.size() - i, " more");
    text += line;
  }
  return text;
}

}  // namespace

Failure failure(absl::Status status, const std::string& reason) {
  Failure out;
  out.status = std::move(status);
  out.detail.set_reason(reason);
  return out;
}

Failure invalid(const compose::Violations& violations) {
  Failure out = failure(absl::InvalidArgumentError(textOf(violations)), "FIELD_INVALID");
  (*out.detail.mutable_metadata())["violation_count"] = absl::StrCat(violations.size());
  for (const v1::FieldViolation& violation : violations) {
    *out.detail.add_violations() = violation;
    if (out.detail.ByteSizeLong() <= kMostDetailBytes) continue;
    out.detail.mutable_violations()->RemoveLast();
    break;
  }
  return out;
}

Failure invalidField(const std::string& path, const std::string& value, const std::string& allowed) {
  v1::FieldViolation violation;
  violation.set_field_path(path);
  violation.set_value(value);
  violation.set_description(allowed);
  return invalid({violation});
}

Failure tooMany(const std::string& kind, int most) {
  Failure out = failure(absl::ResourceExhaustedError(
                            absl::StrCat("a household has at most ", most, " documents of the kind ", kind)),
                        "LIMIT_EXCEEDED");
  (*out.detail.mutable_metadata())["kind"] = kind;
  (*out.detail.mutable_metadata())["limit"] = absl::StrCat(most);
  return out;
}

Failure fromStorage(const absl::Status& status) {
  if (status.ok()) return {};
  Failure out = failure(status, reasonOf(status.code()));
  const auto current = storage::currentDocument(status);
  if (!current) return out;
  (*out.detail.mutable_metadata())["kind"] = current->key.kind;
  (*out.detail.mutable_metadata())["id"] = current->key.id;
  (*out.detail.mutable_metadata())["etag"] = current->etag;
  if (current->bytes.size() <= kMostDetailBytes) out.detail.set_current_document(current->bytes);
  return out;
}

grpc::Status finishWith(grpc::CallbackServerContext& context, const Failure& failure) {
  if (!failure.failed()) return grpc::Status::OK;
  context.AddTrailingMetadata(kTrailer, failure.detail.SerializeAsString());
  return grpc::Status(static_cast<grpc::StatusCode>(failure.status.code()),
                      std::string(failure.status.message()));
}

}  // namespace suppertide::service
