// Fits an oven's curve: readings from a table, a bundle or the household's kitchen.
#include <algorithm>
#include <map>
#include <utility>

#include "absl/strings/ascii.h"
#include "absl/strings/match.h"
#include "absl/strings/str_cat.h"
#include "absl/time/time.h"
#include "client/link/error_detail.h"
#include "client/link/request_id.h"
#include "client/terminal/bundle_source.h"
#include "client/terminal/commands.h"
#include "client/terminal/oven_fit_text.h"
#include "client/terminal/oven_readings.h"
#include "client/terminal/report.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

struct Asked {
  Connection connection;
  v1::Oven oven;
  v1::Kitchen kitchen;  // of the household, where it is asked
  v1::Household household;
  std::map<std::string, std::string> lines;  // of a table, by path
};

// Enough of an oven for its readings; a table tells nothing of racks.
v1::Oven plainOven(const OvenFitCommand& command) {
  v1::Oven oven;
  oven.set_id("oven");
  oven.set_display_name("Oven");
  oven.set_min_setpoint_celsius(50);
  oven.set_max_setpoint_celsius(command.highestCelsius);
  oven.add_rack_clear_height_mm(100);
  oven.set_shelf_width_mm(400);
  oven.set_shelf_depth_mm(300);
  return oven;
}

absl::StatusOr<v1::Oven> chosenOven(const v1::Bundle& bundle, const std::string& id) {
  std::vector<const v1::Oven*> ovens;
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    for (const v1::Oven& oven : kitchen.ovens()) ovens.push_back(&oven);
  const auto found =
      std::find_if(ovens.begin(), ovens.end(), [&](const v1::Oven* oven) { return oven->id() == id; });
  if (found != ovens.end()) return **found;
  if (id.empty() && ovens.size() == 1) return *ovens.front();
  if (ovens.empty()) return absl::InvalidArgumentError("there is no oven");
  std::string known;
  for (const v1::Oven* oven : ovens)
    absl::StrAppend(&known, known.empty() ? "" : ", ", oven->id(), " (", oven->display_name(), ")");
  return absl::InvalidArgumentError(
      absl::StrCat(id.empty() ? "say which oven with --oven" : absl::StrCat("there is no oven ", id),
                   "; there are: ", known));
}

bool isJson(const std::string& text) {
  return absl::StartsWith(absl::StripLeadingAsciiWhitespace(text), "{");
}

// Reports what is wrong and gives the exit code, or fills `asked`.
int askTable(const OvenFitCommand& command, const std::string& text, Environment& environment, Asked& asked) {
  OvenReadings readings = readReadings(text);
  if (!readings.mistakes.empty()) return reportMistakes(environment, readings.mistakes, command.json);
  asked.oven = plainOven(command);
  *asked.oven.mutable_heat_curve() = readings.curve;
  asked.lines = std::move(readings.lines);
  if (readings.fahrenheit) asked.household.set_temperature_unit(v1::TEMPERATURE_UNIT_FAHRENHEIT);
  auto connection = openLocal(environment, {});
  if (!connection.ok()) return reportFailure(environment, connection.status(), command.json);
  asked.connection = *std::move(connection);
  return kOk;
}

int askBundle(const OvenFitCommand& command, const v1::Bundle& bundle, Environment& environment,
              Asked& asked) {
  const auto oven = chosenOven(bundle, command.ovenId);
  if (!oven.ok()) return reportFailure(environment, oven.status(), command.json);
  asked.oven = *oven;
  asked.household = bundle.household();
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    for (const v1::Oven& one : kitchen.ovens())
      if (one.id() == oven->id()) asked.kitchen = kitchen;
  return kOk;
}

