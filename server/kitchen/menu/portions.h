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

// For one adult portion, of one kind of amount.
struct Guide {
  std::string_view name;
  AmountKind kind;
  double least;
  double most;
  Source source;
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
  const Guide* guide;
  Amount amount;  // in all
};

// What of a dish has a guide; mostly nothing.
std::vector<GuidedAmount> guidesOf(const PortionDish& dish);

// Meat and fish, vegetables, bread of all courses together; what the menu has none of is left out.
std::vector<GuidedAmount> guidesOfMenu(const std::vector<PortionDish>& dishes);

enum class Enough { kYes, kFarTooLittle, kFarTooMuch };

// Far: below three fifths of the least, above eight fifths of the most.
Enough judgeAmount(const GuidedAmount& amount, double portions);

}  // namespace suppertide::kitchen
