// The guests' table, the shopping list and read lines as people see them.
#include "client/terminal/menu_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "absl/strings/str_split.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

class MenuTextTest : public ::testing::Test {
 protected:
  MenuTextTest() {
    event_.set_id("supper");
    v1::Course& course = *event_.add_courses();
    course.set_id("sweet");
    course.set_display_name("Sweet");
    v1::Dish& dish = *event_.add_dishes();
    dish.set_id("cake");
    dish.set_display_name("Hazelnut cake with a long name that needs a line of its own to be told");
    v1::Guest& guest = *event_.add_guests();
    guest.set_id("jo");
    guest.set_display_name("Jo");
    v1::Need& need = *guest.add_needs();
    need.set_name("tree nuts");
    need.set_severity(v1::NEED_SEVERITY_NO_TRACES);
    event_.add_guests()->set_id("aune");
  }
  static void expectNarrow(const std::string& text) {
    for (const std::string& line : std::vector<std::string>(absl::StrSplit(text, '\n')))
      EXPECT_LE(displayWidth(line), 80) << line;
  }

  v1::Bundle bundle_;
  v1::Event event_;
};

TEST_F(MenuTextTest, TellsWhoCanEatWhatAndWhyNot) {
  v1::CheckMenuResponse check;
  v1::GuestCourse& cell = *check.add_cells();
  cell.set_guest_id("jo");
  cell.set_course_id("sweet");
  v1::DishForGuest& dish = *cell.add_dishes();
  dish.set_dish_id("cake");
  dish.set_fit(v1::DISH_FIT_HOLDS);
  v1::FitReason& reason = *dish.add_reasons();
  reason.set_fit(v1::DISH_FIT_HOLDS);
  reason.set_ingredient("hazelnuts, roasted");
  reason.set_substance("hazelnut");
  v1::MenuWarning& warning = *check.add_warnings();
  warning.set_kind(v1::MENU_WARNING_KIND_NOTHING_TO_EAT);
  warning.set_guest_id("jo");
  warning.set_course_id("sweet");
  const std::string text = menuCheckText(bundle_, event_, check, {80, false});
  EXPECT_THAT(text, HasSubstr("Jo  tree nuts, not even traces"));
  EXPECT_THAT(text, HasSubstr("✗ Hazelnut cake"));
  EXPECT_THAT(text, HasSubstr("(hazelnuts)"));
  EXPECT_THAT(text, HasSubstr("Jo has nothing to eat at Sweet."));
  EXPECT_THAT(text, HasSubstr("no medical advice"));
  expectNarrow(text);
}

TEST_F(MenuTextTest, ListsWhatToBuyByDayAndSection) {
  v1::MakeShoppingListResponse list;
  EXPECT_EQ(shoppingText(bundle_, event_, list, {80, false}), "Nothing to buy.\n");
  v1::ShoppingItem& item = *list.add_items();
  item.set_name("hazelnuts");
  item.set_section(v1::SHOP_SECTION_BAKING);
  item.set_needed_date("2026-06-20");
  item.set_shown("300 g");
  item.add_uses()->set_dish_id("cake");
  v1::Fetch& fetch = *list.add_fetches();
  fetch.set_dish_id("cake");
  fetch.set_name("butter");
  fetch.set_from(v1::PLACE_KIND_FRIDGE);
  fetch.mutable_lead_duration()->set_seconds(3600);
  const std::string text = shoppingText(bundle_, event_, list, {80, false});
  EXPECT_THAT(text, HasSubstr("Needed on Saturday 20 June"));
  EXPECT_THAT(text, HasSubstr("Baking"));
  EXPECT_THAT(text, HasSubstr("300 g"));
  EXPECT_THAT(text, HasSubstr("butter for Hazelnut cake"));
  expectNarrow(text);
}

TEST_F(MenuTextTest, ShowsACourseAColumnWhereThereIsRoom) {
  v1::CheckMenuResponse check;
  v1::GuestCourse& cell = *check.add_cells();
  cell.set_guest_id("jo");
  cell.set_course_id("sweet");
  v1::DishForGuest& dish = *cell.add_dishes();
  dish.set_dish_id("cake");
  dish.set_fit(v1::DISH_FIT_UNKNOWN);
  dish.add_reasons()->set_fit(v1::DISH_FIT_UNKNOWN);
  dish.mutable_reasons(0)->set_ingredient("sprinkles");
  const std::string text = menuCheckText(bundle_, event_, check, {110, false});
  EXPECT_THAT(text, HasSubstr("Guest"));
  EXPECT_THAT(text, HasSubstr("? Hazelnut cake"));
  EXPECT_THAT(text, HasSubstr("(sprinkles)"));
  EXPECT_THAT(text, HasSubstr("Without needs: aune."));
}

TEST_F(MenuTextTest, TellsOnlyWhatIsNewOfAChangedMenu) {
  v1::CheckMenuResponse before;
  v1::MenuWarning& warning = *before.add_warnings();
  warning.set_kind(v1::MENU_WARNING_KIND_NO_TRACES);
  warning.set_guest_id("jo");
  warning.set_need("tree nuts");
  v1::CheckMenuResponse after = before;
  EXPECT_EQ(newWarningsText(bundle_, event_, before, after, {80, false}), "");
  after.add_warnings()->set_kind(v1::MENU_WARNING_KIND_NOTHING_TO_EAT);
  after.mutable_warnings(1)->set_guest_id("jo");
  after.mutable_warnings(1)->set_course_id("sweet");
  EXPECT_EQ(newWarningsText(bundle_, event_, before, after, {80, false}),
            "• Jo has nothing to eat at Sweet.\n");
}

