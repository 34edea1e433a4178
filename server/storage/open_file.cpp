#include "server/storage/open_file.h"

#include <cstdlib>

#include "absl/strings/str_cat.h"
#include "server/storage/migrations.h"
#include "server/storage/statement.h"

namespace suppertide::storage {

namespace {

constexpr char kUnreadable[] = "error code=";

absl::Status checkIntegrity(Database& database) {
  Statement check(database, "PRAGMA quick_check(1)");
  Rows rows(check);
  const absl::StatusOr<bool> found = rows.next();
  if (!found.ok()) return found.status();
  const std::string answer = rows.text(0);
  if (answer == "ok") return absl::OkStatus();
  // A page the disk would not give is told in words; that is no damage yet.
  if (const std::size_t at = answer.find(kUnreadable); at != std::string::npos) {
    return database.error(std::atoi(answer.c_str() + at + sizeof kUnreadable - 1), "open");
  }
  return absl::DataLossError(absl::StrCat("open: the data file is damaged: ", answer));
}

absl::Status prepareForWriting(Database& database, const Store::Options& options) {
  const std::string sync = options.fullSync ? "FULL" : "OFF";
  return database.exec(absl::StrCat("PRAGMA journal_mode = WAL; PRAGMA synchronous = ", sync,
                                    "; PRAGMA foreign_keys = ON; PRAGMA trusted_schema = OFF;"
                                    " PRAGMA journal_size_limit = 67108864"));
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
