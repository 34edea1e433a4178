// Ways to have a dough ready at an hour.
#include <algorithm>
#include <optional>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "absl/strings/str_split.h"
#include "client/terminal/dough_source.h"
#include "client/terminal/dough_text.h"
#include "client/terminal/report.h"
#include "client/terminal/text.h"
#include "client/terminal/time_text.h"
#include "client/terminal/units.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

std::string placeWords(const std::vector<std::string>& names, const std::string& id) {
  for (std::size_t k = 0; k < names.size(); ++k)
    if (id == absl::StrCat("places[", k, "]")) return names[k];
  return id;
}

// What must be said before all else: a preferment that cannot be ripe then.
std::string unripeWords(const AskedBread& asked, const v1::DoughWayReasons& reasons) {
  std::string words;
  for (const std::string& id : reasons.unripe_preferment_ids())
    for (const v1::Preferment& preferment : asked.recipe.formula().preferments())
      if (preferment.id() == id)
        absl::StrAppend(&words, capitalised(plainLine(prefermentWords(preferment))),
                        " cannot be ripe at the mixing with work in these hours. ");
  return words;
}

std::string wayText(const AskedBread& asked, const std::vector<std::string>& places,
                    const v1::DoughForecast& way, const v1::DoughWayReasons& reasons, int width) {
  const Clock clock(asked.zone);
  const Units units(asked.bundle.household());
  std::string text;
  for (const v1::FermentForecast& stage : way.stages()) {
    const bool levain = stage.stage() == v1::FERMENT_STAGE_LEVAIN;
    const absl::Time start = toTime(stage.start_time());
    const absl::Time end = toTime(stage.end_time());
    std::string what = stageWords(stage.stage());
    for (const v1::Preferment& preferment : asked.recipe.formula().preferments())
      if (preferment.id() == stage.preferment_id()) what = prefermentWords(preferment);
    absl::StrAppend(&text, "   ", padRight(capitalised(plainLine(what)), 18), " ",
                    padRight(clock.dayHour(start) + "–" + clock.hourSeenFrom(start, end), 21), " ",
                    placeWords(places, stage.place_id()), levain ? ", fed " + way.levain_ratio() : "", "\n");
  }
  std::string why = unripeWords(asked, reasons);
  absl::StrAppend(&why, hasWater(asked.recipe.formula()) ? "Water at " : "Liquid at ",
                  units.degrees(way.water_celsius()));
  if (way.ice_g() >= 1) absl::StrAppend(&why, ", ", units.mass(way.ice_g()), " of it as ice,");
  absl::StrAppend(&why, " for a dough of ", units.degrees(reasons.dough_celsius()), "; ",
                  durationText(reasons.whole()), " in all");
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
  for (const std::string& line : wrapWords(why + ".", width - 3)) absl::StrAppend(&text, "   ", line, "\n");
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
      if (place.has_learned_warmth()) *stay.mutable_learned_warmth() = place.learned_warmth();
      if (counterCelsius && place.kind() == v1::PLACE_KIND_COUNTER) {
        stay.clear_learned_warmth();
        stay.mutable_temperature()->clear_celsius();
        stay.mutable_temperature()->add_celsius(*counterCelsius);
      }
      names.push_back(plainLine(place.display_name()));
    }
  return names;
}

std::optional<v1::PlaceKind> kindOf(const std::string& word) {
  if (word == "counter") return v1::PLACE_KIND_COUNTER;
  if (word == "proofer") return v1::PLACE_KIND_PROOFER;
  if (word == "light") return v1::PLACE_KIND_OVEN_LIGHT;
  if (word == "fridge") return v1::PLACE_KIND_FRIDGE;
  if (word == "cellar") return v1::PLACE_KIND_CELLAR;
  return std::nullopt;
}

// "counter:22" into a place and its name; false when it is not of that form.
bool readPlace(const std::string& text, v1::FitDoughRequest& request, std::vector<std::string>& names) {
  const std::vector<std::string> parts = absl::StrSplit(text, ':');
  double celsius = 0;
  if (parts.size() != 2 || !absl::SimpleAtod(parts[1], &celsius)) return false;
  const auto kind = kindOf(parts[0]);
  if (!kind) return false;
  v1::PlaceStay& stay = *request.add_places();
  stay.set_kind(*kind);
  stay.mutable_temperature()->add_celsius(celsius);
  names.push_back(parts[0] == "light" ? "Oven with its light on" : capitalised(parts[0]));
  return true;
}

bool readSpan(const DoughFitCommand& command, const std::string& zone, v1::FitDoughRequest& request) {
  // "2026-06-21 17:00-17:30": the day holds dashes too.
  const std::size_t dash = command.ready.rfind('-');
  if (dash == std::string::npos || dash < 11) return false;
  const auto start = readTime(command.ready.substr(0, dash), zone);
  const auto limit = readTime(command.ready.substr(0, 11) + command.ready.substr(dash + 1), zone);
  if (!start || !limit) return false;
  *request.mutable_ready()->mutable_start() = *start;
  *request.mutable_ready()->mutable_limit() = *limit;
  return true;
}

