// Doughs outside any plan: forecasts, ways to have one ready, the model beside its sources.
#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/strings/str_split.h"
#include "client/terminal/bundle_source.h"
#include "client/terminal/commands.h"
#include "client/terminal/report.h"
#include "client/terminal/rise_chart.h"
#include "client/terminal/table.h"
#include "client/terminal/text.h"
#include "client/terminal/units.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

struct Asked {
  CheckedBundle source;
  const v1::Recipe* recipe = nullptr;
  v1::Starter starter;
  std::string zone;
};

absl::StatusOr<const v1::Recipe*> chosenBread(const v1::Bundle& bundle, const std::string& id) {
  std::vector<const v1::Recipe*> breads;
  for (const v1::Recipe& recipe : bundle.recipes())
    if (recipe.has_formula()) breads.push_back(&recipe);
  for (const v1::Recipe* recipe : breads)
    if (recipe->id() == id || (id.empty() && breads.size() == 1)) return recipe;
  if (breads.empty()) return absl::InvalidArgumentError("there is no recipe with a bread formula");
  std::string known;
  for (const v1::Recipe* recipe : breads)
    absl::StrAppend(&known, known.empty() ? "" : ", ", recipe->id(), " (", recipe->display_name(), ")");
  return absl::InvalidArgumentError(
      absl::StrCat(id.empty() ? "say which bread with --recipe" : absl::StrCat("there is no bread ", id),
                   "; there are: ", known));
}

// Reports what is wrong and gives the exit code, or fills `asked`.
int ask(const std::string& file, const std::string& recipe, bool json, Environment& environment,
        Asked& asked) {
  int exitCode = kOk;
  auto source = checkedBundle(
      file, [&](const v1::Bundle& bundle) { return openLocal(environment, bundle); }, environment, json,
      exitCode);
  if (!source) return exitCode;
  asked.source = *std::move(source);
  const auto found = chosenBread(asked.source.bundle, recipe);
  if (!found.ok()) return reportFailure(environment, found.status(), json);
  asked.recipe = *found;
  for (const v1::Starter& starter : asked.source.bundle.starters())
    if (starter.id() == asked.recipe->formula().levain().starter_id()) asked.starter = starter;
  asked.zone = asked.source.bundle.household().time_zone();
  if (asked.zone.empty()) asked.zone = "UTC";
  return kOk;
}

int wrongOption(Environment& environment, bool json, const char* option, const std::string& value,
                const char* allowed) {
  v1::FieldViolation violation;
  violation.set_field_path(option);
  violation.set_value(value);
  violation.set_description(allowed);
  return reportMistakes(environment, {violation}, json);
}

std::optional<google::protobuf::Timestamp> timeOf(const std::string& text, const std::string& zoneName) {
  absl::TimeZone zone;
  absl::Time time;
  std::string error;
  if (!absl::LoadTimeZone(zoneName, &zone) || !absl::ParseTime("%Y-%m-%d %H:%M", text, zone, &time, &error))
    return std::nullopt;
  google::protobuf::Timestamp timestamp;
  timestamp.set_seconds(absl::ToUnixSeconds(time));
  return timestamp;
}

// "28:3" or "28:2.5h": degrees and hours.
bool readStay(const std::string& text, v1::PlaceStay& stay) {
  std::vector<std::string> parts = absl::StrSplit(text, ':');
  double celsius = 0;
  double hours = 0;
  if (parts.size() != 2) return false;
  if (!parts[1].empty() && parts[1].back() == 'h') parts[1].pop_back();
  if (!absl::SimpleAtod(parts[0], &celsius) || !absl::SimpleAtod(parts[1], &hours) ||
      !(std::abs(hours) < 1e4))
    return false;
  stay.mutable_temperature()->add_celsius(celsius);
  stay.mutable_duration()->set_seconds(std::lround(hours * 60) * 60);
  return true;
}

std::string forecastText(const Asked& asked, const v1::FermentForecast& told,
                         const Environment& environment) {
  const Clock clock(asked.zone);
  const Units units(asked.source.bundle.household());
  const auto at = [&](const google::protobuf::Timestamp& time) {
    return clock.hourSeenFrom(toTime(told.start_time()), toTime(time));
  };
  std::string text =
      absl::StrCat(plainLine(asked.recipe->display_name()), ", ", stageWords(told.stage()), " from ",
                   clock.spanWithDay(toTime(told.start_time()), toTime(told.end_time())), "\n\n",
                   riseChart(told, clock, environment.width), "\n");
  std::string words;
  if (told.has_best_time()) {
    words = absl::StrCat("Ready from ", at(told.ready_from_time()), " to ", at(told.ready_until_time()),
                         ", best at ", at(told.best_time()), " (risen to ",
                         absl::StrFormat("%.2f", told.wanted_rise()), ").");
    if (told.has_fast_time())
      absl::StrAppend(&words, " One in ten is at its best before ", at(told.fast_time()), ".");
    if (told.has_slow_time())
      absl::StrAppend(&words, " One in ten is at its best after ", at(told.slow_time()), ".");
  } else {
    words = absl::StrCat(
        "Not ready in these places: it only rises to ", absl::StrFormat("%.2f", told.rise_at_end()),
        " of the ", absl::StrFormat("%.2f", told.low_rise()), " that it needs. Give it more time or warmth.");
  }
  absl::StrAppend(&words, " At the end it is at ", units.degrees(told.celsius_at_end()),
                  ". A forecast is a help: watch the dough, not the clock.");
  for (const std::string& line : wrap(words, environment.width)) absl::StrAppend(&text, line, "\n");
  return text;
}

