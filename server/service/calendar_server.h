// Serves calendars to calendar programs over HTTP: reading, by secret address, and nothing else.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "absl/status/statusor.h"
#include "server/service/certificate.h"

namespace suppertide::service {

class Backend;

class CalendarServer {
 public:
  // `address`: "HOST:PORT"; port 0 picks one. With a certificate over TLS; without one on loopback alone.
  // INVALID_ARGUMENT and UNAVAILABLE, in one clear line. `backend` outlives it.
  static absl::StatusOr<std::unique_ptr<CalendarServer>> start(Backend& backend, const std::string& address,
                                                               const std::optional<Certificate>& certificate);
  virtual ~CalendarServer() = default;  // stops and waits

  virtual int port() const = 0;
};

}  // namespace suppertide::service
