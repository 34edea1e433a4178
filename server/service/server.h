// The server: storage opened, services wired, listening; and its orderly end.
#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/base/clock.h"
#include "server/service/backend.h"
#include "server/service/calendar_server.h"
#include "server/service/certificate.h"

namespace grpc {
class Server;
class Service;
}  // namespace grpc

namespace suppertide::service {

class Server {
 public:
  struct Options {
    std::string dataFile;  // empty: in memory
    std::string listen;    // "unix:/path" or "HOST:PORT"; port 0 picks one
    // Over TCP the server shows the owner's certificate, or without one a
    // self-made one kept beside the data (certificate.h). A Unix socket is plain.
    std::string certificateFile;
    std::string keyFile;
    bool plain = false;  // no TLS over TCP either; on loopback alone
    // A second address, "HOST:PORT", always with TLS as above. Empty: none.
    std::string network;
    bool anotherHousehold = false;  // a host code even when there is a household
    Backend::Options backend;
    bool fullSync = true;
    std::int64_t keepChanges = storage::Store::Options().keepChanges;  // see there
    // Where calendars are followed, "HOST:PORT"; with TLS as `listen`. Empty: nowhere.
    std::string calendar;
    std::string metrics;  // "127.0.0.1:9464", loopback alone; empty: none are served
  };

  // Errors are one clear line: an address that is not loopback or taken, a file
  // that is damaged, newer or in use.
  static absl::StatusOr<std::unique_ptr<Server>> start(const Options& options, const Clock& clock);
  ~Server();  // drains

  const std::string& target() const { return target_; }
  // For CreateHousehold; empty once it was used. Reads the disk.
  std::string hostCode() const;
  // Of Options::network; 0: there is none.
  int networkPort() const { return networkPort_; }
  // Of a self-made certificate; empty with another one and without TLS.
  const std::string& fingerprint() const { return backend_->options().certificateFingerprint; }
  // 0: no calendars are served.
  int calendarPort() const { return backend_->calendarPort(); }
  // 0: no metrics are served.
  int metricsPort() const { return backend_->metrics().port(); }
  Backend& backend() { return *backend_; }
  // Ends streams with UNAVAILABLE, lets writes finish, stops. Calling it again does nothing.
  void drain();

 private:
  Server() = default;
  absl::Status makeHostCode(bool anotherHousehold);
  absl::Status serveMetrics(const std::string& address);
  absl::Status listen(const Options& options, const std::optional<Certificate>& certificate);

  absl::Status serveCalendars(const Options& options, const std::optional<Certificate>& certificate);

  std::unique_ptr<Backend> backend_;
  std::unique_ptr<CalendarServer> calendars_;
  std::vector<std::unique_ptr<grpc::Service>> services_;
  std::unique_ptr<grpc::Server> server_;
  std::string target_;
  int networkPort_ = 0;
  std::string hostCode_;
};

}  // namespace suppertide::service
