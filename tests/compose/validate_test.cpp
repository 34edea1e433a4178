#include "server/compose/validate.h"

#include <gmock/gmock.h>
#include <google/protobuf/util/json_util.h>
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <functional>
#include <limits>
#include <sstream>

#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

std::vector<std::string> pathsOf(const Violations& violations) {
  std::vector<std::string> paths;
  for (const auto& violation : violations) paths.push_back(violation.field_path());
  return paths;
}

std::string told(const Violations& violations) {
  std::string text;
  for (const auto& violation : violations) text += violation.ShortDebugString() + "\n";
  return text;
}

struct Mistake {
  const char* path;
  std::function<void(v1::Bundle&)> make;
};

// Each mistake alone is told at its path, and nowhere else.
void expectEach(const std::vector<Mistake>& mistakes) {
  for (const Mistake& mistake : mistakes) {
    v1::Bundle bundle = smallDinner();
    mistake.make(bundle);
    const Violations found = validate(bundle, true);
    EXPECT_THAT(pathsOf(found), ElementsAre(mistake.path)) << told(found);
    for (const auto& violation : found) EXPECT_FALSE(violation.description().empty());
  }
}

v1::Household& household(v1::Bundle& b) {
  return *b.mutable_household();
}
v1::Member& ana(v1::Bundle& b) {
  return *household(b).mutable_members(0);
}
v1::Kitchen& kitchen(v1::Bundle& b) {
  return *b.mutable_kitchens(0);
}
v1::Oven& oven(v1::Bundle& b) {
  return *kitchen(b).mutable_ovens(0);
}
v1::Starter& starter(v1::Bundle& b) {
  return *b.mutable_starters(0);
}
v1::Recipe& rolls(v1::Bundle& b) {
  return *b.mutable_recipes(0);
}
v1::BreadFormula& formula(v1::Bundle& b) {
  return *rolls(b).mutable_formula();
}
v1::Step& step(v1::Bundle& b, int i) {
  return *rolls(b).mutable_steps(i);
}
v1::OvenNeed& bake(v1::Bundle& b) {
  return *step(b, 7).mutable_oven();
}
v1::FermentNeed& bulk(v1::Bundle& b) {
  return *step(b, 3).mutable_ferment();
}
v1::Event& event(v1::Bundle& b) {
  return *b.mutable_events(0);
}

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

TEST(ValidateTest, TellsMistakesOfARecipe) {
  expectEach({
      {"recipes[3].id", [](auto& b) { *b.add_recipes() = rolls(b); }},
      {"recipes[0].displayName", [](auto& b) { rolls(b).clear_display_name(); }},
      {"recipes[0].servingCount", [](auto& b) { rolls(b).set_serving_count(0); }},
      {"recipes[0].servingCount", [](auto& b) { rolls(b).set_serving_count(201); }},
      {"recipes[0].ingredients[0].name", [](auto& b) { rolls(b).add_ingredients()->set_mass_g(5); }},
      {"recipes[0].ingredients[0].massG",
       [](auto& b) {
         rolls(b).add_ingredients()->set_name("seeds");
         rolls(b).mutable_ingredients(0)->set_mass_g(0);
       }},
      {"recipes[0].ingredients",
       [](auto& b) {
         for (int i = 0; i < 81; ++i) rolls(b).add_ingredients()->set_name("seeds");
       }},
      {"recipes[0].note", [](auto& b) { rolls(b).set_note(std::string(2001, 'x')); }},
      {"recipes[0].steps", [](auto& b) { rolls(b).clear_steps(); }},
      {"recipes[0].steps",
       [](auto& b) {
         while (rolls(b).steps_size() < 61) *rolls(b).add_steps() = step(b, 8);
       }},
      {"recipes[0].holding.bestUntil",
       [](auto& b) { rolls(b).mutable_holding()->mutable_best_until()->set_seconds(7200); }},
      {"recipes[0].holding.bestFrom",
       [](auto& b) { rolls(b).mutable_holding()->mutable_best_from()->set_seconds(1200); }},
      {"recipes[0].holding.longest",
       [](auto& b) { rolls(b).mutable_holding()->mutable_longest()->set_seconds(3601); }},
      {"recipes[0].holding.kind", [](auto& b) { rolls(b).mutable_holding()->clear_kind(); }},
  });
}

