#include "server/storage/codes_table.h"

namespace suppertide::storage {

namespace {

constexpr char kFind[] =
    "SELECT purpose, household_id, member_id, role, expire_time FROM codes"
    " WHERE hash = ? AND (expire_time IS NULL OR expire_time > ?)";
constexpr char kAdd[] =
    "INSERT OR REPLACE INTO codes (hash, purpose, household_id, member_id, role, expire_time)"
    " VALUES (?, ?, ?, ?, ?, ?)";

int numberOf(Code::Purpose purpose) {
  return purpose == Code::Purpose::kHost ? 0 : 1;
}

}  // namespace

CodesTable::CodesTable(Database& database)
    : find_(database, kFind),
      add_(database, kAdd),
      remove_(database, "DELETE FROM codes WHERE hash = ?"),
      removeAll_(database, "DELETE FROM codes WHERE purpose = ?"),
      removeExpired_(database, "DELETE FROM codes WHERE expire_time <= ?") {}

absl::StatusOr<std::optional<Code>> CodesTable::find(const std::string& hash, Instant now) {
  Rows rows(find_, Blob{hash}, now);
  const absl::StatusOr<bool> found = rows.next();
  if (!found.ok()) return found.status();
  if (!*found) return std::nullopt;
  return Code{.purpose = rows.integer(0) == 0 ? Code::Purpose::kHost : Code::Purpose::kInvitation,
              .householdId = rows.text(1),
              .memberId = rows.text(2),
              .role = static_cast<int>(rows.integer(3)),
              .expireTime = rows.optionalInstant(4)};
}

absl::Status CodesTable::add(const std::string& hash, const Code& code) {
  return run(add_, Blob{hash}, numberOf(code.purpose), code.householdId, code.memberId, code.role,
             code.expireTime);
}

absl::Status CodesTable::remove(const std::string& hash) {
  return run(remove_, Blob{hash});
}

absl::Status CodesTable::removeAll(Code::Purpose purpose) {
  return run(removeAll_, numberOf(purpose));
}

absl::Status CodesTable::removeExpired(Instant now) {
  return run(removeExpired_, now);
}

}  // namespace suppertide::storage
