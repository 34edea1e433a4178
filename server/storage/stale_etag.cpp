#include "server/storage/stale_etag.h"

#include <charconv>

#include "absl/strings/cord.h"
#include "absl/strings/str_cat.h"

namespace suppertide::storage {

namespace {

constexpr char kPayloadType[] = "suppertide/current-document";

// Fields one after the other, each as its length in digits, a colon and its bytes.
class Packer {
 public:
  void add(const std::string& field) { absl::StrAppend(&packed_, field.size(), ":", field); }
  void add(std::int64_t number) { add(std::to_string(number)); }
  std::string take() { return std::move(packed_); }

 private:
  std::string packed_;
};

class Unpacker {
 public:
  explicit Unpacker(std::string packed) : packed_(std::move(packed)) {}

  std::string text() {
    const std::size_t colon = packed_.find(':', next_);
    const auto size = static_cast<std::size_t>(numberIn(packed_.substr(next_, colon - next_)));
    next_ = colon + 1 + size;
    return packed_.substr(colon + 1, size);
  }
  std::int64_t number() { return numberIn(text()); }
  Instant instant() { return Instant(std::chrono::seconds(number())); }

 private:
  static std::int64_t numberIn(const std::string& digits) {
    std::int64_t value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return value;
  }

  std::string packed_;
  std::size_t next_ = 0;
};

}  // namespace

absl::Status staleEtag(const Document& current) {
  Packer packer;
  packer.add(current.key.kind);
  packer.add(current.key.id);
  packer.add(current.bytes);
  packer.add(current.etag);
  packer.add(current.revision);
  packer.add(current.createTime.time_since_epoch().count());
  packer.add(current.updateTime.time_since_epoch().count());
  packer.add(current.memberId);
  packer.add(current.deleted ? 1 : 0);
  absl::Status status = absl::AbortedError(
      absl::StrCat("write ", current.key.kind, " ", current.key.id, ": somebody else changed it meanwhile"));
  status.SetPayload(kPayloadType, absl::Cord(packer.take()));
  return status;
}

std::optional<Document> currentDocument(const absl::Status& status) {
  const absl::optional<absl::Cord> payload = status.GetPayload(kPayloadType);
  if (!payload) return std::nullopt;
  Unpacker unpacker{std::string(*payload)};
  Document document;
  document.key.kind = unpacker.text();
  document.key.id = unpacker.text();
  document.bytes = unpacker.text();
  document.etag = unpacker.text();
  document.revision = unpacker.number();
  document.createTime = unpacker.instant();
  document.updateTime = unpacker.instant();
  document.memberId = unpacker.text();
  document.deleted = unpacker.number() != 0;
  return document;
}

}  // namespace suppertide::storage
