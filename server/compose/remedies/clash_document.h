// Wishes that cannot all be met, found in a composition and told as documents.
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "server/compose/composition.h"
#include "server/planning/clash/wish_clash.h"
#include "server/planning/model/schedule.h"

namespace suppertide::compose {

struct ClashSearchOptions {
  int most = 3;                     // sets
  std::int64_t conflicts = 2'000;   // effort a question
  std::int64_t steps = 0;           // of all questions together, 0: no limit; the same on every machine
  std::function<bool()> stop = {};  // may be empty
  std::vector<int> suspects = {};   // dishes that were left unserved or late
  std::vector<int> clashing = {};   // dishes known to clash; empty: they are looked for
  std::vector<bool> begun = {};     // by step, as Trial::begun()
  std::function<void(const planning::WishClash&)> found = {};  // each as soon as it is known; may be empty
};

// Never takes back what food safety asks for: clocks, separations, lengths, oven bounds.
std::vector<planning::WishClash> findWishClashes(const Composition& composition,
                                                 const ClashSearchOptions& options);

// Dishes that `schedule` leaves unserved or late, unserved first.
std::vector<int> suspectsOf(const Composition& composition, const planning::Schedule& schedule);

// Where a dish is unserved or late: what clashes, by a search of little effort
// that no clock cuts short, so that the same plan has the same clashes; what `stop` cuts short is not all.
// `begun` by step, empty for a plan that is not under way: what has begun is a fact and no wish.
void addWishClashes(const Composition& composition, const planning::Schedule& schedule, v1::Plan& plan,
                    const std::vector<bool>& begun = {}, const std::function<bool()>& stop = {});

v1::Clash clashDocument(const Composition& composition, const planning::WishClash& clash);

}  // namespace suppertide::compose
