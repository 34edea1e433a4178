// What a menu's documents ask to take out, how much they make, and a recipe in another size.
#include "server/compose/menu/menu.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "server/compose/composition.h"
#include "server/compose/menu/packets.h"
#include "server/compose/menu/scaled_recipe.h"
#include "server/compose/menu/servings.h"
#include "server/compose/planner.h"
#include "server/compose/replanner.h"
#include "tests/compose/planned.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

constexpr std::int64_t kHour = 3600;

// Eight guests, the butter of the rolls in the fridge, frozen pork without a thawing step.
v1::Bundle fetched() {
  v1::Bundle bundle = smallDinner();
  for (v1::Recipe& recipe : *bundle.mutable_recipes()) {
    for (v1::FormulaLine& line : *recipe.mutable_formula()->mutable_lines())
      if (line.name() == "butter" || line.name() == "egg") line.set_kept_in(v1::PLACE_KIND_FRIDGE);
    if (recipe.id() != "roast") continue;
    recipe.clear_formula();
    v1::Ingredient& pork = *recipe.add_ingredients();
    pork.set_name("pork shoulder, frozen");
    pork.set_mass_g(3000);
    pork.set_kept_in(v1::PLACE_KIND_FREEZER);
  }
  for (v1::Recipe& recipe : *bundle.mutable_recipes())
    if (recipe.id() == "gratin") recipe.clear_formula();
  return bundle;
}

const v1::Fetch* fetchOf(const v1::Plan& plan, const std::string& name) {
  for (const v1::Fetch& fetch : plan.fetches())
    if (fetch.name() == name) return &fetch;
  return nullptr;
}

TEST(FetchTest, ButterLeavesTheFridgeAnHourBeforeItIsWeighed) {
  const v1::Plan plan = planOf(fetched());
  const v1::Fetch* butter = fetchOf(plan, "butter");
  ASSERT_NE(butter, nullptr);
  EXPECT_EQ(butter->for_step_id(), "rolls/mix");
  const std::int64_t before =
      stepOf(plan, "rolls/mix").start_time().seconds() - butter->take_out_time().seconds();
  EXPECT_GE(before, kHour);
  EXPECT_LE(before, 2 * kHour) << "food may stand out for two hours";
  EXPECT_FALSE(butter->cook_member_id().empty());
  EXPECT_EQ(butter->step_id(), "rolls/mix.fetch");
  const v1::PlannedStep& fetch = stepOf(plan, "rolls/mix.fetch");
  EXPECT_EQ(fetch.kind(), v1::STEP_KIND_FETCH);
  EXPECT_EQ(fetch.start_time().seconds(), butter->take_out_time().seconds());
  EXPECT_EQ(fetch.cook_member_id(), butter->cook_member_id());
  EXPECT_THAT(plan.breaches(), IsEmpty());
  EXPECT_EQ(fetchOf(plan, "egg"), nullptr) << "the water makes up for cold eggs";
}

TEST(FetchTest, WhatIsFrozenLeavesTheFreezerWhileSomebodyIsUp) {
  const v1::Bundle bundle = fetched();
  const v1::Plan plan = planOf(bundle);
  const v1::Fetch* pork = fetchOf(plan, "pork shoulder, frozen");
  ASSERT_NE(pork, nullptr);
  EXPECT_EQ(pork->to(), v1::PLACE_KIND_FRIDGE);
  // 24 h for each 4 lb at the slow end: 3 kg take 39.7 h.
  EXPECT_GE(pork->lead_duration().seconds(), 39 * kHour);
  const std::int64_t hour = pork->take_out_time().seconds() / kHour % 24;
  EXPECT_GE(hour, 6);
  EXPECT_LT(hour, 23);
  EXPECT_LE(pork->take_out_time().seconds() + pork->lead_duration().seconds(),
            stepOf(plan, "roast/season").start_time().seconds());
}

