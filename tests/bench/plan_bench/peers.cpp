#include "tests/bench/plan_bench/peers.h"

#include <algorithm>
#include <cstdio>
#include <utility>

#include "absl/strings/str_cat.h"
#include "server/planning/audit/audit.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

bool plainWork(const Mode& mode) {
  return mode.length.rows.size() == 1 &&
         mode.length.rows.front().shortest == mode.length.rows.front().longest;
}

const char* unknownOf(const Step& step) {
  if (step.announced || step.pin.start || step.pin.end || step.pin.mode || step.pin.cook) return "pins";
  for (const Mode& mode : step.modes)
    if (mode.attention > 0 && (step.modes.size() > 1 || !plainWork(mode))) return "elastic work";
  return nullptr;
}

const char* unknownOf(const Problem& problem) {
  if (!problem.clocks.empty()) return "clocks";
  if (!problem.separations.empty()) return "separations";
  if (problem.airBetweenTasks > 0 || problem.interruptionCost > 0) return "air between tasks";
  for (const Resource& resource : problem.resources)
    if (resource.usedUp) return "what is used up";
  for (const Oven& oven : problem.ovens)
    if (oven.idleMinuteCost > 0 || !oven.closed.empty()) return "idle heat and closed ovens";
  for (const Gap& gap : problem.gaps)
    if (gap.air > 0) return "air in gaps";
  for (const Step& step : problem.steps)
    if (const char* unknown = unknownOf(step)) return unknown;
  return nullptr;
}

bool onGrid(const Problem& problem, Minute grid) {
  const auto fits = [&](Minute minute) { return minute == kNoLimit || minute % grid == 0; };
  const auto fitsLengths = [&](const Step& step) {
    for (const Mode& mode : step.modes) {
      if (!fits(mode.length.origin) || !fits(mode.length.pitch)) return false;
      for (const Length& row : mode.length.rows)
        if (!row.possible() || !fits(row.shortest) || !fits(row.best) || !fits(row.longest)) return false;
    }
    return true;
  };
  return std::all_of(problem.steps.begin(), problem.steps.end(), fitsLengths) &&
         std::all_of(problem.gaps.begin(), problem.gaps.end(),
                     [&](const Gap& gap) { return fits(gap.least) && fits(gap.most); }) &&
         std::all_of(problem.dishes.begin(), problem.dishes.end(), [&](const Dish& dish) {
           return fits(dish.serve) && fits(dish.holdLimit) && fits(dish.lateLimit);
         });
}

// The planner, but no plan of a dinner that the peers' models cannot say.
Planner ifKnown(Planner planner) {
  return [planner = std::move(planner)](const Problem& problem, std::uint64_t seed, double limitSeconds) {
    const auto known = peersKnow(problem, kDinnerGrid);
    if (known.ok()) return planner(problem, seed, limitSeconds);
    std::fprintf(stderr, "%s\n", known.ToString().c_str());
    return Run{};
  };
}

}  // namespace

std::vector<std::string> peerNames() {
  return {"minizinc", "gecode"};
}

absl::StatusOr<Peer> peerOf(const std::string& name, const PeerPaths& paths) {
  if (name == "gecode") {
#ifdef SUPPERTIDE_GECODE
    return Peer{name, ifKnown(planWithGecode)};
#else
    return absl::NotFoundError("this build was made without Gecode");
#endif
  }
  if (const auto status = minizincAtHand(paths); !status.ok()) return status;
  return Peer{name, ifKnown([paths](const Problem& problem, std::uint64_t, double limitSeconds) {
                return planWithMinizinc(problem, paths, limitSeconds);
              })};
}

Problem reduced(Problem problem) {
  for (Step& step : problem.steps)
    for (Mode& mode : step.modes)
      for (CookOption& option : mode.cooks) option.cost = 0;
  for (Cook& cook : problem.cooks) cook.unsocial.clear();
  problem.shareBlockCost = 0;
  return problem;
}

absl::Status peersKnow(const Problem& problem, Minute grid) {
  if (const char* unknown = unknownOf(problem))
    return absl::UnimplementedError(absl::StrCat("the peers' models do not know ", unknown));
  if (!onGrid(problem, grid))
    return absl::UnimplementedError("the peers' models know only what is on the grid");
  return absl::OkStatus();
}

void addPlan(const Problem& problem, const std::vector<Placement>& places, double when, Run& run) {
  const Schedule schedule{places, std::vector<bool>(problem.dishes.size(), false)};
  run.breaches = std::max(run.breaches, 0) + static_cast<int>(audit(problem, schedule).size());
  const TierCosts cost = costOf(problem, schedule).total;
  if (!run.plans.empty() && cost >= run.cost) return;
  run.cost = cost;
  run.plans.push_back({when, cost});
}

}  // namespace suppertide::planning
