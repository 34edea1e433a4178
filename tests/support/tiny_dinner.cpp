// Dinners small enough to try every schedule, with all that a mode may ask for.
#include <memory>

#include "absl/strings/str_cat.h"
#include "tests/support/dice.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

class TinyMaker {
 public:
  explicit TinyMaker(std::uint64_t seed) : dice_(seed) {}

  Problem make() {
    problem_.limit = dice_.between(60, 120, kDinnerGrid);
    problem_.shareBlock = 10;
    problem_.shareBlockCost = dice_.chance(50) ? 3 : 0;
    addOven();
    if (dice_.chance(30)) addOven();
    addCook();
    if (dice_.chance(50)) addCook();
    addBurner();
    const int dishes = dice_.between(2, 4);
    for (int d = 0; d < dishes; ++d) addDish(dishes == 4 ? 2 : 3);
    return problem_;
  }

 private:
  Minute slots(int low, int high) {
    return dice_.between(low * kDinnerGrid, high * kDinnerGrid, kDinnerGrid);
  }

  void addOven() {
    Oven oven;
    oven.id = absl::StrCat("oven ", problem_.ovens.size());
    oven.setpoints = {28, 170, 220};
    const Minute near = slots(1, 2);
    const Minute far = slots(2, 4);
    oven.change = {{0, far, far}, {far, 0, near}, {far, near, 0}};
    oven.heatFromCold = {0, near, far};
    oven.racks = std::make_shared<RackCount>(dice_.between(1, 2));
    if (dice_.chance(20)) {
      const Minute start = slots(0, 8);
      oven.closed.push_back({start, start + slots(1, 3)});
    }
    problem_.ovens.push_back(oven);
  }

  void addCook() {
    Cook cook;
    cook.id = absl::StrCat("cook ", problem_.cooks.size());
    cook.share = dice_.between(1, 2);
    const Minute away = slots(2, 8);
    if (dice_.chance(40)) {
      cook.available = {{0, away}, {away + slots(1, 3), problem_.limit}};
    } else {
      cook.available = {{0, problem_.limit}};
    }
    if (dice_.chance(50)) cook.unsocial.push_back({{away, away + slots(1, 6)}, dice_.between(1, 3)});
    problem_.cooks.push_back(cook);
  }

  void addBurner() {
    Resource burner{"burner", dice_.between(1, 2), {}};
    if (dice_.chance(40)) {
      const Minute start = slots(0, 10);
      burner.taken.push_back({{start, start + slots(1, 4)}, 1});
    }
    problem_.resources.push_back(burner);
  }

  void addDish(int mostSteps) {
    Dish dish;
    dish.id = absl::StrCat("dish ", problem_.dishes.size());
    dish.serve = dice_.between(problem_.limit / 15 * 10, problem_.limit, kDinnerGrid);
    dish.holdLimit = slots(0, 4);
    dish.lateLimit = slots(0, 3);
    dish.waitCost.knots = {{0, 0}, {5, dice_.between(0, 2)}, {20, dice_.between(2, 12)}};
    dish.unservedCost = dice_.between(1, 3);
    problem_.dishes.push_back(dish);
    const int count = dice_.between(1, mostSteps);
    const int first = static_cast<int>(problem_.steps.size());
    for (int s = 0; s < count; ++s) addStep();
    problem_.dishes.back().lastStep = static_cast<int>(problem_.steps.size()) - 1;
    addGaps(first, count);
  }

  // A chain; or two branches that meet in the last step.
  void addGaps(int first, int count) {
    const bool joins = count == 3 && dice_.chance(30);
    for (int s = 1; s < count; ++s) {
      const int from = joins && s == 1 ? first : first + s - 1;
      const int to = joins && s == 1 ? first + 2 : first + s;
      const Minute least = dice_.chance(30) ? slots(1, 2) : 0;
      problem_.gaps.push_back({from, Edge::kEnd, to, Edge::kStart, least, least + slots(0, 3)});
    }
    if (count == 3 && dice_.chance(20))
      problem_.gaps.push_back({first, Edge::kStart, first + 2, Edge::kStart, slots(0, 2), kNoLimit});
  }

