#include <algorithm>
#include <cstdint>
#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "server/planning/explain/dish_alone.h"
#include "server/planning/explain/explain.h"
#include "server/planning/explain/order_network.h"
#include "server/planning/solver/solver.h"
#include "tests/property/every_schedule.h"
#include "tests/property/extras.h"
#include "tests/support/breach_text.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

using ::testing::IsEmpty;

constexpr std::uint64_t kTinyDinners = 100;
constexpr std::uint64_t kDinners = 60;
constexpr std::int64_t kAudits = 300'000;

struct Planned {
  std::string name;
  Problem problem;
  Schedule schedule;
};

// Plans of tiny and of larger dinners, made once for all tests.
const std::vector<Planned>& plans() {
  static const std::vector<Planned> made = [] {
    std::vector<Planned> all;
    for (std::uint64_t seed = 1; seed <= kTinyDinners; ++seed) {
      const Problem problem = tinyDinner(seed, kExtras);
      const auto best = bestOfEverySchedule(problem, kDinnerGrid, kAudits);
      if (best) all.push_back({absl::StrCat("tiny seed ", seed), problem, best->schedule});
    }
    for (std::uint64_t seed = 1; seed <= kDinners; ++seed) {
      const int dishes = 2 + static_cast<int>(seed % 7);
      const Problem problem = randomDinner(seed, dishes, static_cast<DinnerLoad>(seed % 3), kExtras);
      const auto outcome = makePlan(problem, {.seed = seed, .workLimit = 50, .grid = kDinnerGrid});
      EXPECT_TRUE(outcome.ok()) << outcome.status();
      if (outcome.ok()) all.push_back({absl::StrCat("seed ", seed), problem, outcome->schedule});
    }
    return all;
  }();
  return made;
}

template <typename Look>
void forEveryPlan(Look look) {
  for (const Planned& planned : plans()) {
    SCOPED_TRACE(planned.name);
    look(planned.problem, planned.schedule);
  }
}

TEST(ExplainPropertyTest, TheLatestTimesKeepEveryRule) {
  int moved = 0;
  forEveryPlan([&](const Problem& problem, const Schedule& schedule) {
    const Schedule latest = OrderNetwork(problem, schedule).latest();
    EXPECT_THAT(breachTexts(problem, latest), IsEmpty());
    if (latest != schedule) ++moved;
  });
  EXPECT_GT(moved, 50);
}

TEST(ExplainPropertyTest, SlackIsNeverNegativeAndAReasonNamesServedSteps) {
  forEveryPlan([](const Problem& problem, const Schedule& schedule) {
    for (const StepNote& note : explain(problem, schedule)) {
      EXPECT_GE(note.slackLater, 0);
      EXPECT_GE(note.reason.room, 0);
      if (note.reason.blockingStep < 0) continue;
      const Step& blocking = problem.steps[static_cast<std::size_t>(note.reason.blockingStep)];
      EXPECT_FALSE(schedule.unserved[static_cast<std::size_t>(blocking.dish)]);
    }
  });
}

TEST(ExplainPropertyTest, OvenProgramsAreInOrderAndCoverEveryStay) {
  forEveryPlan([](const Problem& problem, const Schedule& schedule) {
    const auto programs = ovenPrograms(problem, schedule);
    const auto stays = staysByOven(problem, schedule);
    ASSERT_EQ(programs.size(), problem.ovens.size());
    for (std::size_t o = 0; o < programs.size(); ++o) {
      Minute last = 0;
      for (const OvenSegment& segment : programs[o].segments) {
        EXPECT_GE(segment.when.start, last);
        EXPECT_LT(segment.when.start, segment.when.limit);
        last = segment.when.limit;
      }
      for (const OvenStay& stay : stays[o]) {
        Minute covered = 0;
        for (const OvenSegment& segment : programs[o].segments) {
          const auto both = segment.when.intersect(stay.when);
          if (std::count(segment.steps.begin(), segment.steps.end(), stay.step) > 0 && !both.empty())
            covered += both.limit - both.start;
        }
        EXPECT_EQ(covered, stay.when.limit - stay.when.start);
      }
    }
  });
}

// `problem` in which no other dish can be made.
Problem only(const Problem& problem, int dish) {
  Problem alone = problem;
  alone.shareBlockCost = 0;
  for (Resource& resource : alone.resources) resource.taken.clear();
  for (Step& step : alone.steps)
    if (step.dish != dish) step.earliest = alone.limit + 1;
  return alone;
}

TEST(ExplainPropertyTest, ADishAloneIsPlannedAsWellAsByTryingEverySchedule) {
  int compared = 0;
  for (std::uint64_t seed = 1; seed <= kTinyDinners; ++seed) {
    // Alone, a dish knows neither clocks nor what was announced.
    const Problem problem = tinyDinner(seed);
    for (int d = 0; d < static_cast<int>(problem.dishes.size()); ++d) {
      SCOPED_TRACE(absl::StrCat("seed ", seed, " dish ", d));
      const Problem alone = only(problem, d);
      const auto best = bestOfEverySchedule(alone, kDinnerGrid, kAudits);
      ASSERT_TRUE(best);
      const auto plan = planAlone(problem, d, kDinnerGrid);
      if (!plan) {
        EXPECT_TRUE(best->schedule.unserved[static_cast<std::size_t>(d)]);
        continue;
      }
      Schedule schedule = best->schedule;
      schedule.unserved[static_cast<std::size_t>(d)] = false;
      for (const auto& [step, at] : *plan) schedule.steps[static_cast<std::size_t>(step)] = at;
      const TierCosts cost = costOf(alone, schedule).total;
      EXPECT_LE(cost, best->cost);
      // Where the dish's own steps get in each other's way, or a ring was cut, it may be too cheap.
      if (!breachTexts(alone, schedule).empty()) continue;
      EXPECT_EQ(cost, best->cost);
      ++compared;
    }
  }
  EXPECT_GT(compared, 150);
}

}  // namespace
}  // namespace suppertide::planning
