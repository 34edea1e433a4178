#include "server/planning/solver/weighted_sum.h"

#include <algorithm>

namespace suppertide::planning {
namespace {

// Partial sums kept apart in one node; beyond, neighbours are rounded down together.
constexpr std::size_t kSumsANode = 400;

Sums merge(Sat& sat, const Sums& a, const Sums& b, std::int64_t enough) {
  Sums sums;
  const auto literal = [&](std::int64_t work) {
    auto [it, fresh] = sums.try_emplace(std::min(work, enough), kFalse);
    if (fresh) it->second = sat.newLit();
    return it->second;
  };
  std::vector<std::int64_t> totals;
  for (const auto& [x, litX] : a) totals.push_back(x);
  for (const auto& [y, litY] : b) totals.push_back(y);
  for (const auto& [x, litX] : a)
    for (const auto& [y, litY] : b) totals.push_back(x + y);
  std::sort(totals.begin(), totals.end());
  totals.erase(std::unique(totals.begin(), totals.end()), totals.end());
  const std::size_t stride = totals.size() / kSumsANode + 1;
  const auto rounded = [&](std::int64_t work) {
    const auto rank =
        static_cast<std::size_t>(std::lower_bound(totals.begin(), totals.end(), work) - totals.begin());
    return totals[rank - rank % stride];
  };
  for (const auto& [x, litX] : a)
    if (rounded(x) > 0) sat.add({-litX, literal(rounded(x))});
  for (const auto& [y, litY] : b)
    if (rounded(y) > 0) sat.add({-litY, literal(rounded(y))});
  for (const auto& [x, litX] : a)
    for (const auto& [y, litY] : b) sat.add({-litX, -litY, literal(rounded(x + y))});
  for (auto it = sums.begin(); it != sums.end() && std::next(it) != sums.end(); ++it)
    sat.add({-std::next(it)->second, it->second});
  return sums;
}

// The wanted amounts of a + b: for each amount of one the least of the other that reaches it.
Sums reach(Sat& sat, const Sums& a, const Sums& b, const std::vector<std::int64_t>& wanted) {
  Sums sums;
  for (const std::int64_t amount : wanted) {
    std::vector<std::vector<Lit>> reasons;
    if (const auto alone = b.lower_bound(amount); alone != b.end()) reasons.push_back({-alone->second});
    for (const auto& [x, lit] : a) {
      if (x >= amount) {
        reasons.push_back({-lit});
        break;
      }
      if (const auto other = b.lower_bound(amount - x); other != b.end())
        reasons.push_back({-lit, -other->second});
    }
    if (reasons.empty()) continue;
    const Lit reached = sat.newLit();
    if (!sums.empty()) sat.add({-reached, sums.rbegin()->second});
    for (auto& reason : reasons) {
      reason.push_back(reached);
      sat.add(reason);
    }
    sums.emplace(amount, reached);
  }
  return sums;
}

}  // namespace

Sums sumUp(Sat& sat, std::vector<Sums> parts, const std::vector<std::int64_t>& wanted) {
  if (parts.empty() || wanted.empty()) return {};
  while (parts.size() > 2) {
    std::vector<Sums> merged;
    for (std::size_t k = 0; k + 1 < parts.size(); k += 2)
      merged.push_back(merge(sat, parts[k], parts[k + 1], wanted.back()));
    if (parts.size() % 2 == 1) merged.push_back(std::move(parts.back()));
    parts = std::move(merged);
  }
  return reach(sat, parts.front(), parts.size() > 1 ? parts.back() : Sums{}, wanted);
}

}  // namespace suppertide::planning