  void addStep() {
    Step step;
    step.id = absl::StrCat("step ", problem_.steps.size());
    step.dish = static_cast<int>(problem_.dishes.size()) - 1;
    if (dice_.chance(20)) step.earliest = slots(0, 6);
    const int modes = dice_.chance(50) ? 2 : 1;
    const int sort = dice_.between(0, 9);
    for (int m = 0; m < modes; ++m) {
      Mode mode = sort < 5 ? baking(step) : sort < 8 ? handsOn(step) : fermenting(step);
      mode.name = absl::StrCat("mode ", m);
      mode.qualityCost = dice_.between(0, 4);
      step.modes.push_back(mode);
    }
    linkToLast(step);
    pin(step);
    problem_.steps.push_back(step);
  }

  Mode baking(Step& step) {
    step.kind = StepKind::kBake;
    const int oven = dice_.between(0, static_cast<int>(problem_.ovens.size()) - 1);
    const int setpoint = dice_.chance(15) ? 0 : dice_.between(1, 2);
    Mode mode;
    OvenNeed need{oven, {{setpoint, 0}}, {}, !dice_.chance(20)};
    if (dice_.chance(20)) {
      need.phases = {{2, slots(1, 2)}, {1, slots(1, 3)}};
      mode.length = LengthTable::fixed(need.phases[0].length + need.phases[1].length);
    } else if (dice_.chance(20)) {
      mode.length = elastic();
      mode.longMinuteCost = mode.shortMinuteCost = 1;
    } else {
      mode.length = LengthTable::fixed(slots(1, 5));
    }
    mode.oven = need;
    return mode;
  }

  Mode handsOn(Step& step) {
    step.kind = dice_.chance(40) ? StepKind::kCook : StepKind::kHandsOn;
    Mode mode;
    mode.length = LengthTable::fixed(slots(1, 3));
    mode.attention = dice_.oneOf<int>({25, 50, 60, 100});
    for (int c = 0; c < static_cast<int>(problem_.cooks.size()); ++c)
      if (mode.cooks.empty() || dice_.chance(70)) mode.cooks.push_back({c, dice_.between(0, 2)});
    if (step.kind == StepKind::kCook) mode.uses.push_back({0, 1});
    return mode;
  }

  Mode fermenting(Step& step) {
    step.kind = StepKind::kFerment;
    Mode mode;
    mode.length = {0, 15, {}};
    for (Minute start = 0; start < problem_.limit; start += 15) mode.length.rows.push_back(elastic().rows[0]);
    if (dice_.chance(30)) mode.length.rows[1] = {1, 1, 0};
    mode.shortMinuteCost = dice_.between(0, 1);
    mode.longMinuteCost = dice_.between(0, 2);
    return mode;
  }

  LengthTable elastic() {
    const Minute shortest = slots(1, 3);
    const Minute best = shortest + slots(0, 1);
    return LengthTable::range(shortest, best, best + slots(0, 1));
  }

  // One mode of the step asks for one of the step before it.
  void linkToLast(Step& step) {
    if (problem_.steps.empty() || !dice_.chance(30)) return;
    const Step& last = problem_.steps.back();
    const int count = static_cast<int>(last.modes.size());
    if (last.dish != step.dish || count < 2) return;
    step.modes.back().links.push_back(
        {static_cast<int>(problem_.steps.size()) - 1, {dice_.between(0, count - 1)}});
  }

  void pin(Step& step) {
    if (dice_.chance(8)) step.pin.mode = dice_.between(0, static_cast<int>(step.modes.size()) - 1);
    const Mode& mode = step.modes.front();
    if (mode.attention > 0 && dice_.chance(8)) step.pin.cook = mode.cooks.front().cook;
  }

  Dice dice_;
  Problem problem_;
};

}  // namespace

Problem tinyDinner(std::uint64_t seed, DinnerExtras extras) {
  Problem problem = TinyMaker(seed).make();
  addExtras(problem, seed, extras);
  return problem;
}

}  // namespace suppertide::planning