std::string placeWords(const std::vector<std::string>& names, const std::string& id) {
  for (std::size_t k = 0; k < names.size(); ++k)
    if (id == absl::StrCat("places[", k, "]")) return names[k];
  return id;
}

std::string wayText(const Asked& asked, const std::vector<std::string>& places, const v1::DoughForecast& way,
                    const v1::DoughWayReasons& reasons, int width) {
  const Clock clock(asked.zone);
  const Units units(asked.source.bundle.household());
  std::string text;
  for (const v1::FermentForecast& stage : way.stages()) {
    const bool levain = stage.stage() == v1::FERMENT_STAGE_LEVAIN;
    const absl::Time start = toTime(stage.start_time());
    const absl::Time end = toTime(stage.end_time());
    absl::StrAppend(&text, "   ", padRight(capitalised(stageWords(stage.stage())), 18), " ",
                    padRight(clock.dayHour(start) + "–" + clock.hourSeenFrom(start, end), 21), " ",
                    placeWords(places, stage.place_id()), levain ? ", fed " + way.levain_ratio() : "", "\n");
  }
  std::string why =
      absl::StrCat("Water at ", units.degrees(way.water_celsius()), " for a dough of ",
                   units.degrees(reasons.dough_celsius()), "; ", durationText(reasons.whole()), " in all");
  if (reasons.retard().seconds() > 0)
    absl::StrAppend(&why, ", ", durationText(reasons.retard()), " in the fridge");
  if (reasons.miss().seconds() > 0) absl::StrAppend(&why, "; too late by ", durationText(reasons.miss()));
  if (reasons.miss().seconds() < 0) absl::StrAppend(&why, "; too early by ", durationText(reasons.miss()));
  if (reasons.miss().seconds() == 0)
    absl::StrAppend(&why, reasons.ready_when_fast() && reasons.ready_when_slow()
                              ? "; ready also when it is quick or slow"
                          : reasons.ready_when_fast() ? "; not when it is slow"
                          : reasons.ready_when_slow() ? "; not when it is quick"
                                                      : "; only when all goes as usual");
  for (const std::string& line : wrap(why + ".", width - 3)) absl::StrAppend(&text, "   ", line, "\n");
  return text;
}

// The kitchen's places, the counter at `counterCelsius` where that is given.
std::vector<std::string> addPlaces(const v1::Bundle& bundle, const std::optional<double>& counterCelsius,
                                   v1::FitDoughRequest& request) {
  std::vector<std::string> names;
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    for (const v1::Place& place : kitchen.places()) {
      if (place.kind() == v1::PLACE_KIND_FREEZER || place.kind() == v1::PLACE_KIND_WARMER) continue;
      v1::PlaceStay& stay = *request.add_places();
      stay.set_kind(place.kind());
      *stay.mutable_temperature() = place.temperature();
      if (counterCelsius && place.kind() == v1::PLACE_KIND_COUNTER) {
        stay.mutable_temperature()->clear_celsius();
        stay.mutable_temperature()->add_celsius(*counterCelsius);
      }
      names.push_back(plainLine(place.display_name()));
    }
  return names;
}

bool readSpan(const DoughFitCommand& command, const std::string& zone, v1::FitDoughRequest& request) {
  // "2026-06-21 17:00-17:30": the day holds dashes too.
  const std::size_t dash = command.ready.rfind('-');
  if (dash == std::string::npos || dash < 11) return false;
  const auto start = timeOf(command.ready.substr(0, dash), zone);
  const auto limit = timeOf(command.ready.substr(0, 11) + command.ready.substr(dash + 1), zone);
  if (!start || !limit) return false;
  *request.mutable_ready()->mutable_start() = *start;
  *request.mutable_ready()->mutable_limit() = *limit;
  return true;
}

}  // namespace

