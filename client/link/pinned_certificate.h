// Accepts one server alone: the one whose certificate has a known fingerprint.
//
// For a server that made its own certificate, whose name and issuer prove nothing.
#pragma once

#include <memory>
#include <string>

#include <grpcpp/security/credentials.h>

namespace suppertide::link {

// TLS credentials that check each handshake's certificate against `fingerprint`,
// SHA-256 of its DER as 64 lower-case hex digits, and nothing else.
std::shared_ptr<grpc::ChannelCredentials> pinnedCredentials(const std::string& fingerprint);

// The fingerprint of the first certificate in `pem`; empty when there is none.
std::string certificateFingerprint(const std::string& pem);

}  // namespace suppertide::link
