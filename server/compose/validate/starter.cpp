#include "server/compose/validate/documents.h"
#include "server/compose/validate/formula_parts.h"

namespace suppertide::compose {
namespace {

constexpr int kMostObservations = 500;
constexpr double kMostParts = 200;  // flour or water on 1 of starter

constexpr std::int64_t kMostSeenMinutes = 7 * kMinutesPerDay;

void checkTimes(const Checker& here, const v1::StarterObservation& seen) {
  const bool fed = here.at("feedTime").time(seen.has_feed_time(), seen.feed_time());
  const bool observed = here.at("observeTime").time(seen.has_observe_time(), seen.observe_time());
  if (!fed || !observed) return;
  const std::int64_t minutes = (seen.observe_time().seconds() - seen.feed_time().seconds()) / 60;
  if (seen.observe_time().seconds() <= seen.feed_time().seconds())
    here.at("observeTime").wrong("", "must be after the feeding");
  else if (minutes > kMostSeenMinutes)
    here.at("observeTime").wrong(minutesAsText(minutes), "must be within 7 days of the feeding");
}

bool isPoke(v1::SeenKind seen) {
  return seen == v1::SEEN_KIND_SPRINGS_BACK || seen == v1::SEEN_KIND_RECEDES_SLOWLY ||
         seen == v1::SEEN_KIND_COLLAPSES;
}

void checkWhatWasSeen(const Checker& here, const v1::StarterObservation& seen) {
  if (!here.at("seen").known(seen.seen(), "something to see: a rise, a temperature, a peak or a poke"))
    return;
  const bool ofLevain = seen.recipe_id().empty();
  if (seen.seen() == v1::SEEN_KIND_UNSPECIFIED)
    here.at("rise").range(seen.rise(), 1, 6);
  else if (seen.seen() == v1::SEEN_KIND_DOUGH_CELSIUS)
    here.at("doughCelsius").range(seen.dough_celsius(), -10, 60, "°C");
  else if (seen.seen() == v1::SEEN_KIND_PEAK && !ofLevain)
    here.at("seen").wrong("peak", "only a levain is watched until it stands highest");
  else if (ofLevain && isPoke(seen.seen()))
    here.at("seen").wrong("a finger's dent", "only a dough is poked: tell a levain's rise or its peak");
  const Checker stage = here.at("stage");
  const bool dough = seen.stage() == v1::FERMENT_STAGE_BULK || seen.stage() == v1::FERMENT_STAGE_PROOF;
  if (!ofLevain && !dough) stage.wrong("", "must be bulk or proof of that bread's dough");
  if (ofLevain && seen.stage() != v1::FERMENT_STAGE_UNSPECIFIED && seen.stage() != v1::FERMENT_STAGE_LEVAIN)
    stage.wrong("", "of a dough only: say recipeId");
  here.at("recipeId").optionalId(seen.recipe_id());
}

void checkWhereItStood(const Checker& here, const v1::StarterObservation& seen) {
  here.at("kitchenId").optionalId(seen.kitchen_id());
  here.at("placeId").optionalId(seen.place_id());
  if (seen.place_id().empty())
    here.at("celsius").range(seen.celsius(), -40, 60, "°C");
  else if (seen.kitchen_id().empty())
    here.at("kitchenId").wrong("", "say in which kitchen the place is");
}

}  // namespace

void checkObservation(const Checker& here, const v1::StarterObservation& seen) {
  checkTimes(here, seen);
  const bool ofLevain = seen.recipe_id().empty();
  if (ofLevain) {
    here.at("flourPerStarter").aboveZero(seen.flour_per_starter(), kMostParts, "parts");
    here.at("waterPerStarter").range(seen.water_per_starter(), 0, kMostParts, "parts");
  }
  checkWhatWasSeen(here, seen);
  checkWhereItStood(here, seen);
}

void checkStarter(const Checker& here, const v1::Starter& starter) {
  here.at("id").id(starter.id());
  here.at("displayName").text(starter.display_name(), 100);
  here.at("hydrationPercent").zeroOrRange(starter.hydration_percent(), 40, 200, "%");
  here.at("wholeGrainPercent").range(starter.whole_grain_percent(), 0, 100, "%");
  here.at("condition").known(starter.condition(), "a way it is kept: mature, at its peak or from the fridge");
  here.at("vigour").zeroOrRange(starter.vigour(), 0.4, 2.5);
  here.at("vigourSpread").zeroOrRange(starter.vigour_spread(), 0.02, 1);
  if (starter.has_last_fed_time()) here.at("lastFedTime").time(true, starter.last_fed_time());
  if (starter.has_learned_vigour())
    checkLearned(here.at("learnedVigour"), starter.learned_vigour(), v1::EFFECT_KIND_VIGOUR);
  if (starter.has_learned_waking())
    checkLearned(here.at("learnedWaking"), starter.learned_waking(), v1::EFFECT_KIND_WAKING);
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
