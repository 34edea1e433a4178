#include "server/service/validate_doughs.h"

#include "absl/strings/str_cat.h"
#include "server/compose/validate/documents.h"

namespace suppertide::compose {
namespace {

constexpr int kMostStays = 24;
constexpr int kMostPlaces = 8;
constexpr int kLeastStayMinutes = 5;
constexpr int kMostReadyMinutes = 24 * kMinutesPerHour;
constexpr double kLeastFlourPerStarter = 0.2;
constexpr double kMostFlourPerStarter = 50;

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

}  // namespace

Violations validate(const v1::ForecastDoughRequest& request) {
  Violations violations;
  const Checker here(violations);
  checkCommon(here, request);
  here.at("startTime").time(request.has_start_time(), request.start_time());
  here.at("stage").chosen(request.stage(), "what ferments: levain, bulk or proof");
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