TEST(FetchTest, AThawingStepOfTheRecipeIsNotToldTwice) {
  v1::Bundle bundle = fetched();
  for (v1::Recipe& recipe : *bundle.mutable_recipes()) {
    if (recipe.id() != "roast") continue;
    v1::Step thaw;
    thaw.set_id("thaw");
    thaw.set_title("Thaw the pork");
    thaw.set_kind(v1::STEP_KIND_THAW);
    thaw.set_mass_g(3000);
    *recipe.add_steps() = thaw;
    std::rotate(recipe.mutable_steps()->begin(), recipe.mutable_steps()->end() - 1,
                recipe.mutable_steps()->end());
  }
  const v1::Plan plan = planOf(bundle);
  for (const v1::PlannedStep& step : plan.steps())
    EXPECT_THAT(step.id(), ::testing::Not(::testing::StartsWith("roast/season.fetch")));
  *bundle.add_plans() = plan;
  const Menu menu = menuOf(bundle, bundle.events(0));
  const auto fetches = fetchesOf(menu, handsOf(menu));
  const auto pork =
      std::find_if(fetches.begin(), fetches.end(), [](const v1::Fetch& fetch) { return fetch.own_step(); });
  ASSERT_NE(pork, fetches.end());
  EXPECT_EQ(pork->step_id(), "roast/thaw");
  EXPECT_EQ(pork->take_out_time().seconds(), stepOf(plan, "roast/thaw").start_time().seconds());
}

v1::Recipe& recipeOf(v1::Bundle& bundle, const std::string& id) {
  for (v1::Recipe& recipe : *bundle.mutable_recipes())
    if (recipe.id() == id) return recipe;
  return *bundle.mutable_recipes(0);
}

// A custard whose eggs and curd stand out for half an hour before it is stirred.
v1::Bundle withCustard(int stirMinutes, int mostWaitMinutes) {
  v1::Bundle bundle = smallDinner();
  v1::Recipe& gratin = recipeOf(bundle, "gratin");
  gratin.set_safety_class(v1::SAFETY_CLASS_EGG_DISH);
  gratin.clear_ingredients();
  for (const char* name : {"eggs", "curd cheese"}) {
    v1::Ingredient& one = *gratin.add_ingredients();
    one.set_name(name);
    one.set_count(4);
    one.set_kept_in(v1::PLACE_KIND_FRIDGE);
  }
  gratin.mutable_steps(0)->set_instructions("Stir eggs and curd.");
  gratin.mutable_steps(0)->mutable_duration()->mutable_likely()->set_seconds(stirMinutes * 60);
  gratin.mutable_steps()->DeleteSubrange(1, 1);
  v1::After& after = *gratin.mutable_steps(1)->mutable_after(0);
  after.set_step_id("prepare");
  after.mutable_most_gap()->set_seconds(mostWaitMinutes * 60);
  gratin.mutable_steps(1)->mutable_oven()->set_food_class(v1::FOOD_CLASS_CUSTARD);
  gratin.mutable_steps(1)->mutable_oven()->set_end_core_celsius(75);
  gratin.mutable_steps(1)->mutable_oven()->set_start_core_celsius(15);
  return bundle;
}

TEST(FetchTest, WhatIsTakenOutTogetherIsOneStepAndCountsOnTheRoomClock) {
  const v1::Bundle bundle = withCustard(30, 60);
  const Documents documents = documentsOf(bundle);
  const auto composition = composeProblem(documents);
  ASSERT_TRUE(composition.ok()) << composition.status();
  const auto clock = std::find_if(
      composition->problem.clocks.begin(), composition->problem.clocks.end(), [&](const auto& one) {
        return one.id == "SAFETY_LIMIT_KIND_ROOM_TIME" && !one.spans.empty() &&
               composition->stepId(one.spans.front().from) == "gratin/prepare.fetch";
      });
  ASSERT_NE(clock, composition->problem.clocks.end()) << "the clock begins when the eggs leave the fridge";
  EXPECT_EQ(clock->most, 120);
  const v1::Plan plan = planOf(bundle);
  ASSERT_NE(fetchOf(plan, "eggs"), nullptr);
  EXPECT_EQ(fetchOf(plan, "eggs")->step_id(), fetchOf(plan, "curd cheese")->step_id());
  EXPECT_THAT(plan.breaches(), IsEmpty());
  EXPECT_LE(stepOf(plan, "gratin/bake").start_time().seconds() -
                stepOf(plan, "gratin/prepare.fetch").start_time().seconds(),
            2 * kHour);
  const auto& limits = stepOf(plan, "gratin/prepare").safety_limits();
  const auto room = std::find_if(limits.begin(), limits.end(), [](const v1::SafetyLimit& limit) {
    return limit.kind() == v1::SAFETY_LIMIT_KIND_ROOM_TIME;
  });
  ASSERT_NE(room, limits.end());
  EXPECT_GE(room->planned_duration().seconds(), (30 + 30) * 60) << "on the counter and stirred";
}

