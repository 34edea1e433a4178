#include "client/link/joining.h"

#include <unistd.h>

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "absl/time/time.h"
#include "client/link/join_code.h"
#include "client/link/request_id.h"
#include "client/link/session.h"

namespace suppertide::link {
namespace {

std::string thisMachine() {
  char name[64] = {};
  return ::gethostname(name, sizeof(name) - 1) == 0 && name[0] != '\0' ? name : "a computer";
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

absl::StatusOr<Joined> found(const Joining& joining, const std::string& code, Session& session) {
  v1::CreateHouseholdRequest request;
  request.set_host_code(code);
  v1::Household& household = *request.mutable_household();
  household.set_display_name(joining.householdName.empty() ? "Our household" : joining.householdName);
  household.set_time_zone(joining.timeZone.empty() ? localZone() : joining.timeZone);
  v1::Member& host = *household.add_members();
  host.set_id(joining.memberId.empty() ? "host" : joining.memberId);
  host.set_display_name(joining.memberName);
  host.set_role(v1::ROLE_HOST);
  request.set_device_name(joining.deviceName.empty() ? thisMachine() : joining.deviceName);
  request.set_request_id(newRequestId());
  const auto answer = askAgain([&] { return session.createHousehold(request); });
  if (!answer.ok()) return answer.status();
  return Joined{answer->household().id(), answer->member_id(), answer->device_token()};
}

absl::StatusOr<Joined> joinOne(const Joining& joining, const std::string& code, Session& session) {
  v1::JoinHouseholdRequest request;
  request.set_code(code);
  request.set_display_name(joining.memberName);
  request.set_device_name(joining.deviceName.empty() ? thisMachine() : joining.deviceName);
  request.set_request_id(newRequestId());
  const auto answer = askAgain([&] { return session.joinHousehold(request); });
  if (!answer.ok()) return answer.status();
  return Joined{answer->household_id(), answer->member_id(), answer->device_token()};
}

// "home", or "home-2" when another household is saved so.
std::string freeName(const Credentials& credentials, const std::string& householdId) {
  for (int n = 1;; ++n) {
    const std::string name = n == 1 ? "home" : absl::StrCat("home-", n);
    const bool taken = std::any_of(
        credentials.servers.begin(), credentials.servers.end(),
        [&](const auto& server) { return server.name == name && server.householdId != householdId; });
    if (!taken) return name;
  }
}

// Empty when it cannot be asked.
std::string nameOfHousehold(const KnownServer& server) {
  Session session({.target = server.target,
                   .deviceToken = server.deviceToken,
                   .certificatePem = server.certificatePem,
                   .fingerprint = server.fingerprint});
  v1::GetHouseholdRequest request;
  request.set_household_id(server.householdId);
  const auto household = session.household(request);
  return household.ok() ? household->display_name() : "";
}

}  // namespace

std::string localZone() {
  const std::string name = absl::LocalTimeZone().name();
  return name.find('/') != std::string::npos && name.front() != '/' ? name : "UTC";
}

absl::StatusOr<KnownServer> join(const Joining& joining, const std::filesystem::path& credentialsFile) {
  auto credentials = loadCredentials(credentialsFile);
  if (!credentials.ok()) return credentials.status();
  const auto code = parseJoinCode(joining.code);
  if (!code.ok()) return code.status();
  Session stranger({.target = joining.target,
                    .deviceToken = "",
                    .certificatePem = joining.certificatePem,
                    .fingerprint = code->fingerprint});
  const auto joined =
      joining.founds ? found(joining, code->code, stranger) : joinOne(joining, code->code, stranger);
  if (!joined.ok()) return joined.status();
  KnownServer server{
      .name = joining.saveAs.empty() ? freeName(*credentials, joined->householdId) : joining.saveAs,
      .target = joining.target,
      .certificatePem = joining.certificatePem,
      .fingerprint = code->fingerprint,
      .householdId = joined->householdId,
      .householdName = "",
      .memberId = joined->memberId,
      .deviceToken = joined->deviceToken,
      .dataFile = joining.dataFile};
  // The token is shown only once: keep it before anything else can fail.
  credentials->put(server);
  absl::Status saved = saveCredentials(credentialsFile, *credentials);
  if (!saved.ok()) return saved;
  server.householdName = nameOfHousehold(server);
  credentials->put(server);
  saved = saveCredentials(credentialsFile, *credentials);
  if (!saved.ok()) return saved;
  return server;
}

}  // namespace suppertide::link
