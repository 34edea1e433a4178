// Making this device a member of a household.
#pragma once

#include <filesystem>
#include <string>

#include "absl/status/statusor.h"
#include "client/link/credentials.h"

namespace suppertide::link {

struct Joining {
  std::string target;
  std::string code;  // an invitation, or with `founds` the host code; as one word with its fingerprint
  bool founds = false;
  std::string memberName;      // when the invitation names nobody; with `founds` the host's
  std::string memberId;        // with `founds`, the host's; empty: "host"
  std::string deviceName;      // empty: the machine's name
  std::string certificatePem;  // trusted for this server alone; empty: see openChannel()
  std::string householdName;   // with `founds`; empty: "Our household"
  std::string timeZone;        // with `founds`; empty: this machine's
  std::string saveAs;          // empty: "home", or "home-2" when another household is saved so
  std::string dataFile;        // see KnownServer
};

// Joins and saves what lets the device in, in that file. The outcome of a server that could not say it is
// asked for again. InvalidArgument for a code that is cut off; PermissionDenied for a wrong or used one;
// ResourceExhausted after too many tries; Unavailable when no such server answers.
absl::StatusOr<KnownServer> join(const Joining& joining, const std::filesystem::path& credentialsFile);

// The machine's time zone by its IANA name, "UTC" when it has none.
std::string localZone();

}  // namespace suppertide::link
