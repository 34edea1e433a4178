#include "server/storage/changes_table.h"

namespace suppertide::storage {

namespace {

constexpr char kAdd[] =
    "INSERT INTO changed_documents (household_id, revision, position, member_id, commit_time, kind, id, "
    "bytes,"
    " etag, create_time, deleted) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";
constexpr char kAfter[] =
    "SELECT revision, member_id, commit_time, kind, id, bytes, etag, create_time, deleted"
    " FROM changed_documents WHERE household_id = ? AND revision > ? ORDER BY revision, position";
constexpr char kBytesUpTo[] =
    "SELECT coalesce(sum(length(bytes)), 0) FROM changed_documents WHERE household_id = ? AND revision <= ?";
constexpr char kWeights[] =
    "SELECT revision, sum(length(bytes)) FROM changed_documents WHERE household_id = ?"
    " GROUP BY revision ORDER BY revision";
constexpr char kDrop[] = "DELETE FROM changed_documents WHERE household_id = ? AND revision <= ?";

Document documentAt(const Rows& rows, const Change& change) {
  Document document;
  document.key = {rows.text(3), rows.text(4)};
  document.bytes = rows.text(5);
  document.etag = rows.text(6);
  document.revision = change.revision;
  document.createTime = rows.instant(7);
  document.updateTime = change.commitTime;
  document.memberId = change.memberId;
  document.deleted = rows.flag(8);
  return document;
}

}  // namespace

ChangesTable::ChangesTable(Database& database)
    : add_(database, kAdd),
      after_(database, kAfter),
      bytesUpTo_(database, kBytesUpTo),
      weights_(database, kWeights),
      drop_(database, kDrop) {}

absl::Status ChangesTable::add(const std::string& householdId, const Change& change) {
  int position = 0;
  for (const Document& document : change.documents) {
    const absl::Status status = run(
        add_, householdId, change.revision, position++, change.memberId, change.commitTime, document.key.kind,
        document.key.id, Blob{document.bytes}, document.etag, document.createTime, document.deleted);
    if (!status.ok()) return status;
  }
  return absl::OkStatus();
}

absl::StatusOr<std::vector<Change>> ChangesTable::after(const std::string& householdId, std::int64_t after,
                                                        int limit) {
  Rows rows(after_, householdId, after);
  std::vector<Change> changes;
  absl::StatusOr<bool> found = rows.next();
  for (; found.ok() && *found; found = rows.next()) {
    const std::int64_t revision = rows.integer(0);
    if (changes.empty() || changes.back().revision != revision) {
      if (std::ssize(changes) == limit) break;
      changes.push_back({revision, rows.text(1), rows.instant(2), {}});
    }
    changes.back().documents.push_back(documentAt(rows, changes.back()));
  }
  if (!found.ok()) return found.status();
  return changes;
}

absl::StatusOr<std::int64_t> ChangesTable::drop(const std::string& householdId, std::int64_t upToRevision) {
  std::int64_t bytes = 0;
  {
    Rows rows(bytesUpTo_, householdId, upToRevision);
    const absl::StatusOr<bool> found = rows.next();
    if (!found.ok()) return found.status();
    bytes = rows.integer(0);
  }
  const absl::Status status = run(drop_, householdId, upToRevision);
  if (!status.ok()) return status;
  return bytes;
}

absl::StatusOr<std::int64_t> ChangesTable::oldestWeighing(const std::string& householdId,
                                                          std::int64_t bytes) {
  Rows rows(weights_, householdId);
  std::int64_t revision = 0;
  absl::StatusOr<bool> found = rows.next();
  for (std::int64_t sum = 0; found.ok() && *found && sum < bytes; found = rows.next()) {
    revision = rows.integer(0);
    sum += rows.integer(1);
  }
  if (!found.ok()) return found.status();
  return revision;
}

}  // namespace suppertide::storage
