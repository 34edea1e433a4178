#include "server/service/failure.h"

#include "absl/strings/str_cat.h"
#include "server/storage/store.h"

namespace suppertide::service {
namespace {

constexpr char kTrailer[] = "suppertide-error-bin";
constexpr std::size_t kMostDetailBytes = 6'000;  // trailers are limited to 8 KB by default

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

}  // namespace

Failure failure(absl::Status status, const std::string& reason) {
  Failure out;
  out.status = std::move(status);
  out.detail.set_reason(reason);
  return out;
}

Failure invalid(const compose::Violations& violations) {
  std::string text =
      violations.size() == 1 ? "one field is wrong" : absl::StrCat(violations.size(), " fields are wrong");
  for (const v1::FieldViolation& violation : violations)
    absl::StrAppend(&text, text.size() > 2000
                               ? ""
                               : absl::StrCat("\n", violation.field_path(), ": ", violation.value(), ": ",
                                              violation.description()));
  Failure out = failure(absl::InvalidArgumentError(text), "FIELD_INVALID");
  for (const v1::FieldViolation& violation : violations) {
    *out.detail.add_violations() = violation;
    if (out.detail.ByteSizeLong() <= kMostDetailBytes) continue;
    out.detail.mutable_violations()->RemoveLast();
    (*out.detail.mutable_metadata())["violation_count"] = absl::StrCat(violations.size());
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
