// Where a server may listen, checked before gRPC is asked, as gRPC itself resolves
// names and takes a Unix socket over from whoever serves on it.
#pragma once

#include <string>

#include "absl/status/status.h"

namespace suppertide::service {

// OK for a Unix socket, and for an address in numbers, or "localhost", with a
// port: with `encrypted` any address, without it loopback alone.
// INVALID_ARGUMENT, in one clear line.
absl::Status checkListenAddress(const std::string& address, bool encrypted);

// OK when nothing is at a Unix socket's path but, at most, the socket of a server
// that is gone. Always OK for other addresses. UNAVAILABLE, in one clear line.
absl::Status checkSocketIsFree(const std::string& address);

bool isUnixAddress(const std::string& address);

}  // namespace suppertide::service