int askFile(const OvenFitCommand& command, Environment& environment, Asked& asked) {
  const auto text = readFile(command.readings);
  if (!text.ok()) return reportFailure(environment, text.status(), command.json);
  if (!isJson(*text)) return askTable(command, *text, environment, asked);
  v1::Bundle bundle;
  const Reading reading = readMessage(*text, bundle);
  if (!reading.mistakes.empty()) return reportMistakes(environment, reading.mistakes, command.json);
  auto connection = openLocal(environment, bundle);
  if (!connection.ok()) return reportFailure(environment, connection.status(), command.json);
  asked.connection = *std::move(connection);
  return askBundle(command, bundle, environment, asked);
}

int askHousehold(const OvenFitCommand& command, Environment& environment, Asked& asked) {
  const auto known = knownServer(environment, command.server);
  if (!known.ok()) return reportFailure(environment, known.status(), command.json);
  asked.connection = openKnown(*known);
  v1::ExportBundleRequest request;
  request.set_household_id(asked.connection.householdId);
  request.set_event_id(command.eventId);
  const auto bundle = asked.connection.session->exportBundle(request);
  if (!bundle.ok()) return reportFailure(environment, bundle.status(), command.json);
  return askBundle(command, *bundle, environment, asked);
}

// A table's mistakes are told by its lines.
int reportRefusal(const Asked& asked, const absl::Status& status, const OvenFitCommand& command,
                  Environment& environment) {
  const auto detail = link::errorDetail(status);
  if (!detail || detail->violations_size() == 0) return reportFailure(environment, status, command.json);
  Violations violations(detail->violations().begin(), detail->violations().end());
  for (v1::FieldViolation& violation : violations) {
    static const std::string kWrapper = "oven.";
    std::string path = violation.field_path();
    if (absl::StartsWith(path, kWrapper)) path = path.substr(kWrapper.size());
    for (const auto& [field, line] : asked.lines)
      if (absl::StartsWith(path, field)) path = line;
    violation.set_field_path(path);
  }
  return reportMistakes(environment, violations, command.json);
}

// Puts the learned oven in the place of the one that was asked about, unless somebody changed the kitchen.
absl::Status store(const Asked& asked, const v1::Oven& learned) {
  v1::UpdateKitchenRequest request;
  request.set_household_id(asked.connection.householdId);
  request.set_request_id(link::newRequestId());
  *request.mutable_kitchen() = asked.kitchen;
  request.mutable_update_mask()->add_paths("ovens");
  for (v1::Oven& oven : *request.mutable_kitchen()->mutable_ovens())
    if (oven.id() == learned.id()) oven = learned;
  return asked.connection.session->updateKitchen(request).status();
}

absl::TimeZone zoneOf(const v1::Household& household) {
  absl::TimeZone zone = absl::UTCTimeZone();
  absl::LoadTimeZone(household.time_zone(), &zone);
  return zone;
}

}  // namespace

int runOvenFit(const OvenFitCommand& command, Environment& environment) {
  Asked asked;
  const int exitCode = command.readings.empty() ? askHousehold(command, environment, asked)
                                                : askFile(command, environment, asked);
  if (exitCode != kOk) return exitCode;
  v1::FitOvenRequest request;
  request.set_household_id(asked.connection.householdId);
  if (command.eventId.empty()) {
    *request.mutable_oven() = asked.oven;
  } else {
    request.set_event_id(command.eventId);
    request.set_oven_id(asked.oven.id());
  }
  const auto fit = asked.connection.session->fitOven(request);
  if (!fit.ok()) return reportRefusal(asked, fit.status(), command, environment);
  environment.out << (command.json
                          ? jsonOf(*fit)
                          : ovenFitText(plainLine(asked.oven.display_name()), *fit, Units(asked.household),
                                        zoneOf(asked.household), environment.width, environment.colour));
  if (!command.keep || !fit->has_learned_oven()) return kOk;
  if (const auto status = store(asked, fit->learned_oven()); !status.ok())
    return reportFailure(environment, status, command.json);
  if (!command.json) environment.out << "\nStored: the next plans count on it.\n";
  return kOk;
}

}  // namespace suppertide::terminal
