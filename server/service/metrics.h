// What the server counts about itself, for Prometheus. No names, no ids.
#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <string>

#include "absl/status/status.h"

namespace suppertide::service {

// INVALID_ARGUMENT, in one clear line, when it is not HOST:PORT on loopback.
absl::Status checkMetricsAddress(const std::string& address);

class Metrics {
 public:
  Metrics();
  ~Metrics();

  // A call of `method` ended with gRPC's `code`. Any thread.
  void called(const std::string& method, int code, std::chrono::microseconds spent);
  // A number that `read` tells each time it is asked for, on any thread, while this lives.
  void watch(const std::string& name, const std::string& help, std::function<double()> read);

  // Everything as Prometheus's text.
  std::string text() const;
  // Serves it at http://ADDRESS/metrics, "127.0.0.1:9464"; port 0 picks one.
  // As checkMetricsAddress(); UNAVAILABLE when it is taken.
  absl::Status serve(const std::string& address);
  // Where it is served; 0: it is not.
  int port() const;
  // From here on nobody asks for the watched numbers any more.
  void stopServing();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace suppertide::service
