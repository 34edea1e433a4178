#include "server/compose/day/oven_lessons.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "server/compose/oven_curves.h"
#include "server/compose/oven_learning.h"

namespace suppertide::compose {
namespace {

// An oven is judged by how long it takes to get this hot.
constexpr int kJudgedCelsius = 200;
// Below these a difference teaches nothing; common practice, no source.
constexpr double kLeastOvenMinutes = 1;
constexpr double kLeastOvenShare = 0.05;

// Degrees a minute on the last stretch to `celsius`.
double paceNear(const kitchen::ThermalCurve& curve, double celsius) {
  constexpr double kStretch = 20;
  const auto all = kitchen::minutesFromCold(curve, celsius);
  const auto before = kitchen::minutesFromCold(curve, celsius - kStretch);
  return all.ok() && before.ok() && *all > *before ? kStretch / (*all - *before) : 1;
}

int usedOf(const OvenLearning& learning) {
  return static_cast<int>(std::count_if(learning.uses.begin(), learning.uses.end(),
                                        [](const auto& use) { return use.fate == OvenFate::kUsed; }));
}

}  // namespace

void addOvenLessons(const PastEvent& past, v1::Review& review) {
  for (const v1::Oven& oven : past.documents.kitchen.ovens()) {
    const OvenLearning learning = learnFromDay(oven, past.plan, past.progress);
    if (!learning.told) continue;
    const FittedOven before = fitOven(oven);
    const FittedOven after = fitOven(learning.oven);
    if (!after.violations.empty() || !before.violations.empty()) continue;
    const int celsius = std::clamp(kJudgedCelsius, oven.min_setpoint_celsius(), oven.max_setpoint_celsius());
    const auto believed = kitchen::minutesFromCold(before.after, celsius);
    const auto learned = kitchen::minutesFromCold(after.after, celsius);
    if (!believed.ok() || !learned.ok() ||
        std::abs(*learned - *believed) < std::max(kLeastOvenMinutes, kLeastOvenShare * *believed))
      continue;
    v1::Lesson& lesson = *review.add_lessons();
    lesson.set_id(absl::StrCat("oven/", oven.id()));
    lesson.set_kind(v1::LESSON_KIND_OVEN_HEATING);
    lesson.set_subject_id(oven.id());
    lesson.set_kitchen_id(past.documents.kitchen.id());
    lesson.set_value_before(*believed);
    lesson.set_value_seen(*learned);
    lesson.set_value_after(*learned);
    lesson.set_spread_after(after.residualAfter / paceNear(after.after, celsius));
    lesson.set_celsius(celsius);
    lesson.set_observation_count(usedOf(learning));
  }
}

void useOvenLesson(const PastEvent& past, const v1::Lesson& lesson, BreadDocuments& household) {
  for (v1::Kitchen& kitchen : household.kitchens)
    for (v1::Oven& oven : *kitchen.mutable_ovens())
      if (kitchen.id() == lesson.kitchen_id() && oven.id() == lesson.subject_id())
        oven = learnFromDay(oven, past.plan, past.progress).oven;
}

}  // namespace suppertide::compose
