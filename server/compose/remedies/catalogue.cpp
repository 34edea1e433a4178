#include "server/compose/remedies/catalogue.h"

#include <algorithm>
#include <iterator>
#include <string>

namespace suppertide::compose {
namespace {

constexpr RemedyIdea kCatalogue[] = {shareTemperature, otherOven,        otherPan,  keepLonger, bakeEarlier,
                                     retardOvernight,  otherLevainRatio, otherCook, unpin,      laterCourse,
                                     borrow,           dropDish,         moreHours};

const v1::Recipe* recipeOf(const Documents& documents, const std::string& dishId) {
  for (const v1::Dish& dish : documents.event.dishes())
    if (dish.id() == dishId)
      for (const v1::Recipe& recipe : documents.recipes)
        if (recipe.id() == dish.recipe_id()) return &recipe;
  return nullptr;
}

std::string stepBytes(const v1::Recipe& recipe, const std::string& stepId) {
  for (const v1::Step& step : recipe.steps())
    if (step.id() == stepId) return step.SerializeAsString();
  return "";
}

// Whether the change has nothing to do with what has begun: its steps, their dough, their dish being made.
bool leavesBegunAlone(const Situation& situation, const Change& change) {
  Documents after = situation.documents;
  change.apply(after);
  for (std::size_t i = 0; i < situation.composition.steps.size(); ++i) {
    const int step = static_cast<int>(i);
    if (!situation.isBegun(step)) continue;
    if (change.what.step_id() == situation.composition.stepId(step)) return false;
    const StepInfo& info = situation.composition.steps[i];
    const std::string& dish = situation.composition.dishes[static_cast<std::size_t>(info.dish)].dish->id();
    const v1::Recipe* was = recipeOf(situation.documents, dish);
    const v1::Recipe* is = recipeOf(after, dish);
    if (was == nullptr || is == nullptr) return false;
    if (was == is) continue;
    if (stepBytes(*was, info.step->id()) != stepBytes(*is, info.step->id()) ||
        was->formula().SerializeAsString() != is->formula().SerializeAsString())
      return false;
  }
  return true;
}

}  // namespace

std::vector<Change> proposals(const Situation& situation) {
  std::vector<Change> all;
  for (const RemedyIdea idea : kCatalogue) {
    std::vector<Change> some = idea(situation);
    std::move(some.begin(), some.end(), std::back_inserter(all));
  }
  if (!situation.begun.empty())
    std::erase_if(all, [&](const Change& change) { return !leavesBegunAlone(situation, change); });
  std::stable_sort(all.begin(), all.end(),
                   [](const Change& a, const Change& b) { return a.what.size() < b.what.size(); });
  return all;
}

}  // namespace suppertide::compose
