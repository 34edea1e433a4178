// The smallest sets of wishes that cannot all be met.
//
// QuickXplain (Junker, AAAI 2004) over dishes with every other wish kept; then the other
// wishes of the few dishes that are left are taken back where they still clash, what people
// care about least first. Wishes only restrict, so that keeps the dishes' set irreducible.
#pragma once

#include <functional>
#include <vector>

#include "server/planning/clash/feasibility.h"
#include "server/planning/clash/wishes.h"

namespace suppertide::planning {

// A rule that is never given up; without all of a clash's rules its wishes could be met.
struct KeptRule {
  enum class Kind { kClock, kSeparation };
  Kind kind = Kind::kClock;
  int index = 0;  // into Problem::clocks or ::separations
  friend bool operator==(const KeptRule&, const KeptRule&) = default;
};

struct WishClash {
  std::vector<Wish> wishes;     // in the order of the kinds
  std::vector<KeptRule> rules;  // as few as matter; none when the wishes alone clash
  // Without any one of them the others can be met; false when a question on the way stayed open.
  bool irreducible = true;
};

struct WishClashOptions {
  int most = 3;                    // sets, as different as can be
  std::vector<int> suspects = {};  // dishes that a plan left unserved or late; they are looked at first
  std::vector<int> clashing = {};  // dishes known to clash, from a question about all; empty: it is asked
  Relaxing relaxing = {};
  std::function<bool()> stop = {};                   // may be empty
  std::function<void(const WishClash&)> found = {};  // each as soon as it is known; may be empty
};

// Empty when all wishes can be met, or when that could not be ruled out in time.
// Asks `feasibility` once for all dishes and some ten to twenty times a set; A plan that answered one
// question answers others that it keeps the wishes of.
std::vector<WishClash> wishClashes(const Problem& problem, const WishClashOptions& options,
                                   Feasibility& feasibility);

}  // namespace suppertide::planning
