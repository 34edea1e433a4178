#include "server/compose/late_fetches.h"

#include <algorithm>
#include <vector>

#include "server/planning/audit/audit.h"

namespace suppertide::compose {
namespace {

constexpr planning::Minute kPitch = 5;

class LateFetches {
 public:
  LateFetches(const Composition& composition, planning::Schedule schedule)
      : problem_(composition.problem),
        composition_(composition),
        schedule_(std::move(schedule)),
        breaches_(planning::audit(problem_, schedule_).size()),
        cost_(planning::costOf(problem_, schedule_).total) {}

  planning::Schedule run() {
    for (std::size_t i = 0; i < problem_.steps.size(); ++i)
      if (isFetch(i)) delay(i);
    return std::move(schedule_);
  }

 private:
  bool isFetch(std::size_t step) const {
    const planning::Placement& at = schedule_.steps[step];
    const planning::Step& what = problem_.steps[step];
    return composition_.steps[step].step->kind() == v1::STEP_KIND_FETCH && at.start < at.end &&
           !what.pin.start && !what.pin.end && !schedule_.unserved[static_cast<std::size_t>(what.dish)];
  }

  // By the gaps to what uses it.
  planning::Minute latestEnd(std::size_t step) const {
    planning::Minute latest = schedule_.steps[step].end;
    bool used = false;
    for (const planning::Gap& gap : problem_.gaps) {
      if (static_cast<std::size_t>(gap.from) != step || gap.fromEdge != planning::Edge::kEnd) continue;
      const planning::Placement& to = schedule_.steps[static_cast<std::size_t>(gap.to)];
      const planning::Minute end = (gap.toEdge == planning::Edge::kStart ? to.start : to.end) - gap.least;
      latest = used ? std::min(latest, end) : end;
      used = true;
    }
    return latest;
  }

  void delay(std::size_t step) {
    const planning::Placement before = schedule_.steps[step];
    const planning::Minute length = before.end - before.start;
    const planning::Minute most = (latestEnd(step) - before.end) / kPitch * kPitch;
    for (planning::Minute later = most; later > 0; later -= kPitch)
      for (const int cook : cooksOf(step)) {
        const planning::Minute start = before.start + later;
        schedule_.steps[step] = {start, start + length, before.mode, cook};
        if (isAsGood()) return;
      }
    schedule_.steps[step] = before;
  }

  // Whoever does it now first.
  std::vector<int> cooksOf(std::size_t step) const {
    const planning::Placement& at = schedule_.steps[step];
    std::vector<int> cooks = {at.cook};
    for (const planning::CookOption& option :
         problem_.steps[step].modes[static_cast<std::size_t>(at.mode)].cooks)
      if (option.cook != at.cook) cooks.push_back(option.cook);
    return cooks;
  }

  bool isAsGood() const {
    const planning::TierCosts cost = planning::costOf(problem_, schedule_).total;
    for (std::size_t tier = 0; tier < cost.size(); ++tier)
      if (cost[tier] > cost_[tier]) return false;
    return planning::audit(problem_, schedule_).size() <= breaches_;
  }

  const planning::Problem& problem_;
  const Composition& composition_;
  planning::Schedule schedule_;
  const std::size_t breaches_;
  const planning::TierCosts cost_;
};

}  // namespace

planning::Schedule withLateFetches(const Composition& composition, const planning::Schedule& schedule) {
  return LateFetches(composition, schedule).run();
}

}  // namespace suppertide::compose