TEST(ValidateTest, TellsMistakesOfSteps) {
  expectEach({
      {"recipes[0].steps[0].id", [](auto& b) { step(b, 0).set_id("a/b"); }},
      {"recipes[0].steps[8].id", [](auto& b) { step(b, 8).set_id("feed"); }},
      {"recipes[0].steps[0].title", [](auto& b) { step(b, 0).clear_title(); }},
      {"recipes[0].steps[0].kind", [](auto& b) { step(b, 0).clear_kind(); }},
      {"recipes[0].steps[0].duration.likely", [](auto& b) { step(b, 0).clear_duration(); }},
      {"recipes[0].steps[0].duration.likely",
       [](auto& b) { step(b, 0).mutable_duration()->mutable_likely()->set_seconds(601); }},
      {"recipes[0].steps[0].duration.likely",
       [](auto& b) { step(b, 0).mutable_duration()->mutable_likely()->set_nanos(1); }},
      {"recipes[0].steps[0].duration.likely",
       [](auto& b) { step(b, 0).mutable_duration()->mutable_likely()->set_seconds(-600); }},
      {"recipes[0].steps[0].duration.least",
       [](auto& b) { step(b, 0).mutable_duration()->mutable_least()->set_seconds(660); }},
      {"recipes[0].steps[0].duration.most",
       [](auto& b) { step(b, 0).mutable_duration()->mutable_most()->set_seconds(540); }},
      {"recipes[0].steps[0].longestDuration",
       [](auto& b) { step(b, 0).mutable_longest_duration()->set_seconds(1200); }},
      {"recipes[0].steps[8].longestDuration",
       [](auto& b) { step(b, 8).mutable_longest_duration()->set_seconds(300); }},
      {"recipes[0].steps[0].attentionPercent", [](auto& b) { step(b, 0).set_attention_percent(101); }},
      {"recipes[0].steps[0].burnerCount", [](auto& b) { step(b, 0).set_burner_count(-1); }},
      {"recipes[0].steps[0].volumeL", [](auto& b) { step(b, 0).set_volume_l(-1); }},
      {"recipes[0].steps[0].massG", [](auto& b) { step(b, 0).set_mass_g(INFINITY); }},
      {"recipes[0].steps[0].instructions",
       [](auto& b) { step(b, 0).set_instructions(std::string(2001, 'x')); }},
      {"recipes[0].steps[2].equipment[1].equipmentId",
       [](auto& b) { *step(b, 2).add_equipment() = step(b, 2).equipment(0); }},
      {"recipes[0].steps[3].placeKinds[1]",
       [](auto& b) {
         step(b, 3).add_place_kinds(v1::PLACE_KIND_COUNTER);
         step(b, 3).add_place_kinds(v1::PLACE_KIND_UNSPECIFIED);
       }},
      {"recipes[0].steps[3].placeKinds[1]",
       [](auto& b) {
         step(b, 3).add_place_kinds(v1::PLACE_KIND_COUNTER);
         step(b, 3).add_place_kinds(v1::PLACE_KIND_COUNTER);
       }},
      {"recipes[0].steps[0].cautions[0]",
       [](auto& b) { step(b, 0).add_cautions(static_cast<v1::Caution>(99)); }},
      {"recipes[0].steps[0].latestBeforeServing",
       [](auto& b) {
         step(b, 0).mutable_earliest_before_serving()->set_seconds(3600);
         step(b, 0).mutable_latest_before_serving()->set_seconds(7200);
       }},
      {"recipes[0].steps[7].oven", [](auto& b) { step(b, 7).clear_oven(); }},
      {"recipes[0].steps[8].oven", [](auto& b) { *step(b, 8).mutable_oven() = bake(b); }},
      {"recipes[0].steps[3].ferment", [](auto& b) { step(b, 3).clear_ferment(); }},
      {"recipes[0].steps[8].ferment", [](auto& b) { *step(b, 8).mutable_ferment() = bulk(b); }},
      {"recipes[1].steps[1].kind",
       [](auto& b) {
         b.mutable_recipes(1)->mutable_steps(1)->set_kind(v1::STEP_KIND_FERMENT);
         b.mutable_recipes(1)->mutable_steps(1)->clear_longest_duration();
         b.mutable_recipes(1)->mutable_steps(1)->mutable_ferment()->set_stage(v1::FERMENT_STAGE_BULK);
       }},
      {"recipes[0].steps[1].ferment.stage",
       [](auto& b) {
         formula(b).clear_levain();
         auto& yeast = *formula(b).add_lines();
         yeast.set_name("yeast");
         yeast.set_role(v1::FORMULA_ROLE_INSTANT_YEAST);
         yeast.set_percent(1);
       }},
  });
}

