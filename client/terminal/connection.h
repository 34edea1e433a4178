// A household to ask: one of this program's own, in memory, or a known server's.
#pragma once

#include <memory>
#include <string>

#include "absl/status/statusor.h"
#include "client/link/credentials.h"
#include "client/link/session.h"
#include "client/terminal/environment.h"
#include "suppertide/v1/bundle.pb.h"

namespace suppertide::terminal {

struct Connection {
  std::unique_ptr<EmbeddedServer> server;  // null for a known server; outlives the session
  std::unique_ptr<link::Session> session;
  std::string householdId;
};

// Starts a server inside this program and makes a household on it, named as the
// bundle's and with its host, so that importing the bundle keeps this device a member.
absl::StatusOr<Connection> openLocal(Environment& environment, const v1::Bundle& bundle);

// The saved server of that name; empty: the chosen one. InvalidArgument when it is not known.
absl::StatusOr<link::KnownServer> knownServer(const Environment& environment, const std::string& name);
Connection openKnown(const link::KnownServer& server);

// Every field at fault in the bundle, as the server sees it, importing nothing.
absl::StatusOr<google::protobuf::RepeatedPtrField<v1::FieldViolation>> violationsOf(Connection& connection,
                                                                                    const v1::Bundle& bundle);
absl::StatusOr<v1::ImportBundleResponse> import(Connection& connection, const v1::Bundle& bundle);

}  // namespace suppertide::terminal
