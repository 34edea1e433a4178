#include "server/storage/documents_table.h"

namespace suppertide::storage {

namespace {

constexpr char kFind[] =
    "SELECT kind, id, bytes, etag, revision, create_time, update_time, member_id, deleted FROM documents"
    " WHERE household_id = ? AND kind = ? AND id = ?";
constexpr char kPut[] =
    "INSERT INTO documents (household_id, kind, id, bytes, etag, revision, create_time, update_time, "
    "member_id,"
    " deleted) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (household_id, kind, id) DO UPDATE SET"
    " bytes = excluded.bytes, etag = excluded.etag, revision = excluded.revision,"
    " create_time = excluded.create_time, update_time = excluded.update_time, member_id = excluded.member_id,"
    " deleted = excluded.deleted";
constexpr char kList[] =
    "SELECT kind, id, bytes, etag, revision, create_time, update_time, member_id, deleted FROM documents"
    " WHERE household_id = ? AND kind = ? AND id > ? AND NOT deleted ORDER BY id LIMIT ?";
constexpr char kAll[] =
    "SELECT kind, id, bytes, etag, revision, create_time, update_time, member_id, deleted FROM documents"
    " WHERE household_id = ? AND NOT deleted ORDER BY kind, id";
constexpr char kDropTombstones[] =
    "DELETE FROM documents WHERE household_id = ? AND deleted AND revision <= ?";

Document documentAt(const Rows& rows) {
  Document document;
  document.key = {rows.text(0), rows.text(1)};
  document.bytes = rows.text(2);
  document.etag = rows.text(3);
  document.revision = rows.integer(4);
  document.createTime = rows.instant(5);
  document.updateTime = rows.instant(6);
  document.memberId = rows.text(7);
  document.deleted = rows.flag(8);
  return document;
}

absl::StatusOr<std::vector<Document>> collect(Rows& rows) {
  std::vector<Document> documents;
  absl::StatusOr<bool> found = rows.next();
  for (; found.ok() && *found; found = rows.next()) documents.push_back(documentAt(rows));
  if (!found.ok()) return found.status();
  return documents;
}

}  // namespace

DocumentsTable::DocumentsTable(Database& database)
    : find_(database, kFind),
      put_(database, kPut),
      list_(database, kList),
      all_(database, kAll),
      dropTombstones_(database, kDropTombstones) {}

absl::StatusOr<std::optional<Document>> DocumentsTable::find(const std::string& householdId,
                                                             const DocumentKey& key) {
  Rows rows(find_, householdId, key.kind, key.id);
  const absl::StatusOr<bool> found = rows.next();
  if (!found.ok()) return found.status();
  if (!*found) return std::nullopt;
  return documentAt(rows);
}

absl::Status DocumentsTable::put(const std::string& householdId, const Document& document) {
  return run(put_, householdId, document.key.kind, document.key.id, Blob{document.bytes}, document.etag,
             document.revision, document.createTime, document.updateTime, document.memberId,
             document.deleted);
}

absl::StatusOr<std::vector<Document>> DocumentsTable::list(const std::string& householdId,
                                                           const std::string& kind,
                                                           const std::string& afterId, int limit) {
  Rows rows(list_, householdId, kind, afterId, limit);
  return collect(rows);
}

absl::StatusOr<std::vector<Document>> DocumentsTable::all(const std::string& householdId) {
  Rows rows(all_, householdId);
  return collect(rows);
}

absl::Status DocumentsTable::dropTombstones(const std::string& householdId, std::int64_t upToRevision) {
  return run(dropTombstones_, householdId, upToRevision);
}

}  // namespace suppertide::storage
