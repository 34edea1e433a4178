#include "server/storage/database.h"

#include <sqlite3.h>

#include <filesystem>

#include "absl/strings/str_cat.h"
#include "server/storage/errors.h"
#include "server/storage/statement.h"

namespace suppertide::storage {

namespace {

constexpr int kBusyMilliseconds = 5000;

// Why there is nothing to open at `path`, as far as it can be seen from outside; else empty.
std::string whatIsAmiss(const std::string& path, bool writes) {
  std::error_code ignored;
  if (std::filesystem::is_directory(path, ignored)) return "it is a folder";
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  if (!folder.empty() && !std::filesystem::exists(folder, ignored))
    return "there is no folder " + folder.string();
  return writes || std::filesystem::exists(path, ignored) ? "" : "there is no such file";
}

}  // namespace

absl::StatusOr<std::unique_ptr<Database>> Database::open(const std::string& path, Mode mode) {
  const bool writes = mode == Mode::kReadWrite;
  const int flags = (writes ? SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE : SQLITE_OPEN_READONLY) |
                    SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE;
  const std::string doing = absl::StrCat("open ", path);
  if (const std::string amiss = whatIsAmiss(path, writes); !amiss.empty())
    return absl::UnavailableError(absl::StrCat(doing, ": ", amiss));
  sqlite3* handle = nullptr;
  const int code = sqlite3_open_v2(path.c_str(), &handle, flags, nullptr);
  std::unique_ptr<Database> database(new Database(handle));
  if (code != SQLITE_OK) return database->error(code, doing);
  if (writes && sqlite3_db_readonly(handle, "main") == 1) return storageError(SQLITE_READONLY, doing);
  sqlite3_busy_timeout(handle, kBusyMilliseconds);
  return database;
}

Database::Database(sqlite3* handle) : handle_(handle) {}

Database::~Database() {
  often_.clear();
  sqlite3_close_v2(handle_);
}

absl::Status Database::exec(const std::string& sql) {
  const int code = sqlite3_exec(handle_, sql.c_str(), nullptr, nullptr, nullptr);
  return code == SQLITE_OK ? absl::OkStatus() : error(code, "storage");
}

absl::Status Database::execOften(const std::string& sql) {
  std::unique_ptr<Statement>& statement = often_[sql];
  if (statement == nullptr) statement = std::make_unique<Statement>(*this, sql);
  return run(*statement);
}

absl::StatusOr<std::int64_t> Database::integer(const std::string& sql) {
  Statement statement(*this, sql);
  Rows rows(statement);
  const absl::StatusOr<bool> found = rows.next();
  if (!found.ok()) return found.status();
  return *found ? rows.integer(0) : 0;
}

bool Database::inTransaction() const {
  return sqlite3_get_autocommit(handle_) == 0;
}

std::int64_t Database::changedRows() const {
  return sqlite3_changes64(handle_);
}

void Database::leaveLogOnClose(bool leave) {
  sqlite3_db_config(handle_, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, leave ? 1 : 0, nullptr);
}

absl::Status Database::error(int code, const std::string& doing) {
  if (code == SQLITE_IOERR_FSYNC || code == SQLITE_IOERR_DIR_FSYNC) syncFailed_ = true;
  return storageError(code, doing);
}

}  // namespace suppertide::storage
