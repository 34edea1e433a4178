#include "server/planning/solver/resource_clauses.h"

#include <algorithm>

#include "server/planning/solver/occupancy.h"

namespace suppertide::planning {
namespace {

// One phase of a stay in an oven, relative to its step.
struct PhaseEdges {
  int setpoint;
  Edge startEdge, endEdge;
  Minute start, end;  // offsets from those edges
  bool entering;
};

std::vector<PhaseEdges> phaseEdges(const OvenNeed& need) {
  if (need.phases.size() == 1)
    return {{need.phases.front().setpoint, Edge::kStart, Edge::kEnd, 0, 0, need.preheated}};
  std::vector<PhaseEdges> phases;
  Minute from = 0;
  for (const OvenPhase& phase : need.phases) {
    if (phase.length > 0)
      phases.push_back({phase.setpoint, Edge::kStart, Edge::kStart, from, from + phase.length,
                        need.preheated && phases.empty()});
    from += phase.length;
  }
  return phases;
}

}  // namespace

int ResourceClauses::add(const Clash& clash, const Schedule& plan) {
  switch (clash.kind) {
    case Clash::Kind::kAttention:
      return addAttention(clash, plan);
    case Clash::Kind::kAmount:
      return addAmount(clash, plan);
    case Clash::Kind::kSetpoint:
      return addSetpoints(clash.steps[0], clash.steps[1]);
    case Clash::Kind::kRacks:
      return addRacks(clash, plan);
    case Clash::Kind::kUsedUp:
      return addUsedUp(clash, plan);
    case Clash::Kind::kClock:
      return addClock(clash.thing, plan);
    case Clash::Kind::kSeparation:
      return addSeparation(clash.thing);
  }
  return 0;
}

bool ResourceClauses::keep(std::vector<Lit> clause) {
  if (std::find(clause.begin(), clause.end(), kTrue) != clause.end()) return false;
  std::erase(clause, kFalse);
  std::sort(clause.begin(), clause.end());
  clause.erase(std::unique(clause.begin(), clause.end()), clause.end());
  if (!known_.insert(clause).second) return false;
  encoder_.sat().add(clause);
  return true;
}

void ResourceClauses::apart(std::vector<Lit>& clause, int a, int b) {
  const Lit first = encoder_.before(a, Edge::kEnd, 0, b, Edge::kStart);
  const Lit second = encoder_.before(b, Edge::kEnd, 0, a, Edge::kStart);
  clause.push_back(first);
  clause.push_back(second);
  // Both orders at once would only be refuted by counting through the windows.
  const bool lasting = encoder_.emptyStep(a) == kFalse || encoder_.emptyStep(b) == kFalse;
  if (lasting && std::abs(first) != 1 && std::abs(second) != 1 &&
      exclusive_.insert(std::minmax(first, second)).second)
    encoder_.sat().add({-first, -second});
}

void ResourceClauses::excuse(std::vector<Lit>& clause, const std::vector<int>& steps, const Needs& needs) {
  for (std::size_t k = 0; k < steps.size(); ++k) {
    const int i = steps[k];
    for (const Choice& choice : encoder_.model().step(i).choices)
      if (std::find(needs[k].begin(), needs[k].end(), choice.mode) == needs[k].end())
        clause.push_back(encoder_.mode(i, choice.mode));
    clause.push_back(-encoder_.servedStep(i));
    clause.push_back(encoder_.emptyStep(i));
    for (std::size_t j = 0; j < k; ++j) apart(clause, steps[j], i);
  }
}

int ResourceClauses::addAttention(const Clash& clash, const Schedule& plan) {
  Needs needs;
  for (const int i : clash.steps) {
    const int amount = modeOf(i, nth(plan.steps, i).mode).attention;
    auto& modes = needs.emplace_back();
    for (const Choice& choice : encoder_.model().step(i).choices)
      if (modeOf(i, choice.mode).attention >= amount) modes.push_back(choice.mode);
  }
  int added = 0;
  for (int c = 0; c < sizeOf(problem().cooks); ++c) {
    std::vector<Lit> clause;
    for (const int i : clash.steps) clause.push_back(-encoder_.cook(i, c));
    if (std::find(clause.begin(), clause.end(), kTrue) != clause.end()) continue;
    excuse(clause, clash.steps, needs);
    added += keep(std::move(clause));
  }
  return added;
}

int ResourceClauses::addAmount(const Clash& clash, const Schedule& plan) {
  Needs needs;
  int sum = 0;
  for (const int i : clash.steps) {
    const int amount = amountOf(modeOf(i, nth(plan.steps, i).mode), clash.thing);
    sum += amount;
    auto& modes = needs.emplace_back();
    for (const Choice& choice : encoder_.model().step(i).choices)
      if (amountOf(modeOf(i, choice.mode), clash.thing) >= amount) modes.push_back(choice.mode);
  }
  std::vector<Lit> clause;
  excuse(clause, clash.steps, needs);
  if (clash.taken) {
    const Resource& resource = nth(problem().resources, clash.thing);
    for (const auto& when : takenAbove(resource, resource.capacity - sum)) {
      if (!when.contains(clash.minute)) continue;
      for (const int i : clash.steps) {
        clause.push_back(encoder_.end(i).atMost(when.start));
        clause.push_back(encoder_.start(i).atLeast(when.limit));
      }
    }
  }
  return keep(std::move(clause));
}

int ResourceClauses::addSetpoints(int a, int b) {
  int added = 0;
  for (const Choice& choiceA : encoder_.model().step(a).choices)
    for (const Choice& choiceB : encoder_.model().step(b).choices) {
      const auto& ovenA = modeOf(a, choiceA.mode).oven;
      const auto& ovenB = modeOf(b, choiceB.mode).oven;
      if (ovenA && ovenB && ovenA->oven == ovenB->oven)
        added += addSetpoints(a, choiceA.mode, b, choiceB.mode);
    }
  return added;
}

int ResourceClauses::addSetpoints(int a, int modeA, int b, int modeB) {
  const OvenNeed& needA = *modeOf(a, modeA).oven;
  const OvenNeed& needB = *modeOf(b, modeB).oven;
  const auto& change = nth(problem().ovens, needA.oven).change;
  int added = 0;
  for (const PhaseEdges& x : phaseEdges(needA))
    for (const PhaseEdges& y : phaseEdges(needB)) {
      if (x.setpoint == y.setpoint) continue;
      const Minute toB = y.entering ? nth(nth(change, x.setpoint), y.setpoint) : 0;
      const Minute toA = x.entering ? nth(nth(change, y.setpoint), x.setpoint) : 0;
      const Lit first = encoder_.before(a, x.endEdge, x.end + toB - y.start, b, y.startEdge);
      const Lit second = encoder_.before(b, y.endEdge, y.end + toA - x.start, a, x.startEdge);
      std::vector<Lit> clause{-encoder_.mode(a, modeA), -encoder_.mode(b, modeB), first, second};
      for (const int i : {a, b}) {
        clause.push_back(-encoder_.servedStep(i));
        clause.push_back(encoder_.emptyStep(i));
      }
      added += keep(std::move(clause));
    }
  return added;
}

int ResourceClauses::addRacks(const Clash& clash, const Schedule& plan) {
  std::vector<Load> loads;
  for (const int i : clash.steps) loads.push_back(modeOf(i, nth(plan.steps, i).mode).oven->load);
  int added = 0;
  for (int oven = 0; oven < sizeOf(problem().ovens); ++oven)
    if (!nth(problem().ovens, oven).racks->fits(loads)) added += addRacks(oven, clash.steps, loads);
  return added;
}

bool ResourceClauses::addRacks(int oven, const std::vector<int>& steps, const std::vector<Load>& loads) {
  Needs needs;
  for (std::size_t k = 0; k < steps.size(); ++k) {
    auto& modes = needs.emplace_back();
    for (const Choice& choice : encoder_.model().step(steps[k]).choices) {
      const auto& need = modeOf(steps[k], choice.mode).oven;
      const auto same = [](const Load& a, const Load& b) {
        return std::tie(a.racks, a.widthMm, a.depthMm, a.heightMm, a.panCount) ==
               std::tie(b.racks, b.widthMm, b.depthMm, b.heightMm, b.panCount);
      };
      if (need && need->oven == oven && same(need->load, loads[k])) modes.push_back(choice.mode);
    }
    if (modes.empty()) return false;
  }
  std::vector<Lit> clause;
  excuse(clause, steps, needs);
  return keep(std::move(clause));
}

}  // namespace suppertide::planning
