// One connection to the data file. Closed when destroyed; not thread-safe.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <string>

#include "absl/status/status.h"
#include "absl/status/statusor.h"

struct sqlite3;

namespace suppertide::storage {

class Statement;

class Database {
 public:
  enum class Mode { kReadOnly, kReadWrite };  // kReadWrite makes the file when there is none

  // Waits up to 5 seconds for a busy file in each later call. UNAVAILABLE when
  // it cannot be opened, or only for reading though kReadWrite was asked for.
  static absl::StatusOr<std::unique_ptr<Database>> open(const std::string& path, Mode mode);
  ~Database();
  Database(const Database&) = delete;
  Database& operator=(const Database&) = delete;

  // Runs statements without parameters; rows are dropped.
  absl::Status exec(const std::string& sql);
  // As exec(), for one of the few statements that come again and again: it stays prepared.
  absl::Status execOften(const std::string& sql);
  // The first column of the first row of a query that has one.
  absl::StatusOr<std::int64_t> integer(const std::string& sql);

  bool inTransaction() const;
  // How many rows the last statement changed.
  std::int64_t changedRows() const;
  // Whether the last connection to go leaves the file as it is, log and all.
  void leaveLogOnClose(bool leave);

  // The error for a result code of this connection, remembered if it was a
  // failed sync. `doing` opens the message.
  absl::Status error(int code, const std::string& doing);
  // A sync failed. What was written may be gone while later syncs claim success,
  // so nothing more may be acknowledged through this connection.
  bool syncFailed() const { return syncFailed_; }

  sqlite3* handle() const { return handle_; }

 private:
  explicit Database(sqlite3* handle);

  sqlite3* handle_;
  std::map<std::string, std::unique_ptr<Statement>> often_;  // by their text
  bool syncFailed_ = false;
};

}  // namespace suppertide::storage