// How the first way of the kitchen as asked differs from that of the kitchen as it is.
std::string comparison(const AskedBread& asked, const v1::FitDoughResponse& now,
                       const v1::FitDoughResponse& then, double celsius) {
  const Units units(asked.bundle.household());
  const Clock clock(asked.zone);
  const auto first = [](const v1::FitDoughResponse& answer) {
    return answer.ways_size() > 0 ? &answer.ways(0) : answer.has_nearest() ? &answer.nearest() : nullptr;
  };
  const auto reasons = [](const v1::FitDoughResponse& answer) {
    return answer.ways_size() > 0 ? answer.reasons(0) : answer.nearest_reasons();
  };
  const std::string there = absl::StrCat("with the counter at ", units.degrees(celsius));
  if (first(now) == nullptr || first(then) == nullptr)
    return absl::StrCat(counted(now.ways_size(), "way", "ways"), " as the kitchen is, ", then.ways_size(),
                        " ", there, ".");
  const auto begins = [&](const v1::FitDoughResponse& answer) {
    return clock.dayHour(toTime(first(answer)->stages(0).start_time()));
  };
  return absl::StrCat(
      "As the kitchen is there ",
      now.ways_size() == 1 ? "is 1 way" : absl::StrCat("are ", now.ways_size(), " ways"),
      ", the first begins ", begins(now), " and takes ", durationText(reasons(now).whole()), "; ", there,
      " there ", then.ways_size() == 1 ? "is 1" : absl::StrCat("are ", then.ways_size()),
      ", the first begins ", begins(then), " and takes ", durationText(reasons(then).whole()), ".");
}

void printWays(const AskedBread& asked, const std::vector<std::string>& places,
               const v1::FitDoughResponse& answer, int most, Environment& environment) {
  const auto paragraph = [&](const std::string& words) {
    for (const std::string& line : wrapWords(words, environment.width)) environment.out << line << "\n";
  };
  if (answer.ways_size() == 0) {
    paragraph(answer.has_nearest() ? "There is no way to have it ready then. The nearest is:"
                                   : "There is no way to have it ready then, and nothing comes near: these "
                                     "places are too cold for it, or no hour of work is early enough.");
    if (answer.has_nearest())
      environment.out << wayText(asked, places, answer.nearest(), answer.nearest_reasons(),
                                 environment.width);
    return;
  }
  const int shown = std::min(answer.ways_size(), std::max(1, most));
  paragraph(absl::StrCat(counted(answer.ways_size(), "way", "ways"), " to have ",
                         plainLine(asked.recipe.display_name()), " ready then, best first",
                         shown < answer.ways_size() ? absl::StrCat("; the first ", shown, ":") : ":"));
  for (int w = 0; w < shown; ++w)
    environment.out << "\n"
                    << w + 1 << ".\n"
                    << wayText(asked, places, answer.ways(w), answer.reasons(w), environment.width);
}

}  // namespace

int runDoughFit(const DoughFitCommand& command, Environment& environment) {
  AskedBread asked;
  if (const int code = askBread(command.bread, command.json, environment, asked); code != kOk) return code;
  v1::FitDoughRequest request;
  *request.mutable_formula() = asked.recipe.formula();
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
  std::vector<std::string> places;
  for (const std::string& place : command.places)
    if (!readPlace(place, request, places))
      return wrongOption(environment, command.json, "--place", place,
                         "must be counter, proofer, light, cellar or fridge and degrees, like counter:22");
  v1::FitDoughRequest asIs = request;
  if (command.places.empty()) {
    places = addPlaces(asked.bundle, command.counterCelsius, request);
    addPlaces(asked.bundle, std::nullopt, asIs);
  }
  if (request.places().empty())
    return wrongOption(environment, command.json, "--place", "",
                       "say where it may stand, like --place counter:22: the file has no kitchen");
  const auto answer = asked.connection.session->fitDough(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  const int exitCode = answer->ways_size() > 0 ? kOk : kPlanFallsShort;
  if (command.json) {
    environment.out << jsonOf(*answer);
    return exitCode;
  }
  if (command.counterCelsius && command.places.empty()) {
    const auto now = asked.connection.session->fitDough(asIs);
    if (!now.ok()) return reportFailure(environment, now.status(), command.json);
    for (const std::string& line :
         wrapWords(comparison(asked, *now, *answer, *command.counterCelsius), environment.width))
      environment.out << line << "\n";
    environment.out << "\n";
  }
  printWays(asked, places, *answer, command.most, environment);
  return exitCode;
}

}  // namespace suppertide::terminal
