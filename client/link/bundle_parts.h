// Bundles in parts that fit into messages: a whole household may be larger than one.
#pragma once

#include <vector>

#include "suppertide/v1/household_service.pb.h"

namespace suppertide::link {

// The same import in parts of about 1 MiB, one at least, in their order.
std::vector<v1::ImportBundleRequest> partsOf(const v1::ImportBundleRequest& whole);

}  // namespace suppertide::link
