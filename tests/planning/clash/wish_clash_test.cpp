#include "server/planning/clash/wish_clash.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "server/planning/clash/best_broken.h"
#include "server/planning/clash/part.h"
#include "tests/planning/clash/clash_words.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::vector<WishClash> clashesOf(const Problem& problem, WishClashOptions options = {}) {
  EngineFeasibility feasibility(5, 0, {});
  auto clashes = wishClashes(problem, options, feasibility);
  for (const WishClash& clash : clashes) {
    EXPECT_TRUE(clash.irreducible);
    expectIrreducible(problem, clash, feasibility);
  }
  return clashes;
}

// A loaf at 240 and a roast at 165, both due at 18:30, which is minute 510, and a soup nobody minds.
ProblemBuilder loafAndRoast(int racks) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.oven("range", {165, 240}, {.racks = racks, .changeMinutes = 20});
  kitchen.dish("loaf", {.serve = 510, .holdLimit = 60});
  kitchen.step("bake").lasting(45).in("range", 240);
  kitchen.dish("roast", {.serve = 510, .holdLimit = 30});
  kitchen.step("roast").lasting(120).in("range", 165);
  kitchen.dish("soup", {.serve = 510});
  kitchen.step("simmer").lasting(60);
  return kitchen;
}

TEST(WishClashTest, TellsTheTemperaturesTheOvenAndHowLongEachMayWait) {
  const Problem problem = loafAndRoast(2).build();
  const auto clashes = clashesOf(problem);
  ASSERT_EQ(clashes.size(), 1u);
  EXPECT_THAT(wordsOf(problem, clashes[0]),
              ElementsAre("serve loaf", "serve roast", "setpoint bake", "setpoint roast", "oven range",
                          "fresh loaf", "fresh roast"));
}

TEST(WishClashTest, LeavesTheTemperatureOutWhereBothCouldNotStandInTheOvenAnyway) {
  const Problem problem = loafAndRoast(1).build();
  const auto clashes = clashesOf(problem);
  ASSERT_EQ(clashes.size(), 1u);
  EXPECT_THAT(wordsOf(problem, clashes[0]),
              ElementsAre("serve loaf", "serve roast", "oven range", "fresh loaf", "fresh roast"));
}

TEST(WishClashTest, FindsNoneInADinnerThatFits) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.dish("soup", {.serve = 300});
  kitchen.step("chop").lasting(20).by({"Ana"});
  EXPECT_THAT(clashesOf(kitchen.build()), IsEmpty());
}

TEST(WishClashTest, TellsOfTheHoursOfTheOnlyCook) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana", 420, 600);
  kitchen.dish("loaf", {.serve = 480});
  kitchen.step("mix").lasting(20).by({"Ana"});
  kitchen.step("rise").lasting(120).after("mix");
  const Problem problem = kitchen.build();
  const auto clashes = clashesOf(problem);
  ASSERT_EQ(clashes.size(), 1u);
  // Another cook would do, too, so that there is but one belongs to it.
  EXPECT_THAT(wordsOf(problem, clashes[0]), ElementsAre("serve loaf", "hours Ana", "hands"));
}

TEST(WishClashTest, TellsOfABurnerAndAPin) {
  Pin pin;
  pin.start = 265;
  ProblemBuilder kitchen(600);
  kitchen.resource("burners", 1);
  kitchen.dish("rice", {.serve = 300, .holdLimit = 10});
  kitchen.step("rice").lasting(30).using_("burners").pinned(pin);
  kitchen.dish("beans", {.serve = 300, .holdLimit = 40});
  kitchen.step("beans").lasting(30).using_("burners").notBefore(240);
  const Problem problem = kitchen.build();
  const auto clashes = clashesOf(problem);
  ASSERT_EQ(clashes.size(), 1u);
  EXPECT_THAT(wordsOf(problem, clashes[0]),
              ElementsAre("serve rice", "serve beans", "pin rice", "count burners"));
}

TEST(WishClashTest, ADishThatNothingCanSaveStandsAlone) {
  ProblemBuilder kitchen(600);
  kitchen.dish("brisket", {.serve = 120});
  kitchen.step("cook").lasting(300);
  const Problem problem = kitchen.build();
  const auto clashes = clashesOf(problem);
  ASSERT_EQ(clashes.size(), 1u);
  EXPECT_THAT(wordsOf(problem, clashes[0]), ElementsAre("serve brisket"));
}

