// One way to reach a server, for the live link and for single calls alike.
#pragma once

#include <memory>
#include <string>

#include <grpcpp/channel.h>

namespace suppertide::link {

// Whether `target` stays on this machine: a Unix socket or a loopback address.
bool isLocalTarget(const std::string& target);

// A channel of its own, not connected yet. With a `fingerprint` TLS to the one
// server whose certificate has it; else plain on this machine, and over a network
// TLS, trusting `certificatePem` alone or, when that is empty, the system's
// authorities. A Unix socket is always plain. No connection or back-off is shared
// with another channel.
std::shared_ptr<grpc::Channel> openChannel(const std::string& target, const std::string& certificatePem,
                                           const std::string& fingerprint);

}  // namespace suppertide::link
