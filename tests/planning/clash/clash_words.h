// Clashes checked by their definition, and in short words for tests.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "server/planning/clash/wish_clash.h"

namespace suppertide::planning {

// "serve loaf", "setpoint bake", "oven range", "hours Ana", "count burners", "hands", "pin mix", "fresh
// loaf".
inline std::string wordsOf(const Problem& problem, const Wish& wish) {
  const auto at = static_cast<std::size_t>(wish.index);
  switch (wish.kind) {
    case WishKind::kServed:
      return absl::StrCat("serve ", problem.dishes[at].id);
    case WishKind::kSetpoint:
      return absl::StrCat("setpoint ", problem.steps[at].id);
    case WishKind::kOven:
      return absl::StrCat("oven ", problem.ovens[at].id);
    case WishKind::kPinned:
      return absl::StrCat("pin ", problem.steps[at].id);
    case WishKind::kHours:
      return absl::StrCat("hours ", problem.cooks[at].id);
    case WishKind::kCount:
      return absl::StrCat("count ", problem.resources[at].id);
    case WishKind::kHands:
      return "hands";
    case WishKind::kFresh:
      return absl::StrCat("fresh ", problem.dishes[at].id);
  }
  return "?";
}

inline std::vector<std::string> wordsOf(const Problem& problem, const WishClash& clash) {
  std::vector<std::string> words;
  for (const Wish& wish : clash.wishes) words.push_back(wordsOf(problem, wish));
  return words;
}

// All other wishes taken back, these cannot be met; leaving out any one, the rest can.
inline void expectIrreducible(const Problem& problem, const WishClash& clash, Feasibility& feasibility) {
  std::vector<int> dishes;
  for (const Wish& wish : clash.wishes)
    if (wish.kind == WishKind::kServed) dishes.push_back(wish.index);
  const auto decide = [&](const std::vector<Wish>& kept) {
    std::vector<Wish> taken;
    for (const Wish& wish : wishesOf(problem, dishes))
      if (std::find(kept.begin(), kept.end(), wish) == kept.end()) taken.push_back(wish);
    return feasibility.decide(relaxed(problem, kept, taken));
  };
  EXPECT_EQ(decide(clash.wishes), Feasible::kNo);
  for (std::size_t k = 0; k < clash.wishes.size(); ++k) {
    std::vector<Wish> kept = clash.wishes;
    kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(k));
    EXPECT_EQ(decide(kept), Feasible::kYes) << "without " << wordsOf(problem, clash.wishes[k]);
  }
}

}  // namespace suppertide::planning
