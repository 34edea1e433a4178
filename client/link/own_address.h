// How other devices on the network reach this one.
#pragma once

#include <string>

namespace suppertide::link {

// An IPv4 address of this machine as it stands now, "192.168.1.4", one of a
// home network before others; empty when it is on no network.
std::string ownAddress();

// What other devices type to reach a server that listens at `listen`: its own
// address in place of "0.0.0.0". As it is when it listens elsewhere; empty when
// it is on no network.
std::string reachableAt(const std::string& listen);

}  // namespace suppertide::link
