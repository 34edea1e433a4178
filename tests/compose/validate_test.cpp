#include <google/protobuf/util/json_util.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <limits>
#include <sstream>

#include "tests/compose/validate_mistakes.h"

namespace suppertide::compose {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

TEST(ValidateTest, TheSmallDinnerIsValid) {
  const Violations found = validate(smallDinner(), true);
  EXPECT_THAT(found, IsEmpty()) << told(found);
}

TEST(ValidateTest, EachDocumentOfTheSmallDinnerIsValidAlone) {
  const v1::Bundle bundle = smallDinner();
  EXPECT_THAT(validate(bundle.household()), IsEmpty());
  EXPECT_THAT(validate(bundle.kitchens(0)), IsEmpty());
  EXPECT_THAT(validate(bundle.starters(0)), IsEmpty());
  for (const auto& recipe : bundle.recipes()) EXPECT_THAT(validate(recipe), IsEmpty());
  EXPECT_THAT(validate(bundle.events(0)), IsEmpty());
}

TEST(ValidateTest, ABundleNeedsAHousehold) {
  v1::Bundle bundle = smallDinner();
  bundle.clear_household();
  bundle.clear_events();
  EXPECT_THAT(pathsOf(validate(bundle, false)), ElementsAre("household"));
}

TEST(ValidateTest, TellsMistakesOfAHousehold) {
  expectEach({
      {"household.id", [](auto& b) { household(b).set_id("not an id"); }},
      {"household.displayName", [](auto& b) { household(b).clear_display_name(); }},
      {"household.displayName", [](auto& b) { household(b).set_display_name(std::string(101, 'x')); }},
      {"household.displayName", [](auto& b) { household(b).set_display_name("\xC3\x28"); }},
      {"household.timeZone", [](auto& b) { household(b).set_time_zone("Europe/Atlantis"); }},
      {"household.timeZone", [](auto& b) { household(b).clear_time_zone(); }},
      {"household.timeZone", [](auto& b) { household(b).set_time_zone("localtime"); }},
      {"household.safetyRules",
       [](auto& b) { household(b).set_safety_rules(static_cast<v1::SafetyRules>(9)); }},
      {"household.temperatureUnit",
       [](auto& b) { household(b).set_temperature_unit(static_cast<v1::TemperatureUnit>(9)); }},
      {"household.members[2].id",
       [](auto& b) {
         *household(b).add_members() = household(b).members(1);
         household(b).mutable_members(2)->set_id("a b");
       }},
      {"household.members[2].id", [](auto& b) { *household(b).add_members() = household(b).members(1); }},
      {"household.members[0].displayName", [](auto& b) { ana(b).set_display_name(std::string(61, 'x')); }},
      {"household.members", [](auto& b) { ana(b).set_role(v1::ROLE_COOK); }},
      {"household.members",
       [](auto& b) {
         for (int i = 0; i < 50; ++i) *household(b).add_members() = household(b).members(1);
       }},
      {"household.members[0].skills[1]", [](auto& b) { ana(b).add_skills("shaping"); }},
      {"household.members[0].skills[1]", [](auto& b) { ana(b).add_skills(" "); }},
      {"household.members[0].skills",
       [](auto& b) {
         for (int i = 0; i < 20; ++i) ana(b).add_skills(std::to_string(i));
       }},
      {"household.members[0].awake.start", [](auto& b) { ana(b).mutable_awake()->set_start("7:00"); }},
      {"household.members[0].awake.start", [](auto& b) { ana(b).mutable_awake()->set_start("24:00"); }},
      {"household.members[0].awake.limit", [](auto& b) { ana(b).mutable_awake()->set_limit("24:01"); }},
      {"household.members[0].awake.limit", [](auto& b) { ana(b).mutable_awake()->set_limit("06:30"); }},
      {"household.members[0].social.start", [](auto& b) { ana(b).mutable_social()->set_limit("20:00"); }},
      {"household.members[0].share", [](auto& b) { ana(b).set_share(11); }},
  });
}

TEST(ValidateTest, TakesTheOddButAllowed) {
  v1::Bundle bundle = smallDinner();
  household(bundle).clear_id();
  household(bundle).set_display_name(std::string(50, 'x') +
                                     "éééééééééééééééééééééééééééééééééééééééééééééééééé");
  ana(bundle).mutable_awake()->set_start("18:00");
  ana(bundle).mutable_awake()->set_limit("02:00");
  ana(bundle).set_share(0);
  household(bundle).mutable_members(1)->mutable_awake()->set_start("00:00");
  household(bundle).mutable_members(1)->mutable_awake()->set_limit("24:00");
  starter(bundle).set_hydration_percent(0);
  oven(bundle).set_setpoint_step_celsius(0);
  EXPECT_THAT(validate(bundle, true), IsEmpty()) << told(validate(bundle, true));
}

TEST(ValidateTest, TellsMistakesOfAKitchen) {
  const double notANumber = std::numeric_limits<double>::quiet_NaN();
  expectEach({
      {"kitchens[0].displayName", [](auto& b) { kitchen(b).set_display_name(" "); }},
      {"kitchens[0].burnerCount", [](auto& b) { kitchen(b).set_burner_count(13); }},
      {"kitchens[0].ovens",
       [](auto& b) {
         for (int i = 0; i < 8; ++i) *kitchen(b).add_ovens() = oven(b);
       }},
      {"kitchens[0].ovens[1].id", [](auto& b) { *kitchen(b).add_ovens() = oven(b); }},
      {"kitchens[0].ovens[0].displayName", [](auto& b) { oven(b).clear_display_name(); }},
      {"kitchens[0].ovens[0].minSetpointCelsius", [](auto& b) { oven(b).set_min_setpoint_celsius(39); }},
      {"kitchens[0].ovens[0].maxSetpointCelsius", [](auto& b) { oven(b).set_max_setpoint_celsius(351); }},
      {"kitchens[0].ovens[1].maxSetpointCelsius",
       [](auto& b) {
         v1::Oven& small = *kitchen(b).add_ovens();
         small = oven(b);
         small.set_id("small");
         small.set_min_setpoint_celsius(200);
         small.set_max_setpoint_celsius(100);
       }},
      {"kitchens[0].ovens[0].setpointStepCelsius", [](auto& b) { oven(b).set_setpoint_step_celsius(51); }},
      {"kitchens[0].ovens[0].rackClearHeightMm", [](auto& b) { oven(b).clear_rack_clear_height_mm(); }},
      {"kitchens[0].ovens[0].rackClearHeightMm[1]", [](auto& b) { oven(b).set_rack_clear_height_mm(1, 0); }},
      {"kitchens[0].ovens[0].shelfWidthMm", [](auto& b) { oven(b).clear_shelf_width_mm(); }},
      {"kitchens[0].ovens[0].shelfDepthMm", [](auto& b) { oven(b).set_shelf_depth_mm(-1); }},
      {"kitchens[0].ovens[0].heatCurve.heating[1].after",
       [](auto& b) {
         for (int i = 0; i < 2; ++i) {
           auto& reading = *oven(b).mutable_heat_curve()->add_heating();
           reading.mutable_after()->set_seconds(300);
           reading.set_celsius(120);
         }
       }},
      {"kitchens[0].ovens[0].stoneSoakDuration",
       [](auto& b) { oven(b).mutable_stone_soak_duration()->set_seconds(90); }},
      {"kitchens[0].equipment[0].count", [](auto& b) { kitchen(b).mutable_equipment(0)->set_count(101); }},
      {"kitchens[0].equipment[1].id",
       [](auto& b) {
         kitchen(b).add_equipment()->set_id("large");
         kitchen(b).mutable_equipment(1)->set_count(1);
       }},
      {"kitchens[0].places[3].kind",
       [](auto& b) {
         *kitchen(b).add_places() = kitchen(b).places(0);
         kitchen(b).mutable_places(3)->set_id("bench");
         kitchen(b).mutable_places(3)->clear_kind();
       }},
      {"kitchens[0].places[0].temperature.celsius",
       [](auto& b) { kitchen(b).mutable_places(0)->clear_temperature(); }},
      {"kitchens[0].places[0].temperature.celsius",
       [](auto& b) { kitchen(b).mutable_places(0)->mutable_temperature()->add_celsius(20); }},
      {"kitchens[0].places[0].temperature.celsius[0]",
       [](auto& b) { kitchen(b).mutable_places(0)->mutable_temperature()->set_celsius(0, 61); }},
      {"kitchens[0].places[0].temperature.celsius[0]",
       [=](auto& b) { kitchen(b).mutable_places(0)->mutable_temperature()->set_celsius(0, notANumber); }},
      {"kitchens[0].places[2].volumeL", [](auto& b) { kitchen(b).mutable_places(2)->set_volume_l(0); }},
      {"kitchens[0].places[1].ovenId", [](auto& b) { kitchen(b).mutable_places(1)->set_oven_id("other"); }},
      {"kitchens[0].places[1].ovenId", [](auto& b) { kitchen(b).mutable_places(1)->clear_oven_id(); }},
      {"kitchens[0].places[0].ovenId", [](auto& b) { kitchen(b).mutable_places(0)->set_oven_id("large"); }},
  });
}

TEST(ValidateTest, TellsMistakesOfAStarter) {
  const auto seen = [](v1::Bundle& b) -> v1::StarterObservation& {
    auto& one = *starter(b).add_observations();
    one.mutable_feed_time()->set_seconds(1'800'000'000 + 100'000 * starter(b).observations_size());
    one.mutable_observe_time()->set_seconds(one.feed_time().seconds() + 20'000);
    one.set_flour_per_starter(2);
    one.set_water_per_starter(2);
    one.set_rise(2.2);
    one.set_celsius(22);
    return one;
  };
  expectEach({
      {"starters[0].displayName", [](auto& b) { starter(b).clear_display_name(); }},
      {"starters[0].hydrationPercent", [](auto& b) { starter(b).set_hydration_percent(39); }},
      {"starters[0].wholeGrainPercent", [](auto& b) { starter(b).set_whole_grain_percent(101); }},
      {"starters[0].vigour", [](auto& b) { starter(b).set_vigour(0.3); }},
      {"starters[0].vigourSpread", [](auto& b) { starter(b).set_vigour_spread(1.5); }},
      {"starters[0].condition",
       [](auto& b) { starter(b).set_condition(static_cast<v1::StarterCondition>(7)); }},
      {"starters[0].observations[0].rise", [&](auto& b) { seen(b).set_rise(0.9); }},
      {"starters[0].observations[0].feedTime", [&](auto& b) { seen(b).clear_feed_time(); }},
      {"starters[0].observations[0].observeTime",
       [&](auto& b) {
         v1::StarterObservation& one = seen(b);
         *one.mutable_observe_time() = one.feed_time();
       }},
      {"starters[0].observations[0].flourPerStarter", [&](auto& b) { seen(b).set_flour_per_starter(0); }},
      {"starters[0].observations[1].observeTime",
       [&](auto& b) {
         seen(b);
         seen(b);
         starter(b).mutable_observations()->SwapElements(0, 1);
       }},
      {"starters[0].observations",
       [&](auto& b) {
         for (int i = 0; i < 501; ++i) seen(b);
       }},
      {"starters[1].id", [](auto& b) { *b.add_starters() = starter(b); }},
  });
}

TEST(ValidateTest, OnlyABundleToPlanNeedsExactlyOneEvent) {
  v1::Bundle none = smallDinner();
  none.clear_events();
  EXPECT_THAT(pathsOf(validate(none, true)), ElementsAre("events"));
  EXPECT_THAT(validate(none, false), IsEmpty());
  v1::Bundle two = smallDinner();
  *two.add_events() = two.events(0);
  two.mutable_events(1)->set_id("second");
  EXPECT_THAT(pathsOf(validate(two, true)), ElementsAre("events"));
  EXPECT_THAT(validate(two, false), IsEmpty());
}

TEST(ValidateTest, AllDishesTogetherHaveAtMost400Steps) {
  v1::Bundle bundle = smallDinner();
  const auto add = [&](const std::string& id) {
    v1::Dish& dish = *event(bundle).add_dishes();
    dish = event(bundle).dishes(0);
    dish.set_id(id);
  };
  // 18 steps, and 9 for each further making of the rolls.
  for (int i = 0; i < 42; ++i) add("more" + std::to_string(i));
  EXPECT_THAT(validate(bundle, true), IsEmpty());
  add("last");
  EXPECT_THAT(pathsOf(validate(bundle, true)), ElementsAre("events[0].dishes"));
}

TEST(ValidateTest, ListsSeveralMistakesAtOnce) {
  v1::Bundle bundle = smallDinner();
  household(bundle).set_time_zone("Nowhere");
  oven(bundle).set_shelf_width_mm(0);
  bake(bundle).mutable_pan()->set_width_mm(5);
  step(bundle, 0).set_burner_count(5);
  event(bundle).mutable_dishes(2)->set_recipe_id("other");
  EXPECT_THAT(pathsOf(validate(bundle, true)),
              UnorderedElementsAre("household.timeZone", "kitchens[0].ovens[0].shelfWidthMm",
                                   "recipes[0].steps[7].oven.pan.widthMm", "recipes[0].steps[0].burnerCount",
                                   "recipes[0].steps[0].burnerCount", "events[0].dishes[2].recipeId"));
}

TEST(ValidateTest, AMistakeThatTwoEventsRunIntoIsToldOnce) {
  v1::Bundle bundle = smallDinner();
  *bundle.add_events() = bundle.events(0);
  bundle.mutable_events(1)->set_id("second");
  step(bundle, 3).add_place_kinds(v1::PLACE_KIND_PROOFER);
  EXPECT_THAT(pathsOf(validate(bundle, false)), ElementsAre("recipes[0].steps[3].placeKinds"));
}

TEST(ValidateTest, SaysWhatStoodThereAndWhatIsAllowed) {
  v1::Bundle bundle = smallDinner();
  bake(bundle).set_setpoint_celsius(400);
  rolls(bundle).set_display_name(std::string(300, 'x'));
  const Violations found = validate(rolls(bundle));
  ASSERT_EQ(found.size(), 2u) << told(found);
  EXPECT_LT(found[0].value().size(), 70u);
  EXPECT_EQ(found[0].description(), "must have at most 100 characters");
  EXPECT_EQ(found[1].field_path(), "steps[7].oven.setpointCelsius");
  EXPECT_EQ(found[1].value(), "400");
  EXPECT_EQ(found[1].description(), "must be between 40 and 350 °C");
}

TEST(ValidateTest, BadTextIsToldAsGoodText) {
  v1::Bundle bundle = smallDinner();
  for (const char* text : {"a\xFFz", "\xC0\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE2\x82"}) {
    rolls(bundle).set_note(text);
    const Violations found = validate(rolls(bundle));
    ASSERT_THAT(pathsOf(found), ElementsAre("note"));
    for (const char letter : found[0].value()) EXPECT_LT(static_cast<unsigned char>(letter), 0x80);
  }
}

TEST(ValidateTest, AnEmptyBundleIsToldNotFatal) {
  EXPECT_THAT(pathsOf(validate(v1::Bundle{}, true)), ElementsAre("household", "events"));
  EXPECT_THAT(pathsOf(validate(v1::Event{})), Contains("courses"));
  EXPECT_THAT(pathsOf(validate(v1::Recipe{})), Contains("steps"));
}

TEST(ValidateTest, TheSampleFeastIsValid) {
  const std::filesystem::path path = std::filesystem::path(SUPPERTIDE_SOURCE_DIR) / "demo" / "feast.json";
  if (!std::filesystem::exists(path)) GTEST_SKIP() << path << " is not there";
  std::ifstream file(path);
  std::stringstream text;
  text << file.rdbuf();
  v1::Bundle bundle;
  const auto read = google::protobuf::util::JsonStringToMessage(text.str(), &bundle);
  ASSERT_TRUE(read.ok()) << read.ToString();
  const Violations found = validate(bundle, true);
  EXPECT_THAT(found, IsEmpty()) << told(found);
}

}  // namespace
}  // namespace suppertide::compose
