// Showing the plan of an event of a known server.
#include <algorithm>
#include <utility>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "client/terminal/bundle_source.h"
#include "client/terminal/commands.h"
#include "client/terminal/plan_text.h"
#include "client/terminal/report.h"

namespace suppertide::terminal {
namespace {

absl::StatusOr<std::string> cookNamed(const v1::Bundle& bundle, const std::string& name) {
  if (name.empty()) return std::string();
  std::vector<std::string> names;
  for (const v1::Member& member : bundle.household().members()) {
    if (absl::AsciiStrToLower(member.display_name()) == absl::AsciiStrToLower(name) || member.id() == name)
      return member.id();
    names.push_back(member.display_name());
  }
  return absl::InvalidArgumentError(
      absl::StrCat("nobody is called ", name, "; there are: ", joinWords(names)));
}

// Documents that were written after the plan was made from them.
std::vector<std::string> changedSince(const v1::Bundle& bundle, const v1::Event& event,
                                      const v1::Plan& plan) {
  std::vector<std::string> changed;
  const auto look = [&](const std::string& kind, const std::string& id, const v1::DocumentMeta& meta,
                        const std::string& name) {
    const auto made = plan.input_etags().find(absl::StrCat(kind, "/", id));
    if (made != plan.input_etags().end() && made->second != meta.etag()) changed.push_back(plainLine(name));
  };
  look("event", event.id(), event.meta(), absl::StrCat("the event ", event.display_name()));
  look("household", bundle.household().id(), bundle.household().meta(), "the household");
  for (const auto& kitchen : bundle.kitchens())
    look("kitchen", kitchen.id(), kitchen.meta(), absl::StrCat("the kitchen ", kitchen.display_name()));
  for (const auto& starter : bundle.starters())
    look("starter", starter.id(), starter.meta(), absl::StrCat("the starter ", starter.display_name()));
  for (const auto& recipe : bundle.recipes())
    look("recipe", recipe.id(), recipe.meta(), absl::StrCat("the recipe ", recipe.display_name()));
  return changed;
}

}  // namespace

int runShow(const ShowCommand& command, Environment& environment) {
  const auto known = knownServer(environment, command.server);
  if (!known.ok()) return reportFailure(environment, known.status(), command.json);
  const Connection connection = openKnown(*known);
  v1::ExportBundleRequest request;
  request.set_household_id(connection.householdId);
  request.set_event_id(command.eventId);
  const auto bundle = connection.session->exportBundle(request);
  if (!bundle.ok()) return reportFailure(environment, bundle.status(), command.json);
  const auto event = chosenEvent({bundle->events().begin(), bundle->events().end()}, command.eventId);
  if (!event.ok()) return reportFailure(environment, event.status(), command.json);
  const auto plan = std::find_if(bundle->plans().begin(), bundle->plans().end(),
                                 [&](const v1::Plan& p) { return p.id() == event->id(); });
  if (plan == bundle->plans().end()) {
    return reportFailure(
        environment,
        absl::NotFoundError(absl::StrCat(
            event->display_name(), " has no plan yet: make one with suppertide plan --event ", event->id())),
        command.json);
  }
  const auto cook = cookNamed(*bundle, command.cookName);
  if (!cook.ok()) return reportFailure(environment, cook.status(), command.json);
  const int exitCode = plan->unserved_size() > 0 || plan->breaches_size() > 0 ? kPlanFallsShort : kOk;
  if (command.json) {
    environment.out << jsonOf(*plan);
    return exitCode;
  }
  const PlanView view(*bundle, *event, *plan, environment.width, environment.colour);
  const std::vector<std::string> changed = changedSince(*bundle, *event, *plan);
  if (!changed.empty()) {
    environment.out << view.style().warning("THIS PLAN IS OUT OF DATE") << "\n"
                    << view.paragraph(absl::StrCat("Changed since it was made: ", joinWords(changed), "."))
                    << "Plan again: suppertide plan --event " << plainLine(event->id()) << "\n\n";
  }
  environment.out << planText(view, {.cookId = *cook,
                                     .instructions = command.instructions,
                                     .ovens = command.ovens,
                                     .breads = command.breads,
                                     .clashes = command.clashes,
                                     .firstActions = command.firstActions});
  return exitCode;
}

}  // namespace suppertide::terminal
