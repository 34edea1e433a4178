// Prepared SQL and its rows.
//
//   Statement find(database, "SELECT etag FROM documents WHERE id = ?");
//   Rows rows(find, id);
//   absl::StatusOr<bool> found = rows.next();
//
// A Statement is prepared at its first use and kept. A Rows is one run of it:
// values are bound when it is made, and the statement is free again when it is
// destroyed; one run of a statement at a time. Not thread-safe.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "server/base/clock.h"

struct sqlite3_stmt;

namespace suppertide::storage {

class Database;

// A string bound as bytes rather than text.
struct Blob {
  const std::string& bytes;
};

class Statement {
 public:
  // `database` outlives the statement.
  Statement(Database& database, std::string sql) : database_(database), sql_(std::move(sql)) {}
  ~Statement();
  Statement(const Statement&) = delete;
  Statement& operator=(const Statement&) = delete;

 private:
  friend class Rows;
  absl::Status prepare();

  Database& database_;
  std::string sql_;
  sqlite3_stmt* handle_ = nullptr;  // null until first used
};

class Rows {
 public:
  // Values for the question marks in their order. A failure shows at next().
  template <typename... Values>
  explicit Rows(Statement& statement, const Values&... values) : Rows(statement, Begin{}) {
    (bind(values), ...);
  }
  ~Rows();
  Rows(const Rows&) = delete;
  Rows& operator=(const Rows&) = delete;

  // Steps to the next row; false past the last.
  absl::StatusOr<bool> next();

  // Columns of the row stood on, from 0.
  std::string text(int column) const;  // also for bytes
  std::int64_t integer(int column) const;
  bool flag(int column) const { return integer(column) != 0; }
  Instant instant(int column) const;
  std::optional<Instant> optionalInstant(int column) const;  // absent for NULL

 private:
  struct Begin {};
  Rows(Statement& statement, Begin);
  void bind(const std::string& text);
  void bind(Blob blob);
  void bind(std::int64_t value);
  void bind(int value) { bind(std::int64_t{value}); }
  void bind(bool value) { bind(std::int64_t{value}); }
  void bind(Instant instant) { bind(std::int64_t{instant.time_since_epoch().count()}); }
  void bind(const std::optional<Instant>& instant);
  void note(int code);

  Statement& statement_;
  absl::Status status_;
  int bound_ = 0;
};

// Runs a statement that gives no rows.
template <typename... Values>
absl::Status run(Statement& statement, const Values&... values) {
  return Rows(statement, values...).next().status();
}

}  // namespace suppertide::storage
