#include "server/planning/solver/sat.h"

#include <algorithm>
#include <cadical.hpp>
#include <limits>

#include "server/planning/solver/solver.h"

namespace suppertide::planning {

struct Sat::Inside : CaDiCaL::Terminator, CaDiCaL::Learner {
  CaDiCaL::Solver solver;
  Monitor* monitor = nullptr;
  std::int64_t workLimit = 0;
  std::int64_t work = 0;
  bool stopped = false;

  bool terminate() override {
    if (!stopped && monitor != nullptr && monitor->stop()) stopped = true;
    if (workLimit > 0 && work >= workLimit) stopped = true;
    return stopped;
  }
  // Called once a conflict, which makes it the count of work; the clause itself is not wanted.
  bool learning(int) override {
    ++work;
    return false;
  }
  void learn(int) override {}
};

Sat::Sat(std::uint64_t seed, std::int64_t workLimit, Monitor* monitor, Deciding deciding)
    : inside_(std::make_unique<Inside>()) {
  auto& solver = inside_->solver;
  solver.set("quiet", 1);
  // Measured on published schedules and dinners: a quarter to a half less time than with the usual settings.
  solver.set("vivify", 0);
  solver.set(deciding == Deciding::kByActivity ? "stabilizeonly" : "stabilize",
             deciding == Deciding::kByActivity ? 1 : 0);
  solver.set("chrono", 0);
  solver.set("seed", static_cast<int>(seed % 1'000'000'000));
  inside_->monitor = monitor;
  inside_->workLimit = workLimit;
  solver.connect_terminator(inside_.get());
  solver.connect_learner(inside_.get());
  solver.add(newLit());  // kTrue
  solver.add(0);
}

Sat::~Sat() = default;

Lit Sat::newLit() {
  ++count_;
  return count_;
}

void Sat::add(std::span<const Lit> clause) {
  if (std::find(clause.begin(), clause.end(), kTrue) != clause.end()) return;
  ++clauses_;
  for (const Lit lit : clause)
    if (lit != kFalse) inside_->solver.add(lit);
  inside_->solver.add(0);
}

Sat::Answer Sat::solve(std::span<const Lit> assumptions, std::int64_t conflictLimit) {
  if (stopped()) return Answer::kStopped;
  ++inside_->work;
  auto& solver = inside_->solver;
  for (const Lit lit : assumptions) solver.assume(lit);
  std::int64_t limit = conflictLimit > 0 ? conflictLimit : std::numeric_limits<int>::max();
  if (inside_->workLimit > 0)
    limit = std::min(limit, std::max<std::int64_t>(1, inside_->workLimit - inside_->work));
  if (limit < std::numeric_limits<int>::max()) solver.limit("conflicts", static_cast<int>(limit));
  const int answer = solver.solve();
  if (answer == 20) return Answer::kNo;
  if (answer != 10) return Answer::kStopped;
  value_.assign(static_cast<std::size_t>(count_) + 1, false);
  for (int v = 1; v <= count_; ++v) value_[static_cast<std::size_t>(v)] = solver.val(v) > 0;
  return Answer::kYes;
}

bool Sat::inCore(Lit assumption) {
  return inside_->solver.failed(assumption);
}
void Sat::prefer(Lit lit) {
  if (lit != kTrue && lit != kFalse) inside_->solver.phase(lit);
}
bool Sat::stopped() {
  return inside_->terminate();
}
std::int64_t Sat::work() const {
  return inside_->work;
}

}  // namespace suppertide::planning
