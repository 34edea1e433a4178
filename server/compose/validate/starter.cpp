#include "server/compose/validate/documents.h"

namespace suppertide::compose {
namespace {

constexpr int kMostObservations = 500;
constexpr double kMostParts = 200;  // flour or water on 1 of starter

void checkObservation(const Checker& here, const v1::StarterObservation& seen) {
  const bool fed = here.at("feedTime").time(seen.has_feed_time(), seen.feed_time());
  const bool observed = here.at("observeTime").time(seen.has_observe_time(), seen.observe_time());
  if (fed && observed && seen.observe_time().seconds() <= seen.feed_time().seconds())
    here.at("observeTime").wrong("", "must be after the feeding");
  here.at("flourPerStarter").aboveZero(seen.flour_per_starter(), kMostParts, "parts");
  here.at("waterPerStarter").range(seen.water_per_starter(), 0, kMostParts, "parts");
  here.at("rise").range(seen.rise(), 1, 6);
  here.at("celsius").range(seen.celsius(), -40, 60, "°C");
}

}  // namespace

void checkStarter(const Checker& here, const v1::Starter& starter) {
  here.at("id").id(starter.id());
  here.at("displayName").text(starter.display_name(), 100);
  here.at("hydrationPercent").zeroOrRange(starter.hydration_percent(), 40, 200, "%");
  here.at("wholeGrainPercent").range(starter.whole_grain_percent(), 0, 100, "%");
  here.at("condition").known(starter.condition(), "a way it is kept: mature, at its peak or from the fridge");
  here.at("vigour").zeroOrRange(starter.vigour(), 0.4, 2.5);
  here.at("vigourSpread").zeroOrRange(starter.vigour_spread(), 0.02, 1);
  if (starter.has_last_fed_time()) here.at("lastFedTime").time(true, starter.last_fed_time());
  const auto& all = starter.observations();
  if (!here.at("observations").count(all.size(), 0, kMostObservations, "observations")) return;
  for (int i = 0; i < all.size(); ++i) {
    const Checker observation = here.at("observations", i);
    checkObservation(observation, all[i]);
    if (i > 0 && all[i].observe_time().seconds() < all[i - 1].observe_time().seconds())
      observation.at("observeTime").wrong("", "must not be before the observation listed before it");
  }
}

Violations validate(const v1::Starter& starter) {
  Violations violations;
  checkStarter(Checker(violations), starter);
  return violations;
}

}  // namespace suppertide::compose