TEST_F(MenuTextTest, ListsWhatIsBoughtOtherwise) {
  v1::MakeShoppingListResponse list;
  EXPECT_EQ(shoppingChangesText(list, {80, false}), "Nothing else is bought.\n");
  v1::ShoppingChange& less = *list.add_changes();
  less.set_name("eggs");
  less.mutable_before()->set_count(9);
  less.mutable_after()->set_count(4);
  v1::ShoppingChange& gone = *list.add_changes();
  gone.set_name("hazelnuts");
  gone.mutable_before()->set_mass_g(300);
  const std::string text = shoppingChangesText(list, {80, false});
  EXPECT_THAT(text, HasSubstr("eggs: 4 instead of 9"));
  EXPECT_THAT(text, HasSubstr("no hazelnuts (was 300 g)"));
}

TEST_F(MenuTextTest, TellsASizeWithItsTimesAndLoads) {
  v1::Recipe recipe;
  recipe.set_display_name("Gratin");
  recipe.set_serving_count(8);
  v1::Kitchen kitchen;
  v1::Oven& oven = *kitchen.add_ovens();
  oven.set_id("small");
  oven.set_display_name("Small oven");
  v1::ScaledRecipe scaled;
  scaled.set_factor(0.3);
  scaled.set_serving_count(2.4);
  v1::ScaledLine& line = *scaled.add_lines();
  line.set_name("eggs");
  line.mutable_exact()->set_count(1.5);
  line.mutable_rounded()->set_count(2);
  line.set_shown("2");
  line.set_far_off(true);
  v1::ScaledBake& bake = *scaled.add_bakes();
  bake.set_title("Bake it");
  bake.set_setpoint_celsius(180);
  bake.mutable_recipe_duration()->set_seconds(3600);
  bake.mutable_least_duration()->set_seconds(1800);
  bake.mutable_most_duration()->set_seconds(2400);
  bake.mutable_pan()->set_width_mm(600);
  bake.mutable_pan()->set_depth_mm(400);
  bake.mutable_pan()->set_count(1);
  v1::OvenLoads& loads = *bake.add_ovens();
  loads.set_oven_id("small");
  loads.mutable_pan_that_would()->set_width_mm(390);
  loads.mutable_pan_that_would()->set_depth_mm(260);
  const std::string text = scaledText(recipe, kitchen, scaled, {}, {80, false});
  EXPECT_THAT(text, HasSubstr("for 2.4 instead of 8"));
  EXPECT_THAT(text, HasSubstr("eggs (by the numbers 1.50; far off"));
  EXPECT_THAT(text, HasSubstr("180 °C, 30 min to 40 min instead of 1 h: look from 30 min on"));
  EXPECT_THAT(text, HasSubstr("Small oven: does not fit; one of 390 x 260 mm would"));
  expectNarrow(text);
}

TEST_F(MenuTextTest, SaysWhatIsNotSureOfALine) {
  v1::ParseIngredientsResponse parsed;
  v1::ParsedIngredient& one = *parsed.add_ingredients();
  one.set_line("1 cup \x1b[31mtapioca");
  one.set_name("tapioca");
  one.add_doubts(v1::LINE_DOUBT_INGREDIENT_NOT_KNOWN);
  const std::string text = ingredientText(parsed, {80, false});
  EXPECT_THAT(text, HasSubstr("? not in the table of ingredients"));
  EXPECT_THAT(text, Not(HasSubstr("\x1b")));
}

TEST_F(MenuTextTest, KeepsAPinchAndALineWithoutAName) {
  v1::ParseIngredientsResponse parsed;
  v1::ParsedIngredient& pinch = *parsed.add_ingredients();
  pinch.set_line("2 pinches of salt");
  pinch.set_quantity(2);
  pinch.set_unit("pinches");
  pinch.set_name("salt");
  v1::ParsedIngredient& nameless = *parsed.add_ingredients();
  nameless.set_line("1 kg");
  nameless.set_shown("1 kg");
  nameless.add_doubts(v1::LINE_DOUBT_INGREDIENT_NOT_KNOWN);
  const std::string text = ingredientText(parsed, {80, false});
  EXPECT_THAT(text, HasSubstr("  2 pinches salt\n"));
  EXPECT_THAT(text, HasSubstr("? no ingredient is named"));
}

TEST_F(MenuTextTest, TellsWhatIsMissingInTheMeasuresOfTheList) {
  v1::MakeShoppingListResponse list;
  v1::ShoppingItem& butter = *list.add_items();
  butter.set_name("butter");
  butter.set_needed_date("2026-11-01");
  butter.set_ticked_by_member_id("ana");
  butter.set_shown("8 3/4 oz");
  butter.mutable_to_buy()->set_mass_g(250);
  butter.mutable_missing()->set_mass_g(68);
  EXPECT_THAT(shoppingText(bundle_, event_, list, {80, false, true}), HasSubstr("2.4 oz more to buy"));
  const std::string metric = shoppingText(bundle_, event_, list, {80, false});
  EXPECT_THAT(metric, HasSubstr("68 g more to buy"));
  EXPECT_THAT(metric, HasSubstr("Needed on Sunday 1 November"));
}

}  // namespace
}  // namespace suppertide::terminal
