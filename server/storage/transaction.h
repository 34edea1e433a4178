// Transactions that cannot forget to roll back.
#pragma once

#include "absl/status/status.h"
#include "absl/status/statusor.h"

namespace suppertide::storage {

class Database;

// Commits on commit(), rolls back when destroyed without it.
class Transaction {
 public:
  enum class Kind { kRead, kWrite };

  // A read holds still what it sees from its first query on; a write takes the
  // file's write lock at once. `database` outlives the transaction.
  static absl::StatusOr<Transaction> begin(Database& database, Kind kind);
  Transaction(Transaction&& other) noexcept;
  ~Transaction();

  absl::Status commit();

 private:
  explicit Transaction(Database& database) : database_(&database) {}

  Database* database_;  // null once finished or moved from
};

// A part of a write transaction that can be taken back alone. Taken back also
// when destroyed with neither said. One at a time, not nested.
class Savepoint {
 public:
  static absl::StatusOr<Savepoint> begin(Database& database);
  Savepoint(Savepoint&& other) noexcept;
  ~Savepoint();

  absl::Status keep();
  // After an error the part may still be in the transaction, which then must not be committed.
  absl::Status takeBack();

 private:
  explicit Savepoint(Database& database) : database_(&database) {}

  Database* database_;  // null once finished or moved from
};

}  // namespace suppertide::storage
