// Joining a household on a server, and what goes in and out of it.
#include <unistd.h>

#include <algorithm>
#include <map>
#include <utility>

#include <nlohmann/json.hpp>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "absl/time/time.h"
#include "client/link/request_id.h"
#include "client/terminal/bundle_source.h"
#include "client/terminal/commands.h"
#include "client/terminal/report.h"
#include "client/terminal/table.h"
#include "client/terminal/time_text.h"
#include "client/terminal/words.h"

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

absl::StatusOr<Joined> createHousehold(const JoinCommand& command, link::Session& session) {
  v1::CreateHouseholdRequest request;
  request.set_host_code(command.hostCode);
  v1::Household& household = *request.mutable_household();
  household.set_display_name(command.householdName.empty() ? "Our household" : command.householdName);
  household.set_time_zone(command.timeZone.empty() ? localZone() : command.timeZone);
  v1::Member& host = *household.add_members();
  host.set_id("host");
  host.set_display_name(command.memberName);
  host.set_role(v1::ROLE_HOST);
  request.set_device_name(command.deviceName.empty() ? thisMachine() : command.deviceName);
  request.set_request_id(link::newRequestId());
  const auto answer = session.createHousehold(request);
  if (!answer.ok()) return answer.status();
  return Joined{answer->household().id(), answer->member_id(), answer->device_token()};
}

