// Making this device a member of a household.
#include <nlohmann/json.hpp>

#include "client/link/join_code.h"
#include "client/link/joining.h"
#include "client/terminal/commands.h"
#include "client/terminal/connection.h"
#include "client/terminal/report.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

// A server with a certificate of its own making does not answer to a code without its fingerprint.
absl::Status explained(const absl::Status& status, const link::Joining& joining) {
  const auto code = link::parseJoinCode(joining.code);
  const bool mayLackIt = code.ok() && code->fingerprint.empty() && joining.certificatePem.empty() &&
                         joining.target.rfind("unix:", 0) != 0;
  if (status.code() != absl::StatusCode::kUnavailable || !mayLackIt) return status;
  return absl::UnavailableError(
      "is it running, and is the address right? If the code has a second part, after a dot, give that, too");
}

}  // namespace

int runJoin(const JoinCommand& command, Environment& environment) {
  link::Joining joining;
  if (!command.certificate.empty()) {
    auto text = readFile(command.certificate);
    if (!text.ok()) return reportFailure(environment, text.status(), command.json);
    joining.certificatePem = *std::move(text);
  }
  joining.founds = !command.hostCode.empty();
  joining.target = command.target;
  joining.code = joining.founds ? command.hostCode : command.invitation;
  joining.memberName = command.memberName;
  joining.deviceName = command.deviceName;
  joining.householdName = command.householdName;
  joining.timeZone = command.timeZone;
  joining.saveAs = command.saveAs;
  const auto server = link::join(joining, environment.credentials);
  if (!server.ok()) return reportFailure(environment, explained(server.status(), joining), command.json);
  if (command.json) {
    const nlohmann::ordered_json json = {{"server", server->name},
                                         {"target", server->target},
                                         {"householdId", server->householdId},
                                         {"memberId", server->memberId}};
    environment.out << json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) << "\n";
  } else {
    environment.out << "This device now belongs to "
                    << plainLine(server->householdName.empty() ? "the household" : server->householdName)
                    << ", saved as \"" << plainLine(server->name) << "\".\n";
  }
  return kOk;
}

}  // namespace suppertide::terminal
