// A bundle file, read and checked by the server it goes to.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "client/terminal/bundle_file.h"
#include "client/terminal/connection.h"
#include "client/terminal/environment.h"

namespace suppertide::terminal {

struct CheckedBundle {
  v1::Bundle bundle;
  Connection connection;
};

// Where the bundle is going: called once with what could be read of it.
using Opener = std::function<absl::StatusOr<Connection>(const v1::Bundle&)>;

// The bundle of `path`, without one mistake, and the connection that checked it.
// Otherwise everything found is reported and `exitCode` set; absent then.
std::optional<CheckedBundle> checkedBundle(const std::string& path, const Opener& open,
                                           Environment& environment, bool json, int& exitCode);

// The event of `id`, or the only one when `id` is empty. InvalidArgument names those there are.
absl::StatusOr<v1::Event> chosenEvent(const std::vector<v1::Event>& events, const std::string& id);

}  // namespace suppertide::terminal
