#include "server/planning/replan/loss.h"

#include <algorithm>

#include "server/planning/solver/grid_model.h"

namespace suppertide::planning {
namespace {

class Losing {
 public:
  Losing(const Remaining& remains, int dish, Minute grid)
      : remains_(remains), dish_(dish), grid_(std::max(1, grid)) {}

  Loss why() const {
    if (hasRunOut()) return Loss::kFoodSafety;
    Problem problem = remains_.problem;
    if (fits(problem)) return Loss::kBesideOthers;
    std::erase_if(problem.clocks, [&](const Clock& clock) { return isOwn(clock); });
    if (fits(problem)) return Loss::kFoodSafety;
    problem.dishes[static_cast<std::size_t>(dish_)].lateLimit = problem.limit;
    if (fits(problem)) return Loss::kTooLate;
    for (Gap& gap : problem.gaps)
      if (problem.steps[static_cast<std::size_t>(gap.from)].dish == dish_) gap.most = kNoLimit;
    return fits(problem) ? Loss::kTooLong : Loss::kNoWay;
  }

 private:
  bool fits(const Problem& problem) const { return !GridModel(problem, grid_).dropped(dish_); }
  bool isOwn(const Clock& clock) const {
    return !clock.spans.empty() &&
           remains_.problem.steps[static_cast<std::size_t>(clock.spans.front().from)].dish == dish_;
  }

  // By what is over already.
  bool hasRunOut() const {
    return std::any_of(remains_.problem.clocks.begin(), remains_.problem.clocks.end(),
                       [&](const Clock& clock) { return isOwn(clock) && gone(clock) > clock.most; });
  }
  Minute gone(const Clock& clock) const {
    Minute minutes = 0;
    for (const Clock::Span& span : clock.spans) {
      const bool counts =
          span.modes.empty() ||
          std::find(span.modes.begin(), span.modes.end(),
                    remains_.expected.steps[static_cast<std::size_t>(span.from)].mode) != span.modes.end();
      const bool isPast = counts && span.to >= 0 && remains_.past[static_cast<std::size_t>(span.from)] &&
                          remains_.past[static_cast<std::size_t>(span.to)];
      if (isPast) minutes += std::max(0, minuteOf(span.to, span.toEdge) - minuteOf(span.from, span.fromEdge));
    }
    return minutes;
  }
  Minute minuteOf(int step, Edge edge) const {
    const Placement& at = remains_.expected.steps[static_cast<std::size_t>(step)];
    return edge == Edge::kStart ? at.start : at.end;
  }

  const Remaining& remains_;
  const int dish_;
  const Minute grid_;
};

}  // namespace

Loss lossOf(const Remaining& remains, int dish, Minute grid) {
  return Losing(remains, dish, grid).why();
}

}  // namespace suppertide::planning
