#include "server/planning/solver/asking_costs.h"

#include <algorithm>
#include <set>

#include "server/planning/model/costs/people.h"
#include "server/planning/solver/weighted_sum.h"

namespace suppertide::planning {
namespace {

constexpr std::int64_t kTooManyMinutes = std::int64_t{1} << 40;

}  // namespace

std::vector<WorkPart> workParts(Encoder& encoder, int cook) {
  const GridModel& model = encoder.model();
  std::vector<WorkPart> parts;
  for (int i = 0; i < sizeOf(model.problem().steps); ++i) {
    if (!model.used(i) || encoder.cook(i, cook) == kFalse) continue;
    WorkPart part{encoder.cook(i, cook), i, kNoLimit, 0};
    for (const Choice& choice : model.step(i).choices) {
      if (choice.cooks.empty()) continue;
      const Mode& mode = nth(nth(model.problem().steps, i).modes, choice.mode);
      for (const Minute start : model.step(i).starts) {
        const EndRange range = model.endRange(i, choice.mode, start);
        if (range.empty()) continue;
        part.least = std::min(part.least, workMinutes(mode, start, range.first));
        part.most = std::max(part.most, workMinutes(mode, start, range.last));
      }
    }
    if (part.least == kNoLimit) continue;
    if (encoder.servedStep(i) != kTrue) {
      part.does = encoder.sat().newLit();
      encoder.sat().add({-encoder.cook(i, cook), -encoder.servedStep(i), part.does});
    }
    parts.push_back(part);
  }
  return parts;
}

AskingCosts::AskingCosts(Encoder& encoder, CostSum& sum) : encoder_(encoder), sum_(sum) {
  ladders_.resize(encoder.model().problem().cooks.size());
  leastForWork_.resize(ladders_.size());
  for (int c = 0; c < sizeOf(ladders_); ++c) makeCook(c);
}

std::int64_t AskingCosts::costOfStep(int step, int mode, int cook) const {
  for (const Choice& choice : encoder_.model().step(step).choices)
    for (const CookOption& option : choice.cooks)
      if (choice.mode == mode && option.cook == cook) return option.cost;
  return 0;
}

void AskingCosts::makeCook(int cook) {
  std::vector<Sums> leaves;
  // The least cost for each amount of work: a knapsack over the cook's steps.
  std::vector<std::int64_t> least{0};
  for (const WorkPart& part : workParts(encoder_, cook)) {
    std::set<std::int64_t> costs;
    for (const Choice& choice : encoder_.model().step(part.step).choices)
      for (const CookOption& option : choice.cooks)
        if (option.cook == cook) costs.insert(option.cost);
    const std::int64_t cheapest = *costs.begin();
    if (cheapest > 0) leaves.push_back({{cheapest, part.does}});
    for (const std::int64_t cost : costs) {
      if (cost == cheapest) continue;
      const Lit dear = encoder_.sat().newLit();
      for (const Choice& choice : encoder_.model().step(part.step).choices)
        if (costOfStep(part.step, choice.mode, cook) == cost && !choice.cooks.empty())
          encoder_.sat().add({-part.does, -encoder_.mode(part.step, choice.mode), dear});
      leaves.push_back({{cost - cheapest, dear}});
    }
    const auto minutes = static_cast<std::size_t>(part.most);
    least.resize(least.size() + minutes, kTooManyMinutes);
    for (std::size_t work = least.size(); work-- > 0;)
      least[work] = std::min(least[work], cheapest + least[work > minutes ? work - minutes : 0]);
    least[0] = 0;
  }
  if (leaves.empty()) return;
  for (std::size_t work = least.size() - 1; work-- > 0;) least[work] = std::min(least[work], least[work + 1]);
  nth(leastForWork_, cook) = std::move(least);
  std::set<std::int64_t> amounts{0};
  for (const Sums& leaf : leaves) {
    const std::set<std::int64_t> before = amounts;
    for (const std::int64_t amount : before) amounts.insert(amount + leaf.begin()->first);
  }
  const std::vector<std::int64_t> levels(amounts.begin(), amounts.end());
  nth(ladders_, cook).emplace(encoder_.sat(), levels, sum_, true);
  const Sums sums = sumUp(encoder_.sat(), std::move(leaves), {levels.begin() + 1, levels.end()});
  for (const auto& [amount, lit] : sums) encoder_.sat().add({-lit, nth(ladders_, cook)->atLeast(amount)});
}

Lit AskingCosts::atLeast(int cook, std::int64_t work) const {
  const auto& least = nth(leastForWork_, cook);
  if (work >= static_cast<std::int64_t>(least.size())) return kFalse;
  const std::int64_t cost = least[static_cast<std::size_t>(std::max<std::int64_t>(0, work))];
  return cost == 0 ? kTrue : nth(ladders_, cook)->atLeast(cost);
}

int AskingCosts::refine(const Schedule& plan) {
  const Problem& problem = encoder_.model().problem();
  int added = 0;
  for (int c = 0; c < sizeOf(ladders_); ++c) {
    if (!costs(c)) continue;
    std::int64_t real = 0;
    std::vector<Lit> clause;
    for (int i = 0; i < sizeOf(problem.steps); ++i) {
      const Step& step = nth(problem.steps, i);
      const Placement& place = nth(plan.steps, i);
      if (plan.unserved[static_cast<std::size_t>(step.dish)] || place.cook != c) continue;
      if (nth(step.modes, place.mode).attention == 0) continue;
      real += costOfStep(i, place.mode, c);
      for (const Lit lit : {-encoder_.cook(i, c), -encoder_.mode(i, place.mode), -encoder_.servedStep(i)})
        clause.push_back(lit);
    }
    if (nth(ladders_, c)->value(encoder_.sat()) >= real) continue;
    // Rounded sums understated it: at least so much whenever the cook does all of these.
    clause.push_back(nth(ladders_, c)->atLeast(real));
    encoder_.sat().add(clause);
    ++added;
  }
  return added;
}

}  // namespace suppertide::planning
