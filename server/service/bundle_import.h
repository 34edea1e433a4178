// Bundles against the household's documents: what an import writes, what an export reads.
#pragma once

#include <vector>

#include "absl/status/statusor.h"
#include "server/service/backend.h"

namespace suppertide::service {

// Checks everything, plans included, and gives the puts of one write.
Failure importOf(const v1::Bundle& bundle, const Caller& caller, const v1::Household& stored,
                 std::vector<storage::Put>& puts);

// The household whole, or one event with what it refers to.
Failure exportOf(Backend& backend, const std::string& householdId, const std::string& eventId,
                 v1::Bundle& bundle);

// What planning an event needs.
Failure documentsOf(Backend& backend, const std::string& householdId, const std::string& eventId,
                    compose::Documents& documents, std::int64_t& revision,
                    google::protobuf::Map<std::string, std::string>* etags);

}  // namespace suppertide::service