TEST(WishClashTest, NeverTakesBackAFoodSafetyClock) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana", 400, 600);
  kitchen.dish("chicken", {.serve = 390, .holdLimit = 0});
  kitchen.step("carve").lasting(10).notAfter(100);
  kitchen.step("wait").lasting(10).after("carve");
  kitchen.clock("room", 60, {{.from = "carve", .fromEdge = Edge::kEnd}});
  const Problem problem = kitchen.build();
  const auto clashes = clashesOf(problem);
  ASSERT_EQ(clashes.size(), 1u);
  EXPECT_THAT(wordsOf(problem, clashes[0]), ElementsAre("serve chicken"));
  EXPECT_THAT(clashes[0].rules, ElementsAre(KeptRule{KeptRule::Kind::kClock, 0}));
}

TEST(WishClashTest, NamesTheSeparationBehindAClashAndNoneWhereTheWishesAloneClash) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  kitchen.dish("squash", {.serve = 300, .holdLimit = 20});
  kitchen.step("stuff").lasting(30).notAfter(300);
  kitchen.dish("cake", {.serve = 300, .holdLimit = 20});
  kitchen.step("crack").lasting(30).notAfter(300);
  kitchen.separation("board", "stuff", "crack", 10);
  const Problem problem = kitchen.build();
  const auto clashes = clashesOf(problem);
  ASSERT_EQ(clashes.size(), 1u);
  EXPECT_THAT(clashes[0].rules, ElementsAre(KeptRule{KeptRule::Kind::kSeparation, 0}));
  const auto ovens = clashesOf(loafAndRoast(2).build());
  ASSERT_EQ(ovens.size(), 1u);
  EXPECT_THAT(ovens[0].rules, IsEmpty());
}

TEST(WishClashTest, DoesNotTryABakeBelowItsSafeTemperature) {
  const Problem problem = loafAndRoast(2).build();
  WishClashOptions options;
  options.relaxing.leastCelsius.assign(problem.steps.size(), 0);
  options.relaxing.leastCelsius[static_cast<std::size_t>(stepIndex(problem, "bake"))] = 200;
  options.relaxing.leastCelsius[static_cast<std::size_t>(stepIndex(problem, "roast"))] = 200;
  EngineFeasibility feasibility(5, 0, {});
  const auto clashes = wishClashes(problem, options, feasibility);
  ASSERT_EQ(clashes.size(), 1u);
  // The loaf cannot come down to the roast; the roast can still go up to the loaf.
  EXPECT_THAT(wordsOf(problem, clashes[0]), ElementsAre("serve loaf", "serve roast", "setpoint roast",
                                                        "oven range", "fresh loaf", "fresh roast"));
}

TEST(WishClashTest, FindsASecondClashAmongOtherDishes) {
  ProblemBuilder kitchen = loafAndRoast(1);
  kitchen.resource("mixer", 1);
  kitchen.dish("cream", {.serve = 550, .holdLimit = 5});
  kitchen.step("whip").lasting(20).using_("mixer");
  kitchen.dish("meringue", {.serve = 550, .holdLimit = 5});
  kitchen.step("beat").lasting(20).using_("mixer");
  const Problem problem = kitchen.build();
  const auto clashes = clashesOf(problem);
  ASSERT_EQ(clashes.size(), 2u);
  EXPECT_THAT(wordsOf(problem, clashes[1]),
              ElementsAre("serve cream", "serve meringue", "count mixer", "fresh cream", "fresh meringue"));
}

TEST(WishClashTest, StartsFromTheSuspects) {
  ProblemBuilder kitchen = loafAndRoast(1);
  kitchen.dish("brisket", {.serve = 120});
  kitchen.step("cook").lasting(300);
  const Problem problem = kitchen.build();
  WishClashOptions options;
  options.most = 1;
  options.suspects = {dishIndex(problem, "brisket")};
  const auto clashes = clashesOf(problem, options);
  ASSERT_EQ(clashes.size(), 1u);
  EXPECT_THAT(wordsOf(problem, clashes[0]), ElementsAre("serve brisket"));
}

