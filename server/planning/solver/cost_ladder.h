// Costs as literals: a ladder says "at least this much", a term what a literal costs.
#pragma once

#include <cstdint>
#include <vector>

#include "server/planning/solver/order_var.h"

namespace suppertide::planning {

// `lit` costs `weight` when true; a weight may be negative.
struct Term {
  Lit lit;
  std::int64_t weight;
  bool late = false;  // better looked at after the others: it concerns everything at once
};

// A sum to be made small: a constant and its terms.
struct CostSum {
  std::int64_t constant = 0;
  std::vector<Term> terms;

  // Costs `cost(values[k])` for the value an order variable takes, unless `excuse` holds
  // (kFalse: never); then it costs nothing.
  template <typename CostAt>
  void addFunction(Sat& sat, const Point& point, Lit excuse, CostAt cost);
  void add(Lit lit, std::int64_t weight, bool late = false);
};

// A cost that is at least what the clauses say: one order variable over its levels.
class CostLadder {
 public:
  // `levels` not empty, any order. Adds its levels to `sum`.
  CostLadder(Sat& sat, std::vector<std::int64_t> levels, CostSum& sum, bool late = false);
  // The literal "costs at least `cost`"; `cost` is one of the levels or below them.
  Lit atLeast(std::int64_t cost) const { return var_.atLeast(static_cast<Minute>(cost)); }
  std::int64_t value(const Sat& sat) const { return var_.value(sat); }
  const std::vector<Minute>& levels() const { return var_.values(); }

 private:
  OrderVar var_;
};

template <typename CostAt>
void CostSum::addFunction(Sat& sat, const Point& point, Lit excuse, CostAt cost) {
  const auto& values = point.var->values();
  const auto conditional = [&](Lit lit) {
    if (excuse == kFalse || lit == kFalse) return lit;
    if (lit == kTrue) return -excuse;
    const Lit both = sat.newLit();
    sat.add({excuse, -lit, both});
    return both;
  };
  std::int64_t last = cost(values.front() + point.shift);
  add(conditional(kTrue), last);
  for (std::size_t k = 1; k < values.size(); ++k) {
    const std::int64_t here = cost(values[k] + point.shift);
    const Lit reached = point.atLeast(values[k] + point.shift);
    if (here > last) add(conditional(reached), here - last);
    if (here < last) {
      // Less from here on: counted as the full amount and the part before this value.
      add(conditional(kTrue), here - last);
      add(conditional(-reached), last - here);
    }
    last = here;
  }
}

}  // namespace suppertide::planning