TEST(FetchTest, APlanThatLeavesFoodOutTooLongWithItsFetchIsRefusedByTheAuditor) {
  const v1::Bundle bundle = withCustard(30, 90);
  const Documents documents = documentsOf(bundle);
  v1::Plan plan = planOf(bundle);
  for (v1::PlannedStep& step : *plan.mutable_steps()) {
    if (step.id() != "gratin/prepare.fetch") continue;
    const std::int64_t earlier = stepOf(plan, "gratin/bake").start_time().seconds() - 2 * kHour - 300;
    step.mutable_start_time()->set_seconds(earlier);
    step.mutable_end_time()->set_seconds(earlier + 120);
  }
  const auto audit = auditPlan(documents, plan);
  ASSERT_TRUE(audit.ok()) << audit.status();
  EXPECT_TRUE(std::any_of(audit->breaches.begin(), audit->breaches.end(), [](const v1::Breach& breach) {
    return breach.rule() == v1::HARD_RULE_FOOD_SAFETY;
  }));
}

TEST(FetchTest, WhenEggsWouldBeOutTooLongTheyAreUsedCold) {
  const v1::Plan plan = planOf(withCustard(95, 10));
  EXPECT_THAT(plan.unserved(), IsEmpty());
  EXPECT_THAT(plan.breaches(), IsEmpty());
  EXPECT_TRUE(stepOf(plan, "gratin/prepare.fetch").left_out());
}

TEST(FetchTest, RawMeatFromTheFreezerIsThawedByTheRulesForItsMass) {
  v1::Bundle bundle = fetched();
  recipeOf(bundle, "roast").set_safety_class(v1::SAFETY_CLASS_WHOLE_MEAT);
  const v1::Plan plan = planOf(bundle);
  ASSERT_THAT(plan.unserved(), IsEmpty());
  const v1::PlannedStep& thaw = stepOf(plan, "roast/season.fetch-thaw");
  EXPECT_EQ(thaw.kind(), v1::STEP_KIND_THAW);
  EXPECT_GE(thaw.end_time().seconds() - thaw.start_time().seconds(), 39 * kHour);
  EXPECT_EQ(fetchOf(plan, "pork shoulder, frozen")->step_id(), "roast/season.fetch-frozen");
  EXPECT_FALSE(stepOf(plan, "roast/season.fetch-frozen").cook_member_id().empty());
}

TEST(FetchTest, APlanFromBeforeThereWereSuchStepsIsStillRead) {
  const v1::Bundle bundle = fetched();
  v1::Plan plan = planOf(bundle);
  auto& steps = *plan.mutable_steps();
  steps.erase(std::remove_if(steps.begin(), steps.end(),
                             [](const v1::PlannedStep& step) { return step.kind() == v1::STEP_KIND_FETCH; }),
              steps.end());
  const auto audit = auditPlan(documentsOf(bundle), plan);
  ASSERT_TRUE(audit.ok()) << audit.status();
  EXPECT_THAT(audit->breaches, IsEmpty());
}

TEST(FetchTest, EggplantIsNoEggAndGratinsTakeTheirButterCold) {
  v1::Bundle bundle = smallDinner();
  for (v1::Recipe& recipe : *bundle.mutable_recipes()) {
    if (recipe.id() != "gratin") continue;
    for (const char* name : {"eggplant", "butter"}) {
      v1::Ingredient& one = *recipe.add_ingredients();
      one.set_name(name);
      one.set_mass_g(100);
      one.set_kept_in(v1::PLACE_KIND_FRIDGE);
    }
  }
  const Menu menu = menuOf(bundle, bundle.events(0));
  EXPECT_THAT(fetchesOf(menu, {}), IsEmpty());
}

