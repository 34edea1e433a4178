#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>

#include "server/compose/bread_recipe.h"
#include "server/compose/planner.h"
#include "server/compose/validate.h"
#include "tests/compose/loaf.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

constexpr std::int64_t kWork = 20'000;
constexpr std::int64_t kLittleWork = 2'000;

v1::Plan planned(const v1::Bundle& bundle, std::int64_t work = kWork) {
  const Documents documents = documentsOf(bundle);
  PlanOptions options;
  options.workLimit = work;
  auto plan = planEvent(documents, options);
  EXPECT_TRUE(plan.ok()) << plan.status();
  return plan.ok() ? *plan : v1::Plan();
}

std::map<std::string, double> weighedAt(const v1::Plan& plan, const std::string& stepId) {
  std::map<std::string, double> grams;
  for (const v1::PlannedStep& step : plan.steps())
    if (step.step_id() == stepId && step.dish_id() == "rolls")
      for (const v1::Weighing& weighing : step.weighings()) grams[weighing.name()] = weighing.mass_g();
  return grams;
}

std::vector<std::string> namesOf(const std::map<std::string, double>& grams) {
  std::vector<std::string> names;
  for (const auto& [name, mass] : grams) names.push_back(name);
  return names;
}

std::vector<std::string> faults(const v1::Bundle& bundle) {
  std::vector<std::string> paths;
  for (const auto& violation : validate(bundle, true)) paths.push_back(violation.field_path());
  return paths;
}

v1::BreadFormula& formulaIn(v1::Bundle& bundle) {
  for (v1::Recipe& recipe : *bundle.mutable_recipes())
    if (recipe.has_formula()) return *recipe.mutable_formula();
  throw std::logic_error("no formula");
}

TEST(PrefermentPlanTest, ALoafOfLevainPoolishAndSoakerIsPlannedAndEachIsWeighedWhereItIsMade) {
  const v1::Bundle bundle = dinnerWithLoaf();
  ASSERT_THAT(faults(bundle), IsEmpty());
  const v1::Plan plan = planned(bundle);
  EXPECT_TRUE(plan.unserved().empty());
  EXPECT_TRUE(plan.breaches().empty()) << plan.breaches(0).ShortDebugString();
  EXPECT_THAT(namesOf(weighedAt(plan, "feed")), UnorderedElementsAre("flour", "starter", "water"));
  EXPECT_THAT(namesOf(weighedAt(plan, "stir")), UnorderedElementsAre("fresh yeast", "strong flour", "water"));
  EXPECT_THAT(namesOf(weighedAt(plan, "soak")), UnorderedElementsAre("linseed", "water"));
  const auto mix = weighedAt(plan, "mix");
  EXPECT_THAT(namesOf(mix), testing::IsSupersetOf({"ripe levain", "ripe poolish", "linseed soaker"}));
  double sum = 0;
  for (const auto& [name, mass] : mix) sum += mass;
  EXPECT_NEAR(sum, 900, 4);  // each is rounded to the gram
}

TEST(PrefermentPlanTest, ThePoolishIsRipeWhenTheDoughIsMixed) {
  const v1::Plan plan = planned(dinnerWithLoaf());
  ASSERT_EQ(plan.doughs_size(), 1);
  const v1::DoughForecast& dough = plan.doughs(0);
  ASSERT_EQ(dough.preferments_size(), 1);
  EXPECT_EQ(dough.preferments(0).name(), "poolish");
  EXPECT_NEAR(dough.hydration_percent(), 74, 1e-9);
  EXPECT_NEAR(dough.free_hydration_percent(), 62, 1e-9);
  const auto poolish = std::find_if(
      dough.stages().begin(), dough.stages().end(),
      [](const v1::FermentForecast& stage) { return stage.stage() == v1::FERMENT_STAGE_PREFERMENT; });
  ASSERT_NE(poolish, dough.stages().end());
  EXPECT_EQ(poolish->preferment_id(), "poolish");
  EXPECT_GE(poolish->end_time().seconds(), poolish->ready_from_time().seconds() - 300);
  EXPECT_LE(poolish->end_time().seconds(), poolish->ready_until_time().seconds() + 300);
  for (const v1::PlannedStep& step : plan.steps()) {
    if (step.dish_id() != "rolls" || step.step_id() != "mix") continue;
    EXPECT_GE(step.start_time().seconds(), poolish->end_time().seconds());
    EXPECT_LE(step.start_time().seconds(), poolish->end_time().seconds() + 30 * 60);
  }
}