int runDough(const DoughCommand& command, Environment& environment) {
  if (command.file.empty())
    return wrongOption(environment, command.json, "BUNDLE", "", "say which file the bread is in");
  Asked asked;
  if (const int code = ask(command.file, command.recipe, command.json, environment, asked); code != kOk)
    return code;
  v1::ForecastDoughRequest request;
  *request.mutable_formula() = asked.recipe->formula();
  *request.mutable_starter() = asked.starter;
  request.set_time_zone(asked.zone);
  const auto start = timeOf(command.start, asked.zone);
  if (!start)
    return wrongOption(environment, command.json, "--start", command.start,
                       "must be like \"2026-06-20 10:00\"");
  *request.mutable_start_time() = *start;
  request.set_stage(command.stage == "levain"  ? v1::FERMENT_STAGE_LEVAIN
                    : command.stage == "proof" ? v1::FERMENT_STAGE_PROOF
                                               : v1::FERMENT_STAGE_BULK);
  for (const std::string& stay : command.stays)
    if (!readStay(stay, *request.add_stays()))
      return wrongOption(environment, command.json, "--stay", stay, "must be degrees and hours, like 28:3");
  request.set_flour_per_starter(command.flourPerStarter);
  if (command.waterCelsius) request.set_water_celsius(*command.waterCelsius);
  const auto answer = asked.source.connection.session->forecastDough(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  environment.out << (command.json ? jsonOf(*answer) : forecastText(asked, answer->forecast(), environment));
  return kOk;
}

int runDoughFit(const DoughFitCommand& command, Environment& environment) {
  Asked asked;
  if (const int code = ask(command.file, command.recipe, command.json, environment, asked); code != kOk)
    return code;
  v1::FitDoughRequest request;
  *request.mutable_formula() = asked.recipe->formula();
  *request.mutable_starter() = asked.starter;
  request.set_time_zone(asked.zone);
  if (!readSpan(command, asked.zone, request))
    return wrongOption(environment, command.json, "--ready", command.ready,
                       "must be like \"2026-06-21 17:00-17:30\"");
  const std::vector<std::string> hours = absl::StrSplit(command.hours, '-');
  if (!command.hours.empty()) {
    request.mutable_work()->set_start(hours.front());
    request.mutable_work()->set_limit(hours.back());
  }
  const auto places = addPlaces(asked.source.bundle, command.counterCelsius, request);
  const auto answer = asked.source.connection.session->fitDough(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (command.json) {
    environment.out << jsonOf(*answer);
    return kOk;
  }
  const auto paragraph = [&](const std::string& words) {
    for (const std::string& line : wrap(words, environment.width)) environment.out << line << "\n";
  };
  if (answer->ways_size() == 0) {
    paragraph(answer->has_nearest() ? "There is no way to have it ready then. The nearest is:"
                                    : "There is no way to have it ready then, and nothing comes near: these "
                                      "places are too cold for it, or no hour of work is early enough.");
    if (answer->has_nearest())
      environment.out << wayText(asked, places, answer->nearest(), answer->nearest_reasons(),
                                 environment.width);
    return kPlanFallsShort;
  }
  const int shown = std::min(answer->ways_size(), std::max(1, command.most));
  paragraph(absl::StrCat(counted(answer->ways_size(), "way", "ways"), " to have ",
                         plainLine(asked.recipe->display_name()), " ready then, best first",
                         shown < answer->ways_size() ? absl::StrCat("; the first ", shown, ":") : ":"));
  for (int w = 0; w < shown; ++w)
    environment.out << "\n"
                    << w + 1 << ".\n"
                    << wayText(asked, places, answer->ways(w), answer->reasons(w), environment.width);
  return kOk;
}

int runBreadCheck(const BreadCheckCommand& command, Environment& environment) {
  auto connection = openLocal(environment, {});
  if (!connection.ok()) return reportFailure(environment, connection.status(), command.json);
  const auto answer = connection->session->checkModel({});
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (command.json) {
    environment.out << jsonOf(*answer);
    return kOk;
  }
  const auto number = [](double value) { return absl::StrFormat("%.4g", value); };
  Table table({{"Claim and source", false, 3}, {"Basis"}, {"Source says"}, {"Model"}, {""}});
  int misses = 0;
  for (const v1::ModelCheck& row : answer->checks()) {
    const std::string unit = row.unit().empty() ? "" : " " + row.unit();
    const std::string said =
        row.low() == row.high() ? number(row.low()) : number(row.low()) + "–" + number(row.high());
    Cell claim = {row.claim(), absl::StrCat("  ", row.source(), " (", row.reading(), ")")};
    if (!row.known_miss().empty()) claim.push_back("  missed: " + row.known_miss());
    misses += row.passes() ? 0 : 1;
    table.add({claim,
               {row.basis()},
               {said + unit},
               {row.has_model() ? number(row.model()) : "never"},
               {row.passes() ? "✓" : "✗"}});
  }
  environment.out << table.text(environment.width, Style(environment.colour), true) << "\n";
  for (const std::string& line :
       wrap(absl::StrCat(
                counted(answer->checks_size(), "row", "rows"), ", ", misses,
                " missed. Only independent rows speak for the model; fitted and taken-over ones agree "
                "by construction."),
            environment.width))
    environment.out << line << "\n";
  return kOk;
}

}  // namespace suppertide::terminal
