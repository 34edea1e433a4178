// Plans found by trying every schedule, then spoiled in one place: the auditor must notice.
#include <algorithm>
#include <cstdint>
#include <utility>
#include <vector>

#include "absl/strings/str_cat.h"
#include "gtest/gtest.h"
#include "server/base/index.h"
#include "server/planning/audit/audit.h"
#include "tests/property/every_schedule.h"
#include "tests/property/extras.h"
#include "tests/support/breach_text.h"
#include "tests/support/dice.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

constexpr std::uint64_t kSeeds = 100;
constexpr std::int64_t kMostAudits = 300'000;

bool has(const std::vector<Breach>& breaches, Rule rule, int step) {
  return std::any_of(breaches.begin(), breaches.end(), [&](const Breach& breach) {
    return breach.rule == rule && (breach.step == step || breach.otherStep == step);
  });
}

struct BestPlan {
  std::uint64_t seed;
  Problem problem;
  Schedule schedule;
};

std::vector<BestPlan> plansOf(DinnerExtras extras) {
  std::vector<BestPlan> all;
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    const Problem problem = tinyDinner(seed, extras);
    const auto best = bestOfEverySchedule(problem, kDinnerGrid, kMostAudits);
    if (best) all.push_back({seed, problem, best->schedule});
  }
  return all;
}

// Plans without a breach, made once for all tests.
const std::vector<BestPlan>& bestPlans() {
  static const std::vector<BestPlan> made = plansOf(kExtras);
  return made;
}

// Of dinners that have what the last three rules are about.
const std::vector<BestPlan>& plansWithExtras() {
  static const std::vector<BestPlan> made = plansOf({.clocks = true, .separations = true, .usedUp = true});
  return made;
}

// Calls `spoil(problem, schedule, step)` for every served step of the plans; returns how many there were.
template <typename Spoil>
int forEveryServedStep(Spoil spoil) {
  int steps = 0;
  for (const BestPlan& planned : bestPlans()) {
    SCOPED_TRACE(absl::StrCat("seed ", planned.seed));
    EXPECT_TRUE(breachTexts(planned.problem, planned.schedule).empty());
    for (int i = 0; i < static_cast<int>(planned.problem.steps.size()); ++i) {
      if (planned.schedule.unserved[at(planned.problem.steps[at(i)].dish)]) continue;
      SCOPED_TRACE(planned.problem.steps[at(i)].id);
      spoil(planned.problem, planned.schedule, i);
      ++steps;
    }
  }
  return steps;
}

TEST(MutatedScheduleTest, AStepThatIsMovedOffTheAxisIsCaught) {
  EXPECT_GT(forEveryServedStep([](const Problem& problem, Schedule schedule, int step) {
              Placement& placement = schedule.steps[at(step)];
              const Minute by = problem.limit - placement.end + 1;
              placement.start += by;
              placement.end += by;
              EXPECT_TRUE(has(audit(problem, schedule), Rule::kGap, step));
            }),
            50);
}

TEST(MutatedScheduleTest, AStepThatIsMovedFurtherThanItsGapAllowsIsCaught) {
  int caught = 0;
  forEveryServedStep([&](const Problem& problem, Schedule schedule, int step) {
    for (const Gap& gap : problem.gaps) {
      if (gap.to != step || gap.fromEdge != Edge::kEnd || gap.toEdge != Edge::kStart) continue;
      Placement& placement = schedule.steps[at(step)];
      const Minute by = schedule.steps[at(gap.from)].end + gap.least - placement.start - 1;
      placement.start += by;
      placement.end += by;
      EXPECT_TRUE(has(audit(problem, schedule), Rule::kGap, step));
      ++caught;
      return;
    }
  });
  EXPECT_GT(caught, 20);
}

TEST(MutatedScheduleTest, AStepThatLastsLongerThanItMayIsCaught) {
  EXPECT_GT(forEveryServedStep([](const Problem& problem, Schedule schedule, int step) {
              Placement& placement = schedule.steps[at(step)];
              const Step& what = problem.steps[at(step)];
              const Length length = what.modes[at(placement.mode)].length.at(placement.start);
              placement.end = placement.start + length.longest + 1;
              const Rule rule = what.kind == StepKind::kFerment ? Rule::kReadiness : Rule::kGap;
              EXPECT_TRUE(has(audit(problem, schedule), rule, step));
            }),
            50);
}

