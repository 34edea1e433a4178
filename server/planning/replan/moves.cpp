#include "server/planning/replan/moves.h"

#include <algorithm>
#include <cstdlib>

#include "server/planning/explain/obstacles.h"
#include "server/planning/model/costs/moves.h"

namespace suppertide::planning {
namespace {

class Moves {
 public:
  Moves(const Remaining& remains, const Running& running, const Schedule& after)
      : problem_(remains.problem), remains_(remains), running_(running), after_(after) {}

  std::vector<Move> all() const {
    std::vector<Move> moves;
    for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i)
      if (moved(i)) moves.push_back(explained(i));
    std::stable_sort(moves.begin(), moves.end(),
                     [](const Move& a, const Move& b) { return a.after.start < b.after.start; });
    return moves;
  }

 private:
  bool servedBy(const Schedule& schedule, int step) const {
    return !schedule.unserved[static_cast<std::size_t>(nth(problem_.steps, step).dish)];
  }
  bool moved(int step) const {
    const bool before = servedBy(running_.plan, step);
    const bool now = servedBy(after_, step);
    if (!before || !now) return before != now;
    const Placement& a = nth(running_.plan.steps, step);
    const Placement& b = nth(after_.steps, step);
    return std::abs(a.start - b.start) >= kMoveFrom || a.mode != b.mode || a.cook != b.cook;
  }

  Move explained(int step) const {
    Move move;
    move.step = step;
    move.before = nth(running_.plan.steps, step);
    move.after = nth(after_.steps, step);
    if (!servedBy(running_.plan, step) || !servedBy(after_, step)) {
      move.cause = MoveCause::kDish;
      return move;
    }
    const Step& what = nth(problem_.steps, step);
    const StepState& state = nth(running_.states, step);
    if (remains_.past[static_cast<std::size_t>(step)] || state.kind != StepState::Kind::kWaiting ||
        state.notBefore > move.before.start) {
      move.cause = MoveCause::kReported;
      return move;
    }
    const bool pinnedAway = what.pin.start.value_or(move.before.start) != move.before.start ||
                            what.pin.mode.value_or(move.before.mode) != move.before.mode ||
                            what.pin.cook.value_or(move.before.cook) != move.before.cook;
    if (pinnedAway) {
      move.cause = MoveCause::kPinned;
      return move;
    }
    if (move.before.start < running_.now) move.cause = MoveCause::kNotBegun;
    blame(step, move);
    return move;
  }

  // What it would run into where it was, as all others lie now.
  void blame(int step, Move& move) const {
    Schedule back = after_;
    back.steps[static_cast<std::size_t>(step)] = move.before;
    int best = 100;
    for (const Reason& reason : Obstacles(problem_, back).at(step, move.before)) {
      const auto [rank, cause] = weighed(reason);
      if (rank >= best) continue;
      best = rank;
      move.cause = move.cause == MoveCause::kNotBegun && rank > 1 ? MoveCause::kNotBegun : cause;
      move.causeStep = move.cause == cause ? reason.blockingStep : -1;
      move.thing = move.cause == cause ? reason.thing : -1;
    }
  }

  struct Weighed {
    int rank;
    MoveCause cause;
  };
  // The chain of the dish first: it is what a cook sees.
  static Weighed weighed(const Reason& reason) {
    switch (reason.cause) {
      case Cause::kFollows:
        return {0, MoveCause::kFollows};
      case Cause::kMustFollow:
        return {1, MoveCause::kFollows};
      case Cause::kFoodSafety:
      case Cause::kKeptApart:
        return {1, MoveCause::kFollows};
      case Cause::kCookAway:
        return {2, MoveCause::kCook};
      case Cause::kCookBusy:
        return {4, MoveCause::kCook};
      case Cause::kOvenSetpoint:
      case Cause::kOvenFull:
        return {3, MoveCause::kOven};
      case Cause::kThingBusy:
        return {5, MoveCause::kThing};
      case Cause::kReadiness:
        return {6, MoveCause::kLength};
      case Cause::kServing:
        return {7, MoveCause::kServing};
      case Cause::kPinned:
        return {8, MoveCause::kLength};
      case Cause::kBest:
        break;
    }
    return {99, MoveCause::kMadeRoom};
  }

  const Problem& problem_;
  const Remaining& remains_;
  const Running& running_;
  const Schedule& after_;
};

}  // namespace

std::vector<Move> movesBetween(const Remaining& remains, const Running& running, const Schedule& after) {
  return Moves(remains, running, after).all();
}

}  // namespace suppertide::planning