// Loaves of any preferment in kitchens of any warmth: what is planned is ripe when it is used, on the very
// path that the plan takes, though each stage was planned from a table.
TEST(PrefermentPropertyTest, RandomLoavesAreRipeAtEveryStageOfTheirPlan) {
  int served = 0;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937_64 random(seed);
    const auto between = [&](double low, double high) {
      return std::uniform_real_distribution<double>(low, high)(random);
    };
    v1::Bundle bundle = dinnerWithLoaf();
    v1::Event& event = *bundle.mutable_events(0);
    for (int d = event.dishes_size() - 1; d >= 0; --d)
      if (event.dishes(d).recipe_id() != "rolls") event.mutable_dishes()->DeleteSubrange(d, 1);
    event.clear_pins();
    bundle.mutable_kitchens(0)->mutable_places(0)->mutable_temperature()->set_celsius(0, between(18, 26));
    v1::BreadFormula& formula = formulaIn(bundle);
    v1::Preferment& ahead = *formula.mutable_preferments(0);
    ahead.set_kind(static_cast<v1::PrefermentKind>(1 + static_cast<int>(between(0, 3.99))));
    ahead.set_yeast_percent(between(0.1, 1.2));
    ahead.set_flour_percent(between(10, 35));
    if (between(0, 1) < 0.5) formula.mutable_lines(4)->set_percent(between(0.5, 1.2));
    if (!faults(bundle).empty()) continue;
    const v1::Plan plan = planned(bundle, kLittleWork);
    served += plan.unserved().empty() ? 1 : 0;
    EXPECT_TRUE(plan.breaches().empty()) << plan.breaches(0).ShortDebugString();
  }
  EXPECT_GT(served, 12);
}

TEST(PrefermentPlanTest, APlanWithThemIsReadAgainAndAuditedWithoutABreach) {
  const v1::Bundle bundle = dinnerWithLoaf();
  const v1::Plan plan = planned(bundle);
  const auto audit = auditPlan(documentsOf(bundle), plan);
  ASSERT_TRUE(audit.ok()) << audit.status();
  EXPECT_TRUE(audit->breaches.empty()) << audit->breaches.front().ShortDebugString();
}

TEST(PrefermentPlanTest, APoolishUsedTooSoonIsFoundByTheAudit) {
  const v1::Bundle bundle = dinnerWithLoaf();
  v1::Plan plan = planned(bundle);
  for (v1::PlannedStep& step : *plan.mutable_steps())
    if (step.step_id() == "poolish")
      step.mutable_start_time()->set_seconds(step.end_time().seconds() - 2 * 3600);
  const auto audit = auditPlan(documentsOf(bundle), plan);
  ASSERT_TRUE(audit.ok()) << audit.status();
  EXPECT_THAT(audit->breaches,
              testing::Contains(testing::ResultOf([](const v1::Breach& breach) { return breach.rule(); },
                                                  v1::HARD_RULE_READINESS)));
}

// What the check of documents lets pass, planning can take apart; what it refuses, planning could not.
TEST(PrefermentPropertyTest, TheCheckAndTheTakingApartAgree) {
  int good = 0, bad = 0;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937_64 random(seed);
    const auto upTo = [&](double most) { return std::uniform_real_distribution<double>(0.01, most)(random); };
    v1::Bundle bundle = dinnerWithLoaf();
    v1::BreadFormula& formula = formulaIn(bundle);
    formula.mutable_levain()->set_dough_share_percent(upTo(40));
    formula.mutable_levain()->set_hydration_percent(40 + upTo(100));
    formula.mutable_levain()->set_whole_grain_percent(upTo(100));
    v1::Preferment& poolish = *formula.mutable_preferments(0);
    poolish.set_flour_percent(upTo(60));
    poolish.set_hydration_percent(40 + upTo(90));
    poolish.set_whole_grain_percent(upTo(60));
    poolish.set_yeast_percent(upTo(1.5));
    poolish.set_salt_percent(upTo(3));
    v1::Soaker& soaker = *formula.mutable_soakers(0);
    soaker.set_water_percent(upTo(40));
    soaker.set_salt_percent(upTo(1.5));
    if (upTo(1) < 0.5) {
      v1::SoakedPart& rye = *soaker.add_parts();
      rye.set_line_name("wholemeal rye");
      rye.set_percent(upTo(20));
    }
    const bool passes = faults(bundle).empty();
    const auto recipe = BreadRecipe::of(formula, &bundle.starters(0));
    EXPECT_EQ(passes, recipe.ok()) << recipe.status();
    (passes ? good : bad) += 1;
  }
  EXPECT_GT(good, 40);
  EXPECT_GT(bad, 40);
}

