#include "server/planning/solver/quality_costs.h"

#include <algorithm>
#include <set>

#include "server/planning/model/costs/quality.h"

namespace suppertide::planning {
namespace {

// Clauses made at once for one choice; above, they are added on demand.
constexpr std::size_t kEagerClauses = 6000;
// Starts on each side of a costly placement that are explained with it.
constexpr int kNeighbours = 12;

struct RowBounds {
  Minute first;
  Minute last;
};

// The starts with the same length row as `start`.
RowBounds rowOf(const LengthTable& table, Minute start) {
  if (table.rows.size() == 1 && table.pitch == 0) return {-kNoLimit, kNoLimit};
  const Minute row = (start - table.origin) / table.pitch;
  return {table.origin + row * table.pitch, table.origin + (row + 1) * table.pitch - 1};
}

}  // namespace

QualityCosts::QualityCosts(Encoder& encoder, CostSum& sum)
    : encoder_(encoder), sum_(sum), ladders_(encoder.model().problem().steps.size()) {
  for (int i = 0; i < sizeOf(ladders_); ++i)
    if (encoder_.model().used(i)) makeStep(i);
}

void QualityCosts::makeStep(int step) {
  const GridModel& model = encoder_.model();
  const GridStep& grid = model.step(step);
  std::set<std::int64_t> levels;
  if (encoder_.servedStep(step) != kTrue) levels.insert(0);
  for (const Choice& choice : grid.choices) {
    const Mode& mode = nth(nth(model.problem().steps, step).modes, choice.mode);
    for (const Minute start : grid.starts) {
      const EndRange range = model.endRange(step, choice.mode, start);
      for (Minute end = range.first; end <= range.last; end += model.grid())
        if (end <= encoder_.end(step).most() && end >= encoder_.end(step).least())
          levels.insert(qualityCost(mode, start, end));
    }
  }
  if (levels.empty() || *levels.rbegin() == 0) return;
  nth(ladders_, step).emplace(encoder_.sat(), std::vector<std::int64_t>(levels.begin(), levels.end()), sum_);
  for (const Choice& choice : grid.choices) explainStep(step, choice);
}

// A mode's own cost, and what its lengths cost while that stays within the budget.
void QualityCosts::explainStep(int step, const Choice& choice) {
  const GridModel& model = encoder_.model();
  const GridStep& grid = model.step(step);
  const Mode& mode = nth(nth(model.problem().steps, step).modes, choice.mode);
  std::int64_t least = -1;
  std::size_t placements = 0;
  for (const Minute start : grid.starts) {
    const EndRange range = model.endRange(step, choice.mode, start);
    for (Minute end = range.first; end <= range.last; end += model.grid()) {
      const std::int64_t cost = qualityCost(mode, start, end);
      least = least < 0 ? cost : std::min(least, cost);
      ++placements;
    }
  }
  if (least < 0) return;
  const auto& levels = nth(ladders_, step)->levels();
  const auto reached = std::lower_bound(levels.begin(), levels.end(), static_cast<Minute>(least));
  if (reached != levels.end() && *reached == least)
    encoder_.sat().add(
        {-encoder_.servedStep(step), -encoder_.mode(step, choice.mode), nth(ladders_, step)->atLeast(least)});
  if (placements > kEagerClauses) return;
  for (const Minute start : grid.starts) {
    const EndRange range = model.endRange(step, choice.mode, start);
    for (Minute end = range.first; end <= range.last; end += model.grid())
      if (qualityCost(mode, start, end) > least) explain(step, choice.mode, start, end);
  }
}

// Adds: a stay in `mode` as long (or as short) as [start, end) or more so costs as much.
int QualityCosts::explain(int step, int modeIndex, Minute start, Minute end) {
  const Point from = encoder_.start(step);
  const Point to = encoder_.end(step);
  if (end < to.least() || end > to.most()) return 0;
  if (!known_.emplace(std::tuple(step, modeIndex, start, end), true).second) return 0;
  const Mode& mode = nth(nth(encoder_.model().problem().steps, step).modes, modeIndex);
  const RowBounds row = rowOf(mode.length, start);
  const Lit costly = nth(ladders_, step)->atLeast(qualityCost(mode, start, end));
  const Lit excuse = -encoder_.servedStep(step);
  const Lit other = -encoder_.mode(step, modeIndex);
  if (end - start >= mode.length.at(start).best)
    encoder_.sat().add(
        {excuse, other, -from.atMost(start), -from.atLeast(row.first), -to.atLeast(end), costly});
  else
    encoder_.sat().add(
        {excuse, other, -from.atLeast(start), -from.atMost(row.last), -to.atMost(end), costly});
  return 1;
}

// The same for the starts nearby and all lengths between the best and this one.
int QualityCosts::explainAround(int step, int modeIndex, Minute start, Minute end) {
  const GridModel& model = encoder_.model();
  const auto& starts = model.step(step).starts;
  const Mode& mode = nth(nth(model.problem().steps, step).modes, modeIndex);
  int added = explain(step, modeIndex, start, end);
  const auto here = static_cast<int>(std::lower_bound(starts.begin(), starts.end(), start) - starts.begin());
  const Minute off = end - start - mode.length.at(start).best;
  for (int k = std::max(0, here - kNeighbours); k < std::min(sizeOf(starts), here + kNeighbours + 1); ++k) {
    const EndRange range = model.endRange(step, modeIndex, nth(starts, k));
    const Minute best = nth(starts, k) + mode.length.at(nth(starts, k)).best;
    for (Minute other = range.first; other <= range.last; other += model.grid())
      if (off > 0 ? other > best && other <= best + off : other < best && other >= best + off)
        added += explain(step, modeIndex, nth(starts, k), other);
  }
  return added;
}

int QualityCosts::refine(const Schedule& plan) {
  int added = 0;
  for (int i = 0; i < sizeOf(ladders_); ++i) {
    const auto dish = static_cast<std::size_t>(nth(encoder_.model().problem().steps, i).dish);
    if (!nth(ladders_, i) || plan.unserved[dish]) continue;
    const Placement& place = nth(plan.steps, i);
    const Mode& mode = nth(nth(encoder_.model().problem().steps, i).modes, place.mode);
    if (nth(ladders_, i)->value(encoder_.sat()) < qualityCost(mode, place.start, place.end))
      added += explainAround(i, place.mode, place.start, place.end);
  }
  return added;
}

}  // namespace suppertide::planning
