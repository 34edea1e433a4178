#include "tests/support/dinner_extras.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "tests/support/dice.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

// Minutes for an axis of a few hours, or of days.
struct Scale {
  Minute clockLeast;
  Minute clockMost;
  Minute cleaningMost;
  Minute movedMost;
};

class ExtrasMaker {
 public:
  ExtrasMaker(Problem& problem, std::uint64_t seed)
      : problem_(problem),
        dice_(seed ^ 0x5EA50Full),
        scale_(problem.limit < 600 ? Scale{10, 60, 10, 40} : Scale{60, 600, 20, 240}) {
    stepsOf_.resize(problem.dishes.size());
    for (int i = 0; i < static_cast<int>(problem.steps.size()); ++i)
      stepsOf_[static_cast<std::size_t>(stepAt(i).dish)].push_back(i);
  }

  void clocks() {
    for (const std::vector<int>& steps : stepsOf_) {
      if (!dice_.chance(50)) continue;
      Clock clock;
      clock.id = absl::StrCat("clock ", problem_.clocks.size());
      const int spans = dice_.between(1, 2);
      for (int s = 0; s < spans; ++s) clock.spans.push_back(span(steps));
      clock.most = dice_.between(scale_.clockLeast, scale_.clockMost, kDinnerGrid);
      problem_.clocks.push_back(clock);
    }
  }

  void separations() {
    const int count = dice_.between(0, 1 + static_cast<int>(problem_.dishes.size()) / 3);
    for (int s = 0; s < count; ++s) {
      Separation separation;
      separation.id = absl::StrCat("separation ", s);
      separation.clean = anyStep();
      separation.other = anyStep();
      if (stepAt(separation.clean).dish == stepAt(separation.other).dish) continue;
      separation.cleanModes = someModes(separation.clean);
      separation.otherModes = someModes(separation.other);
      if (!dice_.chance(40)) separation.cleaning = dice_.between(0, scale_.cleaningMost, kDinnerGrid);
      problem_.separations.push_back(separation);
    }
  }

  void usedUp() {
    const int dishes = static_cast<int>(problem_.dishes.size());
    Resource eggs;
    eggs.id = "eggs";
    eggs.capacity = dice_.between(dishes, 2 * dishes);
    eggs.usedUp = true;
    if (dice_.chance(30)) eggs.taken = {{{0, kDinnerGrid}, 1}};
    const int index = static_cast<int>(problem_.resources.size());
    problem_.resources.push_back(eggs);
    for (Step& step : problem_.steps)
      for (Mode& mode : step.modes)
        if (dice_.chance(25)) mode.uses.push_back({index, dice_.between(1, std::min(2, eggs.capacity))});
  }

  void announced() {
    for (Step& step : problem_.steps) {
      if (!dice_.chance(40)) continue;
      Announced told;
      const Minute serve = problem_.dishes[static_cast<std::size_t>(step.dish)].serve;
      told.start = std::max(0, serve - dice_.between(0, scale_.movedMost, kDinnerGrid));
      told.mode = dice_.between(0, static_cast<int>(step.modes.size()) - 1);
      const Mode& mode = step.modes[static_cast<std::size_t>(told.mode)];
      if (mode.attention > 0) told.cook = dice_.oneOf(mode.cooks).cook;
      told.weight = dice_.between(0, 2);
      step.announced = told;
    }
  }

  void air() {
    for (Gap& gap : problem_.gaps)
      if (dice_.chance(30)) gap.air = dice_.between(0, 3 * kDinnerGrid, kDinnerGrid);
    problem_.airBetweenTasks = dice_.between(0, 2 * kDinnerGrid, kDinnerGrid);
    problem_.interruptionCost = dice_.chance(70) ? 10 : 0;
  }

  void idleHeat() {
    for (Oven& oven : problem_.ovens)
      if (dice_.chance(80)) oven.idleMinuteCost = 1;
  }

  void spreads() {
    problem_.unknowns = {{"starter", 0.15}, {"room", 0.05}};
    for (Step& step : problem_.steps) {
      for (Mode& mode : step.modes) {
        if (step.kind == StepKind::kFerment) {
          mode.spread.follows = {{0, 1.0}, {1, dice_.chance(50) ? 1.0 : 0.5}};
        } else if (mode.attention > 0) {
          mode.spread.least = 0.8;
          mode.spread.most = 1.0 + 0.1 * dice_.between(1, 6);
        } else if (step.kind == StepKind::kBake) {
          mode.spread.least = 0.9;
          mode.spread.most = 1.0 + 0.05 * dice_.between(1, 5);
        }
      }
    }
  }

 private:
  Step& stepAt(int index) { return problem_.steps[static_cast<std::size_t>(index)]; }
  int anyStep() { return dice_.between(0, static_cast<int>(problem_.steps.size()) - 1); }
  Edge anyEdge() { return dice_.chance(50) ? Edge::kStart : Edge::kEnd; }

  Clock::Span span(const std::vector<int>& steps) {
    Clock::Span span;
    span.from = dice_.oneOf(steps);
    span.fromEdge = anyEdge();
    span.to = dice_.chance(50) ? -1 : dice_.oneOf(steps);
    span.toEdge = anyEdge();
    span.modes = someModes(span.from);
    return span;
  }

  // Mostly any, else one of several.
  std::vector<int> someModes(int step) {
    const int modes = static_cast<int>(stepAt(step).modes.size());
    if (modes < 2 || dice_.chance(60)) return {};
    return {dice_.between(0, modes - 1)};
  }

  Problem& problem_;
  Dice dice_;
  Scale scale_;
  std::vector<std::vector<int>> stepsOf_;
};

}  // namespace

void addExtras(Problem& problem, std::uint64_t seed, DinnerExtras extras) {
  ExtrasMaker maker(problem, seed);
  if (extras.clocks) maker.clocks();
  if (extras.separations) maker.separations();
  if (extras.usedUp) maker.usedUp();
  if (extras.announced) maker.announced();
  if (extras.air) maker.air();
  if (extras.idleHeat) maker.idleHeat();
  if (extras.spreads) maker.spreads();
}

}  // namespace suppertide::planning
