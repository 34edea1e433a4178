#include "server/storage/migrations.h"

#include <cstdint>

#include "absl/strings/str_cat.h"
#include "server/storage/transaction.h"

namespace suppertide::storage {

absl::Status checkIdentity(Database& database, int known) {
  const absl::StatusOr<std::int64_t> id = database.integer("PRAGMA application_id");
  if (!id.ok()) return id.status();
  const absl::StatusOr<std::int64_t> version = database.integer("PRAGMA user_version");
  if (!version.ok()) return version.status();
  const absl::StatusOr<std::int64_t> tables = database.integer("SELECT count(*) FROM sqlite_schema");
  if (!tables.ok()) return tables.status();
  const bool fresh = *id == 0 && *version == 0 && *tables == 0;
  if (!fresh && *id != kApplicationId) {
    return absl::FailedPreconditionError("open: the file is a database of another program");
  }
  if (*version > known) {
    return absl::FailedPreconditionError(absl::StrCat("open: the file has schema version ", *version,
                                                      ", newer than this program knows (", known, ")"));
  }
  return absl::OkStatus();
}

absl::Status migrate(Database& database, const std::vector<std::string>& steps) {
  absl::StatusOr<std::int64_t> version = database.integer("PRAGMA user_version");
  if (!version.ok()) return version.status();
  for (auto step = static_cast<std::size_t>(*version); step < steps.size(); ++step) {
    absl::StatusOr<Transaction> transaction = Transaction::begin(database, Transaction::Kind::kWrite);
    if (!transaction.ok()) return transaction.status();
    absl::Status status = database.exec(steps[step]);
    if (status.ok()) {
      status = database.exec(
          absl::StrCat("PRAGMA application_id = ", kApplicationId, "; PRAGMA user_version = ", step + 1));
    }
    if (status.ok()) status = transaction->commit();
    if (!status.ok()) return status;
  }
  return absl::OkStatus();
}

}  // namespace suppertide::storage
