#include "server/storage/check_file.h"

#include <sqlite3.h>

#include <algorithm>
#include <cstdint>
#include <cstdlib>

#include "absl/strings/str_cat.h"
#include "server/storage/statement.h"

namespace suppertide::storage {

namespace {

// How SQLite tells of a page in use that the disk would not give, and of a free one.
constexpr char kUnreadable[] = "error code=";
constexpr char kUnreadableFree[] = "failed to get page";

}  // namespace

std::vector<std::string> damageLines(const std::string& answer) {
  std::vector<std::string> lines;
  for (std::size_t start = 0; start < answer.size();) {
    const std::size_t limit = std::min(answer.find('\n', start), answer.size());
    const std::string line = answer.substr(start, limit - start);
    if (!line.empty() && line.rfind("***", 0) != 0) lines.push_back(line);
    start = limit + 1;
  }
  return lines;
}

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
  if (answer.find(kUnreadableFree) != std::string::npos) return database.error(SQLITE_IOERR_READ, "open");
  const std::vector<std::string> lines = damageLines(answer);
  return absl::DataLossError(
      absl::StrCat("open: the data file is damaged: ", lines.empty() ? answer : lines.front()));
}

absl::Status checkIsNotEmpty(Database& database) {
  const absl::StatusOr<std::int64_t> version = database.integer("PRAGMA user_version");
  if (!version.ok()) return version.status();
  return *version > 0 ? absl::OkStatus()
                      : absl::FailedPreconditionError("open: there is nothing in the file");
}

}  // namespace suppertide::storage
