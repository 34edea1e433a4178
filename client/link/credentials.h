// The servers and households that this device knows, with its tokens.
//
// Kept in one JSON file that only its owner can read. Written whole or not at
// all: a crash leaves the old file. Two programs that save at the same moment:
// the later one wins.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"

namespace suppertide::link {

// One household on one server, as joined by this device.
struct KnownServer {
  std::string name;            // for people, unique in the file: "home"
  std::string target;          // "192.168.1.4:50710", "unix:/..."
  std::string certificatePem;  // trusted for this server alone; empty: the system's authorities
  std::string fingerprint{};   // of its self-made certificate; empty: it has another or none
  std::string householdId;
  std::string householdName;
  std::string memberId;
  std::string deviceToken;
  // The server's own file, when the window is to serve it itself at `target`; empty: others serve it.
  std::string dataFile{};
  // With a dataFile: where that server lets other devices in, "0.0.0.0:50710"; empty: nowhere.
  std::string network{};
};

struct Credentials {
  std::vector<KnownServer> servers;
  std::string chosen;  // the name used when none is given

  // By name; an empty name gives the chosen one, or the only one. Null when there is none.
  const KnownServer* find(const std::string& name) const;
  // Replaces the one of that name, or adds it, and makes it the chosen one.
  void put(KnownServer server);
  void remove(const std::string& name);
};

// $XDG_CONFIG_HOME/suppertide/servers.json, or below ~/.config when that is not set.
std::filesystem::path credentialsPath();

// Empty credentials when there is no file. FailedPrecondition when it is not one of ours or from a newer
// version.
absl::StatusOr<Credentials> loadCredentials(const std::filesystem::path& path);
// Creates the folder (mode 0700) when needed; the file gets mode 0600.
absl::Status saveCredentials(const std::filesystem::path& path, const Credentials& credentials);

}  // namespace suppertide::link