TEST(ValidateTest, TellsMistakesOfOrders) {
  expectEach({
      {"recipes[0].steps[4].after[0].stepId",
       [](auto& b) { step(b, 4).mutable_after(0)->set_step_id("nowhere"); }},
      {"recipes[0].steps[4].after[0].mostGap",
       [](auto& b) { step(b, 4).mutable_after(0)->mutable_most_gap()->set_seconds(1800 + 240); }},
      {"recipes[0].steps[4].after[0].leastGap",
       [](auto& b) { step(b, 4).mutable_after(0)->mutable_least_gap()->set_seconds(-60); }},
      {"recipes[0].steps[4].after[1].stepId", [](auto& b) { *step(b, 4).add_after() = step(b, 4).after(0); }},
      {"recipes[0].steps[4].startsFree", [](auto& b) { step(b, 4).set_starts_free(true); }},
      {"recipes[0].steps[4].after", [](auto& b) { step(b, 4).mutable_after(0)->set_step_id("fold"); }},
      // Only the order "after the step listed before" closes this circle: mix, bulk, fold.
      {"recipes[0].steps[2].after",
       [](auto& b) {
         step(b, 2).add_after()->set_step_id("levain");
         step(b, 2).add_after()->set_step_id("bulk");
       }},
      {"recipes[0].steps[0].after", [](auto& b) { step(b, 0).add_after()->set_step_id("cool"); }},
  });
}

TEST(ValidateTest, TellsEveryCircleOnceAndByNames) {
  v1::Bundle bundle = smallDinner();
  step(bundle, 0).add_after()->set_step_id("levain");
  step(bundle, 5).mutable_after(0)->set_step_id("proof");
  const Violations found = validate(rolls(bundle));
  EXPECT_THAT(pathsOf(found), UnorderedElementsAre("steps[0].after", "steps[5].after"));
  EXPECT_EQ(found.front().value(), "feed after levain after feed");
}

