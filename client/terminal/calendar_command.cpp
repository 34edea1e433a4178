// Plans in calendar programs, and events made from old ones.
#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "client/link/request_id.h"
#include "client/terminal/connection.h"
#include "client/terminal/day_options.h"
#include "client/terminal/event_task.h"
#include "client/terminal/exit_code.h"
#include "client/terminal/report.h"
#include "client/terminal/table.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

std::string lower(const std::string& text) {
  return absl::AsciiStrToLower(text);
}

// A member by name or id; empty for an empty word. InvalidArgument, in words.
absl::StatusOr<std::string> memberCalled(const v1::Household& household, const std::string& word) {
  if (word.empty()) return "";
  for (const v1::Member& member : household.members())
    if (member.id() == word || lower(member.display_name()) == lower(word)) return member.id();
  return absl::InvalidArgumentError(absl::StrCat("nobody in the household is called ", word));
}

std::string hostOf(const std::string& target) {
  if (target.rfind("unix:", 0) == 0) return "127.0.0.1";
  return target.substr(0, target.rfind(':'));
}

}  // namespace

int runCalendarExport(const CalendarCommand& command, Environment& environment) {
  int exitCode = kFailed;
  const auto task = eventTask({"", command.eventId, command.server, command.json}, environment, exitCode);
  if (!task) return exitCode;
  const auto member = memberCalled(task->bundle.household(), command.cook);
  if (!member.ok()) return reportFailure(environment, member.status(), command.json);
  v1::ExportCalendarRequest request;
  request.set_household_id(task->connection.householdId);
  request.set_event_id(task->event.id());
  request.set_member_id(*member);
  const auto answer = task->connection.session->exportCalendar(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (command.json) {
    environment.out << jsonOf(*answer);
    return kOk;
  }
  if (command.file == "-") {
    environment.out << answer->calendar();
    return kOk;
  }
  if (absl::Status status = writeFile(command.file, answer->calendar()); !status.ok())
    return reportFailure(environment, status, command.json);
  environment.out << "Written to " << plainLine(command.file) << ".\n";
  return kOk;
}

int runCalendarFollow(const CalendarCommand& command, Environment& environment) {
  int exitCode = kFailed;
  const auto task = eventTask({"", command.eventId, command.server, command.json}, environment, exitCode);
  if (!task) return exitCode;
  const auto member = memberCalled(task->bundle.household(), command.cook);
  if (!member.ok()) return reportFailure(environment, member.status(), command.json);
  v1::CreateCalendarAddressRequest request;
  request.set_household_id(task->connection.householdId);
  request.mutable_address()->set_display_name(command.name);
  request.mutable_address()->set_event_id(task->event.id());
  request.mutable_address()->set_member_id(*member);
  request.set_request_id(link::newRequestId());
  const auto answer = task->connection.session->createCalendarAddress(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (command.json) {
    environment.out << jsonOf(*answer);
    return kOk;
  }
  const auto known = knownServer(environment, command.server);
  environment.out << "Give this address to the calendar program; it is not shown again:\n  "
                  << (answer->tls() ? "https" : "http") << "://"
                  << (known.ok() ? hostOf(known->target) : "127.0.0.1") << ":" << answer->port()
                  << answer->path() << "\n";
  if (answer->tls())
    environment.out
        << "Where the server made its certificate itself, the program must be told to trust it.\n";
  return kOk;
}

int runCalendarAddresses(const CalendarCommand& command, Environment& environment) {
  const auto known = knownServer(environment, command.server);
  if (!known.ok()) return reportFailure(environment, known.status(), command.json);
  const Connection connection = openKnown(*known);
  v1::ListCalendarAddressesRequest request;
  request.set_household_id(connection.householdId);
  const auto answer = connection.session->listCalendarAddresses(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (command.json) {
    environment.out << jsonOf(*answer);
    return kOk;
  }
  if (answer->addresses().empty()) {
    environment.out << "No calendar program follows a plan.\n";
    return kOk;
  }
  Table table({{.title = "Address", .fitted = false}, {.title = "Event"}, {.title = "Whose"}});
  for (const v1::CalendarAddress& address : answer->addresses())
    table.add({{plainLine(address.display_name())},
               {address.event_id().empty() ? "all" : plainLine(address.event_id())},
               {address.member_id().empty() ? "everybody's" : plainLine(address.member_id())}});
  environment.out << table.text(environment.width, Style(environment.colour), true);
  return kOk;
}

int runCalendarRevoke(const CalendarCommand& command, Environment& environment) {
  const auto known = knownServer(environment, command.server);
  if (!known.ok()) return reportFailure(environment, known.status(), command.json);
  const Connection connection = openKnown(*known);
  v1::ListCalendarAddressesRequest list;
  list.set_household_id(connection.householdId);
  const auto all = connection.session->listCalendarAddresses(list);
  if (!all.ok()) return reportFailure(environment, all.status(), command.json);
  v1::RevokeCalendarAddressRequest request;
  request.set_household_id(connection.householdId);
  int called = 0;
  for (const v1::CalendarAddress& address : all->addresses()) {
    if (address.id() != command.address && address.display_name() != command.address) continue;
    request.set_address_id(address.id());
    ++called;
  }
  if (called != 1)
    return reportFailure(
        environment,
        absl::InvalidArgumentError(absl::StrCat(called, " addresses are called ", command.address,
                                                ": see suppertide calendar addresses --json")),
        command.json);
  request.set_request_id(link::newRequestId());
  const auto answer = connection.session->revokeCalendarAddress(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (!command.json) environment.out << "The address is void.\n";
  return kOk;
}

int runCopyEvent(const CopyEventCommand& command, Environment& environment) {
  const auto known = knownServer(environment, command.server);
  if (!known.ok()) return reportFailure(environment, known.status(), command.json);
  const Connection connection = openKnown(*known);
  v1::CopyEventRequest request;
  request.set_household_id(connection.householdId);
  request.set_event_id(command.from);
  request.set_date(command.date);
  request.set_display_name(command.name);
  request.set_request_id(link::newRequestId());
  const auto answer = connection.session->copyEvent(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (command.json)
    environment.out << jsonOf(*answer);
  else
    environment.out << "Made the event " << plainLine(answer->event().id()) << ": "
                    << plainLine(answer->event().display_name()) << ".\n";
  return kOk;
}

}  // namespace suppertide::terminal
