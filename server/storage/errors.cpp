#include "server/storage/errors.h"

#include <sqlite3.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "absl/strings/str_cat.h"

namespace suppertide::storage {

absl::Status storageError(int code, const std::string& doing) {
  switch (code) {
    case SQLITE_IOERR_NOMEM:
      return absl::ResourceExhaustedError(absl::StrCat(doing, ": out of memory"));
    case SQLITE_IOERR_SHMSIZE:  // no room for the log's index when the file is opened
      return absl::ResourceExhaustedError(absl::StrCat(doing, ": the disk is full"));
    case SQLITE_IOERR_CORRUPTFS:
      return absl::DataLossError(absl::StrCat(doing, ": the file system is damaged"));
    default:
      break;
  }
  switch (code & 0xFF) {
    case SQLITE_FULL:
      return absl::ResourceExhaustedError(absl::StrCat(doing, ": the disk is full"));
    case SQLITE_NOMEM:
      return absl::ResourceExhaustedError(absl::StrCat(doing, ": out of memory"));
    case SQLITE_TOOBIG:
      return absl::ResourceExhaustedError(absl::StrCat(doing, ": the document is too large"));
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return absl::UnavailableError(absl::StrCat(doing, ": the data file is busy"));
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return absl::UnavailableError(absl::StrCat(doing, ": the data file is read-only"));
    case SQLITE_CANTOPEN:
      return absl::UnavailableError(absl::StrCat(doing, ": the data file cannot be opened"));
    case SQLITE_IOERR:
      return absl::UnavailableError(absl::StrCat(doing, ": the disk reports an error (", code, ")"));
    case SQLITE_NOTADB:
      return absl::DataLossError(absl::StrCat(doing, ": it is no data file, or its beginning is damaged"));
    case SQLITE_CORRUPT:
      return absl::DataLossError(absl::StrCat(doing, ": the data file is damaged"));
    default:
      return absl::InternalError(absl::StrCat(doing, ": storage error ", code));
  }
}

absl::Status fileError(const std::string& doing, const std::string& path) {
  const int error = errno;
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  std::error_code ignored;
  const bool lacksFolder = error == ENOENT && !folder.empty() && !std::filesystem::exists(folder, ignored);
  return absl::UnavailableError(absl::StrCat(
      doing, " ", path, ": ",
      lacksFolder ? "there is no folder " + folder.string() : std::string(std::strerror(error))));
}

}  // namespace suppertide::storage
