// A replica as the changes that make it, and back.
#pragma once

#include <vector>

#include "client/link/replica.h"
#include "suppertide/v1/sync_service.pb.h"

namespace suppertide::link {

// A kind that a newer server knows changes nothing.
void applyChange(const v1::Change& change, Replica& replica);

// One change a document; applied to an empty replica they give this one but for its revision.
std::vector<v1::Change> changesOf(const Replica& replica);

}  // namespace suppertide::link
