#include "tests/support/random_dinner.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory>

#include "absl/strings/str_cat.h"
#include "tests/support/random_dish.h"

namespace suppertide::planning {
namespace {

constexpr Minute kDay = 1440;
constexpr Minute kServeDay = 2 * kDay;

Minute upToGrid(int minutes) {
  return (minutes + kDinnerGrid - 1) / kDinnerGrid * kDinnerGrid;
}

// Heats by `heating` and cools by `cooling` degrees a minute; a sum of rounded parts is never shorter than
// the whole.
Oven makeOven(int index, std::vector<int> setpoints, int heating, int cooling, int racks) {
  Oven oven;
  oven.id = absl::StrCat("oven ", index);
  for (const int from : setpoints) {
    std::vector<Minute> row;
    for (const int to : setpoints)
      row.push_back(
          upToGrid(to > from ? (to - from + heating - 1) / heating : (from - to + cooling - 1) / cooling));
    oven.change.push_back(row);
    oven.heatFromCold.push_back(upToGrid((from - 20 + heating - 1) / heating));
  }
  oven.setpoints = std::move(setpoints);
  oven.racks = std::make_shared<RackCount>(racks);
  return oven;
}

// The first is large and hot enough for bread, the others are smaller and unlike it.
void addOvens(Problem& problem, Dice& dice, int count, int racks) {
  for (int o = 0; o < count; ++o) {
    if (o == 0) {
      problem.ovens.push_back(makeOven(o, {28, 160, 175, 190, 205, 220, 240}, 10, 4, racks));
    } else if (dice.chance(50)) {
      problem.ovens.push_back(makeOven(o, {160, 175, 190, 220, 230}, 15, 5, dice.between(1, 2)));
    } else {
      problem.ovens.push_back(makeOven(o, {150, 165, 180, 200}, 6, 3, 2));
    }
  }
}

// At home all day, or at work on the first two days; nobody works at night.
void addCooks(Problem& problem, Dice& dice, int count, int working) {
  for (int c = 0; c < count; ++c) {
    Cook cook;
    cook.id = absl::StrCat("cook ", c);
    cook.share = c == 0 ? 2 : 1;
    const bool works = c > 0 && dice.chance(working);
    for (Minute day = 0; day < problem.limit; day += kDay) {
      if (works && day < kServeDay) {
        cook.available.push_back({day + 6 * 60, day + 9 * 60});
        cook.available.push_back({day + 17 * 60, day + 23 * 60});
      } else {
        cook.available.push_back({day + 6 * 60, day + 23 * 60});
      }
      cook.unsocial.push_back({{day + 6 * 60, day + 8 * 60}, 2});
      cook.unsocial.push_back({{day + 21 * 60, day + 23 * 60}, 1});
    }
    problem.cooks.push_back(cook);
  }
}

KitchenThings addThings(Problem& problem, Dice& dice, int dishes, DinnerLoad load) {
  const int spare = load == DinnerLoad::kLight ? 2 : load == DinnerLoad::kMiddling ? 1 : 0;
  const auto add = [&](const char* id, int capacity) {
    problem.resources.push_back({id, capacity, {}});
    return static_cast<int>(problem.resources.size()) - 1;
  };
  KitchenThings things;
  things.burners = add("burners", 2 + spare);
  things.fridge = add("fridge", 3 + dishes / 2 + 2 * spare);
  things.warmPlace = add("warm place", 1 + spare);
  things.mixer = add("mixer", 1);
  // The week's shopping stands in the fridge until the last morning.
  const Minute untilMorning = kServeDay + dice.between(0, 8) * 60;
  problem.resources[static_cast<std::size_t>(things.fridge)].taken.push_back({{0, untilMorning}, 1});
  return things;
}

void addDishes(DishMaker& maker, Dice& dice, int count) {
  const auto at = [&](int hour, int minute) {
    return kServeDay + hour * 60 + minute + dice.between(0, 3) * kDinnerGrid;
  };
  for (int d = 0; d < count; ++d) {
    // In turn, so that every size of dinner has its share of each.
    switch (d % 7) {
      case 0:
        maker.bread(at(18, 30));
        break;
      case 1:
        maker.roast(at(19, 15));
        break;
      case 2:
        maker.dessertAhead(at(20, 30));
        break;
      case 3:
        maker.gratin(at(19, 15));
        break;
      case 4:
        maker.pie(dice.chance(50) ? at(18, 30) : at(20, 30));
        break;
      case 5:
        dice.chance(50) ? maker.hobDish(at(19, 15)) : maker.coldDish(at(18, 30));
        break;
      default:
        dice.chance(50) ? maker.bread(at(19, 15)) : maker.hobDish(at(19, 15));
        break;
    }
  }
}

struct Staffing {
  int ovens;
  int racks;  // of the large oven
  int cooks;
  int working;  // per cent of cooks who are at work on the days before
  int slack;
};

Staffing staffingFor(int dishes, DinnerLoad load) {
  const int ovens = std::clamp((dishes + 5) / 6, 1, 3);
  const int cooks = std::clamp((dishes + 5) / 6 + 1, 2, 5);
  switch (load) {
    case DinnerLoad::kLight:
      return {std::min(ovens + 1, 4), 3, std::min(cooks + 1, 6), 20, 150};
    case DinnerLoad::kMiddling:
      return {ovens, 3, cooks, 40, 100};
    case DinnerLoad::kCrowded:
      break;
  }
  return {std::max(1, ovens - 1), 2, std::max(2, cooks - 1), 80, 60};
}

}  // namespace

Problem randomDinner(std::uint64_t seed, int dishes, DinnerLoad load, DinnerExtras extras) {
  Dice dice(seed);
  Problem problem;
  problem.limit = 3 * kDay;
  const Staffing staffing = staffingFor(dishes, load);
  addOvens(problem, dice, staffing.ovens, staffing.racks);
  addCooks(problem, dice, staffing.cooks, staffing.working);
  const KitchenThings things = addThings(problem, dice, dishes, load);
  DishMaker maker(problem, things, dice, staffing.slack);
  addDishes(maker, dice, dishes);
  addExtras(problem, seed, extras);
  return problem;
}

}  // namespace suppertide::planning