absl::StatusOr<Joined> joinHousehold(const JoinCommand& command, link::Session& session) {
  v1::JoinHouseholdRequest request;
  request.set_code(command.invitation);
  request.set_display_name(command.memberName);
  request.set_device_name(command.deviceName.empty() ? thisMachine() : command.deviceName);
  request.set_request_id(link::newRequestId());
  const auto answer = session.joinHousehold(request);
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

// The documents of a known household, or of one event and what it needs.
absl::StatusOr<v1::Bundle> exported(const Environment& environment, const std::string& server,
                                    const std::string& eventId) {
  const auto known = knownServer(environment, server);
  if (!known.ok()) return known.status();
  const Connection connection = openKnown(*known);
  v1::ExportBundleRequest request;
  request.set_household_id(connection.householdId);
  request.set_event_id(eventId);
  return connection.session->exportBundle(request);
}

std::string memberNamed(const v1::Household& household, const std::string& name) {
  for (const v1::Member& member : household.members()) {
    if (absl::AsciiStrToLower(member.display_name()) == absl::AsciiStrToLower(name) || member.id() == name)
      return member.id();
  }
  return "";
}

// Empty when it cannot be asked.
std::string nameOfHousehold(const link::KnownServer& server) {
  const Connection connection = openKnown(server);
  v1::GetHouseholdRequest request;
  request.set_household_id(server.householdId);
  const auto household = connection.session->household(request);
  return household.ok() ? household->display_name() : "";
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
  link::Session stranger({.target = command.target, .deviceToken = "", .certificatePem = certificate});
  const auto joined =
      command.hostCode.empty() ? joinHousehold(command, stranger) : createHousehold(command, stranger);
  if (!joined.ok()) return reportFailure(environment, joined.status(), command.json);
  link::KnownServer server{
      .name = command.saveAs.empty() ? freeName(*credentials, joined->householdId) : command.saveAs,
      .target = command.target,
      .certificatePem = certificate,
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

int runImport(const ImportCommand& command, Environment& environment) {
  int exitCode = kFailed;
  auto checked = checkedBundle(
      command.bundle,
      [&](const v1::Bundle&) -> absl::StatusOr<Connection> {
        const auto server = knownServer(environment, command.server);
        if (!server.ok()) return server.status();
        return openKnown(*server);
      },
      environment, command.json, exitCode);
  if (!checked) return exitCode;
  const auto written = import(checked->connection, checked->bundle);
  if (!written.ok()) return reportFailure(environment, written.status(), command.json);
  if (command.json) {
    environment.out << jsonOf(*written);
    return kOk;
  }
  const std::map<std::string, std::int32_t> counts(written->written_counts().begin(),
                                                   written->written_counts().end());
  std::vector<std::string> parts;
  for (const auto& [kind, count] : counts)
    parts.push_back(counted(count, kind, kind == "progress" ? kind : kind + "s"));
  environment.out << "Imported " << (parts.empty() ? "nothing" : joinWords(parts)) << ".\n";
  return kOk;
}

int runExport(const ExportCommand& command, Environment& environment) {
  const auto bundle = exported(environment, command.server, command.eventId);
  if (!bundle.ok()) return reportFailure(environment, bundle.status(), command.json);
  if (command.file == "-") {
    environment.out << jsonOf(*bundle);
    return kOk;
  }
  if (absl::Status status = writeFile(command.file, jsonOf(*bundle)); !status.ok()) {
    return reportFailure(environment, status, command.json);
  }
  return kOk;
}

int runEvents(const EventsCommand& command, Environment& environment) {
  const auto known = knownServer(environment, command.server);
  if (!known.ok()) return reportFailure(environment, known.status(), command.json);
  const Connection connection = openKnown(*known);
  auto events = connection.session->events(connection.householdId);
  if (!events.ok()) return reportFailure(environment, events.status(), command.json);
  const auto first = [](const v1::Event& event) {
    return event.courses_size() > 0 ? event.courses(0).serving_time().seconds() : 0;
  };
  std::stable_sort(events->begin(), events->end(),
                   [&](const auto& a, const auto& b) { return first(a) < first(b); });
  if (command.json) {
    v1::ListEventsResponse response;
    for (const v1::Event& event : *events) *response.add_events() = event;
    environment.out << jsonOf(response);
    return kOk;
  }
  if (events->empty()) {
    environment.out << "There is no event yet: import one, see suppertide import --help.\n";
    return kOk;
  }
  v1::GetHouseholdRequest request;
  request.set_household_id(connection.householdId);
  const auto household = connection.session->household(request);
  const std::string zone = household.ok() ? household->time_zone() : "";
  Table table({{.title = "First served"},
               {.title = "Event", .fitted = false},
               {.title = "Dishes"},
               {.title = "Guests"},
               {.title = "For --event"}});
  for (const v1::Event& event : *events) {
    const Clock clock(event.time_zone().empty() ? zone : event.time_zone());
    const absl::Time serving = absl::FromUnixSeconds(first(event));
    table.add({{event.courses_size() > 0 ? absl::StrCat(clock.date(serving), " ", clock.hour(serving)) : ""},
               {plainLine(event.display_name())},
               {absl::StrCat(event.dishes_size())},
               {absl::StrCat(event.guests_size())},
               {plainLine(event.id())}});
  }
  environment.out << table.text(environment.width, Style(environment.colour), true);
  return kOk;
}

int runInvite(const InviteCommand& command, Environment& environment) {
  const auto known = knownServer(environment, command.server);
  if (!known.ok()) return reportFailure(environment, known.status(), command.json);
  const Connection connection = openKnown(*known);
  v1::GetHouseholdRequest householdRequest;
  householdRequest.set_household_id(connection.householdId);
  const auto household = connection.session->household(householdRequest);
  if (!household.ok()) return reportFailure(environment, household.status(), command.json);
  v1::CreateInvitationRequest request;
  request.set_household_id(connection.householdId);
  static const std::map<std::string, v1::Role> kRoles = {
      {"reader", v1::ROLE_READER}, {"cook", v1::ROLE_COOK}, {"host", v1::ROLE_HOST}};
  request.set_role(kRoles.at(command.role));
  if (!command.memberName.empty()) {
    request.set_member_id(memberNamed(*household, command.memberName));
    if (request.member_id().empty()) {
      return reportFailure(
          environment,
          absl::InvalidArgumentError(absl::StrCat("nobody in the household is called ", command.memberName)),
          command.json);
    }
  }
  if (command.days > 0) request.mutable_lifetime()->set_seconds(command.days * 86400LL);
  request.set_request_id(link::newRequestId());
  const auto answer = connection.session->createInvitation(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (command.json) {
    environment.out << jsonOf(*answer);
    return kOk;
  }
  const Clock clock(household->time_zone());
  const absl::Time expires = toTime(answer->expire_time());
  environment.out << "Invitation code: " << plainLine(answer->code()) << "\nGood once, as "
                  << roleWords(request.role()) << ", until " << clock.day(expires) << " "
                  << clock.hour(expires) << ". On the other device:\n  suppertide join "
                  << plainLine(known->target) << " --code " << plainLine(answer->code()) << "\n";
  return kOk;
}

}  // namespace suppertide::terminal
