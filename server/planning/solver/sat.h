// The SAT solver behind the engine: literals, clauses, assumptions.
//
// A literal is a non-zero int, its negation the negative; kTrue and kFalse are
// constants that clauses may hold. Not thread-safe; keeps learning between calls.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <memory>
#include <span>
#include <vector>

namespace suppertide::planning {

class Monitor;

using Lit = int;
inline constexpr Lit kTrue = 1;
inline constexpr Lit kFalse = -1;

class Sat {
 public:
  enum class Answer { kYes, kNo, kStopped };

  // How it picks what to decide next. By what conflicts were about most: far fewer conflicts in a hard
  // proof. By what was last in one: a question of few conflicts takes half the time, since nothing is sorted.
  enum class Deciding { kByActivity, kByRecency };

  // `workLimit` conflicts in all, 0 for no limit; `monitor` may be null.
  Sat(std::uint64_t seed, std::int64_t workLimit, Monitor* monitor,
      Deciding deciding = Deciding::kByActivity);
  ~Sat();

  Lit newLit();
  void add(std::span<const Lit> clause);
  void add(std::initializer_list<Lit> clause) { add(std::span<const Lit>(clause.begin(), clause.size())); }
  // kStopped when the monitor or the work limit says so, or after
  // `conflictLimit` conflicts of this call when that is not 0.
  Answer solve(std::span<const Lit> assumptions, std::int64_t conflictLimit = 0);
  bool value(Lit lit) const { return value_[static_cast<std::size_t>(lit < 0 ? -lit : lit)] == (lit > 0); }
  bool inCore(Lit assumption);  // after kNo
  void prefer(Lit lit);         // decides this way when nothing says otherwise
  bool stopped();               // whether solve() would stop at once
  std::int64_t work() const;    // conflicts so far, and one per call
  int literals() const { return count_; }
  std::int64_t clauses() const { return clauses_; }

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
  std::vector<bool> value_;
  int count_ = 0;
  std::int64_t clauses_ = 0;
};

}  // namespace suppertide::planning