TEST(FetchTest, AMovedPlanTellsAnewWhatToTakeOut) {
  v1::Bundle bundle = fetched();
  const Documents documents = documentsOf(bundle);
  const v1::Plan plan = planOf(bundle);
  const v1::PlannedStep& mix = stepOf(plan, "rolls/mix");
  v1::Progress progress;
  progress.set_id("supper");
  v1::Report& late = *progress.add_reports();
  late.set_id("r1");
  late.set_dish_id("rolls");
  late.set_step_id("mix");
  *late.mutable_happen_time() = mix.start_time();
  late.mutable_delayed_by()->set_seconds(600);
  const auto moved =
      replanEvent(documents, {plan, progress, mix.start_time()}, {.seed = 1, .workLimit = 2000});
  ASSERT_TRUE(moved.ok()) << moved.status();
  EXPECT_FALSE(moved->nothingMoves);
  const v1::Fetch* butter = fetchOf(moved->plan, "butter");
  ASSERT_NE(butter, nullptr);
  EXPECT_GE(stepOf(moved->plan, "rolls/mix").start_time().seconds() - butter->take_out_time().seconds(),
            kHour);
}

// The rolls are mixed 40 minutes later, which is told so long before the butter was to leave the fridge.
v1::Plan toldBefore(const v1::Bundle& bundle, const v1::Plan& plan, std::int64_t seconds) {
  v1::Progress progress;
  progress.set_id("supper");
  v1::Report& late = *progress.add_reports();
  late.set_id("r1");
  late.set_dish_id("rolls");
  late.set_step_id("mix");
  late.mutable_happen_time()->set_seconds(stepOf(plan, "rolls/mix.fetch").start_time().seconds() - seconds);
  late.mutable_delayed_by()->set_seconds(2400);
  auto made =
      replanEvent(documentsOf(bundle), {plan, progress, late.happen_time()}, {.seed = 1, .workLimit = 2000});
  EXPECT_TRUE(made.ok()) << made.status();
  return made->plan;
}

TEST(FetchTest, WhatIsUsedLaterLeavesTheFridgeLater) {
  const v1::Bundle bundle = fetched();
  const v1::Plan plan = planOf(bundle);
  const std::int64_t standing = stepOf(plan, "rolls/mix").start_time().seconds() -
                                stepOf(plan, "rolls/mix.fetch").start_time().seconds();
  const v1::Plan moved = toldBefore(bundle, plan, kHour);
  EXPECT_GE(stepOf(moved, "rolls/mix").start_time().seconds(),
            stepOf(plan, "rolls/mix").start_time().seconds() + 2400);
  EXPECT_EQ(stepOf(moved, "rolls/mix").start_time().seconds() -
                stepOf(moved, "rolls/mix.fetch").start_time().seconds(),
            standing);
  EXPECT_THAT(moved.breaches(), IsEmpty());
  const auto told = std::find_if(moved.moved_steps().begin(), moved.moved_steps().end(),
                                 [](const v1::MovedStep& one) { return one.step_id() == "rolls/mix.fetch"; });
  ASSERT_NE(told, moved.moved_steps().end());
  EXPECT_EQ(told->cause(), v1::MOVE_CAUSE_FOLLOWS);
  EXPECT_EQ(told->cause_step_id(), "rolls/mix");
}

TEST(FetchTest, NobodyIsStoppedOnTheWayToTheFridge) {
  const v1::Bundle bundle = fetched();
  const v1::Plan plan = planOf(bundle);
  const v1::Plan moved = toldBefore(bundle, plan, 300);
  EXPECT_EQ(stepOf(moved, "rolls/mix.fetch").start_time().seconds(),
            stepOf(plan, "rolls/mix.fetch").start_time().seconds());
}

// The pork thaws for days; what is roasted with it is bought for the day it is roasted.
TEST(ShoppingDayTest, AThingIsNeededWhenItsStepSpeaksOfIt) {
  v1::Bundle bundle = fetched();
  for (v1::Recipe& recipe : *bundle.mutable_recipes()) {
    if (recipe.id() != "roast") continue;
    recipe.mutable_steps(2)->set_instructions("Lay the apples around it and pour the cider over.");
    for (const char* name : {"apples", "dry cider", "bay leaves"}) {
      v1::Ingredient& one = *recipe.add_ingredients();
      one.set_name(name);
      one.set_mass_g(300);
    }
    v1::Step take;
    take.set_id("take-out");
    take.set_title("Take the pork from the freezer");
    take.set_kind(v1::STEP_KIND_HANDS_ON);
    take.mutable_duration()->mutable_likely()->set_seconds(300);
    v1::Step thaw;
    thaw.set_id("thaw");
    thaw.set_title("Thaw the pork");
    thaw.set_kind(v1::STEP_KIND_THAW);
    thaw.set_mass_g(3000);
    *recipe.add_steps() = take;
    *recipe.add_steps() = thaw;
    std::rotate(recipe.mutable_steps()->begin(), recipe.mutable_steps()->end() - 2,
                recipe.mutable_steps()->end());
  }
  const v1::Plan plan = planOf(bundle);
  ASSERT_EQ(plan.unserved_size(), 0);
  *bundle.add_plans() = plan;
  std::map<std::string, std::string> days;
  for (const v1::ShoppingItem& item :
       shoppingItems(menuOf(bundle, bundle.events(0)), {}, kitchen::Measures::kMetric))
    days[item.name()] = item.needed_date();
  EXPECT_LT(days.at("pork shoulder"), "2027-03-07");
  EXPECT_EQ(days.at("apples"), "2027-03-07");
  EXPECT_EQ(days.at("dry cider"), "2027-03-07");
  EXPECT_GT(days.at("bay leaves"), days.at("pork shoulder")) << "no step speaks of them: when work begins";
}