TEST(PrefermentPlanTest, MistakesAreToldAtTheirField) {
  const auto with = [](auto change) {
    v1::Bundle bundle = dinnerWithLoaf();
    change(formulaIn(bundle), bundle);
    return faults(bundle);
  };
  const auto path = [](const char* field) {
    v1::Bundle bundle = dinnerWithLoaf();
    for (int r = 0; r < bundle.recipes_size(); ++r)
      if (bundle.recipes(r).has_formula()) return "recipes[" + std::to_string(r) + "]." + field;
    return std::string(field);
  };
  EXPECT_THAT(with([](auto& f, auto&) { f.mutable_preferments(0)->set_yeast_percent(2.5); }),
              ElementsAre(path("formula.preferments[0].yeastPercent")));
  EXPECT_THAT(with([](auto& f, auto&) { f.mutable_preferments(0)->set_hydration_percent(300); }),
              ElementsAre(path("formula.preferments[0].hydrationPercent")));
  EXPECT_THAT(with([](auto& f, auto&) { f.mutable_preferments(0)->set_flour_percent(78); }),
              testing::Contains(path("formula.preferments[0].flourPercent")));
  EXPECT_THAT(with([](auto& f, auto&) { f.mutable_soakers(0)->mutable_parts(0)->set_line_name("poppy"); }),
              ElementsAre(path("formula.soakers[0].parts[0].lineName")));
  EXPECT_THAT(with([](auto& f, auto&) { f.mutable_soakers(0)->set_id("poolish"); }),
              testing::Contains(path("formula.soakers[0].id")));
  EXPECT_THAT(with([](auto& f, auto&) {
                *f.add_preferments() = f.preferments(0);
                f.mutable_preferments(1)->set_id("biga");
              }),
              ElementsAre(path("formula.preferments[1].id")));
}

const v1::PlannedStep& bakeIn(const v1::Plan& plan) {
  for (const v1::PlannedStep& step : plan.steps())
    if (step.dish_id() == "rolls" && step.step_id() == "bake") return step;
  throw std::logic_error("no bake");
}

std::int64_t minutesBetween(const google::protobuf::Timestamp& a, const google::protobuf::Timestamp& b) {
  return (b.seconds() - a.seconds()) / 60;
}

TEST(BakeNotesTest, TellWhenSteamAndLidGoAndHowHotTheCentreIs) {
  const v1::Plan plan = planned(dinnerWithLoaf());
  const v1::PlannedStep& bake = bakeIn(plan);
  ASSERT_TRUE(bake.has_bake_notes());
  EXPECT_EQ(minutesBetween(bake.start_time(), bake.bake_notes().steam_out_time()), 15);  // as usual
  EXPECT_EQ(minutesBetween(bake.start_time(), bake.bake_notes().lid_off_time()), 25);
  EXPECT_LE(bake.bake_notes().least_core_celsius(), 97);
  EXPECT_GE(bake.bake_notes().most_core_celsius(), 97);
  EXPECT_FALSE(bake.bake_notes().scaled_by_mass());
}

TEST(BakeNotesTest, PiecesOfAnotherMassBakeLongerAndTheNotesSaySo) {
  v1::Bundle bundle = dinnerWithLoaf();
  v1::OvenNeed* oven = nullptr;
  for (v1::Recipe& recipe : *bundle.mutable_recipes())
    if (recipe.has_formula())
      for (v1::Step& step : *recipe.mutable_steps())
        if (step.has_oven()) oven = step.mutable_oven();
  ASSERT_NE(oven, nullptr);
  oven->set_piece_mass_g(450);  // the loaf is twice that
  oven->set_min_setpoint_celsius(230);
  oven->set_max_setpoint_celsius(230);
  ASSERT_THAT(faults(bundle), IsEmpty());
  const v1::Plan plan = planned(bundle);
  const v1::PlannedStep& bake = bakeIn(plan);
  EXPECT_NEAR(static_cast<double>(minutesBetween(bake.start_time(), bake.end_time())), 45 * 1.2746, 2);
  EXPECT_TRUE(bake.bake_notes().scaled_by_mass());
  EXPECT_FALSE(bake.bake_notes().far_from_recipe());
  EXPECT_NEAR(static_cast<double>(minutesBetween(bake.start_time(), bake.bake_notes().lid_off_time())),
              25 * 1.2746, 1);
  oven->mutable_lid_duration()->set_seconds(60 * 60);
  EXPECT_THAT(faults(bundle), ElementsAre(testing::EndsWith("oven.lidDuration")));
}

TEST(BakeNotesTest, MistakesInSteamLidAndMassAreToldAtTheirField) {
  const auto with = [](auto change) {
    v1::Bundle bundle = dinnerWithLoaf();
    for (v1::Recipe& recipe : *bundle.mutable_recipes())
      if (recipe.has_formula())
        for (v1::Step& step : *recipe.mutable_steps())
          if (step.has_oven()) change(*step.mutable_oven());
    return faults(bundle);
  };
  EXPECT_THAT(with([](auto& oven) { oven.set_piece_mass_g(5); }),
              ElementsAre(testing::EndsWith("oven.pieceMassG")));
  EXPECT_THAT(with([](auto& oven) { oven.mutable_steam_duration()->set_seconds(45 * 60); }),
              ElementsAre(testing::EndsWith("oven.steamDuration")));
  EXPECT_THAT(with([](auto& oven) {
                oven.set_steam(false);
                oven.mutable_steam_duration()->set_seconds(600);
              }),
              ElementsAre(testing::EndsWith("oven.steamDuration")));
}