TEST(WishClashTest, StartsFromDishesThatAreKnownToClash) {
  ProblemBuilder kitchen = loafAndRoast(1);
  kitchen.dish("brisket", {.serve = 120});
  kitchen.step("cook").lasting(300);
  const Problem problem = kitchen.build();
  WishClashOptions options;
  options.most = 1;
  options.suspects = {dishIndex(problem, "brisket")};
  options.clashing = {dishIndex(problem, "loaf"), dishIndex(problem, "roast"), dishIndex(problem, "soup")};
  const auto clashes = clashesOf(problem, options);
  ASSERT_EQ(clashes.size(), 1u);
  EXPECT_THAT(wordsOf(problem, clashes[0]),
              ElementsAre("serve loaf", "serve roast", "oven range", "fresh loaf", "fresh roast"));
}

TEST(EngineFeasibilityTest, NamesFewDishesThatCannotAllBeServed) {
  const Problem problem = loafAndRoast(1).build();
  std::vector<int> clashing;
  EngineFeasibility feasibility(5, 0, {});
  EXPECT_EQ(feasibility.decide(problem, nullptr, &clashing), Feasible::kNo);
  EXPECT_THAT(clashing, ElementsAre(dishIndex(problem, "loaf"), dishIndex(problem, "roast")));
}

TEST(EngineFeasibilityTest, APlanServesAnotherProblemOnlyWhereItKeepsItsRules) {
  const Problem roomy = loafAndRoast(2).build();
  Problem shared = roomy;
  for (Step& step : shared.steps)
    for (Mode& mode : step.modes)
      if (mode.oven) mode.oven->phases.front().setpoint = 0;
  EngineFeasibility feasibility(5, 0, {});
  Schedule plan;
  ASSERT_EQ(feasibility.decide(shared, &plan), Feasible::kYes);
  EXPECT_TRUE(servesAll(shared, plan));
  EXPECT_FALSE(servesAll(roomy, plan));
  EXPECT_FALSE(servesAll(partOf(shared, {0, 1}), plan));
}

// Answers as the engine does, but leaves the n-th question open.
class Forgetful : public Feasibility {
 public:
  explicit Forgetful(int nth) : nth_(nth) {}
  Feasible decide(const Problem& problem, Schedule* schedule, std::vector<int>* clashing) override {
    return ++asked_ == nth_ ? Feasible::kUnknown : engine_.decide(problem, schedule, clashing);
  }

 private:
  EngineFeasibility engine_{5, 0, {}};
  int nth_;
  int asked_ = 0;
};

TEST(WishClashTest, SaysSoWhenAQuestionStayedOpen) {
  const Problem problem = loafAndRoast(1).build();
  EngineFeasibility engine(5, 0, {});
  int unsure = 0;
  for (int nth = 1; nth <= 12; ++nth) {
    Forgetful feasibility(nth);
    for (const WishClash& clash : wishClashes(problem, {.most = 1}, feasibility)) {
      if (clash.irreducible) expectIrreducible(problem, clash, engine);
      if (!clash.irreducible) ++unsure;
    }
  }
  EXPECT_GT(unsure, 0);
}

TEST(WishClashTest, ReportsNothingOnceToldToStop) {
  const Problem problem = loafAndRoast(1).build();
  EngineFeasibility feasibility(5, 0, [] { return true; });
  WishClashOptions options;
  options.stop = [] { return true; };
  EXPECT_THAT(wishClashes(problem, options, feasibility), IsEmpty());
}

TEST(BestBrokenTest, LeavesOutOneOfTwoThatClash) {
  const Problem problem = loafAndRoast(1).build();
  const auto outcome = bestBroken(problem, {.seed = 1});
  ASSERT_TRUE(outcome.ok());
  const auto broken = brokenBy(problem, outcome->schedule);
  ASSERT_EQ(broken.size(), 1u);
  EXPECT_TRUE(broken[0].unserved);
}

TEST(BestBrokenTest, TellsHowLateADishIs) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana", 200, 600);
  kitchen.dish("soup", {.serve = 200, .lateLimit = 60});
  kitchen.step("chop").lasting(20).by({"Ana"});
  const Problem problem = kitchen.build();
  const auto outcome = bestBroken(problem, {.seed = 1});
  ASSERT_TRUE(outcome.ok());
  const auto broken = brokenBy(problem, outcome->schedule);
  ASSERT_EQ(broken.size(), 1u);
  EXPECT_FALSE(broken[0].unserved);
  EXPECT_EQ(broken[0].late, 20);
}

}  // namespace
}  // namespace suppertide::planning