TEST(ServingsTest, CountsPortionsAndWhatShallBeLeft) {
  v1::Event event;
  event.add_guests();
  event.add_guests()->set_portion(0.5);
  v1::Dish dish;
  v1::Recipe recipe;
  recipe.set_serving_count(3);
  EXPECT_EQ(eatenServings(event, dish), 1.5);
  EXPECT_EQ(scaleOf(event, dish, recipe), 0.5);
  dish.set_leftover_serving_count(3);
  EXPECT_EQ(eatenServings(event, dish), 1.5);
  EXPECT_EQ(scaleOf(event, dish, recipe), 1.5);
  dish.set_serving_count(9);
  EXPECT_EQ(scaleOf(event, dish, recipe), 4);
  EXPECT_EQ(scaleOf(v1::Event(), v1::Dish(), recipe), 1) << "nobody is invited yet";
}

TEST(ServingsTest, MorePansAreNeededOnlyForMoreThanATwentiethMore) {
  v1::OvenNeed need;
  need.mutable_pan()->set_count(2);
  EXPECT_EQ(pansFor(need, 1.02), 2);
  EXPECT_EQ(pansFor(need, 1.1), 3);
  EXPECT_EQ(pansFor(need, 0.1), 1);
  need.mutable_pan()->set_count(1);
  need.set_food_class(v1::FOOD_CLASS_ROAST);
  EXPECT_EQ(pansFor(need, 1.4), 1) << "a larger roast";
  EXPECT_EQ(pansFor(need, 1.6), 2);
}

// Sixty-four gratins' worth of guests: eight dishes, and the one oven takes four.
TEST(ServingsTest, AFeastsBakesGoInAsManyLoadsAsItsPansNeed) {
  v1::Bundle bundle = smallDinner();
  v1::Event& event = *bundle.mutable_events(0);
  event.mutable_dishes()->DeleteSubrange(0, 2);
  event.mutable_dishes(0)->set_serving_count(64);
  const v1::Plan plan = planOf(bundle);
  EXPECT_EQ(plan.unserved_size(), 0);
  EXPECT_EQ(plan.breaches_size(), 0);
  int loads = 0;
  for (const v1::PlannedStep& step : plan.steps())
    if (step.kind() == v1::STEP_KIND_OVEN && !step.left_out()) ++loads;
  EXPECT_EQ(loads, 2);
}

TEST(PortionsTest, LeftoversKeepByTheHouseholdsRules) {
  v1::Bundle bundle = smallDinner();
  for (v1::Recipe& recipe : *bundle.mutable_recipes())
    if (recipe.id() == "roast") recipe.set_safety_class(v1::SAFETY_CLASS_WHOLE_MEAT);
  bundle.mutable_events(0)->mutable_dishes(1)->set_leftover_serving_count(4);
  std::vector<v1::MenuWarning> warnings;
  auto portions = portionsOf(menuOf(bundle, bundle.events(0)), warnings);
  ASSERT_EQ(portions.size(), 3u);
  EXPECT_EQ(portions[1].made_servings() - portions[1].eaten_servings(), 4);
  EXPECT_EQ(portions[1].use_by_date(), "2027-03-11") << "four days after 7 March";
  EXPECT_EQ(portions[2].use_by_date(), "") << "no limit is known of the gratin";
  bundle.mutable_household()->set_safety_rules(v1::SAFETY_RULES_FOOD_SERVICE);
  portions = portionsOf(menuOf(bundle, bundle.events(0)), warnings);
  EXPECT_EQ(portions[1].use_by_date(), "2027-03-13") << "seven days, the first being that of cooking";
}

