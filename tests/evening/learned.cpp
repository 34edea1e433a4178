#include "tests/evening/learned.h"

#include "absl/strings/str_cat.h"
#include "server/compose/oven_curves.h"
#include "server/kitchen/oven.h"

namespace suppertide::evening {
namespace {

// Of the dishes made by the recipe: how many times as long as planned their steps really took, in the middle.
double lengthInTruth(Stage& stage, const v1::Lesson& lesson) {
  double sum = 0;
  int count = 0;
  const Seen seen = stage.hostSees();
  for (const v1::Dish& dish : stage.event.dishes()) {
    const v1::PlannedStep* step =
        Stage::find(stage.planIn(seen), absl::StrCat(dish.id(), "/", lesson.step_id()));
    if (dish.recipe_id() != lesson.subject_id() || step == nullptr) continue;
    sum += step->kind() == v1::STEP_KIND_OVEN ? stage.truth.ovenLength() : stage.truth.lengthOf(step->id());
    ++count;
  }
  return count == 0 ? 0 : sum / count;
}

double heatingInTruth(const Stage& stage, const v1::Lesson& lesson) {
  const v1::Oven* oven = stage.ovenCalled(lesson.subject_id());
  if (oven == nullptr) return 0;
  kitchen::ThermalCurve curve = compose::fitOven(*oven).after;
  curve.heatMinutes *= stage.truth.ovenHeat();
  const auto minutes = kitchen::minutesFromCold(curve, lesson.celsius());
  return minutes.ok() ? *minutes : 0;
}

}  // namespace

std::vector<Learned> learnedOn(Stage& stage) {
  v1::GetReviewRequest request;
  request.set_household_id(stage.party.household());
  request.set_event_id(stage.event.id());
  const auto review = stage.party.host().session().review(request);
  std::vector<Learned> all;
  if (!review.ok()) return all;
  for (const v1::Lesson& lesson : review->lessons()) {
    double truth = 0;
    if (lesson.kind() == v1::LESSON_KIND_STARTER_VIGOUR) truth = stage.truth.vigour() * lesson.value_before();
    if (lesson.kind() == v1::LESSON_KIND_STEP_LENGTH)
      truth = lengthInTruth(stage, lesson) * lesson.value_before();
    if (lesson.kind() == v1::LESSON_KIND_OVEN_HEATING) truth = heatingInTruth(stage, lesson);
    if (truth > 0) all.push_back({lesson.id(), lesson.value_before(), truth, lesson.value_after()});
  }
  return all;
}

}  // namespace suppertide::evening
