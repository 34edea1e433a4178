// A whole plan against the hours that published roasting and thawing times give for it:
// a 16 lb turkey served on Thursday 26 November 2026 at 17:00 in New York.
//
// Sources: USDA FSIS, Let's Talk Turkey and extension reprints, for 3 3/4 to 4 1/4 hours at
// 325 F, 24 hours in the fridge for each 4 to 5 lb, and 1 to 2 days from thawed to the oven
// (all read in excerpts); the hours below are computed from them.
#include <google/protobuf/util/json_util.h>
#include <gtest/gtest.h>

#include "absl/time/time.h"
#include "server/compose/planner.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

constexpr const char* kTurkey = R"json(
{"household": {"id": "h", "displayName": "Home", "timeZone": "America/New_York",
  "members": [{"id": "ann", "displayName": "Ann", "role": "ROLE_HOST", "awake": {"start": "06:00", "limit": "23:30"}}]},
 "kitchens": [{"id": "k", "displayName": "Kitchen",
  "ovens": [{"id": "oven", "displayName": "Oven", "minSetpointCelsius": 80, "maxSetpointCelsius": 260,
   "rackClearHeightMm": [300, 100], "shelfWidthMm": 600, "shelfDepthMm": 400}],
  "places": [{"id": "fridge", "displayName": "Fridge", "kind": "PLACE_KIND_FRIDGE", "temperature": {"celsius": [3]}}]}],
 "recipes": [{"id": "turkey", "displayName": "Roast turkey", "servingCount": 16, "safetyClass": "SAFETY_CLASS_POULTRY",
  "steps": [
   {"id": "thaw", "title": "Thaw the turkey", "kind": "STEP_KIND_THAW", "massG": 7257},
   {"id": "roast", "title": "Roast it", "kind": "STEP_KIND_OVEN", "after": [{"stepId": "thaw"}],
    "oven": {"setpointCelsius": 165, "duration": {"least": "13500s", "likely": "15300s", "most": "15300s"},
     "foodClass": "FOOD_CLASS_ROAST", "endCoreCelsius": 74, "startCoreCelsius": 4,
     "pan": {"name": "roasting tin", "widthMm": 450, "depthMm": 350, "heightMm": 250, "count": 1}}},
   {"id": "rest", "title": "Rest it", "kind": "STEP_KIND_REST", "duration": {"likely": "1200s"},
    "after": [{"stepId": "roast", "mostGap": "300s"}]},
   {"id": "carve", "title": "Carve it", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "900s"},
    "after": [{"stepId": "rest", "mostGap": "300s"}]}],
  "holding": {"kind": "HOLDING_KIND_HOT", "longest": "0s"}}],
 "events": [{"id": "feast", "displayName": "Feast", "kitchenId": "k", "workStartTime": "2026-11-20T12:00:00Z",
  "courses": [{"id": "main", "displayName": "Main", "servingTime": "2026-11-26T17:00:00-05:00"}],
  "cooks": [{"memberId": "ann"}],
  "dishes": [{"id": "turkey", "recipeId": "turkey", "courseId": "main"}]}]}
)json";

absl::Time at(int day, int hour, int minute) {
  absl::TimeZone zone;
  EXPECT_TRUE(absl::LoadTimeZone("America/New_York", &zone));
  return absl::FromCivil(absl::CivilMinute(2026, 11, day, hour, minute), zone);
}

struct Span {
  absl::Time start;
  absl::Time end;
};

Span stepOf(const v1::Plan& plan, const std::string& id) {
  for (const v1::PlannedStep& step : plan.steps())
    if (step.id() == id)
      return {absl::FromUnixSeconds(step.start_time().seconds()),
              absl::FromUnixSeconds(step.end_time().seconds())};
  ADD_FAILURE() << "no step " << id;
  return {};
}

TEST(TurkeyPlanTest, KeepsTheHoursThatThePublishedTimesGive) {
  v1::Bundle bundle;
  ASSERT_TRUE(google::protobuf::util::JsonStringToMessage(kTurkey, &bundle).ok());
  const Documents documents = documentsOf(bundle);
  const auto plan = planEvent(documents, {.seed = 1, .workLimit = 20'000});
  ASSERT_TRUE(plan.ok()) << plan.status();
  EXPECT_EQ(plan->unserved_size(), 0);
  EXPECT_EQ(plan->breaches_size(), 0);
  const Span roast = stepOf(*plan, "turkey/roast");
  const Span thaw = stepOf(*plan, "turkey/thaw");
  EXPECT_LE(stepOf(*plan, "turkey/carve").end, at(26, 17, 0));
  EXPECT_LE(roast.end, at(26, 16, 25)) << "20 min of rest and 15 of carving";
  EXPECT_LE(roast.start, at(26, 12, 10)) << "by the slow end, 255 min";
  EXPECT_GE(roast.start, at(26, 11, 50)) << "and not long before: it is best at once";
  EXPECT_LE(thaw.start, at(22, 12, 10)) << "96 h at the slow end";
  EXPECT_GE(thaw.start, at(21, 7, 22)) << "thawed at the fast end, it keeps for two days";
  EXPECT_LE(thaw.end, roast.start);
}

// Into the freezer's place on Friday evening it would be thawed too long ago.
TEST(TurkeyPlanTest, NeverThawsTooEarlyToMakeAPlanFit) {
  v1::Bundle bundle;
  ASSERT_TRUE(google::protobuf::util::JsonStringToMessage(kTurkey, &bundle).ok());
  v1::StepPin& pin = *bundle.mutable_events(0)->add_pins();
  pin.set_dish_id("turkey");
  pin.set_step_id("thaw");
  pin.mutable_start_time()->set_seconds(absl::ToUnixSeconds(at(20, 18, 0)));
  const Documents documents = documentsOf(bundle);
  const auto plan = planEvent(documents, {.seed = 1, .workLimit = 20'000});
  ASSERT_TRUE(plan.ok()) << plan.status();
  EXPECT_EQ(plan->unserved_size(), 1);
}

}  // namespace
}  // namespace suppertide::compose
