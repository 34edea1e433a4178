// The devices of a household: which there are, and taking one off.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <string>

#include "client/terminal/environment.h"

namespace suppertide::terminal {

// What the options are read into; lives as long as the parsing and what is chosen by it.
struct DeviceOptions {
  std::string device;  // to take off, by the name or number that the list shows
  std::string server;
  bool json = false;
};

// Adds `devices` and `devices remove`; `chosen` becomes what was asked for.
void addDevices(CLI::App& app, DeviceOptions& options, std::function<int(Environment&)>& chosen);

}  // namespace suppertide::terminal
