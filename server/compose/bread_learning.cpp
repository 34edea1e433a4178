#include "server/compose/bread_learning.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <utility>

#include "server/bread/joint_calibration.h"
#include "server/compose/bread_recipe.h"

namespace suppertide::compose {
namespace {

constexpr double kSeenLevainKilograms = 0.2;
constexpr double kWatchedHours = 2;  // a levain at its peak was looked at before and after
// Of a yeasted dough's gas: the packet's strength is in it; two cards of one army differ by a factor of 2.5.
constexpr double kYeastedSpread = 0.35;
constexpr int kNone = -1;  // of no recipe; in no known place, but measured

// One effect, and where it is kept once it is learned; until then the documents are as stated.
struct Kept {
  v1::EffectKind kind;
  std::string subject;
  std::function<v1::LearnedEffect*()> field;
};

class Lesson {
 public:
  Lesson(BreadDocuments& documents, const absl::TimeZone& zone) : documents_(documents), zone_(zone) {}

  absl::StatusOr<BreadLessons> run() {
    forget();
    gather();
    const auto learnt = bread::learnTogether(effects_, seen_);
    if (!learnt.ok()) return learnt.status();
    for (std::size_t e = 0; e < learnt->size(); ++e) keep((*learnt)[e], e);
    for (const v1::Recipe& recipe : documents_.recipes) addWater(recipe);
    return std::move(lessons_);
  }

 private:
  void forget() {
    for (v1::Starter& starter : documents_.starters) {
      starter.clear_learned_vigour();
      starter.clear_learned_waking();
    }
    for (v1::Kitchen& kitchen : documents_.kitchens)
      for (v1::Place& place : *kitchen.mutable_places()) place.clear_learned_warmth();
    for (v1::Recipe& recipe : documents_.recipes)
      if (recipe.has_formula()) recipe.mutable_formula()->clear_learned_pace();
  }

  // The newest observations of all starters together.
  void gather() {
    std::vector<std::pair<int, const v1::StarterObservation*>> all;
    for (std::size_t s = 0; s < documents_.starters.size(); ++s)
      for (const auto& seen : documents_.starters[s].observations())
        all.emplace_back(static_cast<int>(s), &seen);
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) {
      return a.second->observe_time().seconds() > b.second->observe_time().seconds();
    });
    for (const auto& [starter, seen] : all) {
      const bool enough = lessons_.used >= kMostObservationsUsed;
      if (!enough && add(starter, *seen))
        ++lessons_.used;
      else
        ++lessons_.unused;
    }
  }

  bool add(int starter, const v1::StarterObservation& told) {
    bread::JointObservation joint;
    joint.starter = starter;
    if (!setDough(starter, told, joint) || !setPlace(told, joint) || !setSeen(told, joint)) return false;
    if (!bread::checkObservation(joint.seen, seen_.size()).ok()) return false;
    addEffects(joint);
    seen_.push_back(std::move(joint));
    return true;
  }

  static double hoursOf(const v1::StarterObservation& told) {
    return static_cast<double>(told.observe_time().seconds() - told.feed_time().seconds()) / 3600;
  }

  double meanCelsius(const v1::StarterObservation& told) const {
    const v1::Place* place = placeOf(told);
    return place == nullptr ? told.celsius() : airOf(place->temperature()).at(kNoon);
  }

  // What fermented, and its state at the start; false when it is no longer known.
  bool setDough(int index, const v1::StarterObservation& told, bread::JointObservation& joint) {
    const v1::Starter& starter = documents_.starters[static_cast<std::size_t>(index)];
    joint.dough = kNone;
    const double mixed = BreadRecipe::fedCelsius(meanCelsius(told));
    if (told.recipe_id().empty()) {
      const bread::LevainRatio ratio{1, told.flour_per_starter(), told.water_per_starter()};
      const double hydration = starter.hydration_percent() > 0 ? starter.hydration_percent() / 100 : 1;
      joint.seen.kind = bread::withComposition(bread::kLevainKind, starter.whole_grain_percent() / 100, 0, 0);
      const auto state = bread::mixLevain(joint.seen.kind, cultureOf(starter), ratio, mixed,
                                          kSeenLevainKilograms, hydration);
      if (!state.ok()) return false;
      joint.seen.start = *state;
      return true;
    }
    for (std::size_t r = 0; r < documents_.recipes.size(); ++r) {
      const v1::Recipe& recipe = documents_.recipes[r];
      if (recipe.id() != told.recipe_id() || !recipe.has_formula()) continue;
      joint.dough = static_cast<int>(r);
      if (!recipe.formula().has_levain()) joint.starter = kNone;
      return setState(recipe, starter, told.stage(), joint.seen);
    }
    return false;
  }

