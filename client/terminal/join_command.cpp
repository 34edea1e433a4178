// Making this device a member of a household.
#include <unistd.h>

#include <algorithm>
#include <utility>

#include <nlohmann/json.hpp>

#include "absl/strings/str_cat.h"
#include "absl/time/time.h"
#include "client/link/join_code.h"
#include "client/link/request_id.h"
#include "client/terminal/commands.h"
#include "client/terminal/connection.h"
#include "client/terminal/report.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

std::string thisMachine() {
  char name[64] = {};
  return ::gethostname(name, sizeof(name) - 1) == 0 && name[0] != '\0' ? name : "a computer";
}

std::string localZone() {
  const std::string name = absl::LocalTimeZone().name();
  return name.find('/') != std::string::npos && name.front() != '/' ? name : "UTC";
}

struct Joined {
  std::string householdId;
  std::string memberId;
  std::string deviceToken;
};

// Asks again, once, when the answer did not come: a server that carried the first
// request out gives its outcome again.
template <typename Ask>
auto askAgain(Ask ask) {
  auto answer = ask();
  const absl::StatusCode code = answer.status().code();
  const bool lost = code == absl::StatusCode::kUnavailable || code == absl::StatusCode::kDeadlineExceeded;
  return lost ? ask() : answer;
}

absl::StatusOr<Joined> createHousehold(const JoinCommand& command, const std::string& code,
                                       link::Session& session) {
  v1::CreateHouseholdRequest request;
  request.set_host_code(code);
  v1::Household& household = *request.mutable_household();
  household.set_display_name(command.householdName.empty() ? "Our household" : command.householdName);
  household.set_time_zone(command.timeZone.empty() ? localZone() : command.timeZone);
  v1::Member& host = *household.add_members();
  host.set_id("host");
  host.set_display_name(command.memberName);
  host.set_role(v1::ROLE_HOST);
  request.set_device_name(command.deviceName.empty() ? thisMachine() : command.deviceName);
  request.set_request_id(link::newRequestId());
  const auto answer = askAgain([&] { return session.createHousehold(request); });
  if (!answer.ok()) return answer.status();
  return Joined{answer->household().id(), answer->member_id(), answer->device_token()};
}

absl::StatusOr<Joined> joinHousehold(const JoinCommand& command, const std::string& code,
                                     link::Session& session) {
  v1::JoinHouseholdRequest request;
  request.set_code(code);
  request.set_display_name(command.memberName);
  request.set_device_name(command.deviceName.empty() ? thisMachine() : command.deviceName);
  request.set_request_id(link::newRequestId());
  const auto answer = askAgain([&] { return session.joinHousehold(request); });
  if (!answer.ok()) return answer.status();
  return Joined{answer->household_id(), answer->member_id(), answer->device_token()};
}

// "home", or "home-2" when another household is saved so.
std::string freeName(const link::Credentials& credentials, const std::string& householdId) {
  for (int n = 1;; ++n) {
    const std::string name = n == 1 ? "home" : absl::StrCat("home-", n);
    const bool taken = std::any_of(
        credentials.servers.begin(), credentials.servers.end(),
        [&](const auto& server) { return server.name == name && server.householdId != householdId; });
    if (!taken) return name;
  }
}

// Empty when it cannot be asked.
std::string nameOfHousehold(const link::KnownServer& server) {
  const Connection connection = openKnown(server);
  v1::GetHouseholdRequest request;
  request.set_household_id(server.householdId);
  const auto household = connection.session->household(request);
  return household.ok() ? household->display_name() : "";
}

// A server with a certificate of its own making does not answer to a code without its fingerprint.
absl::Status explained(const absl::Status& status, const JoinCommand& command, const link::JoinCode& code) {
  const bool mayLackIt =
      code.fingerprint.empty() && command.certificate.empty() && command.target.rfind("unix:", 0) != 0;
  if (status.code() != absl::StatusCode::kUnavailable || !mayLackIt) return status;
  return absl::UnavailableError(
      "is it running, and is the address right? If the code has a second part, after a dot, give that, too");
}

}  // namespace

int runJoin(const JoinCommand& command, Environment& environment) {
  std::string certificate;
  if (!command.certificate.empty()) {
    auto text = readFile(command.certificate);
    if (!text.ok()) return reportFailure(environment, text.status(), command.json);
    certificate = *std::move(text);
  }
  auto credentials = link::loadCredentials(environment.credentials);
  if (!credentials.ok()) return reportFailure(environment, credentials.status(), command.json);
  const bool founds = !command.hostCode.empty();
  const auto code = link::parseJoinCode(founds ? command.hostCode : command.invitation);
  if (!code.ok()) return reportFailure(environment, code.status(), command.json);
  link::Session stranger({.target = command.target,
                          .deviceToken = "",
                          .certificatePem = certificate,
                          .fingerprint = code->fingerprint});
  const auto joined =
      founds ? createHousehold(command, code->code, stranger) : joinHousehold(command, code->code, stranger);
  if (!joined.ok())
    return reportFailure(environment, explained(joined.status(), command, *code), command.json);
  link::KnownServer server{
      .name = command.saveAs.empty() ? freeName(*credentials, joined->householdId) : command.saveAs,
      .target = command.target,
      .certificatePem = certificate,
      .fingerprint = code->fingerprint,
      .householdId = joined->householdId,
      .householdName = "",
      .memberId = joined->memberId,
      .deviceToken = joined->deviceToken};
  // The token is shown only once: keep it before anything else can fail.
  credentials->put(server);
  absl::Status saved = link::saveCredentials(environment.credentials, *credentials);
  if (saved.ok()) {
    server.householdName = nameOfHousehold(server);
    credentials->put(server);
    saved = link::saveCredentials(environment.credentials, *credentials);
  }
  if (!saved.ok()) return reportFailure(environment, saved, command.json);
  if (command.json) {
    const nlohmann::ordered_json json = {{"server", server.name},
                                         {"target", server.target},
                                         {"householdId", server.householdId},
                                         {"memberId", server.memberId}};
    environment.out << json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) << "\n";
  } else {
    environment.out << "This device now belongs to "
                    << plainLine(server.householdName.empty() ? "the household" : server.householdName)
                    << ", saved as \"" << plainLine(server.name) << "\".\n";
  }
  return kOk;
}

}  // namespace suppertide::terminal
