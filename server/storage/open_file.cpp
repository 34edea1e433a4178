#include "server/storage/open_file.h"

#include "absl/strings/str_cat.h"
#include "server/storage/check_file.h"
#include "server/storage/migrations.h"

namespace suppertide::storage {

namespace {

// The log is copied back into the file every 4 000 pages, 16 MB: four times as much
// as usual, so that fewer than one write in a hundred waits for it.
absl::Status prepareForWriting(Database& database, const Store::Options& options) {
  const std::string sync = options.fullSync ? "FULL" : "OFF";
  return database.exec(
      absl::StrCat("PRAGMA journal_mode = WAL; PRAGMA synchronous = ", sync,
                   "; PRAGMA foreign_keys = ON; PRAGMA trusted_schema = OFF;"
                   " PRAGMA wal_autocheckpoint = 4000; PRAGMA journal_size_limit = 67108864"));
}

}  // namespace

absl::StatusOr<std::unique_ptr<Database>> openFile(const std::string& path, const Store::Options& options) {
  absl::StatusOr<std::unique_ptr<Database>> opened = Database::open(path, Database::Mode::kReadWrite);
  if (!opened.ok()) return opened;
  Database& database = **opened;
  // A file that is refused stays as it was, also when a killed server left its log.
  database.leaveLogOnClose(true);
  absl::Status status = checkIdentity(database, static_cast<int>(migrations().size()));
  if (status.ok()) status = checkIntegrity(database);
  if (status.ok()) status = prepareForWriting(database, options);
  if (status.ok()) status = migrate(database, migrations());
  if (!status.ok()) return status;
  database.leaveLogOnClose(false);
  return opened;
}

}  // namespace suppertide::storage
