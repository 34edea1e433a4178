#include "server/storage/inspection.h"

#include <filesystem>
#include <memory>
#include <set>

#include "absl/strings/str_cat.h"
#include "server/storage/check_file.h"
#include "server/storage/database.h"
#include "server/storage/documents_table.h"
#include "server/storage/migrations.h"
#include "server/storage/statement.h"

namespace suppertide::storage {

namespace {

constexpr std::size_t kMostDamages = 100;

// What must hold between the tables, as queries for lines that tell where it does not.
constexpr const char* kContradictions[] = {
    "SELECT 'household ' || h.id || ': counts ' || h.document_count || ' documents and has ' || count(d.id)"
    " FROM households h LEFT JOIN documents d ON d.household_id = h.id AND NOT d.deleted"
    " GROUP BY h.id HAVING h.document_count <> count(d.id)",
    "SELECT 'household ' || h.id || ': its log has ' || count(DISTINCT c.revision) || ' of '"
    " || (h.revision - h.trimmed_revision) || ' changes'"
    " FROM households h LEFT JOIN changed_documents c ON c.household_id = h.id AND c.revision > "
    "h.trimmed_revision"
    " GROUP BY h.id HAVING count(DISTINCT c.revision) <> h.revision - h.trimmed_revision",
    "SELECT 'household ' || h.id || ': counts ' || h.log_bytes || ' bytes in its log and has '"
    " || coalesce(sum(length(c.bytes)), 0)"
    " FROM households h LEFT JOIN changed_documents c ON c.household_id = h.id"
    " GROUP BY h.id HAVING h.log_bytes <> coalesce(sum(length(c.bytes)), 0)",
    "SELECT 'household ' || d.household_id || ': ' || d.kind || ' ' || d.id || ' is of revision '"
    " || d.revision || ', after the last one'"
    " FROM documents d JOIN households h ON h.id = d.household_id WHERE d.revision > h.revision",
    "SELECT 'household ' || d.household_id || ': ' || d.kind || ' ' || d.id || ' is not as the log has it'"
    " FROM documents d JOIN changed_documents c ON c.household_id = d.household_id"
    " AND c.revision = d.revision AND c.kind = d.kind AND c.id = d.id"
    " WHERE c.bytes <> d.bytes OR c.etag <> d.etag OR c.deleted <> d.deleted",
    "SELECT 'household ' || h.id || ': lacks its own document' FROM households h WHERE NOT EXISTS"
    " (SELECT 1 FROM documents d WHERE d.household_id = h.id AND d.kind = 'household' AND d.id = h.id"
    " AND NOT d.deleted)",
};

absl::Status addLines(Database& database, const std::string& query, std::vector<std::string>& lines) {
  Statement statement(database, query);
  Rows rows(statement);
  absl::StatusOr<bool> found = rows.next();
  for (; found.ok() && *found && lines.size() < kMostDamages; found = rows.next())
    lines.push_back(rows.text(0));
  return found.status();
}

// Contradictions are looked for in the present schema alone: an older file is brought forward first.
absl::Status findDamages(Database& database, bool present, std::vector<std::string>& damages) {
  std::vector<std::string> found;
  absl::Status status = addLines(database, "PRAGMA integrity_check(100)", found);
  for (const std::string& answer : found) {
    for (std::string& line : damageLines(answer)) {
      if (line != "ok" && damages.size() < kMostDamages) damages.push_back(std::move(line));
    }
  }
  if (status.ok() && damages.empty()) {
    status = addLines(
        database,
        "SELECT 'table ' || \"table\" || ': row ' || coalesce(rowid, '?') || ' belongs to no row of '"
        " || parent FROM pragma_foreign_key_check",
        damages);
  }
  if (!damages.empty() || !present) return status;
  for (const char* query : kContradictions) {
    if (status.ok()) status = addLines(database, query, damages);
  }
  return status;
}

// Everything in a schema as "table changes", SQLite's own left out.
absl::StatusOr<std::set<std::string>> thingsIn(Database& database) {
  std::vector<std::string> lines;
  const absl::Status status = addLines(
      database, "SELECT type || ' ' || name FROM sqlite_schema WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\'",
      lines);
  if (!status.ok()) return status;
  return std::set<std::string>(lines.begin(), lines.end());
}

absl::Status findForeign(Database& database, std::int64_t version, std::vector<std::string>& foreign) {
  const absl::StatusOr<std::unique_ptr<Database>> ours =
      Database::open(":memory:", Database::Mode::kReadWrite);
  if (!ours.ok()) return ours.status();
  const auto& all = migrations();
  const absl::Status made =
      migrate(**ours, {all.begin(), all.begin() + static_cast<std::ptrdiff_t>(version)});
  if (!made.ok()) return made;
  const auto known = thingsIn(**ours);
  if (!known.ok()) return known.status();
  const auto present = thingsIn(database);
  if (!present.ok()) return present.status();
  for (const std::string& thing : *present) {
    if (!known->contains(thing)) foreign.push_back(thing);
  }
  return absl::OkStatus();
}

absl::Status countIn(Database& database, HouseholdInspection& household) {
  const auto count = [&](const std::string& sql, std::int64_t& into) -> absl::Status {
    Statement statement(database, sql);
    Rows rows(statement, household.id);
    const absl::StatusOr<bool> found = rows.next();
    if (found.ok() && *found) into = rows.integer(0);
    return found.status();
  };
  absl::Status status =
      count("SELECT count(*) FROM documents WHERE household_id = ? AND deleted", household.tombstones);
  if (status.ok())
    status = count("SELECT count(DISTINCT revision) FROM changed_documents WHERE household_id = ?",
                   household.changes);
  if (status.ok()) status = count("SELECT count(*) FROM requests WHERE household_id = ?", household.requests);
  if (status.ok()) status = count("SELECT count(*) FROM devices WHERE household_id = ?", household.devices);
  if (status.ok()) {
    status =
        count("SELECT count(*) FROM devices WHERE household_id = ? AND revoked", household.revokedDevices);
  }
  if (!status.ok()) return status;
  Statement kinds(
      database, "SELECT kind, count(*) FROM documents WHERE household_id = ? AND NOT deleted GROUP BY kind");
  Rows rows(kinds, household.id);
  absl::StatusOr<bool> found = rows.next();
  for (; found.ok() && *found; found = rows.next()) household.documents[rows.text(0)] = rows.integer(1);
  return found.status();
}

absl::Status countAll(Database& database, Inspection& inspection) {
  {
    Statement statement(database, "SELECT id, revision, trimmed_revision FROM households ORDER BY id");
    Rows rows(statement);
    absl::StatusOr<bool> found = rows.next();
    for (; found.ok() && *found; found = rows.next()) {
      HouseholdInspection household;
      household.id = rows.text(0);
      household.revision = rows.integer(1);
      household.trimmedRevision = rows.integer(2);
      inspection.households.push_back(std::move(household));
    }
    if (!found.ok()) return found.status();
  }
  for (HouseholdInspection& household : inspection.households) {
    const absl::Status status = countIn(database, household);
    if (!status.ok()) return status;
  }
  const absl::StatusOr<std::int64_t> codes = database.integer("SELECT count(*) FROM codes");
  if (codes.ok()) inspection.codes = *codes;
  return codes.status();
}

// 0 when there is no such file.
std::int64_t bytesOf(const std::string& path) {
  std::error_code none;
  const auto bytes = std::filesystem::file_size(path, none);
  return none ? 0 : static_cast<std::int64_t>(bytes);
}

// Open for reading, ours and not newer than we know.
absl::StatusOr<std::unique_ptr<Database>> openKnown(const std::string& path) {
  absl::StatusOr<std::unique_ptr<Database>> opened = Database::open(path, Database::Mode::kReadOnly);
  if (!opened.ok()) return opened;
  absl::Status status = checkIdentity(**opened, static_cast<int>(migrations().size()));
  if (status.ok()) status = checkIsNotEmpty(**opened);
  if (!status.ok()) return status;
  return opened;
}

}  // namespace

absl::StatusOr<Inspection> inspect(const std::string& path) {
  const absl::StatusOr<std::unique_ptr<Database>> opened = openKnown(path);
  if (!opened.ok()) return opened.status();
  Database& database = **opened;
  absl::Status status = database.exec("BEGIN");  // all at one moment
  if (!status.ok()) return status;
  const absl::StatusOr<std::int64_t> version = database.integer("PRAGMA user_version");
  if (!version.ok()) return version.status();
  Inspection inspection;
  inspection.schemaVersion = static_cast<int>(*version);
  inspection.knownVersion = static_cast<int>(migrations().size());
  inspection.bytes = bytesOf(path) + bytesOf(path + "-wal");
  status = findDamages(database, inspection.schemaVersion == inspection.knownVersion, inspection.damages);
  if (status.ok()) status = findForeign(database, *version, inspection.foreign);
  if (status.ok()) status = countAll(database, inspection);
  // What is too damaged to be read has been told as far as it goes.
  if (status.code() == absl::StatusCode::kDataLoss) inspection.damages.emplace_back(status.message());
  if (!status.ok() && status.code() != absl::StatusCode::kDataLoss) return status;
  return inspection;
}

absl::Status forEachDocument(
    const std::string& path,
    const std::function<void(const std::string& householdId, const Document&)>& look) {
  const absl::StatusOr<std::unique_ptr<Database>> opened = openKnown(path);
  if (!opened.ok()) return opened.status();
  absl::Status status = (*opened)->exec("BEGIN");
  if (!status.ok()) return status;
  DocumentsTable documents(**opened);
  std::vector<std::string> ids;
  status = addLines(**opened, "SELECT id FROM households ORDER BY id", ids);
  if (!status.ok()) return status;
  for (const std::string& id : ids) {
    const absl::StatusOr<std::vector<Document>> all = documents.all(id);
    if (!all.ok()) return all.status();
    for (const Document& document : *all) look(id, document);
  }
  return absl::OkStatus();
}

}  // namespace suppertide::storage
