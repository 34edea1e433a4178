#include "server/planning/solver/order_var.h"

#include <algorithm>

namespace suppertide::planning {

OrderVar::OrderVar(Sat& sat, std::vector<Minute> values) : values_(std::move(values)) {
  for (std::size_t k = 0; k + 1 < values_.size(); ++k) {
    const Lit lit = sat.newLit();
    if (k == 0)
      first_ = lit;
    else
      sat.add({-(lit - 1), lit});
  }
  if (values_.size() < 2) return;
  step_ = values_[1] - values_[0];
  for (std::size_t k = 1; k + 1 < values_.size(); ++k)
    if (values_[k + 1] - values_[k] != step_) step_ = 0;
}

Lit OrderVar::atMost(Minute t) const {
  if (t < values_.front()) return kFalse;
  if (t >= values_.back()) return kTrue;
  if (step_ > 0) return first_ + (t - values_.front()) / step_;
  const auto above = std::upper_bound(values_.begin(), values_.end(), t);
  return first_ + static_cast<int>(above - values_.begin()) - 1;
}

Minute OrderVar::value(const Sat& sat) const {
  int low = 0;
  int high = static_cast<int>(values_.size()) - 1;
  while (low < high) {
    const int middle = (low + high) / 2;
    if (sat.value(first_ + middle))
      high = middle;
    else
      low = middle + 1;
  }
  return values_[static_cast<std::size_t>(low)];
}

void addOrder(Sat& sat, const std::vector<Lit>& otherwise, Point a, Minute lag, Point b) {
  std::vector<Lit> clause = otherwise;
  clause.resize(otherwise.size() + 2);
  const auto& values = b.var->values();
  for (std::size_t k = 0; k < values.size(); ++k) {
    const Minute v = values[k] + b.shift;
    const Lit then = a.atMost(v - lag);
    if (then == kTrue) return;
    // "b at most the next value" implies the same bound on a: the later clause covers this one.
    if (k + 1 < values.size() && a.atMost(values[k + 1] + b.shift - lag) == then) continue;
    clause[otherwise.size()] = -b.atMost(v);
    clause[otherwise.size() + 1] = then;
    sat.add(clause);
  }
}

}  // namespace suppertide::planning
