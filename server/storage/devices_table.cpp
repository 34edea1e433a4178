#include "server/storage/devices_table.h"

namespace suppertide::storage {

namespace {

constexpr char kFind[] =
    "SELECT id, household_id, member_id, display_name, create_time, last_seen_time, revoked FROM devices"
    " WHERE id = ?";
constexpr char kFindByToken[] =
    "SELECT id, household_id, member_id, display_name, create_time, last_seen_time, revoked FROM devices"
    " WHERE token_hash = ?";
constexpr char kList[] =
    "SELECT id, household_id, member_id, display_name, create_time, last_seen_time, revoked FROM devices"
    " WHERE household_id = ? ORDER BY create_time, id";
constexpr char kAdd[] =
    "INSERT INTO devices (id, household_id, member_id, display_name, create_time, last_seen_time, revoked,"
    " token_hash) VALUES (?, ?, ?, ?, ?, ?, ?, ?)";

Device deviceAt(const Rows& rows) {
  return {.id = rows.text(0),
          .householdId = rows.text(1),
          .memberId = rows.text(2),
          .displayName = rows.text(3),
          .createTime = rows.instant(4),
          .lastSeenTime = rows.instant(5),
          .revoked = rows.flag(6)};
}

absl::StatusOr<std::optional<Device>> first(Rows& rows) {
  const absl::StatusOr<bool> found = rows.next();
  if (!found.ok()) return found.status();
  if (!*found) return std::nullopt;
  return deviceAt(rows);
}

}  // namespace

DevicesTable::DevicesTable(Database& database)
    : database_(database),
      find_(database, kFind),
      findByToken_(database, kFindByToken),
      list_(database, kList),
      add_(database, kAdd),
      remove_(database, "DELETE FROM devices WHERE id = ?"),
      touch_(database, "UPDATE devices SET last_seen_time = ? WHERE id = ?"),
      revoke_(database, "UPDATE devices SET revoked = 1 WHERE household_id = ? AND id = ?") {}

absl::StatusOr<std::optional<Device>> DevicesTable::find(const std::string& id) {
  Rows rows(find_, id);
  return first(rows);
}

absl::StatusOr<std::optional<Device>> DevicesTable::findByToken(const std::string& tokenHash) {
  Rows rows(findByToken_, Blob{tokenHash});
  return first(rows);
}

absl::StatusOr<std::vector<Device>> DevicesTable::list(const std::string& householdId) {
  Rows rows(list_, householdId);
  std::vector<Device> devices;
  absl::StatusOr<bool> found = rows.next();
  for (; found.ok() && *found; found = rows.next()) devices.push_back(deviceAt(rows));
  if (!found.ok()) return found.status();
  return devices;
}

absl::Status DevicesTable::add(const Device& device, const std::string& tokenHash) {
  return run(add_, device.id, device.householdId, device.memberId, device.displayName, device.createTime,
             device.lastSeenTime, device.revoked, Blob{tokenHash});
}

absl::Status DevicesTable::remove(const std::string& id) {
  return run(remove_, id);
}

absl::Status DevicesTable::touch(const std::string& id, Instant now) {
  return run(touch_, now, id);
}

absl::StatusOr<bool> DevicesTable::revoke(const std::string& householdId, const std::string& id) {
  const absl::Status status = run(revoke_, householdId, id);
  if (!status.ok()) return status;
  return database_.changedRows() > 0;
}

}  // namespace suppertide::storage
