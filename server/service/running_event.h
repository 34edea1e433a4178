// What correcting a running plan starts from, read from the disk at one go.
#pragma once

#include <optional>

#include "server/compose/replanner.h"
#include "server/service/backend.h"

namespace suppertide::service {

struct RunningEvent {
  compose::Documents documents;
  compose::RunningPlan running;  // now as the server's clock has it
  std::int64_t inputRevision = 0;
  google::protobuf::Map<std::string, std::string> inputEtags;
};

// Everything of the event as stored. NOT_FOUND when it has no plan; no reports are no failure.
Failure readRunningEvent(Backend& backend, const std::string& householdId, const std::string& eventId,
                         RunningEvent& event);

// What was told of the event so far; empty when nothing was.
Failure readProgress(Backend& backend, const std::string& householdId, const std::string& eventId,
                     v1::Progress& progress);

// What a stored plan keeps of the one before it (compose/live_correction.h) and which documents it was made
// of.
void stampPlan(const RunningEvent& event, v1::Plan& plan);

// Takes the event's proposal away, if it has one: another plan is stored in the same write.
storage::Put withoutProposal(const std::string& eventId);

}  // namespace suppertide::service
