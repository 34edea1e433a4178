// Clauses for the rules that tie steps together beyond overlaps: clocks, separations, what is used up.
#include <algorithm>

#include "server/planning/solver/occupancy.h"
#include "server/planning/solver/resource_clauses.h"
#include "server/planning/solver/side_rules.h"
#include "server/planning/solver/weighted_sum.h"

namespace suppertide::planning {

// Sums what each resource loses at once; where the sum must be rounded, covers are added later.
void ResourceClauses::addUsedUp() {
  for (int r = 0; r < sizeOf(problem().resources); ++r) {
    const Resource& resource = nth(problem().resources, r);
    if (!resource.usedUp) continue;
    std::int64_t left = resource.capacity;
    for (const Resource::Taken& taken : resource.taken) left -= taken.amount;
    std::vector<Sums> parts;
    for (int i = 0; i < sizeOf(problem().steps); ++i) {
      if (!encoder_.model().used(i)) continue;
      std::map<std::int64_t, Lit> amounts;
      for (const Choice& choice : encoder_.model().step(i).choices) {
        const int amount = amountOf(modeOf(i, choice.mode), r);
        if (amount > 0) amounts.emplace(amount, encoder_.sat().newLit());
      }
      for (const Choice& choice : encoder_.model().step(i).choices)
        for (const auto& [amount, lit] : amounts)
          if (amountOf(modeOf(i, choice.mode), r) >= amount)
            encoder_.sat().add(
                {-encoder_.mode(i, choice.mode), -encoder_.servedStep(i), encoder_.emptyStep(i), lit});
      if (!amounts.empty()) parts.push_back(std::move(amounts));
    }
    if (parts.empty()) continue;
    for (const auto& [amount, lit] :
         sumUp(encoder_.sat(), std::move(parts), {std::max<std::int64_t>(1, left + 1)}))
      encoder_.sat().add({-lit});
  }
}

int ResourceClauses::addUsedUp(const Clash& clash, const Schedule& plan) {
  std::vector<Lit> clause;
  for (const int i : clash.steps) {
    const int amount = amountOf(modeOf(i, nth(plan.steps, i).mode), clash.thing);
    for (const Choice& choice : encoder_.model().step(i).choices)
      if (amountOf(modeOf(i, choice.mode), clash.thing) < amount)
        clause.push_back(encoder_.mode(i, choice.mode));
    clause.push_back(-encoder_.servedStep(i));
    clause.push_back(encoder_.emptyStep(i));
  }
  return keep(std::move(clause));
}

// A literal that implies: the span is at most `minutes`.
Lit ResourceClauses::endsBy(const Clock::Span& span, Minute minutes) {
  if (span.to >= 0) return encoder_.before(span.to, span.toEdge, -minutes, span.from, span.fromEdge);
  const Dish& dish = nth(problem().dishes, nth(problem().steps, span.from).dish);
  const Lit ready = encoder_.before(dish.lastStep, Edge::kEnd, -minutes, span.from, span.fromEdge);
  const Lit served = encoder_.edge(span.from, span.fromEdge).atLeast(dish.serve - minutes);
  if (ready == kFalse || served == kFalse) return kFalse;
  const Lit both = encoder_.sat().newLit();
  encoder_.sat().add({-both, ready});
  encoder_.sat().add({-both, served});
  return both;
}

// Of the spans at least one is shorter than here, by what is too much in all and its part of the slack.
int ResourceClauses::addClock(int index, const Schedule& plan) {
  const Clock& clock = nth(problem().clocks, index);
  Minute over = clockMinutes(problem(), clock, plan) - clock.most - 1;
  std::vector<Lit> clause{-encoder_.servedStep(clock.spans.front().from)};
  for (const Clock::Span& span : clock.spans) {
    const Minute minutes = spanMinutes(problem(), span, plan);
    if (minutes == 0) continue;
    // The clause asks least of the first spans: what is over is taken off them.
    const Minute spared = std::min(over, minutes - 1);
    over -= spared;
    clause.push_back(endsBy(span, minutes - spared - 1));
    if (span.modes.empty()) continue;
    for (const Choice& choice : encoder_.model().step(span.from).choices)
      if (std::find(span.modes.begin(), span.modes.end(), choice.mode) == span.modes.end())
        clause.push_back(encoder_.mode(span.from, choice.mode));
  }
  return keep(std::move(clause));
}

int ResourceClauses::addSeparation(int index) {
  const Separation& separation = nth(problem().separations, index);
  const int clean = separation.clean;
  const int other = separation.other;
  std::vector<Lit> clause;
  for (const int i : {clean, other}) {
    clause.push_back(-encoder_.servedStep(i));
    clause.push_back(encoder_.emptyStep(i));
    const auto& modes = i == clean ? separation.cleanModes : separation.otherModes;
    for (const Choice& choice : encoder_.model().step(i).choices)
      if (!modes.empty() && std::find(modes.begin(), modes.end(), choice.mode) == modes.end())
        clause.push_back(encoder_.mode(i, choice.mode));
  }
  clause.push_back(encoder_.before(clean, Edge::kEnd, 0, other, Edge::kStart));
  if (separation.cleaning < kNoLimit)
    clause.push_back(encoder_.before(other, Edge::kEnd, separation.cleaning, clean, Edge::kStart));
  return keep(std::move(clause));
}

}  // namespace suppertide::planning