TEST(MutatedScheduleTest, ACookWhoIsNotAskedIsCaught) {
  int caught = 0;
  forEveryServedStep([&](const Problem& problem, Schedule schedule, int step) {
    Placement& placement = schedule.steps[at(step)];
    const Mode& mode = problem.steps[at(step)].modes[at(placement.mode)];
    if (mode.attention == 0) return;
    placement.cook = -1;
    EXPECT_TRUE(has(audit(problem, schedule), Rule::kCook, step));
    for (int c = 0; c < static_cast<int>(problem.cooks.size()); ++c) {
      if (std::any_of(mode.cooks.begin(), mode.cooks.end(), [&](const CookOption& o) { return o.cook == c; }))
        continue;
      placement.cook = c;
      EXPECT_TRUE(has(audit(problem, schedule), Rule::kCook, step));
    }
    ++caught;
  });
  EXPECT_GT(caught, 10);
}

TEST(MutatedScheduleTest, AHandsOnStepMovedOntoAnotherOfTheSameCookIsCaught) {
  int caught = 0;
  forEveryServedStep([&](const Problem& problem, Schedule schedule, int step) {
    Placement& placement = schedule.steps[at(step)];
    const Mode& mode = problem.steps[at(step)].modes[at(placement.mode)];
    for (int other = 0; other < static_cast<int>(problem.steps.size()); ++other) {
      const Step& otherStep = problem.steps[at(other)];
      const Placement& otherAt = schedule.steps[at(other)];
      if (other == step || schedule.unserved[at(otherStep.dish)] || otherAt.cook != placement.cook) continue;
      if (otherStep.modes[at(otherAt.mode)].attention + mode.attention <= 100 || placement.cook < 0) continue;
      const Minute length = placement.end - placement.start;
      placement.start = otherAt.start;
      placement.end = otherAt.start + length;
      EXPECT_TRUE(has(audit(problem, schedule), Rule::kCook, step));
      ++caught;
      return;
    }
  });
  EXPECT_GT(caught, 10);
}

TEST(MutatedScheduleTest, ABakeMovedOntoAnotherAtADifferentSetpointIsCaught) {
  int caught = 0;
  forEveryServedStep([&](const Problem& problem, Schedule schedule, int step) {
    Placement& placement = schedule.steps[at(step)];
    const auto& need = problem.steps[at(step)].modes[at(placement.mode)].oven;
    for (int other = 0; need && other < static_cast<int>(problem.steps.size()); ++other) {
      const Step& otherStep = problem.steps[at(other)];
      const Placement& otherAt = schedule.steps[at(other)];
      const auto& otherNeed = otherStep.modes[at(otherAt.mode)].oven;
      if (other == step || schedule.unserved[at(otherStep.dish)] || !otherNeed) continue;
      if (otherNeed->oven != need->oven || otherNeed->phases[0].setpoint == need->phases[0].setpoint)
        continue;
      const Minute length = placement.end - placement.start;
      placement.start = otherAt.start;
      placement.end = otherAt.start + length;
      const std::vector<Breach> breaches = audit(problem, schedule);
      EXPECT_TRUE(has(breaches, Rule::kOvenTemperature, step) || has(breaches, Rule::kOvenProofing, step));
      ++caught;
      return;
    }
  });
  EXPECT_GT(caught, 5);
}

bool isServed(const Problem& problem, const Schedule& schedule, int step) {
  return !schedule.unserved[at(problem.steps[at(step)].dish)];
}

