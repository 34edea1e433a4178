// An answer to a Problem: where each step lies, and what that costs.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "server/planning/model/problem.h"

namespace suppertide::planning {

// One step's place in the plan: [start, end) in `mode`, by `cook` (-1: nobody).
struct Placement {
  Minute start = 0;
  Minute end = 0;
  int mode = 0;
  int cook = -1;
  friend bool operator==(const Placement&, const Placement&) = default;
};

struct Schedule {
  std::vector<Placement> steps;  // as Problem::steps
  std::vector<bool> unserved;    // as Problem::dishes; the steps of such a dish use nothing and mean nothing
  friend bool operator==(const Schedule&, const Schedule&) = default;
};

// The tiers of what is better, most important first; a lower tier never buys a higher one.
enum class Tier {
  kUnserved,  // dishes not served
  kLateness,  // minutes late
  kMoves,     // replanning only: away from what was announced
  kQuality,   // waiting, degrees and minutes off their best
  kPeople,    // unsocial hours, wishes, shares of the work
  kCalm,      // interruptions, air between tasks and after what is uncertain
  kOvens,     // minutes heated with nothing in it
};
inline constexpr int kTierCount = 7;

using TierCosts = std::array<std::int64_t, kTierCount>;  // compares lexicographically

inline std::int64_t& costIn(TierCosts& costs, Tier tier) {
  return costs[static_cast<std::size_t>(tier)];
}
inline std::int64_t costIn(const TierCosts& costs, Tier tier) {
  return costs[static_cast<std::size_t>(tier)];
}

// What a schedule costs, kept apart so that it can be shown.
struct CostBreakdown {
  TierCosts total{};
  std::vector<TierCosts> byDish;              // every cost but the shares belongs to one dish
  std::vector<std::int64_t> overShareByCook;  // kPeople
};

// Costs of `schedule`, which must fit `problem` in size. About linear in the
// steps; each tier is counted in a file of its own under costs/.
CostBreakdown costOf(const Problem& problem, const Schedule& schedule);

}  // namespace suppertide::planning