TEST(PortionsTest, WarnsOfRollsThatAreFarTooFew) {
  v1::Bundle bundle = smallDinner();
  std::vector<v1::MenuWarning> warnings;
  auto portions = portionsOf(menuOf(bundle, bundle.events(0)), warnings);
  ASSERT_EQ(portions[0].guides_size(), 1);
  EXPECT_EQ(portions[0].guides(0).amount().count(), 16);
  EXPECT_EQ(portions[0].guides(0).least().count(), 16);
  for (const v1::MenuWarning& warning : warnings) EXPECT_NE(warning.dish_id(), "rolls");
  for (v1::Recipe& recipe : *bundle.mutable_recipes())
    if (recipe.has_formula()) recipe.mutable_formula()->set_piece_count(6);
  portionsOf(menuOf(bundle, bundle.events(0)), warnings);
  const auto rolls = std::find_if(warnings.begin(), warnings.end(), [](const v1::MenuWarning& warning) {
    return warning.dish_id() == "rolls";
  });
  ASSERT_NE(rolls, warnings.end());
  EXPECT_EQ(rolls->kind(), v1::MENU_WARNING_KIND_TOO_LITTLE);
}

const v1::Recipe& recipeOf(const v1::Bundle& bundle, const std::string& id) {
  return *std::find_if(bundle.recipes().begin(), bundle.recipes().end(),
                       [&](const v1::Recipe& recipe) { return recipe.id() == id; });
}

TEST(ScaledRecipeTest, BreadComesInWholePiecesOfAnotherMass) {
  const v1::Bundle bundle = smallDinner();
  const auto more =
      scaledRecipe(recipeOf(bundle, "rolls"), {.servings = 9}, nullptr, {}, kitchen::Measures::kMetric);
  EXPECT_EQ(more.piece_count(), 18);
  EXPECT_EQ(more.bakes(0).least_duration().seconds(), more.bakes(0).recipe_duration().seconds())
      << "as large as before, so as long";
  const auto smaller = scaledRecipe(recipeOf(bundle, "rolls"), {.pieces = 32, .pieceGrams = 27.5}, nullptr,
                                    {}, kitchen::Measures::kMetric);
  EXPECT_NEAR(smaller.factor(), 1, 1e-9);
  EXPECT_LT(smaller.bakes(0).most_duration().seconds(), smaller.bakes(0).recipe_duration().seconds());
  double flour = 0;
  for (const v1::ScaledLine& line : smaller.lines())
    if (line.name() == "flour") flour = line.exact().mass_g();
  EXPECT_NEAR(flour, 880 / 2.0, 1e-9) << "100 of 200 per cent of 16 times 55 g";
}

TEST(ScaledRecipeTest, TellsLoadsAndWhichPanWouldFit) {
  v1::Bundle bundle = smallDinner();
  const v1::Recipe& gratin = recipeOf(bundle, "gratin");
  const auto many =
      scaledRecipe(gratin, {.servings = 64}, &bundle.kitchens(0), {}, kitchen::Measures::kMetric);
  ASSERT_EQ(many.bakes_size(), 1);
  EXPECT_EQ(many.bakes(0).pan().count(), 8);
  ASSERT_EQ(many.bakes(0).ovens_size(), 1);
  EXPECT_EQ(many.bakes(0).ovens(0).load_count(), 2) << "four shelves, one dish on each";
  v1::Pan large;
  large.set_width_mm(600);
  large.set_depth_mm(400);
  large.set_height_mm(70);
  large.set_count(1);
  const auto wide =
      scaledRecipe(gratin, {.pan = &large}, &bundle.kitchens(0), {}, kitchen::Measures::kMetric);
  EXPECT_NEAR(wide.factor(), 600.0 * 400 / (330 * 230), 1e-9);
  EXPECT_EQ(wide.bakes(0).ovens(0).load_count(), 0);
  ASSERT_TRUE(wide.bakes(0).ovens(0).has_pan_that_would());
  EXPECT_LE(wide.bakes(0).ovens(0).pan_that_would().width_mm(), 450);
}

