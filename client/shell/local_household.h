// A household on this computer alone: the window serves it itself, from a file.
#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "absl/status/statusor.h"
#include "client/link/credentials.h"
#include "client/words/instant.h"
#include "server/embedded.h"
#include "suppertide/v1/bundle.pb.h"

namespace suppertide {

// Serves a saved household of this computer. Null when another window serves it already.
absl::StatusOr<std::unique_ptr<EmbeddedServer>> serve(const link::KnownServer& known);

struct LocalHousehold {
  std::unique_ptr<EmbeddedServer> server;
  link::KnownServer known;
};

// Makes one below `folder`, with that bundle in it, whose host is this device's person; saves it in
// `credentialsFile`. Some seconds at most; not for the thread of the user interface.
absl::StatusOr<LocalHousehold> foundLocally(const v1::Bundle& bundle, const std::filesystem::path& folder,
                                            const std::filesystem::path& credentialsFile);

}  // namespace suppertide