TEST(ValidateTest, TellsMistakesOfBakes) {
  expectEach({
      {"recipes[0].steps[7].oven.setpointCelsius", [](auto& b) { bake(b).set_setpoint_celsius(251); }},
      {"recipes[0].steps[7].oven.minSetpointCelsius", [](auto& b) { bake(b).set_min_setpoint_celsius(210); }},
      {"recipes[0].steps[7].oven.maxSetpointCelsius", [](auto& b) { bake(b).set_max_setpoint_celsius(200); }},
      {"recipes[0].steps[7].oven.maxSetpointCelsius", [](auto& b) { bake(b).set_max_setpoint_celsius(351); }},
      {"recipes[0].steps[7].oven.duration.most",
       [](auto& b) { bake(b).mutable_duration()->mutable_most()->set_seconds(24 * 3600 + 60); }},
      {"recipes[2].steps[2].oven.duration.likely",
       [](auto& b) { b.mutable_recipes(2)->mutable_steps(2)->mutable_oven()->clear_duration(); }},
      {"recipes[0].steps[7].oven.endCoreCelsius", [](auto& b) { bake(b).set_end_core_celsius(205); }},
      {"recipes[0].steps[7].oven.endCoreCelsius", [](auto& b) { bake(b).set_end_core_celsius(27); }},
      {"recipes[0].steps[7].oven.endCoreCelsius", [](auto& b) { bake(b).clear_end_core_celsius(); }},
      {"recipes[0].steps[7].oven.startCoreCelsius", [](auto& b) { bake(b).clear_start_core_celsius(); }},
      {"recipes[0].steps[7].oven.thicknessMm", [](auto& b) { bake(b).set_thickness_mm(-3); }},
      {"recipes[0].steps[7].oven.pan.widthMm", [](auto& b) { bake(b).mutable_pan()->set_width_mm(1001); }},
      {"recipes[0].steps[7].oven.pan.depthMm", [](auto& b) { bake(b).mutable_pan()->set_depth_mm(29); }},
      {"recipes[0].steps[7].oven.pan.heightMm", [](auto& b) { bake(b).mutable_pan()->clear_height_mm(); }},
      {"recipes[0].steps[7].oven.laterPhases[0].duration",
       [](auto& b) { bake(b).add_later_phases()->set_setpoint_celsius(190); }},
      {"recipes[0].steps[7].oven.laterPhases[0].setpointCelsius",
       [](auto& b) {
         bake(b).add_later_phases()->set_setpoint_celsius(35);
         bake(b).mutable_later_phases(0)->mutable_duration()->set_seconds(600);
         event(b).mutable_dishes()->DeleteSubrange(0, 1);
       }},
      {"recipes[0].steps[3].ferment.stage", [](auto& b) { bulk(b).clear_stage(); }},
      {"recipes[0].steps[3].ferment.lowRise", [](auto& b) { bulk(b).set_low_rise(0.5); }},
      {"recipes[0].steps[3].ferment.wantedRise",
       [](auto& b) {
         bulk(b).set_low_rise(2);
         bulk(b).set_wanted_rise(1.8);
       }},
      {"recipes[0].steps[3].ferment.highRise",
       [](auto& b) {
         bulk(b).set_low_rise(2);
         bulk(b).set_high_rise(1.8);
       }},
      {"recipes[0].steps[3].ferment.mostRetard",
       [](auto& b) { bulk(b).mutable_most_retard()->set_seconds(7 * 3600); }},
      {"recipes[0].steps[3].ferment.leastRetard",
       [](auto& b) { bulk(b).mutable_least_retard()->set_seconds(25 * 3600); }},
  });
}

TEST(ValidateTest, TellsMistakesOfFormulas) {
  const auto line = [](v1::Bundle& b, int i) -> v1::FormulaLine& { return *formula(b).mutable_lines(i); };
  const auto levain = [](v1::Bundle& b) -> v1::LevainNeed& { return *formula(b).mutable_levain(); };
  expectEach({
      {"recipes[0].formula.doughClass", [](auto& b) { formula(b).clear_dough_class(); }},
      {"recipes[0].formula.pieceCount", [](auto& b) { formula(b).set_piece_count(0); }},
      {"recipes[0].formula.pieceMassG", [](auto& b) { formula(b).set_piece_mass_g(19); }},
      {"recipes[0].formula.doughCelsius", [](auto& b) { formula(b).set_dough_celsius(33); }},
      {"recipes[0].formula.handlingLossPercent", [](auto& b) { formula(b).set_handling_loss_percent(11); }},
      {"recipes[0].formula.lines", [&](auto& b) { line(b, 0).set_percent(101); }},
      {"recipes[0].formula.lines", [&](auto& b) { line(b, 1).set_percent(120); }},
      {"recipes[0].formula.lines", [&](auto& b) { line(b, 5).set_percent(5.1); }},
      {"recipes[0].formula.lines", [](auto& b) { formula(b).mutable_lines()->DeleteSubrange(1, 5); }},
      {"recipes[0].formula.lines[3].percent", [&](auto& b) { line(b, 3).set_percent(0); }},
      {"recipes[0].formula.lines[3].percent", [&](auto& b) { line(b, 3).set_percent(301); }},
      {"recipes[0].formula.lines[3].role", [&](auto& b) { line(b, 3).clear_role(); }},
      {"recipes[0].formula.lines[3].name", [&](auto& b) { line(b, 3).clear_name(); }},
      {"recipes[0].formula.lines[0].wholeGrainPercent",
       [&](auto& b) { line(b, 0).set_whole_grain_percent(101); }},
      {"recipes[0].formula.lines[1].wholeGrainPercent",
       [&](auto& b) { line(b, 1).set_whole_grain_percent(10); }},
      {"recipes[0].formula.levain.doughSharePercent", [&](auto& b) { levain(b).set_dough_share_percent(0); }},
      {"recipes[0].formula.levain.doughSharePercent",
       [&](auto& b) { levain(b).set_dough_share_percent(61); }},
      // 60 of 180 parts of dough at 200 % would need 80 parts of milk of the 58.
      {"recipes[0].formula.levain.doughSharePercent",
       [&](auto& b) {
         levain(b).set_dough_share_percent(60);
         levain(b).set_hydration_percent(200);
       }},
      {"recipes[0].formula.levain.hydrationPercent", [&](auto& b) { levain(b).set_hydration_percent(30); }},
      {"recipes[0].formula.levain.starterId", [&](auto& b) { levain(b).clear_starter_id(); }},
      {"recipes[0].formula.levain.starterId", [&](auto& b) { levain(b).set_starter_id("other"); }},
      {"recipes[0].formula.levain.flourPerStarter[0]", [&](auto& b) { levain(b).add_flour_per_starter(0); }},
      {"recipes[0].formula",
       [](auto& b) {
         formula(b).clear_levain();
         step(b, 1).mutable_ferment()->set_stage(v1::FERMENT_STAGE_BULK);
       }},
  });
}

