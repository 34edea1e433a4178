#include "server/planning/solver/share_costs.h"

#include <algorithm>

#include "server/planning/solver/step_cost.h"

namespace suppertide::planning {
namespace {

// Partial sums kept apart in one node; beyond, neighbours are rounded down together.
constexpr std::size_t kSumsANode = 160;

}  // namespace

ShareCosts::ShareCosts(Encoder& encoder, CostSum& sum) : encoder_(encoder), sum_(sum) {
  const Problem& problem = encoder.model().problem();
  ladders_.resize(problem.cooks.size());
  for (const Cook& cook : problem.cooks) shares_ += cook.share;
  if (problem.shareBlockCost == 0 || problem.shareBlock <= 0 || shares_ == 0) return;
  for (int c = 0; c < sizeOf(problem.cooks); ++c) makeCook(c);
}

// Least and most work of each step that the cook may do.
std::vector<ShareCosts::Part> ShareCosts::partsOf(int cook) const {
  const GridModel& model = encoder_.model();
  std::vector<Part> parts;
  for (int i = 0; i < sizeOf(model.problem().steps); ++i) {
    if (!model.used(i) || encoder_.cook(i, cook) == kFalse) continue;
    std::int64_t least = kNoLimit;
    std::int64_t most = 0;
    for (const Choice& choice : model.step(i).choices) {
      if (choice.cooks.empty()) continue;
      const Mode& mode = at(at(model.problem().steps, i).modes, choice.mode);
      for (const Minute start : model.step(i).starts) {
        const EndRange range = model.endRange(i, choice.mode, start);
        if (range.empty()) continue;
        least = std::min(least, workMinutes(mode, start, range.first));
        most = std::max(most, workMinutes(mode, start, range.last));
      }
    }
    if (most == 0) continue;
    Lit does = encoder_.cook(i, cook);
    if (encoder_.servedStep(i) != kTrue) {
      const Lit both = encoder_.sat().newLit();
      encoder_.sat().add({-does, -encoder_.servedStep(i), both});
      does = both;
    }
    parts.push_back({does, least, most});
  }
  return parts;
}

std::int64_t ShareCosts::mostWork() const {
  const GridModel& model = encoder_.model();
  std::int64_t all = 0;
  for (int i = 0; i < sizeOf(model.problem().steps); ++i) {
    if (!model.used(i)) continue;
    std::int64_t most = 0;
    for (const Choice& choice : model.step(i).choices)
      for (const Minute start : model.step(i).starts)
        if (!choice.cooks.empty())
          most = std::max(most, workMinutes(at(at(model.problem().steps, i).modes, choice.mode), start,
                                            std::max(start, model.endRange(i, choice.mode, start).last)));
    all += most;
  }
  return all;
}

void ShareCosts::makeCook(int cook) {
  const Problem& problem = encoder_.model().problem();
  const std::int64_t fair = mostWork() * at(problem.cooks, cook).share / shares_;
  const auto parts = partsOf(cook);
  std::int64_t most = 0;
  std::vector<Sums> leaves;
  for (const Part& part : parts) {
    most += part.most;
    if (part.least > 0) leaves.push_back({{part.least, part.lit}});
  }
  // Where others do less than their most, the fair share is lower and the cook further above it.
  const std::int64_t blocks = (most + problem.shareBlock - 1) / problem.shareBlock;
  std::vector<std::int64_t> levels;
  for (std::int64_t k = 0; k <= blocks; ++k) levels.push_back(k * problem.shareBlockCost);
  if (blocks == 0) return;
  at(ladders_, cook).emplace(encoder_.sat(), levels, sum_);
  const std::int64_t enough = fair + blocks * problem.shareBlock + 1;
  const Sums sums = sumUp(std::move(leaves), enough);
  for (const auto& [work, lit] : sums) {
    if (work <= fair) continue;
    const std::int64_t started = (work - fair + problem.shareBlock - 1) / problem.shareBlock;
    encoder_.sat().add(
        {-lit, at(ladders_, cook)->atLeast(std::min(started, blocks) * problem.shareBlockCost)});
  }
}

ShareCosts::Sums ShareCosts::sumUp(std::vector<Sums> parts, std::int64_t enough) {
  if (parts.empty()) return {};
  while (parts.size() > 1) {
    std::vector<Sums> merged;
    for (std::size_t k = 0; k + 1 < parts.size(); k += 2)
      merged.push_back(merge(parts[k], parts[k + 1], enough));
    if (parts.size() % 2 == 1) merged.push_back(std::move(parts.back()));
    parts = std::move(merged);
  }
  return parts.front();
}

ShareCosts::Sums ShareCosts::merge(const Sums& a, const Sums& b, std::int64_t enough) {
  Sums sums;
  const auto literal = [&](std::int64_t work) {
    auto [it, fresh] = sums.try_emplace(std::min(work, enough), kFalse);
    if (fresh) it->second = encoder_.sat().newLit();
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
    if (rounded(x) > 0) encoder_.sat().add({-litX, literal(rounded(x))});
  for (const auto& [y, litY] : b)
    if (rounded(y) > 0) encoder_.sat().add({-litY, literal(rounded(y))});
  for (const auto& [x, litX] : a)
    for (const auto& [y, litY] : b) encoder_.sat().add({-litX, -litY, literal(rounded(x + y))});
  for (auto it = sums.begin(); it != sums.end() && std::next(it) != sums.end(); ++it)
    encoder_.sat().add({-std::next(it)->second, it->second});
  return sums;
}

// Adds: with the work of `plan` as it is, `cook` costs at least `cost`.
void ShareCosts::forbid(int cook, std::int64_t cost, const Schedule& plan) {
  const Problem& problem = encoder_.model().problem();
  std::vector<Lit> clause{at(ladders_, cook)->atLeast(cost)};
  for (int i = 0; i < sizeOf(problem.steps); ++i) {
    if (!encoder_.model().used(i)) continue;
    const bool served = !plan.unserved[static_cast<std::size_t>(at(problem.steps, i).dish)];
    if (!served) {
      clause.push_back(encoder_.servedStep(i));
      continue;
    }
    const Placement& place = at(plan.steps, i);
    if (place.cook == cook) {
      clause.push_back(-encoder_.servedStep(i));
      clause.push_back(-encoder_.cook(i, cook));
    }
    const GridStep& grid = encoder_.model().step(i);
    bool anyWork = false;
    for (const Choice& choice : grid.choices) anyWork |= !choice.cooks.empty();
    if (!anyWork) continue;
    clause.push_back(-encoder_.mode(i, place.mode));
    if (grid.fixedLength >= 0) continue;
    clause.push_back(-encoder_.start(i).atMost(place.start));
    clause.push_back(-encoder_.start(i).atLeast(place.start));
    clause.push_back(-encoder_.end(i).atMost(place.end));
    clause.push_back(-encoder_.end(i).atLeast(place.end));
  }
  encoder_.sat().add(clause);
}

int ShareCosts::refine(const Schedule& plan) {
  const auto real = costOf(encoder_.model().problem(), plan).overShareByCook;
  int added = 0;
  for (int c = 0; c < sizeOf(ladders_); ++c) {
    if (!at(ladders_, c) || at(ladders_, c)->value(encoder_.sat()) >= at(real, c)) continue;
    forbid(c, at(real, c), plan);
    ++added;
  }
  return added;
}

}  // namespace suppertide::planning
