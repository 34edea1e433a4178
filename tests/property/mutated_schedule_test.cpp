// Plans found by trying every schedule, then spoiled in one place: the auditor must notice.
#include <algorithm>
#include <cstdint>
#include <vector>

#include "absl/strings/str_cat.h"
#include "gtest/gtest.h"
#include "server/planning/audit/audit.h"
#include "tests/property/every_schedule.h"
#include "tests/support/breach_text.h"
#include "tests/support/dice.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

constexpr std::uint64_t kSeeds = 100;
constexpr std::int64_t kAudits = 300'000;

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

bool has(const std::vector<Breach>& breaches, Rule rule, int step) {
  return std::any_of(breaches.begin(), breaches.end(), [&](const Breach& breach) {
    return breach.rule == rule && (breach.step == step || breach.otherStep == step);
  });
}

struct Planned {
  std::uint64_t seed;
  Problem problem;
  Schedule schedule;
};

// Plans without a breach, made once for all tests.
const std::vector<Planned>& plans() {
  static const std::vector<Planned> made = [] {
    std::vector<Planned> all;
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
      const Problem problem = tinyDinner(seed);
      const auto best = bestOfEverySchedule(problem, kDinnerGrid, kAudits);
      if (best) all.push_back({seed, problem, best->schedule});
    }
    return all;
  }();
  return made;
}

// Calls `spoil(problem, schedule, step)` for every served step of the plans; returns how many there were.
template <typename Spoil>
int forEveryServedStep(Spoil spoil) {
  int steps = 0;
  for (const Planned& planned : plans()) {
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

}  // namespace
}  // namespace suppertide::planning
