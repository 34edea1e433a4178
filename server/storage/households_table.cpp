#include "server/storage/households_table.h"

namespace suppertide::storage {

HouseholdsTable::HouseholdsTable(Database& database)
    : any_(database, "SELECT 1 FROM households LIMIT 1"),
      find_(database,
            "SELECT revision, trimmed_revision, document_count, request_count, log_bytes FROM households "
            "WHERE id = ?"),
      add_(database,
           "INSERT INTO households (id, revision, trimmed_revision, document_count, request_count, log_bytes)"
           " VALUES (?, ?, ?, ?, ?, ?)"),
      update_(
          database,
          "UPDATE households SET revision = ?, trimmed_revision = ?, document_count = ?, request_count = ?,"
          " log_bytes = ? WHERE id = ?") {}

absl::StatusOr<bool> HouseholdsTable::any() {
  return Rows(any_).next();
}

absl::StatusOr<std::optional<HouseholdRow>> HouseholdsTable::find(const std::string& id) {
  Rows rows(find_, id);
  const absl::StatusOr<bool> found = rows.next();
  if (!found.ok()) return found.status();
  if (!*found) return std::nullopt;
  return HouseholdRow{
      id, rows.integer(0), rows.integer(1), rows.integer(2), rows.integer(3), rows.integer(4)};
}

absl::Status HouseholdsTable::add(const HouseholdRow& row) {
  return run(add_, row.id, row.revision, row.trimmedRevision, row.documentCount, row.requestCount,
             row.logBytes);
}

absl::Status HouseholdsTable::update(const HouseholdRow& row) {
  return run(update_, row.revision, row.trimmedRevision, row.documentCount, row.requestCount, row.logBytes,
             row.id);
}

}  // namespace suppertide::storage
