// The smallest sets of wishes that cannot all be met.
//
// QuickXplain (Junker, AAAI 2004) twice: first over dishes with every other wish
// kept, then over the other wishes of the few dishes that are left, what people
// care about least taken back first. Wishes only restrict, so the second keeps
// the first one's set irreducible.
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
  Relaxing relaxing = {};
  bool smallest = true;                              // false: all wishes of the dishes that clash, at once
  bool nameRules = true;                             // look for the rules behind each set as well
  std::function<bool()> stop = {};                   // may be empty
  std::function<void(const WishClash&)> found = {};  // each as soon as it is known; may be empty
};

// Empty when all wishes can be met, or when that could not be ruled out in time.
// Asks `feasibility` once for all dishes and some twenty times a set; a few times when it need not be
// smallest.
std::vector<WishClash> wishClashes(const Problem& problem, const WishClashOptions& options,
                                   Feasibility& feasibility);

}  // namespace suppertide::planning