TEST(ValidateTest, TellsMistakesOfAnEvent) {
  const auto course = [](v1::Bundle& b) -> v1::Course& { return *event(b).mutable_courses(0); };
  const auto dish = [](v1::Bundle& b) -> v1::Dish& { return *event(b).mutable_dishes(0); };
  const auto guest = [](v1::Bundle& b) -> v1::Guest& { return *event(b).mutable_guests(0); };
  constexpr int kDay = 24 * 3600;
  expectEach({
      {"events[0].displayName", [](auto& b) { event(b).clear_display_name(); }},
      {"events[0].timeZone", [](auto& b) { event(b).set_time_zone("Mars/Base"); }},
      {"events[0].courses[0].servingTime", [&](auto& b) { course(b).clear_serving_time(); }},
      {"events[0].courses[0].servingTime",
       [&](auto& b) {
         course(b).mutable_serving_time()->set_seconds(event(b).work_start_time().seconds() + 10 * kDay + 1);
       }},
      {"events[0].courses[0].servingTime",
       [&](auto& b) { *course(b).mutable_serving_time() = event(b).work_start_time(); }},
      {"events[0].courses[0].servingTime",
       [&](auto& b) { course(b).mutable_serving_time()->set_seconds(INT64_MAX); }},
      {"events[0].courses[1].servingTime",
       [&](auto& b) {
         *event(b).add_courses() = course(b);
         event(b).mutable_courses(1)->set_id("dessert");
         event(b).mutable_courses(1)->mutable_serving_time()->set_seconds(course(b).serving_time().seconds() -
                                                                          60);
       }},
      // Without its own start, work starts four days before the first course.
      {"events[0].courses[1].servingTime",
       [&](auto& b) {
         event(b).clear_work_start_time();
         *event(b).add_courses() = course(b);
         event(b).mutable_courses(1)->set_id("dessert");
         event(b).mutable_courses(1)->mutable_serving_time()->set_seconds(course(b).serving_time().seconds() +
                                                                          6 * kDay + 60);
       }},
      {"events[0].courses[1].id", [&](auto& b) { *event(b).add_courses() = course(b); }},
      {"events[0].courses[0].lateLimit", [&](auto& b) { course(b).mutable_late_limit()->set_seconds(-60); }},
      {"events[0].guests[1].id", [&](auto& b) { event(b).mutable_guests(1)->set_id("g1"); }},
      {"events[0].guests[0].portion", [&](auto& b) { guest(b).set_portion(0.2); }},
      {"events[0].guests[0].needs[0].severity", [&](auto& b) { guest(b).add_needs()->set_name("gluten"); }},
      {"events[0].guests[0].needs[0].name",
       [&](auto& b) { guest(b).add_needs()->set_severity(v1::NEED_SEVERITY_AVOID); }},
      {"events[0].guests",
       [&](auto& b) {
         for (int i = 0; i < 200; ++i) *event(b).add_guests() = guest(b);
       }},
      {"events[0].dishes", [](auto& b) { event(b).clear_dishes(); }},
      {"events[0].dishes[1].id", [](auto& b) { event(b).mutable_dishes(1)->set_id("rolls"); }},
      {"events[0].dishes[0].courseId", [&](auto& b) { dish(b).set_course_id("dessert"); }},
      {"events[0].dishes[0].servingCount", [&](auto& b) { dish(b).set_serving_count(-1); }},
      {"events[0].dishes[0].cookMemberId",
       [](auto& b) { event(b).mutable_dishes(0)->set_cook_member_id("marta"); }},
      {"events[0].cooks[2].memberId", [](auto& b) { *event(b).add_cooks() = event(b).cooks(0); }},
      {"events[0].cooks[0].available[0].limit",
       [](auto& b) {
         auto& span = *event(b).mutable_cooks(0)->add_available();
         span.mutable_start()->set_seconds(1'804'000'000);
         span.mutable_limit()->set_seconds(1'804'000'000);
       }},
      {"events[0].unavailable[0].when", [](auto& b) { event(b).add_unavailable()->set_thing_id("mixer"); }},
  });
}

TEST(ValidateTest, TellsReferencesThatLeadNowhere) {
  const auto pin = [](v1::Bundle& b, const char* dish, const char* pinned) -> v1::StepPin& {
    auto& one = *event(b).add_pins();
    one.set_dish_id(dish);
    one.set_step_id(pinned);
    return one;
  };
  const auto away = [](v1::Bundle& b) -> v1::Unavailable& {
    auto& one = *event(b).add_unavailable();
    one.mutable_when()->mutable_start()->set_seconds(1'804'000'000);
    one.mutable_when()->mutable_limit()->set_seconds(1'804'003'600);
    return one;
  };
  expectEach({
      {"events[0].kitchenId", [](auto& b) { event(b).set_kitchen_id("other"); }},
      {"events[0].dishes[1].recipeId", [](auto& b) { event(b).mutable_dishes(1)->set_recipe_id("other"); }},
      {"events[0].cooks[2].memberId", [](auto& b) { event(b).add_cooks()->set_member_id("marta"); }},
      {"events[0].cooks[1].memberId",
       [](auto& b) { household(b).mutable_members(1)->set_role(v1::ROLE_READER); }},
      {"recipes[0].steps[2].equipment[0].equipmentId", [](auto& b) { kitchen(b).clear_equipment(); }},
      {"recipes[0].steps[2].equipment[0].count",
       [](auto& b) { step(b, 2).mutable_equipment(0)->set_count(2); }},
      {"recipes[0].steps[0].burnerCount",
       [](auto& b) {
         kitchen(b).set_burner_count(1);
         step(b, 0).set_burner_count(2);
       }},
      {"recipes[0].steps[0].burnerCount",
       [](auto& b) {
         kitchen(b).set_burner_count(0);
         step(b, 0).set_kind(v1::STEP_KIND_BURNER);
       }},
      {"recipes[0].steps[7].oven.setpointCelsius", [](auto& b) { oven(b).set_max_setpoint_celsius(204); }},
      {"recipes[0].steps[7].oven.setpointCelsius",
       [](auto& b) {
         bake(b).add_later_phases()->set_setpoint_celsius(45);
         bake(b).mutable_later_phases(0)->mutable_duration()->set_seconds(600);
       }},
      {"recipes[0].steps[7].oven.pan", [](auto& b) { bake(b).mutable_pan()->set_width_mm(700); }},
      {"recipes[0].steps[5].skill", [](auto& b) { ana(b).clear_skills(); }},
      {"recipes[0].steps[3].placeKinds", [](auto& b) { step(b, 3).add_place_kinds(v1::PLACE_KIND_PROOFER); }},
      {"recipes[0].formula.levain.starterId", [](auto& b) { b.clear_starters(); }},
      {"events[0].pins[0].dishId", [&](auto& b) { pin(b, "soup", "bake"); }},
      {"events[0].pins[0].stepId", [&](auto& b) { pin(b, "gratin", "proof"); }},
      {"events[0].pins[1].stepId",
       [&](auto& b) {
         pin(b, "rolls", "bake");
         pin(b, "rolls", "bake");
       }},
      {"events[0].pins[0].cookMemberId",
       [&](auto& b) { pin(b, "rolls", "shape").set_cook_member_id("marta"); }},
      {"events[0].pins[0].ovenId", [&](auto& b) { pin(b, "rolls", "bake").set_oven_id("small"); }},
      {"events[0].pins[0].placeId", [&](auto& b) { pin(b, "rolls", "proof").set_place_id("attic"); }},
      {"events[0].unavailable[0].thingId", [&](auto& b) { away(b).set_thing_id("grill"); }},
      {"plans[0].id", [](auto& b) { b.add_plans()->set_id("other"); }},
      {"progresses[0].id", [](auto& b) { b.add_progresses()->set_id("other"); }},
  });
}

TEST(ValidateTest, ASkillOfSomeoneWhoDoesNotCookIsNoHelp) {
  v1::Bundle bundle = smallDinner();
  event(bundle).mutable_cooks()->DeleteSubrange(0, 1);
  event(bundle).mutable_dishes(0)->clear_cook_member_id();
  EXPECT_THAT(pathsOf(validate(bundle, true)), ElementsAre("recipes[0].steps[5].skill"));
}

TEST(ValidateTest, ReadingsThatNoOvenGivesAreNotStored) {
  v1::Bundle bundle = smallDinner();
  for (const auto& [minutes, celsius] : {std::pair(0, 21.0), {5, 120.0}, {10, 60.0}, {15, 200.0}}) {
    v1::HeatReading& reading = *oven(bundle).mutable_heat_curve()->add_heating();
    reading.mutable_after()->set_seconds(minutes * 60);
    reading.set_celsius(celsius);
  }
  const Violations violations = validate(bundle, true);
  ASSERT_FALSE(violations.empty());
  EXPECT_THAT(violations[0].field_path(), testing::StartsWith("kitchens[0].ovens[0].heatCurve.heating"));
}

TEST(ValidateTest, SaysWhichPanWouldFit) {
  v1::Bundle bundle = smallDinner();
  bake(bundle).mutable_pan()->set_width_mm(900);
  bake(bundle).mutable_pan()->set_depth_mm(600);
  const Violations violations = validate(bundle, true);
  ASSERT_EQ(violations.size(), 1u);
  EXPECT_EQ(violations[0].value(), "900 x 600 x 70 mm");
  EXPECT_EQ(violations[0].description(),
            "must fit an oven of the event's kitchen, as would 450 x 300 x 70 mm in the Large oven");
}

TEST(ValidateTest, ABakeMayUseTheRangeItsRecipeAllows) {
  v1::Bundle bundle = smallDinner();
  oven(bundle).set_max_setpoint_celsius(200);
  bake(bundle).set_min_setpoint_celsius(195);
  EXPECT_THAT(validate(bundle, true), IsEmpty());
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

TEST(ValidateTest, OnlyWhatKeepsNobodySafeMayBeLeftOut) {
  v1::Bundle dinner = smallDinner();
  v1::Recipe recipe = rolls(dinner);
  v1::Step& bake = *recipe.mutable_steps(7);
  ASSERT_EQ(bake.kind(), v1::STEP_KIND_OVEN);
  bake.set_may_be_left_out(true);
  EXPECT_THAT(pathsOf(validate(recipe)), IsEmpty());
  bake.set_safety_class(v1::SAFETY_CLASS_POULTRY);
  EXPECT_THAT(pathsOf(validate(recipe)), ElementsAre("steps[7].mayBeLeftOut"));
  bake.clear_safety_class();
  bake.set_left_out_points(1001);
  EXPECT_THAT(pathsOf(validate(recipe)), ElementsAre("steps[7].leftOutPoints"));
  bake.set_may_be_left_out(false);
  bake.set_left_out_points(5);
  bake.mutable_oven()->set_most_loads(7);
  EXPECT_THAT(pathsOf(validate(recipe)), ElementsAre("steps[7].oven.mostLoads", "steps[7].leftOutPoints"));
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
