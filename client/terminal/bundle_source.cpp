#include "client/terminal/bundle_source.h"

#include <algorithm>
#include <utility>

#include "absl/strings/str_cat.h"
#include "client/terminal/report.h"

namespace suppertide::terminal {

std::optional<CheckedBundle> checkedBundle(const std::string& path, const Opener& open,
                                           Environment& environment, bool json, int& exitCode) {
  const auto text = readFile(path);
  if (!text.ok()) {
    exitCode = reportFailure(environment, text.status(), json);
    return std::nullopt;
  }
  CheckedBundle checked;
  const Reading reading = readMessage(*text, checked.bundle);
  if (!reading.isJson) {
    exitCode = reportMistakes(environment, reading.mistakes, json);
    return std::nullopt;
  }
  auto connection = open(checked.bundle);
  if (!connection.ok()) {
    exitCode = reportFailure(environment, connection.status(), json);
    return std::nullopt;
  }
  checked.connection = *std::move(connection);
  const auto found = violationsOf(checked.connection, checked.bundle);
  // What the text has wrong is the person's to mend first, whatever the server says to the rest.
  if (!found.ok() && reading.mistakes.empty()) {
    exitCode = reportFailure(environment, found.status(), json);
    return std::nullopt;
  }
  Violations violations;
  if (found.ok()) violations.assign(found->begin(), found->end());
  const Violations all = joined(reading, violations);
  if (!all.empty()) {
    exitCode = reportMistakes(environment, all, json);
    return std::nullopt;
  }
  return checked;
}

absl::StatusOr<v1::Event> chosenEvent(const std::vector<v1::Event>& events, const std::string& id) {
  const auto found =
      std::find_if(events.begin(), events.end(), [&](const v1::Event& event) { return event.id() == id; });
  if (found != events.end()) return *found;
  if (id.empty() && events.size() == 1) return events.front();
  if (events.empty()) return absl::InvalidArgumentError("there is no event");
  std::string known;
  for (const v1::Event& event : events) {
    absl::StrAppend(&known, known.empty() ? "" : ", ", event.id(), " (", event.display_name(), ")");
  }
  return absl::InvalidArgumentError(
      absl::StrCat(id.empty() ? "say which event with --event" : absl::StrCat("there is no event ", id),
                   "; there are: ", known));
}

}  // namespace suppertide::terminal
