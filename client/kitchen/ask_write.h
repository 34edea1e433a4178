// A write whose outcome its asker waits for, unlike HouseholdSession::send().
#pragma once

#include <google/protobuf/message.h>

#include <functional>
#include <memory>

#include "absl/status/status.h"
#include "client/session/household_session.h"

namespace suppertide {

// Household and request id are filled in where absent. `done` runs on the session's thread, unless
// `context` is gone. Each outcome is a status with the server's detail (link::errorDetail).
void askWrite(HouseholdSession& session, QObject* context, std::shared_ptr<google::protobuf::Message> request,
              std::function<void(const absl::Status&)> done);

// The id that requests of this household carry; empty before anything is known.
std::string householdIdOf(const HouseholdSession& session);

}  // namespace suppertide
