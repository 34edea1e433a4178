#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/oven_curves.h"
#include "server/compose/validate/documents.h"
#include "server/compose/validate/formula_parts.h"

namespace suppertide::compose {
namespace {

constexpr int kMostOvens = 8;
constexpr int kMostRacks = 10;
constexpr int kMostEquipment = 100;
constexpr int kMostPlaces = 30;
constexpr int kMostOvenReadings = 200;

template <typename Readings>
void checkReadings(const Checker& here, std::string_view list, const Readings& readings) {
  if (!here.at(list).count(readings.size(), 0, kMostOvenReadings, "readings")) return;
  for (int i = 0; i < readings.size(); ++i) {
    const Checker reading = here.at(list, i);
    const auto seconds = readings[i].after().seconds();
    if (seconds < 0 || seconds > kMinutesPerDay * 60)
      reading.at("after").wrong(absl::StrCat(seconds, "s"), "must be between 0 and 24 hours");
    else if (i > 0 && seconds <= readings[i - 1].after().seconds())
      reading.at("after").wrong(absl::StrCat(seconds, "s"), "must be after the reading listed before it");
    reading.at("celsius").range(readings[i].celsius(), -20, 500, "°C");
  }
}

// Timed on cooking days: rises, or falls with the door ajar.
void checkTimed(const Checker& here, std::string_view list,
                const google::protobuf::RepeatedPtrField<v1::HeatRise>& timed, bool rises) {
  if (!here.at(list).count(timed.size(), 0, kMostOvenReadings, rises ? "timed rises" : "timed falls")) return;
  for (int i = 0; i < timed.size(); ++i) {
    const Checker one = here.at(list, i);
    const bool from = one.at("fromCelsius").range(timed[i].from_celsius(), -20, 500, "°C");
    const bool to = one.at("toCelsius").range(timed[i].to_celsius(), -20, 500, "°C");
    const double up = timed[i].to_celsius() - timed[i].from_celsius();
    if (from && to && (rises ? up <= 0 : up >= 0))
      one.at("toCelsius")
          .wrong(absl::StrCat(timed[i].to_celsius()),
                 absl::StrCat(rises ? "must be above where it began, " : "must be below where it began, ",
                              timed[i].from_celsius(), " °C"));
    one.at("duration").minutes(timed[i].duration(), 1, 2 * kMinutesPerHour);
  }
}

// Each reading by itself; then, when they are all in order, what no oven can give.
void checkCurve(const Checker& here, const v1::Oven& oven) {
  Violations wrong;
  const Checker curve = Checker(wrong).at("heatCurve");
  checkReadings(curve, "heating", oven.heat_curve().heating());
  checkReadings(curve, "cooling", oven.heat_curve().cooling());
  checkReadings(curve, "coolingAjar", oven.heat_curve().cooling_ajar());
  checkTimed(curve, "rises", oven.heat_curve().rises(), true);
  checkTimed(curve, "fallsAjar", oven.heat_curve().falls_ajar(), false);
  if (wrong.empty() && oven.has_heat_curve()) wrong = fitOven(oven).violations;
  for (const v1::FieldViolation& one : wrong) here.at(one.field_path()).wrong(one.value(), one.description());
}

void checkOven(const Checker& here, const v1::Oven& oven) {
  here.at("id").id(oven.id());
  here.at("displayName").text(oven.display_name(), 60);
  const bool least = here.at("minSetpointCelsius").range(oven.min_setpoint_celsius(), 40, 350, "°C");
  const bool most = here.at("maxSetpointCelsius").range(oven.max_setpoint_celsius(), 40, 350, "°C");
  if (least && most && oven.min_setpoint_celsius() > oven.max_setpoint_celsius())
    here.at("maxSetpointCelsius")
        .wrong(absl::StrCat(oven.max_setpoint_celsius()),
               absl::StrCat("must not be below the lowest, ", oven.min_setpoint_celsius(), " °C"));
  here.at("setpointStepCelsius").zeroOrRange(oven.setpoint_step_celsius(), 1, 50, "°C");
  if (here.at("rackClearHeightMm").count(oven.rack_clear_height_mm_size(), 1, kMostRacks, "rack positions"))
    for (int i = 0; i < oven.rack_clear_height_mm_size(); ++i)
      here.at("rackClearHeightMm", i).range(oven.rack_clear_height_mm(i), 20, 1000, "mm");
  here.at("shelfWidthMm").range(oven.shelf_width_mm(), 100, 2000, "mm");
  here.at("shelfDepthMm").range(oven.shelf_depth_mm(), 100, 2000, "mm");
  checkCurve(here, oven);
  here.at("stoneSoakDuration").minutes(oven.stone_soak_duration(), 0, 3 * kMinutesPerHour);
}

void checkPlace(const Checker& here, const v1::Place& place, const v1::Kitchen& kitchen) {
  here.at("id").id(place.id());
  here.at("displayName").optionalText(place.display_name());
  here.at("kind").chosen(place.kind(),
                         "a kind of place: counter, proofer, oven with its light on, fridge, "
                         "freezer, cellar or warmer");
  here.at("temperature").temperatures(place.temperature());
  if (place.has_learned_warmth())
    checkLearned(here.at("learnedWarmth"), place.learned_warmth(), v1::EFFECT_KIND_WARMTH);
  if (place.has_volume_l()) here.at("volumeL").aboveZero(place.volume_l(), 5000, "litres");
  const Checker oven = here.at("ovenId");
  if (place.kind() == v1::PLACE_KIND_OVEN_LIGHT) {
    const bool found = std::any_of(kitchen.ovens().begin(), kitchen.ovens().end(),
                                   [&](const v1::Oven& o) { return o.id() == place.oven_id(); });
    if (!found) oven.wrong(place.oven_id(), "must be an oven of this kitchen");
  } else if (!place.oven_id().empty()) {
    oven.wrong(place.oven_id(), "must be empty unless the place is an oven with its light on");
  }
}

}  // namespace

void checkKitchen(const Checker& here, const v1::Kitchen& kitchen) {
  here.at("id").id(kitchen.id());
  here.at("displayName").text(kitchen.display_name(), 100);
  here.at("burnerCount").range(kitchen.burner_count(), 0, 12, "burners");
  // One space of ids: an event says "this thing is not to be had" without its kind.
  Once ids;
  if (here.at("ovens").count(kitchen.ovens_size(), 0, kMostOvens, "ovens"))
    for (int i = 0; i < kitchen.ovens_size(); ++i) {
      checkOven(here.at("ovens", i), kitchen.ovens(i));
      ids.add(here.at("ovens", i).at("id"), kitchen.ovens(i).id());
    }
  if (here.at("equipment").count(kitchen.equipment_size(), 0, kMostEquipment, "things"))
    for (int i = 0; i < kitchen.equipment_size(); ++i) {
      const Checker thing = here.at("equipment", i);
      thing.at("id").id(kitchen.equipment(i).id());
      ids.add(thing.at("id"), kitchen.equipment(i).id());
      thing.at("displayName").optionalText(kitchen.equipment(i).display_name());
      thing.at("count").range(kitchen.equipment(i).count(), 1, 100);
    }
  if (here.at("places").count(kitchen.places_size(), 0, kMostPlaces, "places"))
    for (int i = 0; i < kitchen.places_size(); ++i) {
      checkPlace(here.at("places", i), kitchen.places(i), kitchen);
      ids.add(here.at("places", i).at("id"), kitchen.places(i).id());
    }
}

Violations validate(const v1::Kitchen& kitchen) {
  Violations violations;
  checkKitchen(Checker(violations), kitchen);
  return violations;
}

}  // namespace suppertide::compose
