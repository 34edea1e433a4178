// The server: storage opened, services wired, listening; and its orderly end.
#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/base/clock.h"
#include "server/service/backend.h"

namespace grpc {
class Server;
class Service;
}  // namespace grpc

namespace suppertide::service {

class Server {
 public:
  struct Options {
    std::string dataFile;  // empty: in memory
    std::string listen;    // "unix:/path" or "HOST:PORT" on loopback; port 0 picks one
    Backend::Options backend;
    bool fullSync = true;
  };

  // Errors are one clear line: an address that is not loopback or taken, a file
  // that is damaged, newer or in use.
  static absl::StatusOr<std::unique_ptr<Server>> start(const Options& options, const Clock& clock);
  ~Server();  // drains

  const std::string& target() const { return target_; }
  // For CreateHousehold; empty once there is a household. Reads the disk.
  std::string hostCode() const;
  Backend& backend() { return *backend_; }
  // Ends streams with UNAVAILABLE, lets writes finish, stops. Calling it again does nothing.
  void drain();

 private:
  Server() = default;
  absl::Status makeHostCode();
  absl::Status listen(const std::string& address);

  std::unique_ptr<Backend> backend_;
  std::vector<std::unique_ptr<grpc::Service>> services_;
  std::unique_ptr<grpc::Server> server_;
  std::string target_;
  std::string hostCode_;
};

}  // namespace suppertide::service
