// How a command ends: mistakes and failures in words or JSON, and its exit code.
#pragma once

#include <string>

#include "absl/status/status.h"
#include "client/terminal/bundle_file.h"
#include "client/terminal/environment.h"
#include "client/terminal/exit_code.h"
#include "google/protobuf/message.h"

namespace suppertide::terminal {

// Indented, as the standard JSON mapping, with a line break at the end.
std::string jsonOf(const google::protobuf::Message& message);

// One line a mistake on `err`, or {"violations": [...]} on `out`. Returns kBadInput.
int reportMistakes(Environment& environment, const Violations& mistakes, bool json);

// A failed call: its violations as above, or its words on `err`, or {"error": ...} on
// `out`. Returns the exit code that fits.
int reportFailure(Environment& environment, const absl::Status& status, bool json);

// Reads a whole file; "-" is the standard input. InvalidArgument, in words, when it cannot or is too large.
absl::StatusOr<std::string> readFile(const std::string& path);
// Writes a whole file or, when that fails, leaves the old one.
absl::Status writeFile(const std::string& path, const std::string& text);

}  // namespace suppertide::terminal
