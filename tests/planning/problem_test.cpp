#include "server/planning/model/problem.h"

#include <functional>
#include <string>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/problem_builder.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

using ::testing::HasSubstr;

// A loaf that is mixed by hand, then baked.
Problem loaf() {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.resource("bowl", 1);
  kitchen.oven("oven", {28, 180, 240}, {.racks = 1, .changeMinutes = 15});
  kitchen.dish("loaf", {.serve = 300});
  kitchen.step("mix").lasting(20).by({"Ana"}).using_("bowl");
  kitchen.step("bake").lasting(40).in("oven", 240).after("mix");
  return kitchen.build();
}

struct Spoiling {
  const char* name;
  std::function<void(Problem&)> spoil;
  const char* message;
};

class CheckTest : public ::testing::TestWithParam<Spoiling> {};

TEST_P(CheckTest, NamesWhatIsWrong) {
  Problem problem = loaf();
  ASSERT_TRUE(check(problem).ok());
  GetParam().spoil(problem);
  const absl::Status status = check(problem);
  EXPECT_EQ(status.code(), absl::StatusCode::kInvalidArgument);
  EXPECT_THAT(std::string(status.message()), HasSubstr(GetParam().message));
}

Mode& mixMode(Problem& problem) {
  return problem.steps[0].modes[0];
}
Mode& bakeMode(Problem& problem) {
  return problem.steps[1].modes[0];
}

const Spoiling kSpoilings[] = {
    {"EmptyAxis", [](Problem& p) { p.limit = 0; }, "time axis is empty"},
    {"NoMode", [](Problem& p) { p.steps[0].modes.clear(); }, "step mix: has no mode"},
    {"NoDish", [](Problem& p) { p.steps[0].dish = 3; }, "step mix: belongs to no dish"},
    {"NoLength", [](Problem& p) { mixMode(p).length.rows.clear(); }, "step mix: has a mode without a length"},
    {"RowsWithoutPitch", [](Problem& p) { mixMode(p).length.rows.resize(2); }, "length rows without a pitch"},
    {"LengthOutOfOrder",
     [](Problem& p) {
       mixMode(p).length.rows = {{10, 30, 20}};
     },
     "length range out of order"},
    {"TooMuchAttention", [](Problem& p) { mixMode(p).attention = 101; }, "attention outside 0 to 100 %"},
    {"NobodyMayDoIt", [](Problem& p) { mixMode(p).cooks.clear(); }, "nobody may do it"},
    {"UnknownCook", [](Problem& p) { mixMode(p).cooks[0].cook = 1; }, "unknown cook"},
    {"UnknownThing", [](Problem& p) { mixMode(p).uses[0].resource = -1; }, "unknown thing"},
    {"TooManyBowls", [](Problem& p) { mixMode(p).uses[0].amount = 2; }, "uses more than there is"},
    {"NegativeBowls", [](Problem& p) { mixMode(p).uses[0].amount = -1; }, "negative amount"},
    {"LinkToNothing",
     [](Problem& p) {
       mixMode(p).links = {{7, {0}}};
     },
     "linked to an unknown step"},
    {"LinkToNoMode",
     [](Problem& p) {
       mixMode(p).links = {{1, {4}}};
     },
     "linked to an unknown mode"},
    {"NegativeCost", [](Problem& p) { mixMode(p).qualityCost = -1; }, "negative cost"},
    {"UnknownOven", [](Problem& p) { bakeMode(p).oven->oven = 2; }, "step bake: names an oven"},
    {"NoSetpoint", [](Problem& p) { bakeMode(p).oven->phases.clear(); }, "no setpoint"},
    {"UnknownSetpoint", [](Problem& p) { bakeMode(p).oven->phases[0].setpoint = 3; },
     "setpoint its oven lacks"},
    {"PhasesTooShort",
     [](Problem& p) {
       bakeMode(p).oven->phases = {{2, 20}, {1, 10}};
     },
     "do not add up"},
    {"TooWide", [](Problem& p) { bakeMode(p).oven->load.racks = 2; }, "does not fit its oven even alone"},
    {"PinnedToNoMode", [](Problem& p) { p.steps[0].pin.mode = 1; }, "pinned to an unknown mode"},
    {"PinnedToNobody", [](Problem& p) { p.steps[0].pin.cook = 1; }, "pinned to an unknown cook"},
    {"GapToNothing", [](Problem& p) { p.gaps[0].to = 9; }, "gap: names an unknown step"},
    {"GapUpsideDown",
     [](Problem& p) {
       p.gaps[0].least = 10;
       p.gaps[0].most = 5;
     },
     "least is above its most"},
    {"NoLastStep", [](Problem& p) { p.dishes[0].lastStep = 9; }, "dish loaf: has no last step"},
    {"NoRackRule", [](Problem& p) { p.ovens[0].racks = nullptr; }, "oven oven: has no rack rule"},
    {"SetpointsDescend",
     [](Problem& p) {
       p.ovens[0].setpoints = {240, 180, 28};
     },
     "not ascending"},
    {"ChangeTimesMissing", [](Problem& p) { p.ovens[0].change.pop_back(); }, "change times do not match"},
    {"NegativeShare", [](Problem& p) { p.cooks[0].share = -1; }, "cook Ana: has a negative share"},
    {"NegativeCapacity",
     [](Problem& p) {
       mixMode(p).uses.clear();
       p.resources[0].capacity = -1;
     },
     "resource bowl: has a negative capacity"},
};

