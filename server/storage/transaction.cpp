#include "server/storage/transaction.h"

#include <utility>

#include "server/storage/database.h"

namespace suppertide::storage {

absl::StatusOr<Transaction> Transaction::begin(Database& database, Kind kind) {
  const absl::Status status = database.execOften(kind == Kind::kWrite ? "BEGIN IMMEDIATE" : "BEGIN");
  if (!status.ok()) return status;
  return Transaction(database);
}

Transaction::Transaction(Transaction&& other) noexcept : database_(std::exchange(other.database_, nullptr)) {}

Transaction::~Transaction() {
  // Some errors make SQLite roll back by itself.
  if (database_ != nullptr && database_->inTransaction()) database_->execOften("ROLLBACK").IgnoreError();
}

absl::Status Transaction::commit() {
  const absl::Status status = database_->execOften("COMMIT");
  if (status.ok()) database_ = nullptr;
  return status;
}

absl::StatusOr<Savepoint> Savepoint::begin(Database& database) {
  const absl::Status status = database.execOften("SAVEPOINT part");
  if (!status.ok()) return status;
  return Savepoint(database);
}

Savepoint::Savepoint(Savepoint&& other) noexcept : database_(std::exchange(other.database_, nullptr)) {}

Savepoint::~Savepoint() {
  if (database_ != nullptr && database_->inTransaction()) takeBack().IgnoreError();
}

absl::Status Savepoint::takeBack() {
  absl::Status status = database_->execOften("ROLLBACK TO part");
  if (status.ok()) status = database_->execOften("RELEASE part");
  if (status.ok()) database_ = nullptr;
  return status;
}

absl::Status Savepoint::keep() {
  const absl::Status status = database_->execOften("RELEASE part");
  if (status.ok()) database_ = nullptr;
  return status;
}

}  // namespace suppertide::storage
