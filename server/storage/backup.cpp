#include "server/storage/backup.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <memory>

#include "absl/strings/str_cat.h"
#include "server/storage/check_file.h"
#include "server/storage/database.h"
#include "server/storage/errors.h"
#include "server/storage/file_lock.h"
#include "server/storage/migrations.h"

namespace suppertide::storage {

namespace {

constexpr int kPagesAtOnce = 1024;
constexpr int kBusyWaits = 100;
constexpr int kBusyMilliseconds = 50;

// No client can be further ahead of a copy than this many writes.
constexpr std::int64_t kJump = 1'000'000'000;

constexpr const char* kBeside[] = {"-wal", "-shm", "-journal"};

bool exists(const std::string& path) {
  struct stat there {};
  return lstat(path.c_str(), &there) == 0;
}

// Syncs a file, or a folder after something in it was named anew.
absl::Status sync(const std::string& path) {
  const int file = open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) return fileError("sync", path);
  const bool synced = fsync(file) == 0;
  const absl::Status status = synced ? absl::OkStatus() : fileError("sync", path);
  close(file);
  return status;
}

std::string folderOf(const std::string& path) {
  const std::string folder = std::filesystem::path(path).parent_path().string();
  return folder.empty() ? "." : folder;
}

absl::Status putInPlace(const std::string& from, const std::string& to) {
  if (rename(from.c_str(), to.c_str()) != 0) return fileError("write", to);
  return sync(folderOf(to));
}

void removeWithLog(const std::string& path) {
  for (const char* ending : kBeside) unlink((path + ending).c_str());
  unlink(path.c_str());
}

// A file that goes away unless it was put in place.
class NewFile {
 public:
  static absl::StatusOr<NewFile> make(const std::string& path) {
    removeWithLog(path);
    const int file = open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, S_IRUSR | S_IWUSR);
    if (file < 0) return fileError("write", path);
    close(file);
    return NewFile(path);
  }
  NewFile(NewFile&& other) noexcept : path_(std::exchange(other.path_, "")) {}
  NewFile& operator=(NewFile&&) = delete;
  ~NewFile() {
    if (!path_.empty()) removeWithLog(path_);
  }
  const std::string& path() const { return path_; }

 private:
  explicit NewFile(std::string path) : path_(std::move(path)) {}
  std::string path_;
};

absl::Status copyPages(Database& from, Database& to) {
  sqlite3_backup* copy = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
  if (copy == nullptr) return to.error(sqlite3_extended_errcode(to.handle()), "copy");
  int code = SQLITE_OK;
  for (int busy = 0; busy < kBusyWaits && code != SQLITE_DONE;) {
    code = sqlite3_backup_step(copy, kPagesAtOnce);
    if (code != SQLITE_BUSY && code != SQLITE_LOCKED && code != SQLITE_OK) break;
    if (code == SQLITE_OK) continue;
    ++busy;
    sqlite3_sleep(kBusyMilliseconds);
  }
  const int finished = sqlite3_backup_finish(copy);
  if (code == SQLITE_DONE && finished == SQLITE_OK) return absl::OkStatus();
  return to.error(code == SQLITE_DONE ? finished : code, "copy");
}

// `from` copied whole into `to`, an empty file, and checked there.
absl::Status copyFile(const std::string& from, const std::string& to) {
  absl::StatusOr<std::unique_ptr<Database>> source = Database::open(from, Database::Mode::kReadOnly);
  if (!source.ok()) return source.status();
  absl::Status status = checkIdentity(**source, static_cast<int>(migrations().size()));
  if (status.ok()) status = checkIsNotEmpty(**source);
  if (!status.ok()) return status;
  absl::StatusOr<std::unique_ptr<Database>> target = Database::open(to, Database::Mode::kReadWrite);
  if (!target.ok()) return target.status();
  // One read of one moment: otherwise each write meanwhile starts the copy over.
  status = (*source)->exec("BEGIN");
  if (status.ok()) status = (*source)->integer("SELECT count(*) FROM households").status();
  if (status.ok()) status = copyPages(**source, **target);
  // One file alone, without a log beside it, is what people carry about.
  if (status.ok()) status = (*target)->exec("PRAGMA journal_mode = DELETE; PRAGMA synchronous = FULL");
  if (status.ok()) status = checkIntegrity(**target);
  return status;
}

