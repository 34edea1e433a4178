#include <algorithm>
#include <map>
#include <set>

#include "absl/strings/str_cat.h"
#include "server/base/index.h"
#include "server/planning/clash/part.h"
#include "server/planning/clash/wishes.h"

namespace suppertide::planning {
namespace {

constexpr Minute kDay = 24 * 60;

// Takes wishes of a whole problem back in a part of it.
class Relaxer {
 public:
  // `dishes` (ascending) of `whole` are those of `problem`.
  Relaxer(const Problem& whole, const std::vector<int>& dishes, Problem& problem, const Relaxing& relaxing)
      : whole_(whole), problem_(problem), relaxing_(relaxing) {
    dishOf_.assign(whole.dishes.size(), -1);
    for (std::size_t k = 0; k < dishes.size(); ++k) dishOf_[at(dishes[k])] = static_cast<int>(k);
    int next = 0;
    for (const Step& step : whole.steps) stepOf_.push_back(dishOf_[at(step.dish)] < 0 ? -1 : next++);
  }

  void takeBack(const Wish& wish) {
    switch (wish.kind) {
      case WishKind::kServed:
        return;  // it is left out in the end
      case WishKind::kSetpoint:
        if (stepOf_[at(wish.index)] >= 0) bakeAnyhow(wish.index);
        return;
      case WishKind::kOven:
        return addOvenLike(wish.index);
      case WishKind::kPinned:
        if (stepOf_[at(wish.index)] >= 0) problem_.steps[at(stepOf_[at(wish.index)])].pin = {};
        return;
      case WishKind::kHours:
        problem_.cooks[at(wish.index)].available = {{0, problem_.limit}};
        return liftPresence();
      case WishKind::kCount:
        problem_.resources[at(wish.index)].capacity += largestUse(wish.index);
        return;
      case WishKind::kHands:
        return addCook();
      case WishKind::kFresh:
        if (dishOf_[at(wish.index)] >= 0) keepLonger(problem_.dishes[at(dishOf_[at(wish.index)])]);
        return;
    }
  }

 private:
  void keepLonger(Dish& dish) const {
    dish.holdLimit = std::min<Minute>(problem_.limit, dish.holdLimit + kDay);
  }

  int largestUse(int resource) const {
    int largest = 1;
    for (const Step& step : whole_.steps)
      for (const Mode& mode : step.modes)
        for (const Use& use : mode.uses)
          if (use.resource == resource) largest = std::max(largest, use.amount);
    return largest;
  }

  // Setpoints of an oven that some dish bakes at: a proofing temperature is none.
  std::set<int> bakingSetpoints(int oven) const {
    std::set<int> setpoints;
    for (const Step& step : whole_.steps) {
      if (step.kind != StepKind::kBake) continue;
      for (const Mode& mode : step.modes)
        if (mode.oven && mode.oven->oven == oven)
          for (const OvenPhase& phase : mode.oven->phases) setpoints.insert(phase.setpoint);
    }
    return setpoints;
  }

  void bakeAnyhow(int whole) {
    const int index = stepOf_[at(whole)];
    Step& step = problem_.steps[at(index)];
    const int least = at(whole) < relaxing_.leastCelsius.size() ? relaxing_.leastCelsius[at(whole)] : 0;
    std::map<int, std::size_t> best;  // by oven, the mode nearest to the recipe
    for (std::size_t m = 0; m < step.modes.size(); ++m) {
      if (!step.modes[m].oven) continue;
      const auto [entry, isNew] = best.emplace(step.modes[m].oven->oven, m);
      if (!isNew && step.modes[m].qualityCost < step.modes[entry->second].qualityCost) entry->second = m;
    }
    for (const auto& [oven, like] : best) {
      for (const int setpoint : bakingSetpoints(oven)) {
        if (problem_.ovens[at(oven)].setpoints[at(setpoint)] < least) continue;
        Mode anyhow = step.modes[like];
        absl::StrAppend(&anyhow.name, " anyhow ", setpoint);
        anyhow.oven->phases = {{setpoint, 0}};
        step.modes.push_back(std::move(anyhow));
        countAlike(index, static_cast<int>(like), static_cast<int>(step.modes.size()) - 1);
      }
    }
  }

  void addOvenLike(int oven) {
    const int added = static_cast<int>(problem_.ovens.size());
    problem_.ovens.push_back(problem_.ovens[at(oven)]);
    problem_.ovens.back().id += " more";
    problem_.ovens.back().closed.clear();
    for (std::size_t i = 0; i < problem_.steps.size(); ++i) {
      std::vector<Mode>& modes = problem_.steps[i].modes;
      const std::size_t count = modes.size();
      for (std::size_t m = 0; m < count; ++m) {
        if (!modes[m].oven || modes[m].oven->oven != oven) continue;
        Mode twin = modes[m];
        twin.name += " more";
        twin.oven->oven = added;
        modes.push_back(std::move(twin));
        countAlike(static_cast<int>(i), static_cast<int>(m), static_cast<int>(modes.size()) - 1);
      }
    }
  }

  // Whatever names a mode of a step names its twin, too.
  void countAlike(int step, int mode, int twin) {
    const auto extend = [&](std::vector<int>& modes) {
      if (std::find(modes.begin(), modes.end(), mode) != modes.end()) modes.push_back(twin);
    };
    for (Step& other : problem_.steps)
      for (Mode& from : other.modes)
        for (ModeLink& link : from.links)
          if (link.step == step) extend(link.modes);
    for (Clock& clock : problem_.clocks)
      for (Clock::Span& span : clock.spans)
        if (span.from == step) extend(span.modes);
    for (Separation& separation : problem_.separations) {
      if (separation.clean == step) extend(separation.cleanModes);
      if (separation.other == step) extend(separation.otherModes);
    }
  }

  // Somebody is now there at all hours.
  void liftPresence() {
    for (Step& step : problem_.steps)
      for (Mode& mode : step.modes)
        if (mode.anyHour) mode.length = *mode.anyHour;
  }

  void addCook() {
    liftPresence();
    Cook cook;
    cook.id = "one more";
    cook.available = {{0, problem_.limit}};
    const int added = static_cast<int>(problem_.cooks.size());
    problem_.cooks.push_back(std::move(cook));
    for (Step& step : problem_.steps)
      for (Mode& mode : step.modes)
        if (mode.attention > 0) mode.cooks.push_back({added, 0});
  }

  const Problem& whole_;
  Problem& problem_;
  const Relaxing& relaxing_;
  std::vector<int> dishOf_;  // from the whole's numbers to the part's; -1: not in it
  std::vector<int> stepOf_;
};

}  // namespace

Problem relaxed(const Problem& problem, const std::vector<Wish>& kept, const std::vector<Wish>& taken,
                const Relaxing& relaxing) {
  std::vector<int> dishes;
  for (const Wish& wish : kept)
    if (wish.kind == WishKind::kServed) dishes.push_back(wish.index);
  std::sort(dishes.begin(), dishes.end());
  Problem result = partOf(problem, dishes);
  // Setpoints first: an oven added later takes the bakes that are free of them along.
  std::vector<Wish> inOrder = taken;
  std::stable_sort(inOrder.begin(), inOrder.end(),
                   [](const Wish& a, const Wish& b) { return a.kind < b.kind; });
  Relaxer relaxer(problem, dishes, result, relaxing);
  for (const Wish& wish : inOrder) relaxer.takeBack(wish);
  forgetCosts(result);
  return result;
}

}  // namespace suppertide::planning
