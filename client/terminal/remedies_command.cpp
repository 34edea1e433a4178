// What would make an event fit.
#include <map>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "absl/strings/str_cat.h"
#include "client/terminal/commands.h"
#include "client/terminal/event_task.h"
#include "client/terminal/progress_line.h"
#include "client/terminal/remedy_text.h"
#include "client/terminal/report.h"
#include "client/terminal/wish_text.h"

namespace suppertide::terminal {
namespace {

// Everything the stream told, put together.
struct Told {
  std::map<int, v1::FindRemediesResponse> byNumber;  // the latest of each
  std::vector<v1::Clash> clashes;
  bool fits = false;
  // Empty when the search was left before its end.
  std::vector<v1::FindRemediesResponse> ranked;

  void add(const v1::FindRemediesResponse& message) {
    if (message.has_remedy()) byNumber[message.number()] = message;
    if (message.clashes_size() > 0) clashes.assign(message.clashes().begin(), message.clashes().end());
    if (message.final()) finish(message);
  }

  void finish(const v1::FindRemediesResponse& message) {
    fits = message.fits();
    for (const int number : message.ranking())
      if (byNumber.contains(number)) ranked.push_back(byNumber[number]);
  }
};

std::string jsonOf(const Told& told) {
  nlohmann::ordered_json json = {{"fits", told.fits},
                                 {"clashes", nlohmann::ordered_json::array()},
                                 {"remedies", nlohmann::ordered_json::array()}};
  for (const v1::Clash& clash : told.clashes)
    json["clashes"].push_back(nlohmann::ordered_json::parse(terminal::jsonOf(clash)));
  for (const v1::FindRemediesResponse& remedy : told.ranked)
    json["remedies"].push_back(nlohmann::ordered_json::parse(terminal::jsonOf(remedy)));
  return json.dump(2) + "\n";
}

std::string textOf(const PlanView& view, const Told& told) {
  std::string text = view.style().heading(plainLine(view.event().display_name())) + "\n";
  if (told.fits) return text + view.paragraph("Every dish fits in time; there is nothing to remedy.");
  text += wishClashesText(view);
  if (told.clashes.empty())
    text += view.paragraph(
        "Not every dish was fitted in, but no clash was proven; a longer plan may still do it.");
  if (told.ranked.empty())
    return text + "\n" + view.paragraph("No change that was tried makes every dish fit.");
  text += view.section("What would help");
  text += remediesText(view, told.ranked);
  return text + "\n" +
         view.paragraph("Each was planned to the minute and keeps every rule. Nothing is changed yet.");
}

}  // namespace

int runRemedies(const RemediesCommand& command, Environment& environment) {
  int exitCode = kFailed;
  auto task =
      eventTask({command.bundle, command.eventId, command.server, command.json}, environment, exitCode);
  if (!task) return exitCode;
  v1::FindRemediesRequest request;
  request.set_household_id(task->connection.householdId);
  request.set_event_id(task->event.id());
  Told told;
  absl::Status status;
  {
    ProgressLine progress(environment);
    status = task->connection.session->findRemedies(request, [&](const v1::FindRemediesResponse& message) {
      told.add(message);
      progress.show(message, static_cast<int>(told.byNumber.size()));
      return !environment.wasInterrupted();
    });
  }
  if (!status.ok()) return reportFailure(environment, status, command.json);
  if (told.ranked.empty())
    for (const auto& [number, remedy] : told.byNumber) told.ranked.push_back(remedy);
  if (command.json) {
    environment.out << jsonOf(told);
  } else {
    v1::Plan clashing;
    for (const v1::Clash& clash : told.clashes) *clashing.add_clashes() = clash;
    clashing.set_time_zone(task->event.time_zone());
    const PlanView view(task->bundle, task->event, clashing, environment.width, environment.colour);
    environment.out << textOf(view, told);
  }
  return told.fits || !told.ranked.empty() ? kOk : kPlanFallsShort;
}

}  // namespace suppertide::terminal