  // A mixed or shaped dough as forecasts have it, everything before used at its best.
  static bool setState(const v1::Recipe& recipe, const v1::Starter& starter, v1::FermentStage stage,
                       bread::Observation& seen) {
    auto found = BreadRecipe::of(recipe.formula(), &starter);
    if (!found.ok()) return false;
    seen.kind = found->kind();
    const auto state = stage == v1::FERMENT_STAGE_PROOF ? found->shapedAtBest() : found->mixedAtBest();
    if (!state.ok()) return false;
    seen.start = *state;
    return true;
  }

  v1::Place* placeOf(const v1::StarterObservation& told) const {
    if (told.place_id().empty()) return nullptr;
    for (v1::Kitchen& kitchen : documents_.kitchens)
      for (v1::Place& place : *kitchen.mutable_places())
        if (kitchen.id() == told.kitchen_id() && place.id() == told.place_id()) return &place;
    return nullptr;
  }

  bool setPlace(const v1::StarterObservation& told, bread::JointObservation& joint) {
    v1::Place* place = placeOf(told);
    if (place == nullptr && !told.place_id().empty()) return false;
    bread::TemperatureByHour air(told.celsius());
    joint.places = {kNone};
    if (place != nullptr) {
      air = airOf(place->temperature());
      joint.places = {numberOf(*place)};
    }
    joint.seen.stays = {{bread::kOpenEnded, air, bread::kStillAir}};
    const absl::CivilSecond clock =
        absl::ToCivilSecond(absl::FromUnixSeconds(told.feed_time().seconds()), zone_);
    joint.seen.hourOfDayAtZero = clock.hour() + clock.minute() / 60.0;
    return true;
  }

  int numberOf(v1::Place& place) {
    const auto found = std::find(places_.begin(), places_.end(), &place);
    if (found != places_.end()) return static_cast<int>(found - places_.begin());
    places_.push_back(&place);
    return static_cast<int>(places_.size()) - 1;
  }

  bool setSeen(const v1::StarterObservation& told, bread::JointObservation& joint) {
    bread::Observation& seen = joint.seen;
    seen.hours = hoursOf(told);
    seen.value = told.rise();
    const bread::Stage stage = stageOf(told);
    switch (told.seen()) {
      case v1::SEEN_KIND_UNSPECIFIED:
        return true;
      case v1::SEEN_KIND_DOUGH_CELSIUS:
        seen.seen = bread::Seen::kDoughCelsius;
        seen.value = told.dough_celsius();
        seen.spread = bread::kThermometerSpread;
        return true;
      case v1::SEEN_KIND_PEAK:
        seen.seen = bread::Seen::kPeakHours;
        seen.value = seen.hours;
        seen.hours += kWatchedHours;
        seen.spread = bread::kPeakSpreadHours;
        return true;
      case v1::SEEN_KIND_SPRINGS_BACK:
        seen = bread::poked(seen, bread::Poke::kSpringsBack, stage);
        return true;
      case v1::SEEN_KIND_RECEDES_SLOWLY:
        seen = bread::poked(seen, bread::Poke::kRecedesSlowly, stage);
        return true;
      case v1::SEEN_KIND_COLLAPSES:
        seen = bread::poked(seen, bread::Poke::kCollapses, stage);
        return true;
      case v1::SEEN_KIND_READY:
        seen = bread::calledReady(seen, stage);
        return true;
      default:
        return false;
    }
  }

  bread::Stage stageOf(const v1::StarterObservation& told) const {
    for (const v1::Recipe& recipe : documents_.recipes) {
      if (told.recipe_id().empty() || recipe.id() != told.recipe_id()) continue;
      const bool enriched = recipe.formula().dough_class() == v1::DOUGH_CLASS_ENRICHED;
      if (told.stage() == v1::FERMENT_STAGE_PROOF)
        return enriched ? bread::kEnrichedProof : bread::kLeanProof;
      return enriched ? bread::kEnrichedBulk : bread::kLeanBulk;
    }
    return bread::kLevainStage;
  }

