#include "server/planning/clash/wishes.h"

#include <algorithm>
#include <set>

#include "server/base/index.h"

namespace suppertide::planning {
namespace {

bool alwaysThere(const Cook& cook, Minute limit) {
  return cook.available.size() == 1 && cook.available[0].start <= 0 && cook.available[0].limit >= limit;
}

bool isPinned(const Step& step) {
  return !step.pin.end && (step.pin.start || step.pin.mode || step.pin.cook);
}

// What the steps of some dishes may use.
struct Touched {
  std::set<int> ovens, cooks, resources;
  void add(const Step& step) {
    for (const Mode& mode : step.modes) {
      if (mode.oven) ovens.insert(mode.oven->oven);
      for (const Use& use : mode.uses) resources.insert(use.resource);
      for (const CookOption& option : mode.cooks) cooks.insert(option.cook);
    }
  }
};

}  // namespace

std::vector<Wish> wishesOf(const Problem& problem, const std::vector<int>& dishes,
                           const std::vector<bool>& begun) {
  std::vector<Wish> wishes;
  const std::set<int> wanted(dishes.begin(), dishes.end());
  Touched touched;
  std::vector<Wish> setpoints;
  std::vector<Wish> pins;
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    const Step& step = problem.steps[i];
    if (!wanted.contains(step.dish)) continue;
    touched.add(step);
    if (!begun.empty() && begun[i]) continue;
    const bool bakes = std::any_of(step.modes.begin(), step.modes.end(),
                                   [](const Mode& mode) { return mode.oven.has_value(); });
    if (step.kind == StepKind::kBake && bakes)
      setpoints.push_back({WishKind::kSetpoint, static_cast<int>(i)});
    if (isPinned(step)) pins.push_back({WishKind::kPinned, static_cast<int>(i)});
  }
  for (const int dish : wanted) wishes.push_back({WishKind::kServed, dish});
  wishes.insert(wishes.end(), setpoints.begin(), setpoints.end());
  for (const int oven : touched.ovens) wishes.push_back({WishKind::kOven, oven});
  wishes.insert(wishes.end(), pins.begin(), pins.end());
  for (const int cook : touched.cooks)
    if (!alwaysThere(problem.cooks[at(cook)], problem.limit)) wishes.push_back({WishKind::kHours, cook});
  for (const int resource : touched.resources) wishes.push_back({WishKind::kCount, resource});
  if (!touched.cooks.empty()) wishes.push_back({WishKind::kHands, -1});
  for (const int dish : wanted)
    if (problem.dishes[at(dish)].holdLimit < problem.limit) wishes.push_back({WishKind::kFresh, dish});
  return wishes;
}

}  // namespace suppertide::planning
