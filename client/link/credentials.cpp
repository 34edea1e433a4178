#include "client/link/credentials.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <sstream>
#include <system_error>

#include <nlohmann/json.hpp>

#include "absl/strings/str_cat.h"

namespace suppertide::link {
namespace {

using Json = nlohmann::json;
constexpr int kVersion = 1;

std::string textOf(const Json& object, const char* key) {
  const auto found = object.find(key);
  return found != object.end() && found->is_string() ? found->get<std::string>() : "";
}

KnownServer fromJson(const Json& object) {
  return {.name = textOf(object, "name"),
          .target = textOf(object, "target"),
          .certificatePem = textOf(object, "certificatePem"),
          .fingerprint = textOf(object, "fingerprint"),
          .householdId = textOf(object, "householdId"),
          .householdName = textOf(object, "householdName"),
          .memberId = textOf(object, "memberId"),
          .deviceToken = textOf(object, "deviceToken")};
}

Json toJson(const KnownServer& server) {
  return {{"name", server.name},
          {"target", server.target},
          {"certificatePem", server.certificatePem},
          {"fingerprint", server.fingerprint},
          {"householdId", server.householdId},
          {"householdName", server.householdName},
          {"memberId", server.memberId},
          {"deviceToken", server.deviceToken}};
}

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
absl::Status writePrivately(const std::filesystem::path& path, const std::string& text) {
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, S_IRUSR | S_IWUSR);
  if (file < 0) return fileError("write", path);
  const bool written = ::fchmod(file, S_IRUSR | S_IWUSR) == 0 && writeAll(file, text) && ::fsync(file) == 0;
  absl::Status status = written ? absl::OkStatus() : fileError("write", path);
  ::close(file);
  return status;
}

}  // namespace

const KnownServer* Credentials::find(const std::string& name) const {
  const std::string& wanted = name.empty() ? chosen : name;
  for (const KnownServer& server : servers) {
    if (server.name == wanted) return &server;
  }
  return name.empty() && servers.size() == 1 ? &servers.front() : nullptr;
}

void Credentials::put(KnownServer server) {
  chosen = server.name;
  const auto same = std::find_if(servers.begin(), servers.end(),
                                 [&](const KnownServer& s) { return s.name == server.name; });
  if (same != servers.end()) {
    *same = std::move(server);
  } else {
    servers.push_back(std::move(server));
  }
}

std::filesystem::path credentialsPath() {
  std::filesystem::path folder;
  const char* config = std::getenv("XDG_CONFIG_HOME");
  const char* home = std::getenv("HOME");
  if (config != nullptr && config[0] == '/') {
    folder = config;
  } else {
    folder = std::filesystem::path(home != nullptr ? home : ".") / ".config";
  }
  return folder / "suppertide" / "servers.json";
}

absl::StatusOr<Credentials> loadCredentials(const std::filesystem::path& path) {
  std::error_code missing;
  if (!std::filesystem::exists(path, missing)) return Credentials{};
  std::ifstream file(path);
  std::stringstream text;
  text << file.rdbuf();
  if (!file) return fileError("read", path);
  const Json json = Json::parse(text.str(), nullptr, /*allow_exceptions=*/false);
  const auto servers = json.is_object() ? json.find("servers") : json.end();
  if (!json.is_object() || servers == json.end() || !servers->is_array()) {
    return absl::FailedPreconditionError(
        absl::StrCat("read ", path.string(), ": it is not a list of known servers"));
  }
  const auto version = json.find("version");
  if (version == json.end() || !version->is_number_integer() || version->get<int>() > kVersion) {
    return absl::FailedPreconditionError(
        absl::StrCat("read ", path.string(), ": it is from a newer version"));
  }
  Credentials credentials;
  credentials.chosen = textOf(json, "chosen");
  for (const Json& server : *servers) {
    if (server.is_object()) credentials.servers.push_back(fromJson(server));
  }
  return credentials;
}

absl::Status saveCredentials(const std::filesystem::path& path, const Credentials& credentials) {
  Json servers = Json::array();
  for (const KnownServer& server : credentials.servers) servers.push_back(toJson(server));
  const Json json = {{"version", kVersion}, {"chosen", credentials.chosen}, {"servers", servers}};
  std::error_code error;
  const std::filesystem::path folder = path.parent_path();
  if (!std::filesystem::exists(folder, error)) {
    std::filesystem::create_directories(folder, error);
    if (error) return absl::InternalError(absl::StrCat("make ", folder.string(), ": ", error.message()));
    std::filesystem::permissions(folder, std::filesystem::perms::owner_all, error);
  }
  std::filesystem::path next = path;
  next += absl::StrCat(".", ::getpid(), ".new");
  if (absl::Status status =
          writePrivately(next, json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
      !status.ok())
    return status;
  if (::rename(next.c_str(), path.c_str()) != 0) {
    absl::Status status = fileError("replace", path);
    ::unlink(next.c_str());
    return status;
  }
  return absl::OkStatus();
}

}  // namespace suppertide::link
