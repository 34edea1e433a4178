// The error of a write made from an old document, with the present one inside.
#pragma once

#include "absl/status/status.h"
#include "server/storage/store.h"

namespace suppertide::storage {

// ABORTED; currentDocument() of it gives `current` back.
absl::Status staleEtag(const Document& current);

}  // namespace suppertide::storage
