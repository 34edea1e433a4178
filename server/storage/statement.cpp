#include "server/storage/statement.h"

#include <sqlite3.h>

#include "server/storage/database.h"

namespace suppertide::storage {

namespace {

constexpr char kDoing[] = "storage";

}  // namespace

Statement::~Statement() {
  sqlite3_finalize(handle_);
}

absl::Status Statement::prepare() {
  if (handle_ != nullptr) return absl::OkStatus();
  const int code = sqlite3_prepare_v3(database_.handle(), sql_.c_str(), static_cast<int>(sql_.size()),
                                      SQLITE_PREPARE_PERSISTENT, &handle_, nullptr);
  return code == SQLITE_OK ? absl::OkStatus() : database_.error(code, kDoing);
}

Rows::Rows(Statement& statement, Begin) : statement_(statement), status_(statement.prepare()) {}

Rows::~Rows() {
  if (statement_.handle_ == nullptr) return;
  sqlite3_reset(statement_.handle_);
  // Frees what was bound, which may be a large document.
  sqlite3_clear_bindings(statement_.handle_);
}

absl::StatusOr<bool> Rows::next() {
  if (!status_.ok()) return status_;
  const int code = sqlite3_step(statement_.handle_);
  if (code == SQLITE_ROW) return true;
  if (code == SQLITE_DONE) return false;
  status_ = statement_.database_.error(code, kDoing);
  return status_;
}

std::string Rows::text(int column) const {
  const void* bytes = sqlite3_column_blob(statement_.handle_, column);
  const int size = sqlite3_column_bytes(statement_.handle_, column);
  return size == 0 ? std::string()
                   : std::string(static_cast<const char*>(bytes), static_cast<std::size_t>(size));
}

std::int64_t Rows::integer(int column) const {
  return sqlite3_column_int64(statement_.handle_, column);
}

Instant Rows::instant(int column) const {
  return Instant(std::chrono::seconds(integer(column)));
}

std::optional<Instant> Rows::optionalInstant(int column) const {
  if (sqlite3_column_type(statement_.handle_, column) == SQLITE_NULL) return std::nullopt;
  return instant(column);
}

void Rows::bind(const std::string& text) {
  if (!status_.ok()) return;
  note(sqlite3_bind_text64(statement_.handle_, ++bound_, text.data(), text.size(), SQLITE_TRANSIENT,
                           SQLITE_UTF8));
}

void Rows::bind(Blob blob) {
  if (!status_.ok()) return;
  note(sqlite3_bind_blob64(statement_.handle_, ++bound_, blob.bytes.data(), blob.bytes.size(),
                           SQLITE_TRANSIENT));
}

void Rows::bind(std::int64_t value) {
  if (!status_.ok()) return;
  note(sqlite3_bind_int64(statement_.handle_, ++bound_, value));
}

void Rows::bind(const std::optional<Instant>& instant) {
  if (instant) return bind(*instant);
  if (status_.ok()) note(sqlite3_bind_null(statement_.handle_, ++bound_));
}

void Rows::note(int code) {
  if (code != SQLITE_OK) status_ = statement_.database_.error(code, kDoing);
}

}  // namespace suppertide::storage
