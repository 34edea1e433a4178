// Small shelves and pans thrown with a seed, for tests against a slow twin.
#pragma once

#include <random>
#include <vector>

#include "server/kitchen/shelf_packing.h"

namespace suppertide::kitchen {

class Dice {
 public:
  explicit Dice(unsigned seed) : random_(seed) {}
  int upTo(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }

 private:
  std::mt19937 random_;
};

struct SmallShelf {
  int width = 0;
  int depth = 0;
  std::vector<Footprint> prints;  // at most `most`, of no more area than the shelf; perhaps none
};

// Sides of 4 to 7 for the shelf, of up to `widest` by 4 for what lies there.
inline SmallShelf smallShelf(unsigned seed, std::size_t most, int widest) {
  Dice dice(seed);
  SmallShelf shelf;
  shelf.width = dice.upTo(4, 7);
  shelf.depth = dice.upTo(4, 7);
  int area = 0;
  while (shelf.prints.size() < most) {
    const int wide = dice.upTo(1, widest);
    const Footprint next{wide, dice.upTo(1, 4), 1};
    if (area + next.width * next.depth > shelf.width * shelf.depth) break;
    area += next.width * next.depth;
    shelf.prints.push_back(next);
  }
  return shelf;
}

}  // namespace suppertide::kitchen
