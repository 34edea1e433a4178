#include "tests/compose/validate_mistakes.h"

namespace suppertide::compose {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

TEST(ValidateRecipeTest, TellsMistakesOfARecipe) {
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

TEST(ValidateRecipeTest, TellsMistakesOfSteps) {
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

TEST(ValidateRecipeTest, TellsMistakesOfOrders) {
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

TEST(ValidateRecipeTest, TellsEveryCircleOnceAndByNames) {
  v1::Bundle bundle = smallDinner();
  step(bundle, 0).add_after()->set_step_id("levain");
  step(bundle, 5).mutable_after(0)->set_step_id("proof");
  const Violations found = validate(rolls(bundle));
  EXPECT_THAT(pathsOf(found), UnorderedElementsAre("steps[0].after", "steps[5].after"));
  EXPECT_EQ(found.front().value(), "feed after levain after feed");
}

TEST(ValidateRecipeTest, TellsMistakesOfBakes) {
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

TEST(ValidateRecipeTest, TellsMistakesOfFormulas) {
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

TEST(ValidateRecipeTest, OnlyWhatKeepsNobodySafeMayBeLeftOut) {
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

}  // namespace
}  // namespace suppertide::compose
