#include "server/planning/explain/explain.h"

#include <algorithm>
#include <optional>

#include "server/planning/explain/obstacles.h"
#include "server/planning/explain/order_network.h"

namespace suppertide::planning {
namespace {

// How far to look whether a side is better: costs of waiting are often level over a few minutes.
constexpr Minute kProbes[] = {1, 5, 15};

enum class Side { kEarlier = -1, kLater = 1 };

// What stops a step on one side.
struct Stops {
  Reason tightest;  // `room`: minutes until something else
  Minute free = 0;  // minutes it could move at all
};

class Reasons {
 public:
  Reasons(const Problem& problem, const Schedule& schedule)
      : problem_(problem),
        schedule_(schedule),
        obstacles_(problem, schedule),
        cost_(costOf(problem, schedule).total) {}

  Reason of(int step) {
    const int worseLater = change(step, Side::kLater);
    const Stops later = stops(step, Side::kLater);
    if (worseLater < 0) return later.tightest;
    const int worseEarlier = change(step, Side::kEarlier);
    const Stops earlier = stops(step, Side::kEarlier);
    if (worseEarlier < 0) return earlier.tightest;
    if (worseLater > 0 && later.free == 0 && later.tightest.cause == Cause::kServing) return later.tightest;
    if (worseEarlier > 0 && worseLater > 0) return best(earlier, later);
    if (worseEarlier <= 0 && earlier.free == 0) return earlier.tightest;
    if (worseLater <= 0 && later.free == 0) return later.tightest;
    return best(earlier, later);
  }

 private:
  static Reason best(const Stops& earlier, const Stops& later) {
    return {Cause::kBest, -1, -1, std::min(earlier.free, later.free)};
  }

  // The step moved by `minutes` (negative: earlier), as Reason says.
  Placement moved(int step, Minute minutes) const {
    Placement at = nth(schedule_.steps, step);
    const Length length = nth(nth(problem_.steps, step).modes, at.mode).length.at(at.start);
    const bool elastic = length.possible() && length.shortest < length.longest;
    if (!elastic) at.start += minutes;
    at.end += minutes;
    return at;
  }

  // -1, 0 or 1: whether the schedule gets cheaper, stays or gets dearer when the step moves to `side`.
  int change(int step, Side side) const {
    for (const Minute probe : kProbes) {
      Schedule other = schedule_;
      const Placement at = moved(step, probe * static_cast<int>(side));
      if (at.end < at.start) return 0;
      other.steps[static_cast<std::size_t>(step)] = at;
      const TierCosts cost = costOf(problem_, other).total;
      if (cost != cost_) return cost < cost_ ? -1 : 1;
    }
    return 0;
  }

  Stops stops(int step, Side side) const {
    std::optional<Reason> tightest;
    Stops result;
    for (Minute by = 1; by <= problem_.limit; ++by) {
      std::vector<Reason> found = obstacles_.at(step, moved(step, by * static_cast<int>(side)));
      if (found.empty()) continue;
      if (!tightest) {
        tightest = found.front();
        result.free = by - 1;
      }
      const bool somethingElse = std::any_of(found.begin(), found.end(), [&](const Reason& reason) {
        return reason.cause != tightest->cause || reason.blockingStep != tightest->blockingStep;
      });
      tightest->room = by - 1;
      if (somethingElse) break;
    }
    result.tightest = tightest.value_or(Reason{});
    return result;
  }

  const Problem& problem_;
  const Schedule& schedule_;
  Obstacles obstacles_;
  TierCosts cost_;
};

}  // namespace

std::vector<StepNote> explain(const Problem& problem, const Schedule& schedule) {
  std::vector<StepNote> notes(problem.steps.size());
  Reasons reasons(problem, schedule);
  const Schedule latest = OrderNetwork(problem, schedule).latest();
  for (int i = 0; i < static_cast<int>(problem.steps.size()); ++i) {
    if (schedule.unserved[static_cast<std::size_t>(nth(problem.steps, i).dish)]) continue;
    StepNote& note = notes[static_cast<std::size_t>(i)];
    note.reason = reasons.of(i);
    note.slackLater = nth(latest.steps, i).end - nth(schedule.steps, i).end;
  }
  return notes;
}

}  // namespace suppertide::planning
