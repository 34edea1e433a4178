// What the food-safety rules make of an event's steps.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "server/compose/composition.h"
#include "server/kitchen/safety_life.h"

namespace suppertide::compose {

kitchen::RuleSet rulesOf(const v1::Household& household);
v1::SafetyRules rulesOf(kitchen::RuleSet rules);
// The documents' word for a class of food.
v1::SafetyClass safetyClassOf(kitchen::FoodClass food);

// The class that a step handles, by itself or its recipe; none when no limits are known.
std::optional<kitchen::FoodClass> foodOf(const v1::Recipe& recipe, const v1::Step& step);
kitchen::ThawWay thawWayOf(const v1::Step& step);

// A limit in minutes over steps that count together, whether or not the plan
// could ever break it.
struct SafetyClock {
  v1::SafetyLimitKind kind;
  planning::Clock clock;
  kitchen::FoodClass food;
  kitchen::Source source;
  std::vector<int> steps;  // problem steps whose minutes it counts, in order
  bool canBind = true;     // false: gaps and lengths alone keep it
  bool isAdvice = false;   // no breach
  // Minutes at its beginning that only bring it to the limit's own start: thawing at its quickest.
  planning::Minute before = 0;
};

class SafetyView {
 public:
  // The composition has its dishes, gaps and modes; it must outlive the view.
  explicit SafetyView(const Composition& composition);

  struct StepState {
    std::optional<kitchen::FoodClass> food;
    bool cooked = false;  // when the step begins
    bool cooks = false;   // raw food is cooked by it
    bool heats = false;   // an oven or burner step at all
    // Problem steps with such food right before and after it.
    std::vector<int> before;
    std::vector<int> after;
  };
  const StepState& state(int step) const { return states_[static_cast<std::size_t>(step)]; }
  kitchen::RuleSet rules() const { return rules_; }
  // All minute limits, dish by dish; the same for equal documents.
  const std::vector<SafetyClock>& clocks() const { return clocks_; }

  // How its modes keep the food: no mode, some or all in the cold, or hot.
  bool keepsCold(int step, int mode) const;
  bool keepsHot(int step, int mode) const;

 private:
  using Path = std::vector<int>;

  void readStates();
  void markCooked();
  void addClocks(const DishInfo& dish);
  void addRawClocks(const DishInfo& dish, const Path& path);
  void addCookedClocks(const DishInfo& dish, const Path& path);
  void addRoomClock(const DishInfo& dish, const Path& path, bool raw);
  void addHotClock(const DishInfo& dish, const Path& path);
  void add(SafetyClock clock);
  void extend(Path& path, bool raw, std::vector<Path>& paths) const;
  std::vector<Path> paths(const DishInfo& dish, bool raw) const;

  std::vector<int> warmModes(int step) const;
  std::vector<int> hotModes(int step) const;
  double warmestCelsius(int step) const;
  // Most minutes from an edge of a path's step to the start of its next one, or until served.
  planning::Minute longestStay(const DishInfo& dish, int step, int next, bool fromEnd) const;

  const Composition& composition_;
  kitchen::RuleSet rules_;
  std::vector<StepState> states_;
  std::vector<SafetyClock> clocks_;
};

}  // namespace suppertide::compose
