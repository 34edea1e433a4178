#include "client/kitchen/ask_write.h"

#include <utility>

#include "client/link/any_write.h"
#include "client/link/session.h"

namespace suppertide {

void askWrite(HouseholdSession& session, QObject* context, std::shared_ptr<google::protobuf::Message> request,
              std::function<void(const absl::Status&)> done) {
  link::fillIds(*request, householdIdOf(session));
  session.ask<bool>(
      context,
      [request = std::move(request)](link::Session& server) -> absl::StatusOr<bool> {
        const absl::Status status = server.write(*request);
        if (!status.ok()) return status;
        return true;
      },
      [done = std::move(done)](const absl::StatusOr<bool>& answer) { done(answer.status()); });
}

std::string householdIdOf(const HouseholdSession& session) {
  return session.replica() == nullptr ? std::string() : session.replica()->household.id();
}

}  // namespace suppertide
