// A household as it would be: with another plan, another event, other documents.
#pragma once

#include <QtCore/qstring.h>

#include <memory>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "client/link/replica.h"
#include "client/link/session.h"
#include "client/session/undo_stack.h"

namespace suppertide {

using Household = std::shared_ptr<const link::Replica>;

// `household` with `plan` as the plan of its event, which may have none yet.
Household withPlan(const link::Replica& household, v1::Plan plan);
// With every document of `found` in place of its own.
Household withRemedy(const link::Replica& household, const v1::FindRemediesResponse& found);

// `now` with the event and its plan as in `before`, and whatever else `after` had changed in it.
// What others wrote since stays.
Household takenBack(const link::Replica& now, const link::Replica& before, const link::Replica& after,
                    const std::string& eventId);

// Writes the event, its plan and all documents that they need, as they are in `household`, in one
// revision: exactly this plan and no other. The server audits it first. For hosts.
// Documents that others wrote meanwhile are overwritten: look with sameInputs() before. Gives the revision.
absl::StatusOr<std::int64_t> store(const link::Replica& household, const std::string& eventId,
                                   link::Session& server);
// What differs between `before` and `after` of what an event is made of and of its plan.
UndoStack::Documents differing(const link::Replica& before, const link::Replica& after,
                               const std::string& eventId);

// Said where planning is asked for while the server is away.
QString needsServer();

// Names of what was changed after the plan of the event was made, for people: the event itself,
// its kitchen, recipes. Empty: the plan is of today's documents, or there is none. People and
// starters are left out: both are written often for other reasons.
std::vector<std::string> changedSincePlanned(const link::Replica& household, const std::string& eventId);
// Whether anything that the plan was made of differs between the two households.
bool sameInputs(const link::Replica& a, const link::Replica& b, const std::string& eventId);

}  // namespace suppertide
