// The same server inside another program: a private socket, a file or memory.
//
// One path for everything: an embedded planning goes through the same services,
// checks and storage as one over the network.
#pragma once

#include <memory>
#include <string>

#include "absl/status/statusor.h"

namespace suppertide {

class EmbeddedServer {
 public:
  struct Options {
    std::string dataFile;  // empty: in memory, gone with the program
    std::string listen;    // empty: a private Unix socket; else "127.0.0.1:PORT", port 0 picks one
    // Where other devices come in as well, always over TLS with a certificate kept beside the data:
    // "0.0.0.0:PORT", port 0 picks one. Empty: nowhere.
    std::string network{};
  };

  // Starts serving before it returns. Errors are one clear line each.
  static absl::StatusOr<std::unique_ptr<EmbeddedServer>> start(const Options& options);
  virtual ~EmbeddedServer() = default;  // drains: streams end, writes finish

  // For a gRPC channel: "unix:/..." or "127.0.0.1:40123".
  virtual std::string target() const = 0;
  // The port on which other devices come in; 0: none.
  virtual int networkPort() const = 0;
  // For CreateHousehold; empty once there is a household.
  virtual std::string hostCode() const = 0;
};

}  // namespace suppertide
