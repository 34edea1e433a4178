// Forecasts of doughs outside any plan.
#include <cmath>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "client/terminal/dough_source.h"
#include "client/terminal/dough_text.h"
#include "client/terminal/report.h"
#include "client/terminal/rise_chart.h"
#include "client/terminal/text.h"
#include "client/terminal/units.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

// The kitchens' place of that id or name; null when there is none.
const v1::Place* placeNamed(const v1::Bundle& bundle, const std::string& name) {
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    for (const v1::Place& place : kitchen.places())
      if (place.id() == name || place.display_name() == name) return &place;
  return nullptr;
}

// "28:3", "28:2.5h" or "counter:3": degrees or a place, and hours.
bool readStay(const std::string& text, const v1::Bundle& bundle, v1::PlaceStay& stay) {
  const std::size_t colon = text.rfind(':');
  if (colon == std::string::npos) return false;
  const std::string where = text.substr(0, colon);
  std::string length = text.substr(colon + 1);
  double celsius = 0;
  double hours = 0;
  if (!length.empty() && length.back() == 'h') length.pop_back();
  if (!absl::SimpleAtod(length, &hours) || !(std::abs(hours) < 1e4)) return false;
  stay.mutable_duration()->set_seconds(std::lround(hours * 60) * 60);
  if (absl::SimpleAtod(where, &celsius)) {
    stay.mutable_temperature()->add_celsius(celsius);
    return true;
  }
  const v1::Place* place = placeNamed(bundle, where);
  if (place == nullptr) return false;
  stay.set_kind(place->kind());
  *stay.mutable_temperature() = place->temperature();
  if (place->has_learned_warmth()) *stay.mutable_learned_warmth() = place->learned_warmth();
  return true;
}

std::string staysAllowed(const v1::Bundle& bundle) {
  std::string allowed = "must be degrees and hours, like 28:3";
  std::string known;
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    for (const v1::Place& place : kitchen.places())
      absl::StrAppend(&known, known.empty() ? "" : ", ", place.id());
  return known.empty() ? allowed
                       : absl::StrCat(allowed, ", or a place of the kitchen and hours: ", plainLine(known));
}

std::string whatFerments(const AskedBread& asked, const v1::FermentForecast& told) {
  for (const v1::Preferment& preferment : asked.recipe.formula().preferments())
    if (preferment.id() == told.preferment_id()) return prefermentWords(preferment);
  return stageWords(told.stage());
}

template <typename At>
std::string notReadyWords(const v1::ForecastDoughResponse& answer, At at) {
  const v1::FermentForecast& told = answer.forecast();
  std::string words = absl::StrCat("These places end before it is ready: at ", at(told.end_time()),
                                   " it has risen to ", absl::StrFormat("%.2f", told.rise_at_end()),
                                   " and needs ", absl::StrFormat("%.2f", told.low_rise()), ". ");
  if (answer.has_ready_if_left_time())
    return words + "Left in the last of them it would be ready from " + at(answer.ready_if_left_time()) +
           " on.";
  return words + "Left in the last of them it would not be ready within three days: give it a warmer place.";
}

std::string forecastText(const AskedBread& asked, const v1::ForecastDoughResponse& answer,
                         const Environment& environment) {
  const v1::FermentForecast& told = answer.forecast();
  const Clock clock(asked.zone);
  const Units units(asked.bundle.household());
  const auto at = [&](const google::protobuf::Timestamp& time) {
    return clock.hourSeenFrom(toTime(told.start_time()), toTime(time));
  };
  std::string text =
      absl::StrCat(plainLine(asked.recipe.display_name()), ", ", whatFerments(asked, told), " from ",
                   clock.spanWithDay(toTime(told.start_time()), toTime(told.end_time())), "\n\n",
                   riseChart(told, clock, units, environment.width), "\n");
  std::string words;
  if (told.has_best_time()) {
    // A window that the places cut short does not end there.
    const bool cut = told.ready_until_time().seconds() >= told.end_time().seconds();
    words = absl::StrCat("Ready from ", at(told.ready_from_time()),
                         cut ? " on, still when these places end" : " to " + at(told.ready_until_time()),
                         ", best at ", at(told.best_time()), " (risen to ",
                         absl::StrFormat("%.2f", told.wanted_rise()), ").");
    if (told.has_fast_time())
      absl::StrAppend(&words, " One in ten is at its best before ", at(told.fast_time()), ".");
    if (told.has_slow_time())
      absl::StrAppend(&words, " One in ten is at its best after ", at(told.slow_time()), ".");
  } else {
    words = notReadyWords(answer, at);
  }
  absl::StrAppend(&words, " At the end it is at ", units.degrees(told.celsius_at_end()),
                  ". A forecast is a help: watch the dough, not the clock.");
  for (const std::string& line : wrapWords(words, environment.width)) absl::StrAppend(&text, line, "\n");
  return text;
}

// The stage by its word, or the preferment of that id; false when there is no such.
bool setStage(const std::string& stage, const v1::BreadFormula& formula, v1::ForecastDoughRequest& request) {
  if (stage == "levain") request.set_stage(v1::FERMENT_STAGE_LEVAIN);
  if (stage == "bulk") request.set_stage(v1::FERMENT_STAGE_BULK);
  if (stage == "proof") request.set_stage(v1::FERMENT_STAGE_PROOF);
  for (const v1::Preferment& preferment : formula.preferments()) {
    if (preferment.id() != stage) continue;
    request.set_stage(v1::FERMENT_STAGE_PREFERMENT);
    request.set_preferment_id(stage);
  }
  return request.stage() != v1::FERMENT_STAGE_UNSPECIFIED;
}

std::string stagesAllowed(const v1::BreadFormula& formula) {
  std::string allowed = "must be levain, bulk or proof";
  for (const v1::Preferment& preferment : formula.preferments())
    absl::StrAppend(&allowed, ", or the preferment ", preferment.id());
  return allowed;
}

}  // namespace

int runDough(const DoughCommand& command, Environment& environment) {
  AskedBread asked;
  if (const int code = askBread(command.bread, command.json, environment, asked); code != kOk) return code;
  v1::ForecastDoughRequest request;
  *request.mutable_formula() = asked.recipe.formula();
  *request.mutable_starter() = asked.starter;
  request.set_time_zone(asked.zone);
  const auto start = readTime(command.start, asked.zone);
  if (!start)
    return wrongOption(environment, command.json, "--start", command.start,
                       "must be like \"2026-06-20 10:00\"");
  *request.mutable_start_time() = *start;
  if (!setStage(command.stage, asked.recipe.formula(), request))
    return wrongOption(environment, command.json, "--stage", command.stage,
                       stagesAllowed(asked.recipe.formula()));
  if (command.stays.empty())
    return wrongOption(environment, command.json, "--stay", "",
                       "say where it stands: degrees and hours, like 28:3");
  for (const std::string& stay : command.stays)
    if (!readStay(stay, asked.bundle, *request.add_stays()))
      return wrongOption(environment, command.json, "--stay", stay, staysAllowed(asked.bundle));
  request.set_flour_per_starter(command.flourPerStarter);
  if (command.stage == "levain" && command.flourPerStarter == 0)
    return wrongOption(environment, command.json, "--ratio", "",
                       "say how it is fed: parts of flour on 1 of starter, like 2");
  if (command.waterCelsius) request.set_water_celsius(*command.waterCelsius);
  const auto answer = asked.connection.session->forecastDough(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  environment.out << (command.json ? jsonOf(*answer) : forecastText(asked, *answer, environment));
  return kOk;
}

}  // namespace suppertide::terminal
