#include "client/link/outbox.h"

#include <sqlite3.h>
#include <sys/stat.h>

#include <algorithm>
#include <ctime>
#include <utility>

#include "absl/strings/str_cat.h"
#include "client/link/edit.h"
#include "client/link/error_detail.h"
#include "client/link/private_file.h"

namespace suppertide::link {
namespace {

using google::protobuf::Message;

constexpr int kOutboxVersion = 1;
constexpr char kSchema[] =
    "CREATE TABLE waiting (number INTEGER PRIMARY KEY, type TEXT NOT NULL, request BLOB NOT NULL, "
    "made_seconds INTEGER NOT NULL, refused INTEGER NOT NULL, code INTEGER NOT NULL, why TEXT NOT NULL, "
    "detail BLOB NOT NULL) STRICT; PRAGMA user_version = 1;";

absl::Status failure(sqlite3* database, const char* doing) {
  const int code = sqlite3_errcode(database) & 0xff;
  const std::string text = absl::StrCat(doing, ": ", sqlite3_errmsg(database));
  if (code == SQLITE_BUSY || code == SQLITE_LOCKED) return absl::FailedPreconditionError(text);
  if (code == SQLITE_CORRUPT || code == SQLITE_NOTADB) return absl::DataLossError(text);
  return absl::InternalError(text);
}

// One statement, given its values in order.
class Statement {
 public:
  Statement(sqlite3* database, const char* sql) : database_(database) {
    sqlite3_prepare_v2(database, sql, -1, &statement_, nullptr);
  }
  ~Statement() { sqlite3_finalize(statement_); }
  Statement(const Statement&) = delete;
  Statement& operator=(const Statement&) = delete;

  Statement& with(std::int64_t number) {
    sqlite3_bind_int64(statement_, ++bound_, number);
    return *this;
  }
  Statement& withText(const std::string& text) {
    sqlite3_bind_text(statement_, ++bound_, text.data(), static_cast<int>(text.size()), SQLITE_TRANSIENT);
    return *this;
  }
  Statement& withBytes(const std::string& bytes) {
    sqlite3_bind_blob(statement_, ++bound_, bytes.data(), static_cast<int>(bytes.size()), SQLITE_TRANSIENT);
    return *this;
  }
  // True: there is a row.
  absl::StatusOr<bool> step(const char* doing) {
    const int code = sqlite3_step(statement_);
    if (code == SQLITE_ROW) return true;
    if (code == SQLITE_DONE) return false;
    return failure(database_, doing);
  }
  std::int64_t number(int column) { return sqlite3_column_int64(statement_, column); }
  std::string bytes(int column) {
    const void* data = sqlite3_column_blob(statement_, column);
    const auto size = static_cast<std::size_t>(sqlite3_column_bytes(statement_, column));
    return data == nullptr ? std::string() : std::string(static_cast<const char*>(data), size);
  }

