#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "server/planning/explain/explain.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

// "heats to 240, 80-100" and "holds 240 for loaf rolls, 100-140".
std::string text(const Problem& problem, const OvenSegment& segment) {
  static constexpr const char* kVerbs[] = {"heats to", "holds", "cools to", "proofs at"};
  std::string text = absl::StrCat(kVerbs[static_cast<int>(segment.kind)], " ", segment.setpoint);
  if (!segment.steps.empty()) absl::StrAppend(&text, " for");
  for (const int step : segment.steps)
    absl::StrAppend(&text, " ", problem.steps[static_cast<std::size_t>(step)].id);
  return absl::StrCat(text, ", ", segment.when.start, "-", segment.when.limit);
}

std::vector<std::string> program(const Problem& problem, const ScheduleBuilder& schedule) {
  std::vector<std::string> texts;
  const std::vector<OvenProgram> programs = ovenPrograms(problem, schedule.done());
  for (const OvenSegment& segment : programs[0].segments) texts.push_back(text(problem, segment));
  return texts;
}

// Heats from cold in 20 minutes and changes over in 15, whatever the setpoints.
ProblemBuilder kitchenWithOven() {
  ProblemBuilder kitchen(1000);
  kitchen.oven("oven", {28, 170, 200, 240}, {.racks = 3, .changeMinutes = 15});
  kitchen.problem().ovens[0].heatFromCold.assign(4, 20);
  kitchen.dish("supper", {.serve = 1000});
  return kitchen;
}

TEST(OvenProgramTest, AnUnusedOvenHasNoSegments) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("chop").lasting(10);
  const Problem problem = kitchen.build();
  EXPECT_THAT(program(problem, ScheduleBuilder(problem).put("chop", 0)), IsEmpty());
}

TEST(OvenProgramTest, HeatsUpBeforeThePreheatedLoad) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("loaf").lasting(40).in("oven", 240);
  const Problem problem = kitchen.build();
  EXPECT_THAT(program(problem, ScheduleBuilder(problem).put("loaf", 100)),
              ElementsAre("heats to 240, 80-100", "holds 240 for loaf, 100-140"));
  EXPECT_THAT(program(problem, ScheduleBuilder(problem).put("loaf", 5)),
              ElementsAre("heats to 240, 0-5", "holds 240 for loaf, 5-45"));
}

TEST(OvenProgramTest, HeatsUpAroundAColdStart) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("braise").lasting(60).in("oven", 170).coldStart();
  const Problem problem = kitchen.build();
  EXPECT_THAT(program(problem, ScheduleBuilder(problem).put("braise", 100)),
              ElementsAre("heats to 170 for braise, 100-120", "holds 170 for braise, 120-160"));
}

TEST(OvenProgramTest, LoadsAtOneSetpointShareASegment) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("roast").lasting(60).in("oven", 170);
  kitchen.step("gratin").lasting(30).in("oven", 170);
  const Problem problem = kitchen.build();
  EXPECT_THAT(program(problem, ScheduleBuilder(problem).put("roast", 100).put("gratin", 140)),
              ElementsAre("heats to 170, 80-100", "holds 170 for roast gratin, 100-170"));
}

TEST(OvenProgramTest, HeatsLateAndCoolsEarlyBetweenSetpoints) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("roast").lasting(60).in("oven", 170);
  kitchen.step("loaf").lasting(40).in("oven", 240);
  const Problem problem = kitchen.build();
  EXPECT_THAT(program(problem, ScheduleBuilder(problem).put("roast", 100).put("loaf", 180)),
              ElementsAre("heats to 170, 80-100", "holds 170 for roast, 100-160", "holds 170, 160-165",
                          "heats to 240, 165-180", "holds 240 for loaf, 180-220"));
  EXPECT_THAT(program(problem, ScheduleBuilder(problem).put("loaf", 100).put("roast", 160)),
              ElementsAre("heats to 240, 80-100", "holds 240 for loaf, 100-140", "cools to 170, 140-155",
                          "holds 170, 155-160", "holds 170 for roast, 160-220"));
}

TEST(OvenProgramTest, IsSwitchedOffWhenIdlingWouldTakeLonger) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("roast").lasting(60).in("oven", 170);
  kitchen.step("gratin").lasting(30).in("oven", 170);
  const Problem problem = kitchen.build();
  // Cooling takes 15 minutes and heating 20: 35 are idled through, 36 are not.
  EXPECT_THAT(program(problem, ScheduleBuilder(problem).put("roast", 100).put("gratin", 195)),
              ElementsAre("heats to 170, 80-100", "holds 170 for roast, 100-160", "holds 170, 160-195",
                          "holds 170 for gratin, 195-225"));
  EXPECT_THAT(program(problem, ScheduleBuilder(problem).put("roast", 100).put("gratin", 196)),
              ElementsAre("heats to 170, 80-100", "holds 170 for roast, 100-160", "heats to 170, 176-196",
                          "holds 170 for gratin, 196-226"));
}

TEST(OvenProgramTest, APhaseChangeHasTheLoafInIt) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("loaf").lasting(40).in("oven", {{240, 15}, {200, 25}});
  const Problem problem = kitchen.build();
  EXPECT_THAT(program(problem, ScheduleBuilder(problem).put("loaf", 100)),
              ElementsAre("heats to 240, 80-100", "holds 240 for loaf, 100-115",
                          "cools to 200 for loaf, 115-130", "holds 200 for loaf, 130-140"));
}

TEST(OvenProgramTest, ProofsBelowBakingHeat) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("proof").lasting(60).in("oven", 28);
  kitchen.step("loaf").lasting(40).in("oven", 240);
  const Problem problem = kitchen.build();
  EXPECT_THAT(program(problem, ScheduleBuilder(problem).put("proof", 100).put("loaf", 175)),
              ElementsAre("heats to 28, 80-100", "proofs at 28 for proof, 100-160", "heats to 240, 160-175",
                          "holds 240 for loaf, 175-215"));
}

}  // namespace
}  // namespace suppertide::planning
