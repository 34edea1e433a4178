#include "server/compose/late_fetches.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <optional>
#include <vector>

#include "server/compose/live_correction.h"
#include "server/planning/audit/audit.h"
#include "server/planning/model/costs/moves.h"

namespace suppertide::compose {
namespace {

constexpr planning::Minute kPitch = 5;

class LateFetches {
 public:
  LateFetches(const Composition& composition, planning::Schedule schedule)
      : problem_(composition.problem),
        before_(schedule),
        schedule_(std::move(schedule)),
        cost_(planning::costOf(problem_, schedule_).total) {}

  const planning::Schedule& schedule() const { return schedule_; }

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

 private:
  // Whoever does it now first.
  std::vector<int> cooksOf(std::size_t step) const {
    const planning::Placement& at = schedule_.steps[step];
    std::vector<int> cooks = {at.cook};
    for (const planning::CookOption& option :
         problem_.steps[step].modes[static_cast<std::size_t>(at.mode)].cooks)
      if (option.cook != at.cook) cooks.push_back(option.cook);
    return cooks;
  }

  bool isAsGood() {
    const planning::TierCosts cost = planning::costOf(problem_, schedule_).total;
    for (std::size_t tier = 0; tier < cost.size(); ++tier)
      if (cost[tier] > cost_[tier] && tier != static_cast<std::size_t>(planning::Tier::kMoves)) return false;
    const std::size_t breaches = planning::audit(problem_, schedule_).size();
    if (breaches == 0) return true;
    if (!breaches_) breaches_ = planning::audit(problem_, before_).size();
    return breaches <= *breaches_;
  }

  const planning::Problem& problem_;
  const planning::Schedule before_;
  planning::Schedule schedule_;
  std::optional<std::size_t> breaches_;  // of `before_`, counted when it is asked first
  const planning::TierCosts cost_;
};

bool isFetch(const Composition& composition, const planning::Schedule& schedule, std::size_t step) {
  const planning::Placement& at = schedule.steps[step];
  const planning::Step& what = composition.problem.steps[step];
  return composition.steps[step].step->kind() == v1::STEP_KIND_FETCH && at.start < at.end &&
         !what.pin.start && !what.pin.end && !schedule.unserved[static_cast<std::size_t>(what.dish)];
}

// The step that uses what is taken out, when it is later than it was told to be; else -1.
int laterUser(const Composition& composition, const planning::Schedule& told,
              const planning::Schedule& schedule, std::size_t fetch) {
  for (const planning::Gap& gap : composition.problem.gaps) {
    if (static_cast<std::size_t>(gap.from) != fetch || gap.fromEdge != planning::Edge::kEnd) continue;
    const auto user = static_cast<std::size_t>(gap.to);
    if (schedule.steps[user].start >= told.steps[user].start + planning::kMoveFrom) return gap.to;
  }
  return -1;
}

// What moved, with this fetch as it is now.
void tellMoved(std::size_t fetch, int user, const planning::Placement& before,
               const planning::Placement& after, std::vector<planning::Move>& moves) {
  std::erase_if(moves, [&](const planning::Move& move) { return move.step == static_cast<int>(fetch); });
  if (std::abs(after.start - before.start) < planning::kMoveFrom && after.cook == before.cook &&
      after.mode == before.mode)
    return;
  moves.push_back({static_cast<int>(fetch), planning::MoveCause::kFollows, user, -1, before, after});
  std::stable_sort(moves.begin(), moves.end(), [](const planning::Move& a, const planning::Move& b) {
    return a.after.start < b.after.start;
  });
}

}  // namespace

planning::Schedule withLateFetches(const Composition& composition, const planning::Schedule& schedule) {
  LateFetches late(composition, schedule);
  for (std::size_t i = 0; i < schedule.steps.size(); ++i)
    if (isFetch(composition, schedule, i)) late.delay(i);
  return late.schedule();
}

void delayFetches(const Composition& composition, const planning::Running& running,
                  planning::Replanned& made) {
  std::map<std::size_t, int> users;
  for (std::size_t i = 0; i < made.schedule.steps.size(); ++i) {
    const auto dish = static_cast<std::size_t>(composition.problem.steps[i].dish);
    const bool waits = !made.remains.past[i] && !running.plan.unserved[dish] &&
                       made.schedule.steps[i].start > running.now + kAboutToStart;
    if (!waits || !isFetch(composition, made.schedule, i)) continue;
    const int user = laterUser(composition, running.plan, made.schedule, i);
    if (user >= 0) users[i] = user;
  }
  if (users.empty()) return;
  LateFetches late(composition, made.schedule);
  for (const auto& [fetch, user] : users) late.delay(fetch);
  if (late.schedule() == made.schedule) return;
  made.schedule = late.schedule();
  made.cost = planning::costOf(composition.problem, made.schedule).total;
  for (const auto& [fetch, user] : users)
    tellMoved(fetch, user, running.plan.steps[fetch], made.schedule.steps[fetch], made.moves);
}

}  // namespace suppertide::compose
