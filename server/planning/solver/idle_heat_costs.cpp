#include "server/planning/solver/idle_heat_costs.h"

#include <algorithm>
#include <set>

#include "server/planning/model/costs/idle_heat.h"

namespace suppertide::planning {

IdleHeatCosts::IdleHeatCosts(Encoder& encoder, CostSum& sum)
    : encoder_(encoder), sum_(sum), ladders_(encoder.model().problem().steps.size()) {
  for (int i = 0; i < sizeOf(ladders_); ++i)
    if (encoder_.model().used(i)) makeStep(i);
}

// Minutes to heat from cold for this mode; 0 when it heats nothing that costs.
Minute IdleHeatCosts::coldMinutes(int step, int modeIndex) const {
  const auto& need = mode(step, modeIndex).oven;
  if (!need || !need->preheated) return 0;
  const Oven& oven = nth(problem().ovens, need->oven);
  return oven.idleMinuteCost == 0 ? 0 : nth(oven.heatFromCold, need->phases.front().setpoint);
}

// The levels are pauses as the grid and the ends of others make them, and heating from cold.
void IdleHeatCosts::makeStep(int step) {
  std::set<Minute> rests{0};
  for (int i = 0; i < sizeOf(ladders_); ++i) {
    if (!encoder_.model().used(i)) continue;
    for (const Choice& choice : encoder_.model().step(i).choices)
      if (mode(i, choice.mode).oven)
        for (const Minute rest : encoder_.model().offGrid(i, Edge::kEnd)) rests.insert(rest);
  }
  std::set<std::int64_t> levels;
  for (const Choice& choice : encoder_.model().step(step).choices) {
    const Minute cold = coldMinutes(step, choice.mode);
    if (cold == 0) continue;
    const int cost = nth(problem().ovens, mode(step, choice.mode).oven->oven).idleMinuteCost;
    levels.insert({0, std::int64_t{cold} * cost});
    for (Minute pause = 1; pause < cold; ++pause)
      for (const Minute rest : rests)
        if ((pause + rest) % encoder_.model().grid() == 0) levels.insert(std::int64_t{pause} * cost);
  }
  if (levels.empty()) return;
  nth(ladders_, step).emplace(encoder_.sat(), std::vector<std::int64_t>(levels.begin(), levels.end()), sum_);
}

// Implies: `other` stands in `oven`, enters before `step` and leaves less than `pause` before it does.
Lit IdleHeatCosts::useBefore(int other, int step, int oven, Minute pause) {
  auto [found, fresh] = usesBefore_.try_emplace({other, step, oven, pause}, kFalse);
  if (!fresh) return found->second;
  std::vector<Lit> modes;
  for (const Choice& choice : encoder_.model().step(other).choices)
    if (const auto& need = mode(other, choice.mode).oven; need && need->oven == oven)
      modes.push_back(encoder_.mode(other, choice.mode));
  const Lit close = encoder_.before(step, Edge::kStart, 1 - pause, other, Edge::kEnd);
  const Lit first = encoder_.before(other, Edge::kStart, other < step ? 0 : 1, step, Edge::kStart);
  if (modes.empty() || close == kFalse || first == kFalse) return kFalse;
  Sat& sat = encoder_.sat();
  const Lit lit = found->second = sat.newLit();
  std::vector<Lit> inOven{-lit};
  inOven.insert(inOven.end(), modes.begin(), modes.end());
  sat.add(inOven);
  sat.add({-lit, close});
  sat.add({-lit, first});
  sat.add({-lit, encoder_.servedStep(other)});
  return lit;
}

// Adds: entering this oven costs as much as here unless another use ends later than `pause` before it.
int IdleHeatCosts::explain(int step, int oven, Minute pause) {
  if (!known_.emplace(std::tuple(step, oven, pause), true).second) return 0;
  std::vector<Lit> excuse{-encoder_.servedStep(step), encoder_.emptyStep(step)};
  for (int other = 0; other < sizeOf(ladders_); ++other)
    if (other != step && encoder_.model().used(other)) {
      const Lit used = useBefore(other, step, oven, pause);
      if (used != kFalse) excuse.push_back(used);
    }
  const auto& levels = nth(ladders_, step)->levels();
  int added = 0;
  for (const Choice& choice : encoder_.model().step(step).choices) {
    const auto& need = mode(step, choice.mode).oven;
    const Minute cold = coldMinutes(step, choice.mode);
    if (!need || need->oven != oven || cold == 0) continue;
    const std::int64_t cost = std::int64_t{std::min(pause, cold)} * nth(problem().ovens, oven).idleMinuteCost;
    const auto level = std::upper_bound(levels.begin(), levels.end(), cost);
    if (level == levels.begin()) continue;
    std::vector<Lit> clause = excuse;
    clause.push_back(-encoder_.mode(step, choice.mode));
    clause.push_back(nth(ladders_, step)->atLeast(*std::prev(level)));
    encoder_.sat().add(clause);
    ++added;
  }
  return added;
}

int IdleHeatCosts::refine(const Schedule& plan) {
  const std::vector<std::int64_t> costs = idleHeatCosts(problem(), plan);
  int added = 0;
  for (int i = 0; i < sizeOf(ladders_); ++i) {
    const auto dish = static_cast<std::size_t>(nth(problem().steps, i).dish);
    if (!nth(ladders_, i) || plan.unserved[dish] || nth(costs, i) == 0) continue;
    if (nth(ladders_, i)->value(encoder_.sat()) >= nth(costs, i)) continue;
    const int oven = mode(i, nth(plan.steps, i).mode).oven->oven;
    added += explain(i, oven, static_cast<Minute>(nth(costs, i) / nth(problem().ovens, oven).idleMinuteCost));
  }
  return added;
}

}  // namespace suppertide::planning
