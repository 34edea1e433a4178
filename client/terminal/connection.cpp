#include "client/terminal/connection.h"

#include <algorithm>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/time/time.h"
#include "client/link/error_detail.h"
#include "client/link/request_id.h"

namespace suppertide::terminal {
namespace {

bool isId(const std::string& id) {
  static constexpr char kAllowed[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_.";
  return !id.empty() && id.size() <= 64 && id.find_first_not_of(kAllowed) == std::string::npos;
}

// Only what any server takes: the rest of the bundle's household may be at fault and is checked later.
v1::Household plainHousehold(const v1::Household& wanted) {
  v1::Household household;
  household.set_display_name("Household");
  absl::TimeZone zone;
  const bool known = !wanted.time_zone().empty() && absl::LoadTimeZone(wanted.time_zone(), &zone);
  household.set_time_zone(known ? wanted.time_zone() : "UTC");
  const auto host = std::find_if(
      wanted.members().begin(), wanted.members().end(),
      [](const v1::Member& member) { return member.role() == v1::ROLE_HOST && isId(member.id()); });
  if (host == wanted.members().end()) return household;
  v1::Member& member = *household.add_members();
  member.set_id(host->id());
  member.set_display_name("Host");
  member.set_role(v1::ROLE_HOST);
  return household;
}

v1::ImportBundleRequest importRequest(const Connection& connection, const v1::Bundle& bundle) {
  v1::ImportBundleRequest request;
  request.set_household_id(connection.householdId);
  *request.mutable_bundle() = bundle;
  request.set_request_id(link::newRequestId());
  return request;
}

}  // namespace

absl::StatusOr<Connection> openLocal(Environment& environment, const v1::Bundle& bundle) {
  auto server = environment.startServer({});
  if (!server.ok()) return server.status();
  link::Session stranger({.target = (*server)->target(), .deviceToken = "", .certificatePem = ""});
  v1::CreateHouseholdRequest request;
  request.set_host_code((*server)->hostCode());
  *request.mutable_household() = plainHousehold(bundle.household());
  request.set_device_name("suppertide");
  request.set_request_id(link::newRequestId());
  const auto created = stranger.createHousehold(request);
  if (!created.ok()) return created.status();
  Connection connection;
  connection.householdId = created->household().id();
  connection.session = std::make_unique<link::Session>(link::SessionOptions{
      .target = (*server)->target(), .deviceToken = created->device_token(), .certificatePem = ""});
  connection.server = *std::move(server);
  return connection;
}

absl::StatusOr<link::KnownServer> knownServer(const Environment& environment, const std::string& name) {
  const auto credentials = link::loadCredentials(environment.credentials);
  if (!credentials.ok()) return credentials.status();
  const link::KnownServer* found = credentials->find(name);
  if (found != nullptr) return *found;
  if (credentials->servers.empty()) {
    return absl::InvalidArgumentError(
        "no household is known yet: join one first, see suppertide join --help");
  }
  std::string names;
  for (const link::KnownServer& server : credentials->servers)
    absl::StrAppend(&names, names.empty() ? "" : ", ", server.name);
  return absl::InvalidArgumentError(absl::StrCat(
      name.empty() ? "say which household with --server" : absl::StrCat("no household is saved as ", name),
      "; known are: ", names));
}

Connection openKnown(const link::KnownServer& server) {
  Connection connection;
  connection.householdId = server.householdId;
  connection.session =
      std::make_unique<link::Session>(link::SessionOptions{.target = server.target,
                                                           .deviceToken = server.deviceToken,
                                                           .certificatePem = server.certificatePem,
                                                           .fingerprint = server.fingerprint});
  return connection;
}

absl::StatusOr<google::protobuf::RepeatedPtrField<v1::FieldViolation>> violationsOf(
    Connection& connection, const v1::Bundle& bundle) {
  v1::ImportBundleRequest request = importRequest(connection, bundle);
  request.set_validate_only(true);
  const auto answer = connection.session->importBundle(request);
  if (answer.ok()) return google::protobuf::RepeatedPtrField<v1::FieldViolation>();
  const auto detail = link::errorDetail(answer.status());
  if (!detail || detail->violations_size() == 0) return answer.status();
  auto violations = detail->violations();
  // The request wraps the bundle; the file does not.
  static const std::string kWrapper = "bundle.";
  for (v1::FieldViolation& violation : violations) {
    if (violation.field_path().rfind(kWrapper, 0) == 0) {
      violation.set_field_path(violation.field_path().substr(kWrapper.size()));
    }
  }
  return violations;
}

absl::StatusOr<v1::ImportBundleResponse> import(Connection& connection, const v1::Bundle& bundle) {
  return connection.session->importBundle(importRequest(connection, bundle));
}

}  // namespace suppertide::terminal