TEST(ScaledRecipeTest, RoundsEggsAndSaysWhereThatIsFarOff) {
  v1::Recipe recipe;
  recipe.set_serving_count(10);
  v1::Ingredient& eggs = *recipe.add_ingredients();
  eggs.set_name("eggs");
  eggs.set_count(5);
  const auto scaled = scaledRecipe(recipe, {.servings = 3}, nullptr, {}, kitchen::Measures::kMetric);
  EXPECT_EQ(scaled.lines(0).exact().count(), 1.5);
  EXPECT_EQ(scaled.lines(0).rounded().count(), 2);
  EXPECT_TRUE(scaled.lines(0).far_off());
  EXPECT_EQ(scaled.lines(0).shown(), "2");
}

// "nuts" of a guest meets hazelnuts, whose recipe says nothing of it.
TEST(SeparationTest, ReadsNeedsAsGuestsMeanThem) {
  v1::Bundle bundle = smallDinner();
  v1::Need* need = bundle.mutable_events(0)->mutable_guests(0)->add_needs();
  need->set_name("nuts");
  need->set_severity(v1::NEED_SEVERITY_NO_TRACES);
  for (v1::Recipe& recipe : *bundle.mutable_recipes()) {
    if (recipe.has_formula())
      for (v1::FormulaLine& line : *recipe.mutable_formula()->mutable_lines()) line.set_known_contents(true);
    if (recipe.id() == "rolls") continue;
    v1::Ingredient& ingredient = *recipe.add_ingredients();
    ingredient.set_known_contents(true);
    ingredient.set_name(recipe.id() == "gratin" ? "hazelnuts" : "pork");
  }
  const Documents documents = documentsOf(bundle);
  const auto composition = composeProblem(documents);
  ASSERT_TRUE(composition.ok()) << composition.status();
  const auto& problem = composition->problem;
  ASSERT_FALSE(problem.separations.empty());
  for (const planning::Separation& separation : problem.separations)
    EXPECT_EQ(problem.steps[static_cast<std::size_t>(separation.other)].id, "gratin/bake");
}

v1::Packet packet(const std::string& name, double grams) {
  v1::Packet made;
  made.set_name(name);
  made.mutable_size()->set_mass_g(grams);
  return made;
}

TEST(PacketsTest, AreTheHouseholdsTheEventsOwnFirstThenTheLastNoted) {
  v1::Shopping spring;
  spring.set_id("spring");
  spring.mutable_meta()->mutable_update_time()->set_seconds(100);
  *spring.add_packets() = packet("butter, soft", 125);
  *spring.add_packets() = packet("cream cheese", 200);
  v1::Shopping summer;
  summer.set_id("summer");
  summer.mutable_meta()->mutable_update_time()->set_seconds(200);
  *summer.add_packets() = packet("butter", 250);
  const auto now = householdPackets({spring, summer});
  ASSERT_EQ(now.size(), 2U);
  EXPECT_EQ(packetOf(now, "butter for the filling")->size().mass_g(), 250);
  EXPECT_EQ(packetOf(now, "cream cheese")->size().mass_g(), 200);
  EXPECT_EQ(packetOf(now, "sugar"), nullptr);
  EXPECT_EQ(packetOf(householdPackets({spring, summer}, "spring"), "butter")->size().mass_g(), 125);
}

TEST(ScaledRecipeTest, TakesHalfOrWholePacketsWhereTheyAreNear) {
  v1::Recipe recipe;
  recipe.set_serving_count(4);
  const auto add = [&](const char* name, double grams) {
    v1::Ingredient& one = *recipe.add_ingredients();
    one.set_name(name);
    one.set_mass_g(grams);
  };
  add("butter", 160);
  add("cream cheese", 300);
  add("sugar", 100);
  const auto scaled =
      scaledRecipe(recipe, {.servings = 6}, nullptr, {packet("butter", 250), packet("cream cheese", 200)},
                   kitchen::Measures::kMetric);
  EXPECT_EQ(scaled.lines(0).exact().mass_g(), 240);
  EXPECT_EQ(scaled.lines(0).rounded().mass_g(), 250);
  EXPECT_EQ(scaled.lines(0).shown(), "250 g, 1 packet");
  EXPECT_EQ(scaled.lines(1).rounded().mass_g(), 450) << "between two halves: weighed";
  EXPECT_EQ(scaled.lines(2).rounded().mass_g(), 150);
}

}  // namespace
}  // namespace suppertide::compose
