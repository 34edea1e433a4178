#include "client/terminal/dough_source.h"

#include <algorithm>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/time/time.h"
#include "client/terminal/bundle_source.h"
#include "client/terminal/report.h"
#include "nlohmann/json.hpp"

namespace suppertide::terminal {
namespace {

constexpr char kBareId[] = "bread";
constexpr char kUsualStarterId[] = "starter";

absl::StatusOr<v1::Recipe> chosenBread(const v1::Bundle& bundle, const std::string& id) {
  std::vector<const v1::Recipe*> breads;
  for (const v1::Recipe& recipe : bundle.recipes())
    if (recipe.has_formula()) breads.push_back(&recipe);
  for (const v1::Recipe* recipe : breads)
    if (recipe->id() == id || (id.empty() && breads.size() == 1)) return *recipe;
  if (breads.empty()) return absl::InvalidArgumentError("there is no recipe with a bread formula");
  std::string known;
  for (const v1::Recipe* recipe : breads)
    absl::StrAppend(&known, known.empty() ? "" : ", ", recipe->id(), " (", recipe->display_name(), ")");
  return absl::InvalidArgumentError(
      absl::StrCat(id.empty() ? "say which bread with --recipe" : absl::StrCat("there is no bread ", id),
                   "; there are: ", known));
}

enum class Holds { kBundle, kRecipe, kFormula };

// What a text holds, by the names of its fields; a bundle where it is no JSON at all.
Holds holdingOf(const std::string& text) {
  const auto json = nlohmann::json::parse(text, nullptr, /*allow_exceptions=*/false);
  if (!json.is_object()) return Holds::kBundle;
  if (json.contains("lines") || json.contains("doughClass") || json.contains("dough_class"))
    return Holds::kFormula;
  return json.contains("formula") ? Holds::kRecipe : Holds::kBundle;
}

v1::Starter usualStarter(const v1::BreadFormula& formula) {
  v1::Starter starter;
  starter.set_id(formula.levain().starter_id().empty() ? kUsualStarterId : formula.levain().starter_id());
  starter.set_display_name("A usual starter");
  return starter;
}

// A recipe or formula alone, and a bundle around it.
int askAlone(const std::string& text, Holds holds, bool json, Environment& environment, AskedBread& asked) {
  Reading reading = holds == Holds::kFormula ? readMessage(text, *asked.recipe.mutable_formula())
                                             : readMessage(text, asked.recipe);
  if (!reading.mistakes.empty()) return reportMistakes(environment, reading.mistakes, json);
  if (asked.recipe.id().empty()) asked.recipe.set_id(kBareId);
  if (asked.recipe.display_name().empty()) asked.recipe.set_display_name("Bread");
  v1::BreadFormula& formula = *asked.recipe.mutable_formula();
  if (formula.has_levain() && formula.levain().starter_id().empty())
    formula.mutable_levain()->set_starter_id(kUsualStarterId);
  asked.starter = usualStarter(formula);
  asked.zone = absl::LocalTimeZone().name();
  absl::TimeZone known;
  if (!absl::LoadTimeZone(asked.zone, &known) || asked.zone == "localtime") asked.zone = "UTC";
  *asked.bundle.add_recipes() = asked.recipe;
  auto connection = openLocal(environment, {});
  if (!connection.ok()) return reportFailure(environment, connection.status(), json);
  asked.connection = *std::move(connection);
  return kOk;
}

int fromBundle(const std::string& recipe, bool json, Environment& environment, AskedBread& asked) {
  const auto found = chosenBread(asked.bundle, recipe);
  if (!found.ok()) return reportFailure(environment, found.status(), json);
  asked.recipe = *found;
  for (const v1::Starter& starter : asked.bundle.starters())
    if (starter.id() == asked.recipe.formula().levain().starter_id()) asked.starter = starter;
  asked.zone = asked.bundle.household().time_zone();
  if (asked.zone.empty()) asked.zone = "UTC";
  return kOk;
}

int askHousehold(const BreadChoice& choice, bool json, Environment& environment, AskedBread& asked) {
  const auto known = knownServer(environment, choice.server);
  if (!known.ok()) return reportFailure(environment, known.status(), json);
  asked.connection = openKnown(*known);
  v1::ExportBundleRequest request;
  request.set_household_id(asked.connection.householdId);
  auto bundle = asked.connection.session->exportBundle(request);
  if (!bundle.ok()) return reportFailure(environment, bundle.status(), json);
  asked.bundle = *std::move(bundle);
  return fromBundle(choice.recipe, json, environment, asked);
}

}  // namespace

int askBread(const BreadChoice& choice, bool json, Environment& environment, AskedBread& asked) {
  if (choice.file.empty()) return askHousehold(choice, json, environment, asked);
  const auto text = readFile(choice.file);
  if (!text.ok()) return reportFailure(environment, text.status(), json);
  if (const Holds holds = holdingOf(*text); holds != Holds::kBundle)
    return askAlone(*text, holds, json, environment, asked);
  int exitCode = kOk;
  auto source = checkedBundle(
      choice.file, [&](const v1::Bundle& bundle) { return openLocal(environment, bundle); }, environment,
      json, exitCode);
  if (!source) return exitCode;
  asked.bundle = std::move(source->bundle);
  asked.connection = std::move(source->connection);
  return fromBundle(choice.recipe, json, environment, asked);
}

std::optional<google::protobuf::Timestamp> readTime(const std::string& text, const std::string& zoneName) {
  absl::TimeZone zone;
  absl::Time time;
  std::string error;
  if (!absl::LoadTimeZone(zoneName, &zone) || !absl::ParseTime("%Y-%m-%d %H:%M", text, zone, &time, &error))
    return std::nullopt;
  google::protobuf::Timestamp timestamp;
  timestamp.set_seconds(absl::ToUnixSeconds(time));
  return timestamp;
}

bool hasWater(const v1::BreadFormula& formula) {
  return std::any_of(formula.lines().begin(), formula.lines().end(),
                     [](const v1::FormulaLine& line) { return line.role() == v1::FORMULA_ROLE_WATER; });
}

int wrongOption(Environment& environment, bool json, const char* option, const std::string& value,
                const std::string& allowed) {
  v1::FieldViolation violation;
  violation.set_field_path(option);
  violation.set_value(value);
  violation.set_description(allowed);
  return reportMistakes(environment, {violation}, json);
}

}  // namespace suppertide::terminal
