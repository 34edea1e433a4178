#include <cstdint>
#include <cstdlib>

#include "absl/strings/str_cat.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "server/planning/audit/audit.h"
#include "server/planning/solver/solver.h"
#include "tests/property/every_schedule.h"
#include "tests/property/extras.h"
#include "tests/support/breach_text.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

using ::testing::IsEmpty;

// SUPPERTIDE_DINNERS asks for more than an ordinary run has time for.
std::uint64_t dinnersWanted() {
  const char* wanted = std::getenv("SUPPERTIDE_DINNERS");
  const int count = wanted == nullptr ? 0 : std::atoi(wanted);
  return count > 0 ? static_cast<std::uint64_t>(count) : 300;
}
constexpr std::int64_t kConflicts = 200;
constexpr int kTinyProofs = 150;
constexpr std::int64_t kPlansAudited = 300'000;

Problem dinnerOf(std::uint64_t seed) {
  const int dishes = 1 + static_cast<int>(seed % 5);
  return randomDinner(seed, dishes, static_cast<DinnerLoad>(seed / 5 % 3), kExtras);
}

void expectSound(const Problem& problem, const Outcome& outcome) {
  EXPECT_THAT(breachTexts(problem, outcome.schedule), IsEmpty());
  EXPECT_EQ(outcome.cost, costOf(problem, outcome.schedule).total);
  EXPECT_LE(outcome.bound, outcome.cost);
}

TEST(PlannerPropertyTest, EveryPlanPassesTheAuditor) {
  for (std::uint64_t seed = 1; seed <= dinnersWanted(); ++seed) {
    SCOPED_TRACE(absl::StrCat("seed ", seed));
    const Problem problem = dinnerOf(seed);
    const auto outcome = makePlan(problem, {.seed = seed, .workLimit = kConflicts, .grid = kDinnerGrid});
    ASSERT_TRUE(outcome.ok()) << outcome.status();
    expectSound(problem, *outcome);
    if (::testing::Test::HasFailure()) return;
  }
}

TEST(PlannerPropertyTest, TinyDinnersArePlannedAsWellAsByTryingEverySchedule) {
  int compared = 0;
  for (std::uint64_t seed = 1; compared < kTinyProofs; ++seed) {
    ASSERT_LT(seed, 3u * kTinyProofs) << "too few dinners are small enough";
    SCOPED_TRACE(absl::StrCat("seed ", seed));
    const Problem problem = tinyDinner(seed, kExtras);
    const auto best = bestOfEverySchedule(problem, kDinnerGrid, kPlansAudited);
    if (!best) continue;
    ++compared;
    const auto outcome = makePlan(problem, {.seed = seed, .workLimit = 0, .grid = kDinnerGrid});
    ASSERT_TRUE(outcome.ok()) << outcome.status();
    expectSound(problem, *outcome);
    EXPECT_TRUE(outcome->optimal());
    ASSERT_EQ(outcome->cost, best->cost);
  }
}

TEST(PlannerPropertyTest, EqualProblemsAndSeedsGiveEqualPlans) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    SCOPED_TRACE(absl::StrCat("seed ", seed));
    const Problem problem = dinnerOf(seed);
    const SearchOptions options{.seed = seed, .workLimit = kConflicts, .grid = kDinnerGrid};
    const auto first = makePlan(problem, options);
    const auto second = makePlan(problem, options);
    ASSERT_TRUE(first.ok() && second.ok());
    EXPECT_EQ(first->schedule, second->schedule);
    EXPECT_EQ(first->cost, second->cost);
    EXPECT_EQ(first->provenTiers, second->provenTiers);
  }
}

}  // namespace
}  // namespace suppertide::planning
