#include "client/terminal/event_task.h"

#include <utility>
#include <vector>

#include "client/link/request_id.h"
#include "client/terminal/report.h"

namespace suppertide::terminal {
namespace {

std::vector<v1::Event> eventsOf(const v1::Bundle& bundle) {
  return {bundle.events().begin(), bundle.events().end()};
}

absl::StatusOr<v1::Event> eventOf(const v1::Bundle& bundle, const EventChoice& choice) {
  auto event = chosenEvent(eventsOf(bundle), choice.eventId);
  if (!event.ok() && choice.eventOptional && choice.eventId.empty()) return v1::Event();
  if (choice.bundle.empty() && bundle.events().empty())
    return absl::InvalidArgumentError("there is no event yet: import one, see suppertide import --help");
  return event;
}

// Writes the bundle into the household of its own and picks the event.
std::optional<EventTask> importedTask(const EventChoice& choice, Environment& environment, int& exitCode) {
  auto checked = checkedBundle(choice.bundle, localOpener(environment), environment, choice.json, exitCode);
  if (!checked) return std::nullopt;
  const auto event = eventOf(checked->bundle, choice);
  if (!event.ok()) {
    exitCode = reportFailure(environment, event.status(), choice.json);
    return std::nullopt;
  }
  const auto written = import(checked->connection, checked->bundle);
  if (!written.ok()) {
    exitCode = reportFailure(environment, written.status(), choice.json);
    return std::nullopt;
  }
  return EventTask{std::move(checked->connection), std::move(checked->bundle), *event};
}

std::optional<EventTask> knownTask(const EventChoice& choice, Environment& environment, int& exitCode) {
  const auto server = knownServer(environment, choice.server);
  if (!server.ok()) {
    exitCode = reportFailure(environment, server.status(), choice.json);
    return std::nullopt;
  }
  EventTask task{openKnown(*server), {}, {}};
  v1::ExportBundleRequest request;
  request.set_household_id(task.connection.householdId);
  request.set_event_id(choice.eventId);
  auto bundle = task.connection.session->exportBundle(request);
  const auto event = bundle.ok() ? eventOf(*bundle, choice) : bundle.status();
  if (!event.ok()) {
    exitCode = reportFailure(environment, event.status(), choice.json);
    return std::nullopt;
  }
  task.bundle = *std::move(bundle);
  task.event = *event;
  return task;
}

}  // namespace

Opener localOpener(Environment& environment) {
  return [&environment](const v1::Bundle& bundle) { return openLocal(environment, bundle); };
}

std::optional<EventTask> eventTask(const EventChoice& choice, Environment& environment, int& exitCode) {
  if (choice.bundle.empty()) return knownTask(choice, environment, exitCode);
  return importedTask(choice, environment, exitCode);
}

absl::Status planFirst(const EventTask& task) {
  v1::MakePlanRequest request;
  request.set_household_id(task.connection.householdId);
  request.set_event_id(task.event.id());
  request.set_request_id(link::newRequestId());
  return task.connection.session->makePlan(request, {}).status();
}

}  // namespace suppertide::terminal
