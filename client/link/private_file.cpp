#include "client/link/private_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <system_error>

#include "absl/strings/str_cat.h"

namespace suppertide::link {
namespace {

absl::Status fileError(const char* doing, const std::filesystem::path& path) {
  return absl::InternalError(absl::StrCat(doing, " ", path.string(), ": ", std::strerror(errno)));
}

bool writeAll(int file, const std::string& text) {
  std::size_t done = 0;
  while (done < text.size()) {
    const ssize_t wrote = ::write(file, text.data() + done, text.size() - done);
    if (wrote < 0 && errno == EINTR) continue;
    if (wrote <= 0) return false;
    done += static_cast<std::size_t>(wrote);
  }
  return true;
}

// Opened with its final mode, so that no other user can read it even for a moment.
absl::Status writeNew(const std::filesystem::path& path, const std::string& text) {
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, S_IRUSR | S_IWUSR);
  if (file < 0) return fileError("write", path);
  const bool written = ::fchmod(file, S_IRUSR | S_IWUSR) == 0 && writeAll(file, text) && ::fsync(file) == 0;
  absl::Status status = written ? absl::OkStatus() : fileError("write", path);
  ::close(file);
  return status;
}

}  // namespace

std::filesystem::path ownFolder(const char* variable, const char* otherwise) {
  const char* folder = std::getenv(variable);
  const char* home = std::getenv("HOME");
  if (folder != nullptr && folder[0] == '/') return std::filesystem::path(folder) / "suppertide";
  return std::filesystem::path(home != nullptr ? home : ".") / otherwise / "suppertide";
}

std::filesystem::path householdFolder(const std::string& householdId) {
  static constexpr char kAllowed[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_.";
  // An id that came from elsewhere never leads out of the folder.
  std::string name = "of-" + householdId;
  for (std::size_t at = 0; (at = name.find_first_not_of(kAllowed, at)) != std::string::npos;) name[at] = '_';
  return ownFolder("XDG_DATA_HOME", ".local/share") / "households" / name;
}

absl::Status makePrivateFolder(const std::filesystem::path& folder) {
  std::error_code error;
  if (std::filesystem::exists(folder, error)) return absl::OkStatus();
  std::filesystem::create_directories(folder, error);
  if (error) return absl::InternalError(absl::StrCat("make ", folder.string(), ": ", error.message()));
  std::filesystem::permissions(folder, std::filesystem::perms::owner_all, error);
  return absl::OkStatus();
}

absl::Status writePrivately(const std::filesystem::path& path, const std::string& bytes) {
  if (absl::Status status = makePrivateFolder(path.parent_path()); !status.ok()) return status;
  std::filesystem::path next = path;
  next += absl::StrCat(".", ::getpid(), ".new");
  if (absl::Status status = writeNew(next, bytes); !status.ok()) return status;
  if (::rename(next.c_str(), path.c_str()) != 0) {
    absl::Status status = fileError("replace", path);
    ::unlink(next.c_str());
    return status;
  }
  return absl::OkStatus();
}

}  // namespace suppertide::link
