#include "server/storage/changes_table.h"

namespace suppertide::storage {

namespace {

constexpr char kAdd[] =
    "INSERT INTO changes (household_id, revision, member_id, commit_time) VALUES (?, ?, ?, ?)";
constexpr char kAddDocument[] =
    "INSERT INTO changed_documents (household_id, revision, position, kind, id, bytes, etag, create_time, "
    "deleted)"
    " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)";
constexpr char kAfter[] =
    "SELECT revision, member_id, commit_time FROM changes WHERE household_id = ? AND revision > ?"
    " ORDER BY revision LIMIT ?";
constexpr char kDocuments[] =
    "SELECT kind, id, bytes, etag, create_time, deleted FROM changed_documents"
    " WHERE household_id = ? AND revision = ? ORDER BY position";
constexpr char kBytesUpTo[] =
    "SELECT coalesce(sum(length(bytes)), 0) FROM changed_documents WHERE household_id = ? AND revision <= ?";
constexpr char kWeights[] =
    "SELECT revision, sum(length(bytes)) FROM changed_documents WHERE household_id = ?"
    " GROUP BY revision ORDER BY revision";
constexpr char kDrop[] =
    "DELETE FROM changes WHERE household_id = ? AND revision <= ?";  // documents go along

}  // namespace

ChangesTable::ChangesTable(Database& database)
    : add_(database, kAdd),
      addDocument_(database, kAddDocument),
      after_(database, kAfter),
      documents_(database, kDocuments),
      bytesUpTo_(database, kBytesUpTo),
      weights_(database, kWeights),
      drop_(database, kDrop) {}

absl::Status ChangesTable::add(const std::string& householdId, const Change& change) {
  absl::Status status = run(add_, householdId, change.revision, change.memberId, change.commitTime);
  int position = 0;
  for (const Document& document : change.documents) {
    if (!status.ok()) return status;
    status = run(addDocument_, householdId, change.revision, position++, document.key.kind, document.key.id,
                 Blob{document.bytes}, document.etag, document.createTime, document.deleted);
  }
  return status;
}

absl::StatusOr<std::vector<Change>> ChangesTable::after(const std::string& householdId, std::int64_t after,
                                                        int limit) {
  Rows rows(after_, householdId, after, limit);
  std::vector<Change> changes;
  absl::StatusOr<bool> found = rows.next();
  for (; found.ok() && *found; found = rows.next()) {
    Change change{rows.integer(0), rows.text(1), rows.instant(2), {}};
    const absl::Status status = readDocuments(householdId, change);
    if (!status.ok()) return status;
    changes.push_back(std::move(change));
  }
  if (!found.ok()) return found.status();
  return changes;
}

absl::Status ChangesTable::readDocuments(const std::string& householdId, Change& change) {
  Rows rows(documents_, householdId, change.revision);
  absl::StatusOr<bool> found = rows.next();
  for (; found.ok() && *found; found = rows.next()) {
    Document document;
    document.key = {rows.text(0), rows.text(1)};
    document.bytes = rows.text(2);
    document.etag = rows.text(3);
    document.revision = change.revision;
    document.createTime = rows.instant(4);
    document.updateTime = change.commitTime;
    document.memberId = change.memberId;
    document.deleted = rows.flag(5);
    change.documents.push_back(std::move(document));
  }
  return found.status();
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
