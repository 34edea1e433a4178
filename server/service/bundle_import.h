// Bundles against the household's documents: what an import writes, what an export reads.
#pragma once

#include <vector>

#include "absl/status/statusor.h"
#include "server/service/backend.h"

namespace suppertide::service {

// What an import writes.
struct Import {
  std::vector<storage::Put> puts;          // of one write
  std::vector<std::string> keptMemberIds;  // of the household, not named by the bundle
};

// Checks everything, plans included. Blocking.
Failure importOf(Backend& backend, const v1::Bundle& bundle, const Caller& caller, Import& import);

// The household whole, or one event with what it refers to, at one revision.
Failure exportOf(Backend& backend, const std::string& householdId, const std::string& eventId,
                 v1::Bundle& bundle);

// Whether all that the event names is in the household. Paths are from the event's top.
Failure checkReferences(Backend& backend, const std::string& householdId, const v1::Event& event);

// What planning an event needs. With `asIf`, that event in place of the stored one.
Failure documentsOf(Backend& backend, const std::string& householdId, const std::string& eventId,
                    compose::Documents& documents, std::int64_t& revision,
                    google::protobuf::Map<std::string, std::string>* etags, const v1::Event* asIf = nullptr);

}  // namespace suppertide::service