TEST(BreadReadingsValidateTest, WhatIsKeptOfDoughsIsCheckedToo) {
  const auto with = [](auto change) {
    v1::Bundle bundle = dinnerWithLoaf();
    change(bundle);
    return faults(bundle);
  };
  EXPECT_THAT(with([](auto& b) {
                v1::MixReading& reading = *formulaIn(b).add_mix_readings();
                reading.set_room_celsius(21);
                reading.set_water_celsius(80);
                reading.set_dough_celsius(24);
              }),
              ElementsAre(testing::EndsWith("formula.mixReadings[0].waterCelsius")));
  EXPECT_THAT(with([](auto& b) { b.mutable_starters(0)->mutable_learned_vigour()->set_value(2); }),
              ElementsAre("starters[0].learnedVigour.kind"));
  EXPECT_THAT(with([](auto& b) {
                v1::LearnedEffect& warmth =
                    *b.mutable_kitchens(0)->mutable_places(0)->mutable_learned_warmth();
                warmth.set_kind(v1::EFFECT_KIND_WARMTH);
                warmth.set_value(40);
              }),
              ElementsAre("kitchens[0].places[0].learnedWarmth.value"));
  EXPECT_THAT(with([](auto& b) {
                v1::StarterObservation& seen = *b.mutable_starters(0)->add_observations();
                seen.mutable_feed_time()->set_seconds(1'800'000'000);
                seen.mutable_observe_time()->set_seconds(1'800'010'000);
                seen.set_flour_per_starter(1);
                seen.set_water_per_starter(1);
                seen.set_rise(2);
                seen.set_place_id("counter");
              }),
              ElementsAre("starters[0].observations[0].kitchenId"));
  EXPECT_THAT(with([](auto& b) {
                v1::StarterObservation& seen = *b.mutable_starters(0)->add_observations();
                seen.mutable_feed_time()->set_seconds(1'800'000'000);
                seen.mutable_observe_time()->set_seconds(1'800'010'000);
                seen.set_flour_per_starter(1);
                seen.set_water_per_starter(1);
                seen.set_celsius(22);
                seen.set_seen(v1::SEEN_KIND_COLLAPSES);
              }),
              ElementsAre("starters[0].observations[0].seen"));
}

TEST(BreadRecipeTest, ReadingsAfterMixingCorrectTheWater) {
  v1::Bundle bundle = dinnerWithLoaf();
  v1::BreadFormula& formula = formulaIn(bundle);
  const auto waterNow = [&] {
    return BreadRecipe::of(formula, &bundle.starters(0))->water({21, 21, 21, 21, 25});
  };
  const WaterWays before = waterNow();
  // The dough came out two kelvin warmer than the balance had it.
  const double worked = BreadRecipe::of(formula, &bundle.starters(0))->doughWith({21, 21, 28, 21, 0});
  for (int mixing = 0; mixing < 3; ++mixing) {
    v1::MixReading& reading = *formula.add_mix_readings();
    reading.set_room_celsius(21);
    reading.set_flour_celsius(21);
    reading.set_water_celsius(28);
    reading.set_dough_celsius(worked + 2);
  }
  const WaterWays after = waterNow();
  EXPECT_EQ(after.correction.readings, 3);
  EXPECT_GT(after.correction.kelvin, 1.5);
  EXPECT_LT(after.balance.waterCelsius, before.balance.waterCelsius - 2);
  EXPECT_LT(after.rule, before.rule - 4);
  EXPECT_LT(after.correction.spread, before.correction.spread);
}

TEST(BreadRecipeTest, EggsFromTheFridgeAskForWarmerLiquid) {
  v1::Bundle bundle = smallDinner();
  v1::BreadFormula& formula = formulaIn(bundle);
  const auto liquid = [&] {
    return BreadRecipe::of(formula, &bundle.starters(0))->water({21, 21, 21, 21, 26}).balance.waterCelsius;
  };
  const double before = liquid();
  for (v1::FormulaLine& line : *formula.mutable_lines())
    if (line.role() == v1::FORMULA_ROLE_FAT) line.set_kept_in(v1::PLACE_KIND_FRIDGE);
  EXPECT_EQ(liquid(), before);  // softened first
  for (v1::FormulaLine& line : *formula.mutable_lines())
    if (line.role() == v1::FORMULA_ROLE_EGG) line.set_kept_in(v1::PLACE_KIND_FRIDGE);
  EXPECT_GT(liquid(), before + 1);
}

}  // namespace
}  // namespace suppertide::compose
