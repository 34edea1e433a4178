#include "server/storage/transaction.h"

#include <utility>

#include "server/storage/database.h"

namespace suppertide::storage {

absl::StatusOr<Transaction> Transaction::begin(Database& database, Kind kind) {
  const absl::Status status = database.exec(kind == Kind::kWrite ? "BEGIN IMMEDIATE" : "BEGIN");
  if (!status.ok()) return status;
  return Transaction(database);
}

Transaction::Transaction(Transaction&& other) noexcept : database_(std::exchange(other.database_, nullptr)) {}

Transaction::~Transaction() {
  // Some errors make SQLite roll back by itself.
  if (database_ != nullptr && database_->inTransaction()) database_->exec("ROLLBACK").IgnoreError();
}

absl::Status Transaction::commit() {
  const absl::Status status = database_->exec("COMMIT");
  if (status.ok()) database_ = nullptr;
  return status;
}

absl::StatusOr<Savepoint> Savepoint::begin(Database& database) {
  const absl::Status status = database.exec("SAVEPOINT part");
  if (!status.ok()) return status;
  return Savepoint(database);
}

Savepoint::Savepoint(Savepoint&& other) noexcept : database_(std::exchange(other.database_, nullptr)) {}

Savepoint::~Savepoint() {
  if (database_ != nullptr && database_->inTransaction()) takeBack().IgnoreError();
}

absl::Status Savepoint::takeBack() {
  const absl::Status status = database_->exec("ROLLBACK TO part; RELEASE part");
  if (status.ok()) database_ = nullptr;
  return status;
}

absl::Status Savepoint::keep() {
  const absl::Status status = database_->exec("RELEASE part");
  if (status.ok()) database_ = nullptr;
  return status;
}

}  // namespace suppertide::storage
