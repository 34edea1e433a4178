// What guests usually eat: guide quantities against what a menu has.
//
// Few are published; none exists for most dishes, and then none is made up.
// The whole menu's are common practice, and wide.
#pragma once

#include <string>
#include <vector>

#include "server/kitchen/menu/shopping.h"
#include "server/kitchen/source.h"

namespace suppertide::kitchen {

// For one adult portion, or, with `inAll`, whatever the portions; of one kind of amount.
struct Guide {
  std::string_view name;
  AmountKind kind;
  double least;
  double most;
  Source source;
  bool inAll = false;
};

struct PortionDish {
  std::string name;
  struct Part {
    std::string name;
    Amount amount;
    std::vector<std::string> holds;  // as Contents::holds
  };
  std::vector<Part> parts;
  int pieces = 0;         // breads only
  double pieceGrams = 0;  // of dough
};

struct GuidedAmount {
  Guide guide;
  Amount amount;  // in all
};

// What of a dish has a guide; mostly nothing. With kSome the guide stands alone: how much
// stuffing goes into the bird.
std::vector<GuidedAmount> guidesOf(const PortionDish& dish);

// Meat and fish, vegetables, bread of all courses together; what the menu has none of is left out.
std::vector<GuidedAmount> guidesOfMenu(const std::vector<PortionDish>& dishes);

// What can be eaten of a whole turkey as bought, grams of grams.
double turkeyMeat(double grams);

enum class Enough { kYes, kFarTooLittle, kFarTooMuch };

// Far: below three fifths of the least, above eight fifths of the most.
Enough judgeAmount(const GuidedAmount& amount, double portions);

}  // namespace suppertide::kitchen
