// The dishes of random dinners, each added to a problem whose kitchen is already there.
#pragma once

#include <string>
#include <vector>

#include "server/planning/model/problem.h"
#include "tests/support/dice.h"

namespace suppertide::planning {

// Indices of what every random kitchen has.
struct KitchenThings {
  int burners = 0;
  int fridge = 0;
  int warmPlace = 0;
  int mixer = 0;
};

// Adds dishes to a problem, one call a dish.
class DishMaker {
 public:
  // `slack` stretches what may wait: 100 as in a calm kitchen, less when crowded.
  DishMaker(Problem& problem, const KitchenThings& things, Dice& dice, int slack)
      : problem_(problem), things_(things), dice_(dice), slack_(slack) {}

  void bread(Minute serve);         // 9 steps
  void roast(Minute serve);         // 7
  void gratin(Minute serve);        // 5
  void pie(Minute serve);           // 9
  void hobDish(Minute serve);       // 5
  void coldDish(Minute serve);      // 5
  void dessertAhead(Minute serve);  // 6

 private:
  struct Wait {
    Minute most;      // held at most, before `slack`
    int perHourCost;  // tier 3
  };
  void begin(const std::string& name, Minute serve, Wait wait);
  int add(const std::string& name, StepKind kind, LengthTable length);
  int handsOn(const std::string& name, Minute length, int attention = 100);
  int onBurner(const std::string& name, Minute length, int attention);
  int chill(const std::string& name, Minute shortest, Minute best, Minute longest);
  int bake(const std::string& name, Minute length, int best, int least, int racks);
  void then(int from, int to, Minute least, Minute most);
  void gap(int from, Edge fromEdge, int to, Edge toEdge, Minute least, Minute most);
  void finish(int lastStep);
  Minute wait(Minute most) const { return most * slack_ / 100 / 5 * 5; }
  std::vector<CookOption> someCooks();
  LengthTable byHour(Minute noonLength);
  int bulk();
  int proof(int bulkStep);
  int breadBake();

  Problem& problem_;
  const KitchenThings& things_;
  Dice& dice_;
  int slack_;
  std::string dishName_;
};

}  // namespace suppertide::planning