// By the arithmetic of its spans, where the auditor counts minutes.
Minute minutesOf(const Problem& problem, const Schedule& schedule, const Clock& clock) {
  Minute sum = 0;
  for (const Clock::Span& span : clock.spans) {
    const Placement& from = schedule.steps[at(span.from)];
    if (!span.modes.empty() && std::count(span.modes.begin(), span.modes.end(), from.mode) == 0) continue;
    const Dish& dish = problem.dishes[at(problem.steps[at(span.from)].dish)];
    Minute limit = std::max(dish.serve, schedule.steps[at(dish.lastStep)].end);
    if (span.to >= 0) {
      const Placement& to = schedule.steps[at(span.to)];
      limit = span.toEdge == Edge::kStart ? to.start : to.end;
    }
    sum += std::max(0, limit - (span.fromEdge == Edge::kStart ? from.start : from.end));
  }
  return sum;
}

TEST(MutatedScheduleTest, AClockThatMayCountOneMinuteLessIsCaught) {
  int caught = 0;
  for (const BestPlan& planned : plansWithExtras()) {
    SCOPED_TRACE(absl::StrCat("seed ", planned.seed));
    Problem problem = planned.problem;
    for (Clock& clock : problem.clocks) {
      const Minute minutes = minutesOf(problem, planned.schedule, clock);
      if (!isServed(problem, planned.schedule, clock.spans[0].from) || minutes == 0) continue;
      const Minute most = std::exchange(clock.most, minutes);
      EXPECT_TRUE(breachTexts(problem, planned.schedule).empty());
      --clock.most;
      const std::vector<Breach> breaches = audit(problem, planned.schedule);
      ASSERT_EQ(breaches.size(), 1u);
      EXPECT_EQ(breaches[0].rule, Rule::kFoodSafety);
      EXPECT_EQ(breaches[0].amount, 1);
      clock.most = most;
      ++caught;
    }
  }
  EXPECT_GT(caught, 20);
}

TEST(MutatedScheduleTest, ACleanStepMovedOntoWhatItMustBeKeptFromIsCaught) {
  int caught = 0;
  for (const BestPlan& planned : plansWithExtras()) {
    SCOPED_TRACE(absl::StrCat("seed ", planned.seed));
    for (const Separation& separation : planned.problem.separations) {
      if (!isServed(planned.problem, planned.schedule, separation.clean) ||
          !isServed(planned.problem, planned.schedule, separation.other))
        continue;
      Problem problem = planned.problem;
      problem.separations = {separation};
      problem.separations[0].cleanModes.clear();
      problem.separations[0].otherModes.clear();
      Schedule schedule = planned.schedule;
      Placement& clean = schedule.steps[at(separation.clean)];
      const Placement& other = schedule.steps[at(separation.other)];
      if (clean.start == clean.end || other.start == other.end) continue;
      clean = {other.end - 1, other.end - 1 + (clean.end - clean.start), clean.mode, clean.cook};
      EXPECT_TRUE(has(audit(problem, schedule), Rule::kAllergen, separation.clean));
      ++caught;
    }
  }
  EXPECT_GT(caught, 10);
}

TEST(MutatedScheduleTest, OneEggTooFewIsCaught) {
  int caught = 0;
  for (const BestPlan& planned : plansWithExtras()) {
    SCOPED_TRACE(absl::StrCat("seed ", planned.seed));
    Problem problem = planned.problem;
    Resource& eggs = problem.resources.back();
    int used = 0;
    int users = 0;
    for (int i = 0; i < static_cast<int>(problem.steps.size()); ++i) {
      const Placement& placement = planned.schedule.steps[at(i)];
      if (!isServed(problem, planned.schedule, i) || placement.start == placement.end) continue;
      for (const Use& use : problem.steps[at(i)].modes[at(placement.mode)].uses) {
        if (&problem.resources[at(use.resource)] != &eggs) continue;
        used += use.amount;
        ++users;
      }
    }
    if (users == 0) continue;
    for (const Resource::Taken& taken : eggs.taken) used += taken.amount;
    eggs.capacity = used;
    EXPECT_TRUE(breachTexts(problem, planned.schedule).empty());
    --eggs.capacity;
    const std::vector<Breach> breaches = audit(problem, planned.schedule);
    ASSERT_EQ(breaches.size(), 1u);
    EXPECT_EQ(breaches[0].rule, Rule::kCapacity);
    EXPECT_EQ(breaches[0].amount, 1);
    ++caught;
  }
  EXPECT_GT(caught, 20);
}

}  // namespace
}  // namespace suppertide::planning