INSTANTIATE_TEST_SUITE_P(Spoiled, CheckTest, ::testing::ValuesIn(kSpoilings),
                         [](const auto& spoiling) { return spoiling.param.name; });

TEST(LengthTableTest, OneRowHoldsAtEveryStart) {
  const LengthTable table = LengthTable::range(10, 20, 30);
  EXPECT_EQ(table.at(0).best, 20);
  EXPECT_EQ(table.at(100'000).longest, 30);
}

TEST(LengthTableTest, RowsHoldForTheirStartsOnly) {
  const LengthTable table{60, 30, {{10, 10, 10}, {20, 20, 20}}};
  EXPECT_FALSE(table.at(59).possible());
  EXPECT_EQ(table.at(60).best, 10);
  EXPECT_EQ(table.at(89).best, 10);
  EXPECT_EQ(table.at(90).best, 20);
  EXPECT_EQ(table.at(119).best, 20);
  EXPECT_FALSE(table.at(120).possible());
}

TEST(LengthTableTest, ARowUpsideDownCannotBeChosen) {
  const LengthTable table{0, 30, {{1, 1, 0}, {5, 5, 5}}};
  EXPECT_FALSE(table.at(10).possible());
  EXPECT_TRUE(table.at(30).possible());
}

TEST(RackCountTest, CountsTheRacksOfAllLoads) {
  const RackCount three(3);
  EXPECT_TRUE(three.fits({}));
  EXPECT_TRUE(three.fits({{.racks = 2}, {.racks = 1}}));
  EXPECT_FALSE(three.fits({{.racks = 2}, {.racks = 2}}));
}

TEST(RandomDinnerTest, DinnersPassTheCheckAndHaveTheStepsPromised) {
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    SCOPED_TRACE(seed);
    for (const auto& [dishes, steps] : {std::pair{6, 40}, {12, 80}, {24, 160}}) {
      const Problem problem = randomDinner(seed, dishes, static_cast<DinnerLoad>(seed % 3));
      EXPECT_TRUE(check(problem).ok()) << check(problem);
      EXPECT_NEAR(static_cast<double>(problem.steps.size()), steps, steps * 0.12);
    }
    EXPECT_TRUE(check(tinyDinner(seed)).ok()) << check(tinyDinner(seed));
  }
}

}  // namespace
}  // namespace suppertide::planning
