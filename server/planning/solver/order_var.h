// An integer with a known list of values, as order literals "at most t".
#pragma once

#include <vector>

#include "server/planning/model/problem.h"
#include "server/planning/solver/sat.h"

namespace suppertide::planning {

class OrderVar {
 public:
  OrderVar() = default;
  // `values` ascending and not empty. Adds size - 1 literals and their chain.
  OrderVar(Sat& sat, std::vector<Minute> values);

  const std::vector<Minute>& values() const { return values_; }
  Lit atMost(Minute t) const;
  Lit atLeast(Minute t) const { return -atMost(t - 1); }
  Minute value(const Sat& sat) const;

 private:
  std::vector<Minute> values_;
  Minute step_ = 0;  // from each value to the next; 0: these differ
  Lit first_ = 0;
};

// An order variable moved by a fixed number of minutes.
struct Point {
  const OrderVar* var = nullptr;
  Minute shift = 0;

  Minute least() const { return var->values().front() + shift; }
  Minute most() const { return var->values().back() + shift; }
  Lit atMost(Minute t) const { return var->atMost(t - shift); }
  Lit atLeast(Minute t) const { return var->atLeast(t - shift); }
  Minute value(const Sat& sat) const { return var->value(sat) + shift; }
};

// Adds: unless one of `otherwise` holds, a + lag <= b.
void addOrder(Sat& sat, const std::vector<Lit>& otherwise, Point a, Minute lag, Point b);

}  // namespace suppertide::planning