 private:
  sqlite3* database_;
  sqlite3_stmt* statement_ = nullptr;
  int bound_ = 0;
};

std::shared_ptr<Message> messageOf(const std::string& type, const std::string& bytes) {
  const auto* known = google::protobuf::DescriptorPool::generated_pool()->FindMessageTypeByName(type);
  if (known == nullptr) return nullptr;
  std::shared_ptr<Message> message(
      google::protobuf::MessageFactory::generated_factory()->GetPrototype(known)->New());
  return message->ParseFromString(bytes) ? message : nullptr;
}

std::string versionKey(const Edit& edit) {
  return absl::StrCat(edit.kind, "/", edit.id, "/", edit.etag);
}

absl::StatusOr<sqlite3*> openFile(const std::filesystem::path& file) {
  sqlite3* database = nullptr;
  const int code = sqlite3_open_v2(
      file.c_str(), &database, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_FULLMUTEX, nullptr);
  if (code == SQLITE_OK) return database;
  absl::Status status = failure(database, "open the outbox");
  sqlite3_close(database);
  return status;
}

}  // namespace

absl::StatusOr<std::unique_ptr<Outbox>> Outbox::open(const std::filesystem::path& file) {
  if (absl::Status status = makePrivateFolder(file.parent_path()); !status.ok()) return status;
  for (bool again = true;; again = false) {
    const absl::StatusOr<sqlite3*> database = openFile(file);
    if (!database.ok()) return database.status();
    ::chmod(file.c_str(), S_IRUSR | S_IWUSR);
    std::unique_ptr<Outbox> outbox(new Outbox(*database));
    absl::Status status = outbox->prepare();
    if (status.ok()) status = outbox->load();
    if (status.ok()) return outbox;
    if (status.code() != absl::StatusCode::kDataLoss || !again) return status;
    outbox.reset();
    std::error_code error;
    std::filesystem::rename(file, absl::StrCat(file.string(), ".", std::time(nullptr), ".damaged"), error);
    if (error) return status;
  }
}

std::unique_ptr<Outbox> Outbox::inMemory() {
  return std::unique_ptr<Outbox>(new Outbox(nullptr));
}

Outbox::~Outbox() {
  sqlite3_close(database_);
}

absl::Status Outbox::run(const char* sql) {
  if (sqlite3_exec(database_, sql, nullptr, nullptr, nullptr) == SQLITE_OK) return absl::OkStatus();
  return failure(database_, "keep what waits");
}

absl::Status Outbox::prepare() {
  // One program alone, for as long as it runs: what two would send and settle must not cross.
  absl::Status status =
      run("PRAGMA locking_mode = EXCLUSIVE; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; "
          "BEGIN IMMEDIATE; COMMIT;");
  if (!status.ok()) return status;
  Statement version(database_, "PRAGMA user_version");
  const absl::StatusOr<bool> row = version.step("read the outbox");
  if (!row.ok()) return row.status();
  if (version.number(0) > kOutboxVersion)
    return absl::FailedPreconditionError("the outbox is from a newer version");
  return version.number(0) == kOutboxVersion ? absl::OkStatus() : run(kSchema);
}

absl::Status Outbox::load() {
  Statement all(
      database_,
      "SELECT number, type, request, made_seconds, refused, code, why, detail FROM waiting ORDER BY "
      "number");
  while (true) {
    const absl::StatusOr<bool> row = all.step("read the outbox");
    if (!row.ok()) return row.status();
    if (!*row) return absl::OkStatus();
    Entry entry;
    entry.number = last_ = all.number(0);
    entry.request = messageOf(all.bytes(1), all.bytes(2));
    entry.madeSeconds = all.number(3);
    entry.refused = all.number(4) != 0;
    if (entry.refused)
      entry.refusal =
          statusWithDetail(static_cast<absl::StatusCode>(all.number(5)), all.bytes(6), all.bytes(7));
    entries_.push_back(std::move(entry));
  }
}

absl::Status Outbox::store(const Entry& entry) {
  if (database_ == nullptr) return absl::OkStatus();
  Statement insert(database_, "INSERT OR REPLACE INTO waiting VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
  insert.with(entry.number)
      .withText(entry.request->GetTypeName())
      .withBytes(entry.request->SerializeAsString())
      .with(entry.madeSeconds)
      .with(entry.refused ? 1 : 0)
      .with(static_cast<int>(entry.refusal.code()))
      .withText(std::string(entry.refusal.message()))
      .withBytes(detailBytes(entry.refusal));
  return insert.step("keep what waits").status();
}

absl::Status Outbox::remove(std::int64_t number) {
  if (database_ == nullptr) return absl::OkStatus();
  return Statement(database_, "DELETE FROM waiting WHERE number = ?")
      .with(number)
      .step("keep what waits")
      .status();
}

template <class Work>
absl::Status Outbox::atOnce(Work work) {
  if (database_ == nullptr) return work();
  if (absl::Status status = run("BEGIN IMMEDIATE"); !status.ok()) return status;
  absl::Status status = work();
  if (status.ok()) status = run("COMMIT");
  if (!status.ok()) run("ROLLBACK").IgnoreError();
  return status;
}

std::vector<Outbox::Entry>::iterator Outbox::find(std::int64_t number) {
  return std::find_if(entries_.begin(), entries_.end(), [&](const Entry& e) { return e.number == number; });
}

absl::StatusOr<std::int64_t> Outbox::add(const Message& request, std::int64_t madeSeconds) {
  const std::lock_guard<std::mutex> lock(mutex_);
  std::shared_ptr<Message> copy(request.New());
  copy->CopyFrom(request);
  for (auto next = nextEtags_.find(versionKey(readEdit(*copy))); next != nextEtags_.end();
       next = nextEtags_.find(versionKey(readEdit(*copy))))
    aimAt(*copy, next->second);
  Entry entry;
  entry.number = last_ + 1;
  entry.request = std::move(copy);
  entry.madeSeconds = madeSeconds;
  if (absl::Status status = store(entry); !status.ok()) return status;
  entries_.push_back(std::move(entry));
  return ++last_;
}

std::vector<Outbox::Entry> Outbox::entries() const {
  const std::lock_guard<std::mutex> lock(mutex_);
  return entries_;
}

std::optional<Outbox::Entry> Outbox::entry(std::int64_t number) const {
  const std::lock_guard<std::mutex> lock(mutex_);
  for (const Entry& entry : entries_)
    if (entry.number == number) return entry;
  return std::nullopt;
}

std::optional<Outbox::Entry> Outbox::next() const {
  const std::lock_guard<std::mutex> lock(mutex_);
  for (const Entry& entry : entries_)
    if (!entry.refused && entry.request != nullptr) return entry;
  return std::nullopt;
}

absl::Status Outbox::taken(std::int64_t number, const Message& answer) {
  const std::lock_guard<std::mutex> lock(mutex_);
  const auto done = find(number);
  if (done == entries_.end()) return absl::OkStatus();
  const Edit edit = readEdit(*done->request);
  std::vector<Entry> aimed;
  const Message* document = answeredDocument(answer, edit.kind);
  for (auto later = done + 1; document != nullptr && later != entries_.end(); ++later) {
    if (later->request == nullptr || later->refused) continue;
    const Edit next = readEdit(*later->request);
    if (next.kind != edit.kind || next.id != edit.id || next.etag != edit.etag) continue;
    std::shared_ptr<Message> request(later->request->New());
    request->CopyFrom(*later->request);
    aimAt(*request, etagOf(*document));
    aimed.push_back(*later);
    aimed.back().request = std::move(request);
  }
  absl::Status status = atOnce([&] {
    absl::Status stored = remove(number);
    for (const Entry& entry : aimed)
      if (stored.ok()) stored = store(entry);
    return stored;
  });
  if (!status.ok()) return status;
  if (document != nullptr && !edit.etag.empty() && edit.etag != etagOf(*document))
    nextEtags_[versionKey(edit)] = etagOf(*document);
  entries_.erase(done);
  for (Entry& entry : aimed) *find(entry.number) = std::move(entry);
  return absl::OkStatus();
}

absl::Status Outbox::refused(std::int64_t number, const absl::Status& why) {
  const std::lock_guard<std::mutex> lock(mutex_);
  const auto found = find(number);
  if (found == entries_.end()) return absl::OkStatus();
  Entry next = *found;
  next.refused = true;
  next.refusal = why;
  if (absl::Status status = store(next); !status.ok()) return status;
  *found = std::move(next);
  return absl::OkStatus();
}

absl::Status Outbox::drop(std::int64_t number) {
  const std::lock_guard<std::mutex> lock(mutex_);
  const auto found = find(number);
  if (found == entries_.end()) return absl::OkStatus();
  if (absl::Status status = remove(number); !status.ok()) return status;
  entries_.erase(found);
  return absl::OkStatus();
}

}  // namespace suppertide::link
