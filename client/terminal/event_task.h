// An event to work on, from a bundle kept inside this program or from a known server.
#pragma once

#include <optional>
#include <string>

#include "client/terminal/bundle_source.h"

namespace suppertide::terminal {

struct EventTask {
  Connection connection;
  v1::Bundle bundle;  // with all that the event needs
  v1::Event event;
};

// What was asked for on the command line.
struct EventChoice {
  std::string bundle;  // a file; empty: an event of a known server
  std::string eventId;
  std::string server;
  bool json = false;
  // What is asked is the household's: without an event, or with several and none chosen, it is left empty.
  bool eventOptional = false;
};

Opener localOpener(Environment& environment);

// Reads and checks the bundle, writes it into a household of its own, and picks
// the event; or asks the server for it. Failures are reported and `exitCode` set; absent then.
std::optional<EventTask> eventTask(const EventChoice& choice, Environment& environment, int& exitCode);

// Plans the event where it is, within the usual time.
absl::Status planFirst(const EventTask& task);

}  // namespace suppertide::terminal
