// Who waits for whom at cooks and things: each unit is handed from one step to the next in the plan's order.
#include <algorithm>
#include <cstddef>

#include "server/planning/chance/plan_order.h"

namespace suppertide::planning {
namespace {

// A step, or with -1 something outside the plan, that takes an amount for a while.
struct Taker {
  int step = -1;
  Interval<Minute> when;
  int amount = 0;
};

// An amount and who had it last; nobody before the first.
struct Piece {
  int step = -1;
  Minute freeAt = 0;
  int amount = 0;
};

class Handover {
 public:
  Handover(int capacity, PlanOrder& order) : order_(order) { pieces_.push_back({-1, -kNoLimit, capacity}); }

  void run(std::vector<Taker> takers) {
    std::stable_sort(takers.begin(), takers.end(), [](const Taker& a, const Taker& b) {
      return a.when.start != b.when.start ? a.when.start < b.when.start : a.when.limit < b.when.limit;
    });
    for (const Taker& taker : takers) take(taker);
  }

 private:
  // Of what is free by then, that which is free first: it leaves the most slack.
  void take(const Taker& taker) {
    std::stable_sort(pieces_.begin(), pieces_.end(),
                     [](const Piece& a, const Piece& b) { return a.freeAt < b.freeAt; });
    int wanted = taker.amount;
    for (std::size_t p = 0; p < pieces_.size() && wanted > 0 && pieces_[p].freeAt <= taker.when.start; ++p) {
      const int part = std::min(wanted, pieces_[p].amount);
      pieces_[p].amount -= part;
      wanted -= part;
      if (part > 0) follow(pieces_[p], taker);
    }
    pieces_.erase(
        std::remove_if(pieces_.begin(), pieces_.end(), [](const Piece& p) { return p.amount == 0; }),
        pieces_.end());
    if (taker.amount > wanted) pieces_.push_back({taker.step, taker.when.limit, taker.amount - wanted});
  }

  void follow(const Piece& piece, const Taker& taker) {
    if (taker.step < 0) return;
    if (piece.step >= 0) order_.handovers.push_back({endOf(piece.step), startOf(taker.step), 0});
    Minute& notBefore = order_.notBefore[static_cast<std::size_t>(taker.step)];
    if (piece.step < 0) notBefore = std::max(notBefore, piece.freeAt);
  }

  PlanOrder& order_;
  std::vector<Piece> pieces_;
};

}  // namespace

void followCooksAndThings(const Problem& problem, const Schedule& schedule, PlanOrder& order) {
  std::vector<std::vector<Taker>> byCook(problem.cooks.size());
  std::vector<std::vector<Taker>> byResource(problem.resources.size());
  for (int i = 0; i < static_cast<int>(problem.steps.size()); ++i) {
    const Placement& at = schedule.steps[static_cast<std::size_t>(i)];
    if (!isServed(problem, schedule, i) || at.start == at.end) continue;
    const Mode& mode = problem.steps[static_cast<std::size_t>(i)].modes[static_cast<std::size_t>(at.mode)];
    for (const Use& use : mode.uses)
      byResource[static_cast<std::size_t>(use.resource)].push_back({i, {at.start, at.end}, use.amount});
    if (at.cook < 0 || mode.attention == 0) continue;
    byCook[static_cast<std::size_t>(at.cook)].push_back({i, {at.start, at.end}, mode.attention});
    for (const Interval<Minute>& there : problem.cooks[static_cast<std::size_t>(at.cook)].available)
      if (there.contains(at.start)) order.notBefore[static_cast<std::size_t>(i)] = there.start;
  }
  for (auto& takers : byCook) Handover(100, order).run(std::move(takers));
  for (std::size_t r = 0; r < byResource.size(); ++r) {
    const Resource& resource = problem.resources[r];
    if (resource.usedUp) continue;
    for (const Resource::Taken& taken : resource.taken)
      byResource[r].push_back({-1, taken.when, taken.amount});
    Handover(resource.capacity, order).run(std::move(byResource[r]));
  }
}

}  // namespace suppertide::planning