  // The effects that an observation is the first to mention.
  void addEffects(const bread::JointObservation& joint) {
    const bread::Uncertainty usual;
    if (joint.starter != kNone) {
      v1::Starter& starter = documents_.starters[static_cast<std::size_t>(joint.starter)];
      const double spread = starter.vigour_spread() > 0 ? starter.vigour_spread() : usual.logVigour;
      add({bread::EffectKind::kVigour, joint.starter, 0, spread},
          {v1::EFFECT_KIND_VIGOUR, starter.id(), [&starter] { return starter.mutable_learned_vigour(); }});
      add({bread::EffectKind::kLag, joint.starter, 0, usual.lag},
          {v1::EFFECT_KIND_WAKING, starter.id(), [&starter] { return starter.mutable_learned_waking(); }});
    }
    if (joint.places.front() != kNone) {
      v1::Place& place = *places_[static_cast<std::size_t>(joint.places.front())];
      add({bread::EffectKind::kPlace, joint.places.front(), 0, usual.placeKelvin},
          {v1::EFFECT_KIND_WARMTH, place.id(), [&place] { return place.mutable_learned_warmth(); }});
    }
    if (joint.dough == kNone) return;
    v1::Recipe& recipe = documents_.recipes[static_cast<std::size_t>(joint.dough)];
    const double pace = joint.starter == kNone ? kYeastedSpread : bread::kDoughSpread;
    add({bread::EffectKind::kDough, joint.dough, 0, pace},
        {v1::EFFECT_KIND_PACE, recipe.id(),
         [&recipe] { return recipe.mutable_formula()->mutable_learned_pace(); }});
  }

  void add(const bread::Effect& effect, Kept kept) {
    const bool known = std::any_of(effects_.begin(), effects_.end(), [&](const bread::Effect& other) {
      return other.kind == effect.kind && other.subject == effect.subject;
    });
    if (known) return;
    effects_.push_back(effect);
    kept_.push_back(std::move(kept));
  }

  void keep(const bread::LearntEffect& learnt, std::size_t index) {
    const Kept& kept = kept_[index];
    v1::LearnedEffect& out = *kept.field();
    out.set_kind(kept.kind);
    out.set_subject_id(kept.subject);
    out.set_value(valueOf(kept.kind, learnt.effect.mean));
    out.set_spread(learnt.effect.spread);
    out.set_spread_share(learnt.spreadShare);
    out.set_telling(learnt.telling == bread::Telling::kTold   ? v1::EFFECT_TELLING_TOLD
                    : learnt.telling == bread::Telling::kTied ? v1::EFFECT_TELLING_TIED
                                                              : v1::EFFECT_TELLING_UNTOLD);
    if (learnt.tiedTo >= 0 && std::abs(learnt.correlation) >= bread::kTiedCorrelation) {
      const Kept& other = kept_[static_cast<std::size_t>(learnt.tiedTo)];
      out.set_tied_kind(other.kind);
      out.set_tied_subject_id(other.subject);
      out.set_correlation(learnt.correlation);
    }
    lessons_.effects.push_back(out);
  }

  static double valueOf(v1::EffectKind kind, double mean) {
    if (kind == v1::EFFECT_KIND_WARMTH) return mean;
    return kind == v1::EFFECT_KIND_WAKING ? std::max(0.0, 1 + mean) : std::exp(mean);
  }

  void addWater(const v1::Recipe& recipe) {
    if (recipe.formula().mix_readings().empty()) return;
    const auto found = BreadRecipe::of(recipe.formula(), nullptr);
    if (!found.ok()) return;
    const WaterWays ways = found->water(
        {kUsualRoomCelsius, kUsualRoomCelsius, kUsualRoomCelsius, kUsualRoomCelsius, found->doughCelsius()});
    lessons_.waters.push_back({recipe.id(), ways.friction, ways.correction});
  }

  static constexpr double kNoon = 12;

  BreadDocuments& documents_;
  absl::TimeZone zone_;
  std::vector<v1::Place*> places_;
  std::vector<bread::Effect> effects_;
  std::vector<Kept> kept_;
  std::vector<bread::JointObservation> seen_;
  BreadLessons lessons_;
};

}  // namespace

absl::StatusOr<BreadLessons> learnFromDoughs(BreadDocuments& documents, const absl::TimeZone& zone) {
  return Lesson(documents, zone).run();
}

}  // namespace suppertide::compose
