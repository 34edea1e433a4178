// What goes in and out of a household on a server: documents and people.
#include <algorithm>
#include <map>
#include <utility>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "client/link/channel.h"
#include "client/link/join_code.h"
#include "client/link/request_id.h"
#include "client/terminal/bundle_source.h"
#include "client/terminal/commands.h"
#include "client/terminal/report.h"
#include "client/terminal/table.h"
#include "client/terminal/time_text.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

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

}  // namespace

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
    parts.push_back(counted(count, kind, kind == "progress" || kind == "shopping" ? kind : kind + "s"));
  environment.out << "Imported " << (parts.empty() ? "nothing" : joinWords(parts)) << ".\n";
  if (written->kept_member_ids_size() > 0)
    environment.out << counted(written->kept_member_ids_size(), "member", "members")
                    << " of the household, not named by the bundle, stayed.\n";
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
  const std::string code =
      plainLine(link::textOf(link::JoinCode{answer->code(), answer->certificate_fingerprint()}));
  environment.out << "Invitation code: " << code << "\nGood once, as " << roleWords(request.role())
                  << ", until " << clock.day(expires) << " " << clock.hour(expires)
                  << (link::isLocalTarget(known->target) ? ". On this machine:" : ". On the other device:")
                  << "\n  suppertide join " << plainLine(known->target) << " --code " << code << "\n";
  return kOk;
}

}  // namespace suppertide::terminal
