#include "server/service/validate_doughs.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/validate/documents.h"
#include "server/compose/validate/formula_parts.h"

namespace suppertide::compose {
namespace {

constexpr int kMostStays = 24;
constexpr int kMostPlaces = 8;
constexpr int kLeastStayMinutes = 5;
constexpr int kMostReadyMinutes = 24 * kMinutesPerHour;
constexpr double kLeastFlourPerStarter = 0.2;
constexpr double kMostFlourPerStarter = 50;
constexpr int kMostEdits = 40;
constexpr int kMostSeen = 50;
constexpr double kMostDoughGrams = 200'000;

template <typename Request>
void checkCommon(const Checker& here, const Request& request) {
  if (!request.has_formula())
    here.at("formula").wrong("", "a bread formula is needed");
  else
    checkFormula(here.at("formula"), request.formula());
  if (request.has_starter()) checkStarter(here.at("starter"), request.starter());
  if (request.formula().has_levain() && !request.has_starter())
    here.at("starter").wrong("", "the levain needs a starter");
  if (!isTimeZone(request.time_zone()))
    here.at("timeZone").wrong(request.time_zone(), "must be a time zone like Europe/Vienna");
}

void checkPlace(const Checker& here, const v1::PlaceStay& place) {
  here.at("kind").known(place.kind(), "a kind of place");
  if (place.has_learned_warmth())
    checkLearned(here.at("learnedWarmth"), place.learned_warmth(), v1::EFFECT_KIND_WARMTH);
  here.at("temperature").temperatures(place.temperature());
}

void checkStays(const Checker& here, const v1::ForecastDoughRequest& request) {
  if (!here.at("stays").count(request.stays_size(), 1, kMostStays, "places, one after the other")) return;
  std::int64_t total = 0;
  bool good = true;
  for (int i = 0; i < request.stays_size(); ++i) {
    const Checker stay = here.at("stays", i);
    checkPlace(stay, request.stays(i));
    if (!request.stays(i).has_duration())
      good = stay.at("duration").wrong("", "say how long it stands there, so that the places cover the time");
    else
      good =
          stay.at("duration")
              .minutes(request.stays(i).duration(), kLeastStayMinutes, kMostDoughHours * kMinutesPerHour) &&
          good;
    total += minutesIn(request.stays(i).duration());
  }
  if (good && total > kMostDoughHours * kMinutesPerHour)
    here.at("stays").wrong(minutesAsText(total),
                           absl::StrCat("may last ", kMostDoughHours, " hours together"));
}

void checkReady(const Checker& here, const v1::FitDoughRequest& request) {
  if (!here.at("ready").span(request.has_ready(), request.ready())) return;
  const std::int64_t minutes = (request.ready().limit().seconds() - request.ready().start().seconds()) / 60;
  if (minutes > kMostReadyMinutes)
    here.at("ready").wrong(minutesAsText(minutes), "the wanted span may be 24 hours at most");
  if (!request.has_earliest_start_time()) return;
  const Checker earliest = here.at("earliestStartTime");
  if (!earliest.time(true, request.earliest_start_time())) return;
  const std::int64_t ahead = request.ready().start().seconds() - request.earliest_start_time().seconds();
  if (ahead <= 0) earliest.wrong("", "must be before the wanted span");
  if (ahead > kMostDoughHours * 3600)
    earliest.wrong(minutesAsText(ahead / 60),
                   absl::StrCat("must be at most ", kMostDoughHours, " hours before the wanted span"));
}

void checkPreferment(const Checker& here, const v1::ForecastDoughRequest& request) {
  const std::string& id = request.preferment_id();
  if (request.stage() != v1::FERMENT_STAGE_PREFERMENT) {
    if (!id.empty()) here.wrong(id, "only with the stage preferment");
    return;
  }
  const auto& all = request.formula().preferments();
  if (std::none_of(all.begin(), all.end(), [&](const v1::Preferment& one) { return one.id() == id; }))
    here.wrong(id, "must be the id of one of the formula's preferments");
}

void checkEdit(const Checker& here, const v1::FormulaEdit& edit) {
  const bool named = edit.has_percent() || edit.has_mass_g() || edit.has_remove();
  if (named) here.at("lineName").text(edit.line_name(), 100);
  if (edit.has_percent()) here.at("percent").range(edit.percent(), 0, 300, "% of the flour");
  if (edit.has_mass_g()) here.at("massG").range(edit.mass_g(), 0, kMostDoughGrams, "g");
  if (edit.change_case() == v1::FormulaEdit::CHANGE_NOT_SET)
    here.wrong("", "say what changes: percent, massG, remove, add or restore");
  if (edit.has_restore()) {
    here.at("restore").at("lines").count(edit.restore().lines_size(), 2, 40, "lines");
    here.at("restore").at("pieceCount").range(edit.restore().piece_count(), 1, 500, "pieces");
    here.at("restore").at("pieceMassG").range(edit.restore().piece_mass_g(), 20, 5000, "g");
  }
}

void checkPans(const Checker& here, const v1::PanAmount& pans) {
  here.at("count").range(pans.count(), 1, 50, "pans");
  here.at("lengthMm").zeroOrRange(pans.length_mm(), 30, 1000, "mm");
  here.at("widthMm").zeroOrRange(pans.width_mm(), 30, 1000, "mm");
  here.at("diameterMm").zeroOrRange(pans.diameter_mm(), 30, 1000, "mm");
  here.at("heightMm").zeroOrRange(pans.height_mm(), 20, 300, "mm");
  here.at("mlPerG").zeroOrRange(pans.ml_per_g(), 1, 6, "ml on a gram of dough");
  const bool round = pans.diameter_mm() > 0;
  if (round == (pans.length_mm() > 0 && pans.width_mm() > 0))
    here.wrong("", "say length and width, or the diameter of a round pan");
}

void checkAmount(const Checker& here, const v1::DoughAmount& amount) {
  switch (amount.wanted_case()) {
    case v1::DoughAmount::kPieces:
      here.at("pieces").at("count").range(amount.pieces().count(), 1, 500, "pieces");
      here.at("pieces").at("massG").zeroOrRange(amount.pieces().mass_g(), 20, 5000, "g");
      return;
    case v1::DoughAmount::kFlourG:
      here.at("flourG").range(amount.flour_g(), 50, kMostDoughGrams / 2, "g of flour");
      return;
    case v1::DoughAmount::kDoughG:
      here.at("doughG").range(amount.dough_g(), 100, kMostDoughGrams, "g of dough");
      return;
    case v1::DoughAmount::kPans:
      return checkPans(here.at("pans"), amount.pans());
    case v1::DoughAmount::kGuests:
      here.at("guests").at("count").range(amount.guests().count(), 1, 500, "guests");
      here.at("guests").at("servingCount").range(amount.guests().serving_count(), 1, 500, "guests");
      return;
    case v1::DoughAmount::WANTED_NOT_SET:
      here.wrong("", "say how much: pieces, flour, dough, pans or guests");
  }
}

}  // namespace

Violations validate(const v1::AddBreadReadingsRequest& request) {
  Violations violations;
  const Checker here(violations);
  if (here.at("observations").count(request.observations_size(), 0, kMostSeen, "observations"))
    for (int i = 0; i < request.observations_size(); ++i) {
      const Checker reading = here.at("observations", i);
      reading.at("starterId").id(request.observations(i).starter_id());
      checkObservation(reading.at("observation"), request.observations(i).observation());
    }
  if (here.at("mixings").count(request.mixings_size(), 0, kMostSeen, "readings"))
    for (int i = 0; i < request.mixings_size(); ++i) {
      const Checker reading = here.at("mixings", i);
      reading.at("recipeId").id(request.mixings(i).recipe_id());
      checkMixReading(reading.at("reading"), request.mixings(i).reading());
    }
  return violations;
}

Violations validate(const v1::WorkOutDoughRequest& request) {
  Violations violations;
  const Checker here(violations);
  if (!request.has_formula())
    here.at("formula").wrong("", "a bread formula is needed");
  else
    checkFormula(here.at("formula"), request.formula());
  if (request.has_starter()) checkStarter(here.at("starter"), request.starter());
  if (here.at("edits").count(request.edits_size(), 0, kMostEdits, "edits"))
    for (int i = 0; i < request.edits_size(); ++i) checkEdit(here.at("edits", i), request.edits(i));
  if (request.has_amount()) checkAmount(here.at("amount"), request.amount());
  if (request.has_room_celsius()) here.at("roomCelsius").range(request.room_celsius(), 0, 45, "°C");
  if (request.has_flour_celsius()) here.at("flourCelsius").range(request.flour_celsius(), -25, 45, "°C");
  if (request.has_preferment_celsius())
    here.at("prefermentCelsius").range(request.preferment_celsius(), 0, 45, "°C");
  here.at("flourPerStarter")
      .zeroOrRange(request.flour_per_starter(), kLeastFlourPerStarter, kMostFlourPerStarter,
                   "flour on 1 of starter");
  return violations;
}

Violations validate(const v1::ForecastDoughRequest& request) {
  Violations violations;
  const Checker here(violations);
  checkCommon(here, request);
  here.at("startTime").time(request.has_start_time(), request.start_time());
  here.at("stage").chosen(request.stage(), "what ferments: levain, preferment, bulk or proof");
  checkStays(here, request);
  const Checker ratio = here.at("flourPerStarter");
  if (request.stage() == v1::FERMENT_STAGE_LEVAIN) {
    ratio.range(request.flour_per_starter(), kLeastFlourPerStarter, kMostFlourPerStarter,
                "flour on 1 of starter");
    if (!request.formula().has_levain()) here.at("formula.levain").wrong("", "this dough has no levain");
  } else {
    ratio.zeroOrRange(request.flour_per_starter(), kLeastFlourPerStarter, kMostFlourPerStarter,
                      "flour on 1 of starter");
  }
  checkPreferment(here.at("prefermentId"), request);
  if (request.has_water_celsius()) here.at("waterCelsius").range(request.water_celsius(), 0, 60, "°C");
  return violations;
}

Violations validate(const v1::FitDoughRequest& request) {
  Violations violations;
  const Checker here(violations);
  checkCommon(here, request);
  checkReady(here, request);
  if (request.has_work()) here.at("work").hours(request.work());
  if (here.at("places").count(request.places_size(), 1, kMostPlaces, "places")) {
    bool warm = false;
    for (int i = 0; i < request.places_size(); ++i) {
      checkPlace(here.at("places", i), request.places(i));
      warm = warm || request.places(i).kind() != v1::PLACE_KIND_FRIDGE;
    }
    if (!warm) here.at("places").wrong("only a fridge", "levain and bulk need a place that is not a fridge");
  }
  return violations;
}

}  // namespace suppertide::compose