// See restore(): a new chapter that no device has read.
absl::Status startOver(Database& database) {
  absl::Status status = migrate(database, migrations());
  if (!status.ok()) return status;
  return database.exec(absl::StrCat(
      "PRAGMA foreign_keys = ON; BEGIN IMMEDIATE; UPDATE households SET revision = revision + ", kJump,
      "; UPDATE households SET trimmed_revision = revision, log_bytes = 0; DELETE FROM changed_documents;"
      " DELETE FROM documents WHERE deleted; DELETE FROM codes; COMMIT"));
}

absl::StatusOr<CopyReport> reportOf(const std::string& path) {
  absl::StatusOr<std::unique_ptr<Database>> database = Database::open(path, Database::Mode::kReadOnly);
  if (!database.ok()) return database.status();
  const auto households = (*database)->integer("SELECT count(*) FROM households");
  const auto documents = (*database)->integer("SELECT count(*) FROM documents WHERE NOT deleted");
  if (!households.ok()) return households.status();
  if (!documents.ok()) return documents.status();
  std::error_code ignored;
  return CopyReport{static_cast<std::int64_t>(std::filesystem::file_size(path, ignored)), *households,
                    *documents, ""};
}

// A name of which there is nothing yet, also no log: what was set aside once may be the only copy.
std::string freeNameBeside(const std::string& path) {
  const auto isTaken = [](const std::string& name) {
    return exists(name) || std::any_of(std::begin(kBeside), std::end(kBeside),
                                       [&](const char* ending) { return exists(name + ending); });
  };
  const std::string first = path + ".before-restore";
  std::string name = first;
  for (int number = 2; isTaken(name); ++number) name = absl::StrCat(first, "-", number);
  return name;
}

// Moves a data file out of the way with its log, which may hold its last writes.
absl::Status setAside(const std::string& path, const std::string& aside) {
  for (const char* ending : kBeside)
    if (exists(path + ending) && rename((path + ending).c_str(), (aside + ending).c_str()) != 0)
      return fileError("set aside", path);
  if (rename(path.c_str(), aside.c_str()) != 0) return fileError("set aside", path);
  return sync(folderOf(path));
}

absl::Status thereAlready(const std::string& path) {
  return absl::AlreadyExistsError(absl::StrCat("write ", path, ": there is a file already"));
}

}  // namespace

absl::StatusOr<CopyReport> backUp(const std::string& from, const std::string& to) {
  if (exists(to)) return thereAlready(to);
  const absl::StatusOr<NewFile> made = NewFile::make(to + ".new");
  if (!made.ok()) return made.status();
  absl::Status status = copyFile(from, made->path());
  if (status.ok()) status = sync(made->path());
  if (!status.ok()) return status;
  absl::StatusOr<CopyReport> report = reportOf(made->path());
  if (!report.ok()) return report;
  status = putInPlace(made->path(), to);
  if (!status.ok()) return status;
  return report;
}

absl::StatusOr<CopyReport> restore(const std::string& from, const std::string& to, bool replace) {
  if (exists(to) && !replace) return thereAlready(to);
  std::error_code ignored;
  if (std::filesystem::equivalent(from, to, ignored))
    return absl::InvalidArgumentError(absl::StrCat("restore ", from, ": it is the data file itself"));
  const absl::StatusOr<FileLock> lock = FileLock::acquire(to + ".lock");
  if (!lock.ok()) return lock.status();
  const absl::StatusOr<NewFile> made = NewFile::make(to + ".new");
  if (!made.ok()) return made.status();
  absl::Status status = copyFile(from, made->path());
  if (!status.ok()) return status;
  {
    absl::StatusOr<std::unique_ptr<Database>> database =
        Database::open(made->path(), Database::Mode::kReadWrite);
    if (!database.ok()) return database.status();
    status = startOver(**database);
  }
  if (status.ok()) status = sync(made->path());
  if (!status.ok()) return status;
  absl::StatusOr<CopyReport> report = reportOf(made->path());
  if (!report.ok()) return report;
  if (exists(to)) {
    report->setAside = freeNameBeside(to);
    status = setAside(to, report->setAside);
  }
  if (status.ok()) status = putInPlace(made->path(), to);
  if (!status.ok()) return status;
  return report;
}

}  // namespace suppertide::storage
