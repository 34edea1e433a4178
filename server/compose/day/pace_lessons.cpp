#include "server/compose/day/pace_lessons.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"
#include "server/compose/day/local_hours.h"
#include "server/compose/day/told_steps.h"
#include "server/compose/seen_doughs.h"

namespace suppertide::compose {
namespace {

// Below this a difference teaches nothing; common practice, no source.
constexpr double kLeastPace = 0.05;

const v1::FermentForecast* stageOf(const v1::Plan& plan, const std::string& stepId) {
  for (const v1::DoughForecast& dough : plan.doughs())
    for (const v1::FermentForecast& stage : dough.stages())
      if (stage.step_id() == stepId) return &stage;
  return nullptr;
}

// "1:2:3" as flour and water on one of starter.
bool readRatio(const std::string& ratio, v1::StarterObservation& seen) {
  const std::vector<std::string> parts = absl::StrSplit(ratio, ':');
  double starter = 0;
  double flour = 0;
  double water = 0;
  if (parts.size() != 3 || !absl::SimpleAtod(parts[0], &starter) || !absl::SimpleAtod(parts[1], &flour) ||
      !absl::SimpleAtod(parts[2], &water) || starter <= 0)
    return false;
  seen.set_flour_per_starter(flour / starter);
  seen.set_water_per_starter(water / starter);
  return true;
}

// The rises that were told, as observations of starters.
std::vector<std::pair<std::string, v1::StarterObservation>> risesSeen(const PastEvent& past) {
  std::vector<std::pair<std::string, v1::StarterObservation>> all;
  const auto told = toldOf(past.progress);
  for (const v1::Report* report : standingReports(past.progress)) {
    const std::string id = absl::StrCat(report->dish_id(), "/", report->step_id());
    const v1::FermentForecast* stage = stageOf(past.plan, id);
    const v1::Recipe* recipe = recipeOf(past.documents, report->dish_id());
    if (report->what_case() != v1::Report::kRise || stage == nullptr || recipe == nullptr ||
        !recipe->formula().has_levain() || stage->stage() == v1::FERMENT_STAGE_PREFERMENT)
      continue;
    const auto begun = told.find(id);
    v1::StarterObservation seen;
    *seen.mutable_feed_time() =
        begun != told.end() && begun->second.start ? stampOf(*begun->second.start) : stage->start_time();
    *seen.mutable_observe_time() = report->happen_time();
    seen.set_rise(report->rise());
    if (!stage->place_id().empty()) {
      seen.set_kitchen_id(past.documents.kitchen.id());
      seen.set_place_id(stage->place_id());
    }
    if (stage->stage() == v1::FERMENT_STAGE_LEVAIN) {
      const auto& steps = past.plan.steps();
      const bool known = std::any_of(steps.begin(), steps.end(), [&](const v1::PlannedStep& step) {
        return step.dish_id() == report->dish_id() && readRatio(step.levain_ratio(), seen);
      });
      if (!known) continue;
    } else {
      seen.set_recipe_id(recipe->id());
      seen.set_stage(stage->stage());
    }
    if (seen.observe_time().seconds() <= seen.feed_time().seconds() || seen.rise() < 1 || seen.rise() > 6)
      continue;
    all.emplace_back(recipe->formula().levain().starter_id(), std::move(seen));
  }
  return all;
}

double paceOf(const v1::Starter& starter) {
  const double stated = starter.vigour() > 0 ? starter.vigour() : 1;
  return starter.has_learned_vigour() && starter.learned_vigour().value() > 0
             ? stated * starter.learned_vigour().value()
             : stated;
}

v1::Starter* starterCalled(BreadDocuments& documents, const std::string& id) {
  for (v1::Starter& starter : documents.starters)
    if (starter.id() == id) return &starter;
  return nullptr;
}

bool holds(const v1::Starter& starter, const v1::StarterObservation& seen) {
  return std::any_of(
      starter.observations().begin(), starter.observations().end(),
      [&](const v1::StarterObservation& old) { return old.SerializeAsString() == seen.SerializeAsString(); });
}

// Adds what was seen of the starter. How much of it is new.
int teach(const PastEvent& past, const std::string& starterId, BreadDocuments& documents) {
  constexpr int kMostObservations = 500;
  v1::Starter* starter = starterCalled(documents, starterId);
  if (starter == nullptr) return 0;
  int added = 0;
  for (auto& [id, seen] : risesSeen(past)) {
    if (id != starterId || holds(*starter, seen)) continue;
    *starter->add_observations() = std::move(seen);
    ++added;
  }
  const int surplus = starter->observations_size() - kMostObservations;
  if (surplus > 0) starter->mutable_observations()->DeleteSubrange(0, surplus);
  return added;
}

double paceOf(const v1::Recipe& recipe) {
  const double pace = recipe.formula().learned_pace().value();
  return pace > 0 ? pace : 1;
}

// What the same looks taught of the breads that are raised with the starter.
void addRecipePaces(const std::string& starterId, const BreadDocuments& before, const BreadDocuments& after,
                    int count, v1::Review& review) {
  for (std::size_t r = 0; r < before.recipes.size(); ++r) {
    const v1::Recipe& recipe = after.recipes[r];
    const double was = paceOf(before.recipes[r]);
    const double now = paceOf(recipe);
    if (recipe.formula().levain().starter_id() != starterId || std::abs(now / was - 1) < kLeastPace) continue;
    v1::Lesson& lesson = *review.add_lessons();
    lesson.set_id(absl::StrCat("pace/", recipe.id()));
    lesson.set_kind(v1::LESSON_KIND_RECIPE_PACE);
    lesson.set_subject_id(recipe.id());
    lesson.set_value_before(was);
    lesson.set_value_seen(now);
    lesson.set_value_after(now);
    lesson.set_spread_after(recipe.formula().learned_pace().spread() * now);
    lesson.set_observation_count(count);
  }
}

const std::string& starterOf(const BreadDocuments& documents, const std::string& recipeId) {
  static const std::string none;
  for (const v1::Recipe& recipe : documents.recipes)
    if (recipe.id() == recipeId) return recipe.formula().levain().starter_id();
  return none;
}

}  // namespace

void addPaceLessons(const PastEvent& past, const BreadDocuments& household, v1::Review& review) {
  const absl::TimeZone zone = zoneOf(past.documents.household, past.documents.event);
  std::set<std::string> starters;
  for (const auto& [id, seen] : risesSeen(past)) starters.insert(id);
  for (const std::string& id : starters) {
    BreadDocuments documents = household;
    v1::Starter* starter = starterCalled(documents, id);
    if (starter == nullptr) continue;
    const double before = paceOf(*starter);
    const int count = teach(past, id, documents);
    if (count == 0 || !learnFromDoughs(documents, zone).ok()) continue;
    starter = starterCalled(documents, id);
    const double after = paceOf(*starter);
    if (std::abs(after / before - 1) < kLeastPace) continue;
    v1::Lesson& lesson = *review.add_lessons();
    lesson.set_id(absl::StrCat("vigour/", id));
    lesson.set_kind(v1::LESSON_KIND_STARTER_VIGOUR);
    lesson.set_subject_id(id);
    lesson.set_value_before(before);
    lesson.set_value_seen(after);
    lesson.set_value_after(after);
    lesson.set_spread_after(starter->learned_vigour().spread() * after);
    lesson.set_observation_count(count);
    addRecipePaces(id, household, documents, count, review);
  }
}

int teachStarter(const PastEvent& past, const v1::Lesson& lesson, BreadDocuments& household) {
  return teach(past,
               lesson.kind() == v1::LESSON_KIND_RECIPE_PACE ? starterOf(household, lesson.subject_id())
                                                            : lesson.subject_id(),
               household);
}

}  // namespace suppertide::compose
