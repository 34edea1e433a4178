// What a command finds around it: where it writes, who it may ask. Tests make their own.
#pragma once

#include <atomic>
#include <filesystem>
#include <functional>
#include <memory>
#include <ostream>

#include "absl/status/statusor.h"
#include "server/embedded.h"

namespace suppertide::terminal {

struct Environment {
  std::ostream& out;
  std::ostream& err;
  int width = 80;             // columns of out
  bool colour = false;        // out is a terminal and nobody said NO_COLOR
  bool progressLine = false;  // err is a terminal: a line on it may be written over
  std::filesystem::path credentials;
  std::function<absl::StatusOr<std::unique_ptr<EmbeddedServer>>(const EmbeddedServer::Options&)> startServer;
  // Set when the person pressed Ctrl-C; may be null.
  const std::atomic<bool>* interrupted = nullptr;

  bool wasInterrupted() const { return interrupted != nullptr && interrupted->load(); }
};

}  // namespace suppertide::terminal
