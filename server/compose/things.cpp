#include <algorithm>
#include <cmath>
#include <memory>

#include "absl/strings/str_cat.h"
#include "server/compose/oven_curves.h"
#include "server/compose/parts.h"
#include "server/compose/shelf_fit.h"

namespace suppertide::compose {
namespace {

absl::StatusOr<kitchen::Oven> ovenOf(const v1::Oven& from, const v1::Kitchen& kitchen) {
  kitchen::Oven oven = plainOven(from);
  for (const v1::Place& place : kitchen.places())
    if (place.kind() == v1::PLACE_KIND_OVEN_LIGHT && place.oven_id() == from.id() &&
        place.temperature().celsius_size() > 0)
      oven.lightCelsius = std::round(place.temperature().celsius(0));
  const FittedOven fitted = fitOven(from);
  if (!fitted.violations.empty()) {
    const v1::FieldViolation& first = fitted.violations.front();
    return absl::InvalidArgumentError(absl::StrCat("oven ", from.display_name(), ": ", first.field_path(),
                                                   ": ", first.value(), " ", first.description()));
  }
  oven.curve = fitted.after;
  if (auto status = kitchen::check(oven); !status.ok()) return status;
  return oven;
}

int addResource(Composition& composition, const std::string& id, int capacity) {
  planning::Resource resource;
  resource.id = id;
  resource.capacity = capacity;
  for (const v1::Unavailable& away : composition.documents.event.unavailable()) {
    if (away.thing_id() != id) continue;
    resource.taken.push_back(
        {{composition.axis.minuteOf(away.when().start()), composition.axis.minuteOf(away.when().limit())},
         capacity});
  }
  composition.problem.resources.push_back(std::move(resource));
  composition.resourceIds.push_back(id);
  return static_cast<int>(composition.problem.resources.size()) - 1;
}

}  // namespace

kitchen::Pan panOf(const planning::Load& load) {
  return {load.widthMm, load.depthMm, load.heightMm, load.panCount};
}

bread::TemperatureByHour airOf(const v1::Place& place) {
  return airOf(place.temperature(), place.learned_warmth());
}

absl::Status addThings(Composition& composition) {
  const v1::Kitchen& kitchen = composition.documents.kitchen;
  for (const v1::Oven& from : kitchen.ovens()) {
    auto oven = ovenOf(from, kitchen);
    if (!oven.ok()) return oven.status();
    planning::Oven planned;
    planned.id = from.id();
    planned.racks = std::make_shared<ShelfFit>(*oven);
    for (const v1::Unavailable& away : composition.documents.event.unavailable())
      if (away.thing_id() == from.id())
        planned.closed.push_back(
            {composition.axis.minuteOf(away.when().start()), composition.axis.minuteOf(away.when().limit())});
    composition.ovens.push_back(*std::move(oven));
    composition.problem.ovens.push_back(std::move(planned));
  }
  composition.burnerResource = addResource(composition, "burners", kitchen.burner_count());
  for (const v1::Equipment& thing : kitchen.equipment()) addResource(composition, thing.id(), thing.count());
  for (const v1::Place& place : kitchen.places()) {
    const bool counted = place.has_volume_l() && place.kind() != v1::PLACE_KIND_OVEN_LIGHT;
    // Tenths of a litre, so that small bowls are not rounded to nothing.
    composition.placeResource.push_back(
        counted ? addResource(composition, place.id(), static_cast<int>(std::lround(place.volume_l() * 10)))
                : -1);
  }
  return absl::OkStatus();
}

bool usePlace(const Composition& composition, int place, double litres, planning::Mode& mode) {
  const int resource = composition.placeResource[static_cast<std::size_t>(place)];
  if (resource < 0 || litres <= 0) return true;
  const int amount = std::max(1, static_cast<int>(std::lround(litres * 10)));
  if (amount > composition.problem.resources[static_cast<std::size_t>(resource)].capacity) return false;
  mode.uses.push_back({resource, amount});
  return true;
}

int proofingSetpoint(const Composition& composition, int oven) {
  const auto index = static_cast<std::size_t>(oven);
  const auto& light = composition.ovens[index].lightCelsius;
  const auto& setpoints = composition.problem.ovens[index].setpoints;
  if (!light) return -1;
  const auto found = std::find(setpoints.begin(), setpoints.end(), static_cast<int>(std::lround(*light)));
  return found == setpoints.end() ? -1 : static_cast<int>(found - setpoints.begin());
}

}  // namespace suppertide::compose
