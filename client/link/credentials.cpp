#include "client/link/credentials.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>
#include <system_error>

#include <nlohmann/json.hpp>

#include "absl/strings/str_cat.h"
#include "client/link/private_file.h"

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
          .deviceToken = textOf(object, "deviceToken"),
          .dataFile = textOf(object, "dataFile"),
          .network = textOf(object, "network")};
}

Json toJson(const KnownServer& server) {
  Json json = {{"name", server.name},
               {"target", server.target},
               {"certificatePem", server.certificatePem},
               {"fingerprint", server.fingerprint},
               {"householdId", server.householdId},
               {"householdName", server.householdName},
               {"memberId", server.memberId},
               {"deviceToken", server.deviceToken}};
  if (!server.dataFile.empty()) json["dataFile"] = server.dataFile;
  if (!server.network.empty()) json["network"] = server.network;
  return json;
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

void Credentials::remove(const std::string& name) {
  servers.erase(
      std::remove_if(servers.begin(), servers.end(), [&](const KnownServer& s) { return s.name == name; }),
      servers.end());
  if (chosen == name) chosen = servers.empty() ? "" : servers.back().name;
}

std::filesystem::path credentialsPath() {
  return ownFolder("XDG_CONFIG_HOME", ".config") / "servers.json";
}

absl::StatusOr<Credentials> loadCredentials(const std::filesystem::path& path) {
  std::error_code missing;
  if (!std::filesystem::exists(path, missing)) return Credentials{};
  std::ifstream file(path);
  std::stringstream text;
  text << file.rdbuf();
  if (!file) return absl::InternalError(absl::StrCat("read ", path.string(), ": ", std::strerror(errno)));
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
  return writePrivately(path, json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
}

}  // namespace suppertide::link
