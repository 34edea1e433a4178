// What an event taught, the biggest changes first.
#include <algorithm>
#include <cmath>

#include "server/compose/day/length_lessons.h"
#include "server/compose/day/local_hours.h"
#include "server/compose/day/oven_lessons.h"
#include "server/compose/day/pace_lessons.h"
#include "server/compose/day/review.h"

namespace suppertide::compose {

void addLessons(const PastEvent& past, const BreadDocuments& household, v1::Review& review) {
  addLengthLessons(past, review);
  addPaceLessons(past, household, review);
  addOvenLessons(past, review);
  std::stable_sort(review.mutable_lessons()->begin(), review.mutable_lessons()->end(),
                   [](const v1::Lesson& a, const v1::Lesson& b) {
                     return std::abs(std::log(a.value_after() / a.value_before())) >
                            std::abs(std::log(b.value_after() / b.value_before()));
                   });
}

absl::Status useLessons(const PastEvent& past, const v1::Review& review,
                        const std::set<std::string>& lessonIds, BreadDocuments& household) {
  bool learn = false;
  for (const v1::Lesson& lesson : review.lessons()) {
    if (lessonIds.count(lesson.id()) == 0) continue;
    if (lesson.kind() == v1::LESSON_KIND_STEP_LENGTH) useLengthLesson(lesson, household);
    if (lesson.kind() == v1::LESSON_KIND_STARTER_VIGOUR || lesson.kind() == v1::LESSON_KIND_RECIPE_PACE)
      learn = teachStarter(past, lesson, household) > 0 || learn;
    if (lesson.kind() == v1::LESSON_KIND_OVEN_HEATING) useOvenLesson(past, lesson, household);
  }
  if (!learn) return absl::OkStatus();
  return learnFromDoughs(household, zoneOf(past.documents.household, past.documents.event)).status();
}

}  // namespace suppertide::compose
