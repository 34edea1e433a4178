#include "server/compose/day/length_lessons.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "absl/strings/str_cat.h"
#include "server/compose/axis.h"
#include "server/compose/day/told_steps.h"

namespace suppertide::compose {
namespace {

// Below these a difference teaches nothing; common practice, no source.
constexpr double kLeastMinutes = 3;
constexpr double kLeastShare = 0.15;
// Who forgot to tick something off did not work at it all the while.
constexpr double kMostTimes = 2;

const v1::Step* stepOf(const v1::Recipe& recipe, const std::string& id) {
  for (const v1::Step& step : recipe.steps())
    if (step.id() == id) return &step;
  return nullptr;
}

const v1::Spread& lengthOf(const v1::Step& step) {
  return step.has_oven() ? step.oven().duration() : step.duration();
}

// Minutes: how sure a recipe is of a length, one standard deviation.
double sureness(const v1::Spread& length) {
  const int least = minutesOf(length.least());
  const int most = minutesOf(length.most());
  const double likely = minutesOf(length.likely());
  return std::max({1.0, kLeastShare * likely, least > 0 && most > least ? (most - least) / 4.0 : 0.0});
}

double middleOf(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

// By recipe and step: how many times as long as planned it took, each time.
std::map<std::pair<std::string, std::string>, std::vector<double>> lengthsSeen(const PastEvent& past) {
  std::map<std::pair<std::string, std::string>, std::vector<double>> seen;
  const auto told = toldOf(past.progress);
  for (const v1::PlannedStep& planned : past.plan.steps()) {
    const auto found = told.find(planned.id());
    const v1::Recipe* recipe = recipeOf(past.documents, planned.dish_id());
    if (found == told.end() || recipe == nullptr || !found->second.start || !found->second.end) continue;
    const v1::Step* step = stepOf(*recipe, planned.step_id());
    const std::int64_t length = firstEnd(planned).seconds() - firstStart(planned).seconds();
    const std::int64_t took = *found->second.end - *found->second.start;
    if (step == nullptr || step->kind() == v1::STEP_KIND_FERMENT || !lengthOf(*step).has_likely() ||
        length < 60 || took < 60)
      continue;
    const double times = static_cast<double>(took) / static_cast<double>(length);
    seen[{recipe->id(), step->id()}].push_back(std::clamp(times, 1 / kMostTimes, kMostTimes));
  }
  return seen;
}

}  // namespace

void addLengthLessons(const PastEvent& past, v1::Review& review) {
  for (const auto& [key, times] : lengthsSeen(past)) {
    const auto recipe = std::find_if(past.documents.recipes.begin(), past.documents.recipes.end(),
                                     [&, id = key.first](const v1::Recipe& r) { return r.id() == id; });
    const v1::Spread& length = lengthOf(*stepOf(*recipe, key.second));
    const double before = minutesOf(length.likely());
    const double seen = middleOf(times) * before;
    if (std::abs(seen - before) < std::max(kLeastMinutes, kLeastShare * before)) continue;
    // The recipe's word counts as one observation more.
    const double count = static_cast<double>(times.size());
    v1::Lesson& lesson = *review.add_lessons();
    lesson.set_id(absl::StrCat("length/", key.first, "/", key.second));
    lesson.set_kind(v1::LESSON_KIND_STEP_LENGTH);
    lesson.set_subject_id(key.first);
    lesson.set_step_id(key.second);
    lesson.set_value_before(before);
    lesson.set_value_seen(seen);
    lesson.set_value_after(std::max(1.0, std::round((before + count * seen) / (1 + count))));
    lesson.set_spread_after(sureness(length) / std::sqrt(1 + count));
    lesson.set_observation_count(static_cast<int>(times.size()));
  }
}

void useLengthLesson(const v1::Lesson& lesson, BreadDocuments& household) {
  for (v1::Recipe& recipe : household.recipes) {
    if (recipe.id() != lesson.subject_id()) continue;
    for (v1::Step& step : *recipe.mutable_steps()) {
      if (step.id() != lesson.step_id()) continue;
      v1::Spread& length =
          step.has_oven() ? *step.mutable_oven()->mutable_duration() : *step.mutable_duration();
      const auto likely = durationOf(static_cast<std::int64_t>(lesson.value_after()));
      *length.mutable_likely() = likely;
      if (length.has_least() && length.least().seconds() > likely.seconds()) *length.mutable_least() = likely;
      if (length.has_most() && length.most().seconds() < likely.seconds()) *length.mutable_most() = likely;
    }
  }
}

}  // namespace suppertide::compose
