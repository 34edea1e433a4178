// One way to reach a server, for the live link and for single calls alike.
#pragma once

#include <memory>
#include <string>

#include <grpcpp/channel.h>

namespace suppertide::link {

// Whether `target` stays on this machine: a Unix socket or a loopback address.
bool isLocalTarget(const std::string& target);

// A channel of its own, not connected yet. Plain on this machine; over a network
// always TLS, trusting `certificatePem` alone or, when that is empty, the system's
// authorities. No connection or back-off is shared with another channel.
std::shared_ptr<grpc::Channel> openChannel(const std::string& target, const std::string& certificatePem);

}  // namespace suppertide::link
