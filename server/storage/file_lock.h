// Keeps a second server off the same data file.
#pragma once

#include <string>

#include "absl/status/statusor.h"

namespace suppertide::storage {

// Held from acquire() until destroyed or the process dies, however it dies. The
// lock file beside the data stays; its presence means nothing.
class FileLock {
 public:
  // FAILED_PRECONDITION when somebody else holds it, also in this process.
  // UNAVAILABLE when the lock file cannot be made.
  static absl::StatusOr<FileLock> acquire(const std::string& path);
  FileLock(FileLock&& other) noexcept;
  FileLock& operator=(FileLock&&) = delete;
  ~FileLock();

 private:
  explicit FileLock(int descriptor) : descriptor_(descriptor) {}

  int descriptor_;  // -1 when moved from
};

}  // namespace suppertide::storage
