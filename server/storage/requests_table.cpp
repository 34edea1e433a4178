#include "server/storage/requests_table.h"

#include "absl/strings/str_cat.h"

namespace suppertide::storage {

namespace {

constexpr char kFind[] =
    "SELECT number, fingerprint, revision, document_keys, device_id FROM requests"
    " WHERE household_id = ? AND request_id = ?";
constexpr char kAdd[] =
    "INSERT INTO requests (household_id, request_id, number, fingerprint, revision, document_keys, device_id)"
    " VALUES (?, ?, ?, ?, ?, ?, ?)";
constexpr char kSetDevice[] = "UPDATE requests SET device_id = ? WHERE household_id = ? AND request_id = ?";
constexpr char kDrop[] = "DELETE FROM requests WHERE household_id = ? AND number <= ?";

// A line each; neither kinds nor ids can hold '/' or a line's end.
std::string textOf(const std::vector<DocumentKey>& keys) {
  std::string text;
  for (const DocumentKey& key : keys) absl::StrAppend(&text, key.kind, "/", key.id, "\n");
  return text;
}

std::vector<DocumentKey> keysOf(const std::string& text) {
  std::vector<DocumentKey> keys;
  for (std::size_t start = 0; start < text.size();) {
    const std::size_t slash = text.find('/', start);
    const std::size_t limit = text.find('\n', slash);
    keys.push_back({text.substr(start, slash - start), text.substr(slash + 1, limit - slash - 1)});
    start = limit + 1;
  }
  return keys;
}

}  // namespace

RequestsTable::RequestsTable(Database& database)
    : find_(database, kFind),
      add_(database, kAdd),
      setDevice_(database, kSetDevice),
      drop_(database, kDrop) {}

absl::StatusOr<std::optional<RequestRow>> RequestsTable::find(const std::string& householdId,
                                                              const std::string& requestId) {
  Rows rows(find_, householdId, requestId);
  const absl::StatusOr<bool> found = rows.next();
  if (!found.ok()) return found.status();
  if (!*found) return std::nullopt;
  RequestRow row;
  row.householdId = householdId;
  row.requestId = requestId;
  row.number = rows.integer(0);
  row.fingerprint = rows.text(1);
  row.revision = rows.integer(2);
  row.keys = keysOf(rows.text(3));
  row.deviceId = rows.text(4);
  return row;
}

absl::Status RequestsTable::add(const RequestRow& row) {
  return run(add_, row.householdId, row.requestId, row.number, Blob{row.fingerprint}, row.revision,
             textOf(row.keys), row.deviceId);
}

absl::Status RequestsTable::setDevice(const std::string& householdId, const std::string& requestId,
                                      const std::string& deviceId) {
  return run(setDevice_, deviceId, householdId, requestId);
}

absl::Status RequestsTable::drop(const std::string& householdId, std::int64_t upToNumber) {
  return run(drop_, householdId, upToNumber);
}

}  // namespace suppertide::storage
