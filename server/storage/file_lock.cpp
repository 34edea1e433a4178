#include "server/storage/file_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <utility>

#include "absl/strings/str_cat.h"
#include "server/storage/errors.h"

namespace suppertide::storage {

absl::StatusOr<FileLock> FileLock::acquire(const std::string& path) {
  const int descriptor = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (descriptor < 0) return fileError("open", path);
  FileLock lock(descriptor);
  // flock belongs to this open file, so it also keeps out a second opener in the same process.
  if (::flock(descriptor, LOCK_EX | LOCK_NB) == 0) return lock;
  if (errno == EWOULDBLOCK) {
    return absl::FailedPreconditionError(
        absl::StrCat("lock ", path, ": another server has this data file open"));
  }
  return fileError("lock", path);
}

FileLock::FileLock(FileLock&& other) noexcept : descriptor_(std::exchange(other.descriptor_, -1)) {}

FileLock::~FileLock() {
  if (descriptor_ >= 0) ::close(descriptor_);
}

}  // namespace suppertide::storage
