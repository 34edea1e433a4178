#include "tests/evening/evening.h"

#include <gtest/gtest.h>

#include <cstdlib>

#include "tests/compose/small_dinner.h"

namespace suppertide::evening {
namespace {

// The small dinner with a second oven to fall back on.
const v1::Bundle& supper() {
  static const v1::Bundle planned = [] {
    v1::Bundle bundle = compose::smallDinner();
    v1::Oven second = bundle.kitchens(0).ovens(0);
    second.set_id("second");
    second.set_display_name("Second oven");
    *bundle.mutable_kitchens(0)->add_ovens() = second;
    return withPlan(bundle, 3);
  }();
  return planned;
}

TEST(SimulatedEveningTest, EveryEveningEndsWellOrSaysWhyNot) {
  const char* wanted = std::getenv("SUPPERTIDE_EVENINGS");
  const int evenings = wanted != nullptr ? std::max(1, std::atoi(wanted)) : 10;
  int plans = 0;
  int moves = 0;
  double slowest = 0;
  for (int seed = 1; seed <= evenings; ++seed) {
    SCOPED_TRACE(testing::Message() << "seed " << seed);
    const Outcome outcome = playEvening(supper(), static_cast<std::uint64_t>(seed));
    EXPECT_GT(outcome.reports, 10);
    for (const std::string& fault : outcome.faults) ADD_FAILURE() << fault;
    plans += outcome.plans;
    moves += outcome.moves;
    for (const double took : outcome.corrections) slowest = std::max(slowest, took);
  }
  EXPECT_GT(plans, evenings) << "nothing ever had to be corrected";
  std::printf("%d evenings, %d plans, %d moves, slowest correction %.3f s\n", evenings, plans, moves,
              slowest);
}

}  // namespace
}  // namespace suppertide::evening
