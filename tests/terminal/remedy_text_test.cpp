#include "client/terminal/remedy_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "client/terminal/wish_text.h"
#include "tests/terminal/sample.h"

namespace suppertide::terminal {
namespace {

using namespace testing;
using ::testing::HasSubstr;
using ::testing::Not;

PlanView shown(const v1::Plan& plan = samplePlan(), int width = 80) {
  const v1::Bundle bundle = sampleBundle();
  return PlanView(bundle, bundle.events(0), plan, width, false);
}

v1::Wish& addWish(v1::Clash& clash, v1::WishKind kind) {
  v1::Wish& wish = *clash.add_wishes();
  wish.set_kind(kind);
  return wish;
}

void addServed(v1::Clash& clash, const std::string& dish, const std::string& when) {
  v1::Wish& wish = addWish(clash, v1::WISH_KIND_SERVED);
  wish.set_dish_id(dish);
  *wish.mutable_time() = at(when);
}

void addSetpoint(v1::Clash& clash, const std::string& dish, int least, int own, int most) {
  v1::Wish& wish = addWish(clash, v1::WISH_KIND_SETPOINT);
  wish.set_dish_id(dish);
  wish.set_step_id(dish + "/bake");
  wish.set_celsius(own);
  wish.set_min_celsius(least);
  wish.set_max_celsius(most);
}

void addCount(v1::Clash& clash, const std::string& thing, int count) {
  v1::Wish& wish = addWish(clash, v1::WISH_KIND_COUNT);
  wish.set_thing_id(thing);
  wish.set_count(count);
}

constexpr char kDinner[] = "2026-06-20T19:00:00+01:00";

v1::Clash ovenClash() {
  v1::Clash clash;
  clash.set_smallest(true);
  addServed(clash, "rye", kDinner);
  addServed(clash, "gratin", kDinner);
  addSetpoint(clash, "rye", 230, 230, 230);
  addSetpoint(clash, "gratin", 170, 180, 190);
  addCount(clash, "big", 1);
  return clash;
}

TEST(WishTextTest, TellsTwoBakesAndAnOven) {
  const std::string oven = shown().names().oven("big");
  EXPECT_EQ(wishClashText(shown(), ovenClash()), "These cannot all be had: " + shown().names().dish("rye") +
                                                     " at 230 °C and " + shown().names().dish("gratin") +
                                                     " at 170 to 190 °C, both due Sat 19:00; only one " +
                                                     oven + ".");
}

TEST(WishTextTest, TellsOfHoursHandsPinsAndKeeping) {
  v1::Clash clash;
  clash.set_smallest(true);
  addServed(clash, "rye", kDinner);
  addCount(clash, "burners", 2);
  addWish(clash, v1::WISH_KIND_HANDS).set_count(1);
  v1::Wish& hours = addWish(clash, v1::WISH_KIND_HOURS);
  hours.set_thing_id("ben");
  *hours.mutable_time() = at("2026-06-20T17:00:00+01:00");
  *hours.mutable_until_time() = at("2026-06-20T22:00:00+01:00");
  v1::Wish& pin = addWish(clash, v1::WISH_KIND_PINNED);
  pin.set_dish_id("rye");
  pin.set_step_id("rye/mix");
  *pin.mutable_time() = at("2026-06-20T07:00:00+01:00");
  v1::Wish& fresh = addWish(clash, v1::WISH_KIND_FRESH);
  fresh.set_dish_id("rye");
  *fresh.mutable_duration() = minutes(60);
  const std::string text = wishClashText(shown(), clash);
  EXPECT_THAT(text, HasSubstr("(kept at most 1 h), due Sat 19:00; two burners, one cook, "));
  EXPECT_THAT(text, HasSubstr("Benoît here only Sat 17:00–22:00"));
  EXPECT_THAT(text, HasSubstr("“Mix the dough” at Sat 07:00."));
}

TEST(WishTextTest, GivesEachDishItsTimeWhenTheyDiffer) {
  v1::Clash clash;
  addServed(clash, "rye", "2026-06-20T18:30:00+01:00");
  addServed(clash, "gratin", kDinner);
  const std::string text = wishClashText(shown(), clash);
  EXPECT_THAT(text, HasSubstr(" due Sat 18:30 and "));
  EXPECT_THAT(text, HasSubstr(" due Sat 19:00. (It may be that not all of them matter.)"));
}

TEST(WishTextTest, SaysWhichRuleStandsBehindAClashAndIsNeverGivenUp) {
  v1::Clash clash = ovenClash();
  v1::KeptRule& apart = *clash.add_kept_rules();
  apart.set_rule(v1::HARD_RULE_ALLERGEN);
  apart.set_dish_id("gratin");
  apart.set_other_dish_id("rye");
  v1::KeptRule& limit = *clash.add_kept_rules();
  limit.set_rule(v1::HARD_RULE_FOOD_SAFETY);
  limit.set_dish_id("gratin");
  limit.set_thing_id("SAFETY_LIMIT_KIND_ROOM_TIME");
  const std::string text = wishClashText(shown(), clash);
  EXPECT_THAT(
      text, HasSubstr(shown().names().dish("gratin") + " must stay free of what a guest must not have and " +
                      shown().names().dish("rye") + " holds"));
  EXPECT_THAT(text, HasSubstr("the food-safety limit for the time out of fridge and heat to keep"));
}

TEST(WishTextTest, SaysWhenADishCannotBeReadyAtAll) {
  v1::Clash clash;
  clash.set_smallest(true);
  addServed(clash, "rye", kDinner);
  EXPECT_EQ(wishClashText(shown(), clash),
            shown().names().dish("rye") + " cannot be ready by Sat 19:00, whatever else is given up.");
}

TEST(WishTextTest, ASectionFitsTheTerminalAndIsLeftOutWithoutClashes) {
  v1::Plan plan = samplePlan();
  EXPECT_EQ(wishClashesText(shown(plan)), "");
  *plan.add_clashes() = ovenClash();
  std::istringstream lines(wishClashesText(shown(plan, 60)));
  for (std::string line; std::getline(lines, line);) EXPECT_LE(displayWidth(line), 60) << line;
}

v1::FindRemediesResponse found(v1::RemedyKind kind) {
  v1::FindRemediesResponse message;
  message.mutable_remedy()->set_kind(kind);
  message.mutable_remedy()->set_dish_id("gratin");
  *message.mutable_event() = sampleBundle().events(0);
  return message;
}

TEST(RemedyTextTest, SaysWhatToChange) {
  v1::FindRemediesResponse share = found(v1::REMEDY_KIND_SHARE_TEMPERATURE);
  share.mutable_remedy()->set_step_id("gratin/bake");
  share.mutable_remedy()->set_min_celsius(165);
  share.mutable_remedy()->set_max_celsius(205);
  EXPECT_THAT(remedyText(shown(), share), HasSubstr("be anywhere from 165 to 205 °C."));
  v1::FindRemediesResponse drop = found(v1::REMEDY_KIND_DROP_DISH);
  EXPECT_EQ(remedyText(shown(), drop), "Leave out " + shown().names().dish("gratin") + ".");
  v1::FindRemediesResponse cook = found(v1::REMEDY_KIND_OTHER_COOK);
  cook.mutable_remedy()->set_thing_id("ben");
  EXPECT_EQ(remedyText(shown(), cook), "Ask Benoît to cook, too.");
  v1::FindRemediesResponse burner = found(v1::REMEDY_KIND_BORROW);
  burner.mutable_remedy()->set_thing_id("burners");
  burner.mutable_remedy()->set_count(1);
  *burner.add_further() = drop.remedy();
  EXPECT_EQ(remedyText(shown(), burner),
            "Borrow a burner and leave out " + shown().names().dish("gratin") + ".");
}

v1::FindRemediesResponse otherPan() {
  v1::FindRemediesResponse message = found(v1::REMEDY_KIND_OTHER_PAN);
  v1::Remedy& what = *message.mutable_remedy();
  what.set_step_id("gratin/bake");
  what.set_thing_id("big");
  what.mutable_pan()->set_width_mm(345);
  what.mutable_pan()->set_depth_mm(231);
  what.mutable_pan()->set_height_mm(88);
  return message;
}

TEST(RemedyTextTest, SaysInWhichPanADishStandsBesideAnother) {
  v1::FindRemediesResponse pan = otherPan();
  const std::string where = " in the " + shown().names().oven("big") + ".";
  const std::string gratin = "Bake " + shown().names().dish("gratin");
  EXPECT_EQ(remedyText(shown(), pan), gratin +
                                          " in a pan of at most 34 x 23 cm, about 9 cm high and filled "
                                          "deeper, for longer: then it stands beside the others" +
                                          where);
  *pan.mutable_plan() = samplePlan();
  v1::PlannedStep* bread = nullptr;
  for (v1::PlannedStep& step : *pan.mutable_plan()->mutable_steps())
    if (step.id() == "rye/bake") bread = &step;
  ASSERT_NE(bread, nullptr);
  // Not in the oven together: the sample's bread comes out before.
  EXPECT_THAT(remedyText(shown(), pan), HasSubstr("beside the others"));
  *bread->mutable_end_time() = at("2026-06-20T18:00:00+01:00");
  pan.mutable_remedy()->mutable_pan()->set_count(2);
  EXPECT_EQ(remedyText(shown(), pan), gratin +
                                          " in 2 pans of at most 34 x 23 cm, about 9 cm high and filled "
                                          "deeper, for longer: then they stand beside " +
                                          shown().names().dish("rye") + where);
}

TEST(RemedyTextTest, GivesPansInInchesWhereTheHouseholdDoes) {
  v1::Bundle bundle = sampleBundle();
  bundle.mutable_household()->set_measure_system(v1::MEASURE_SYSTEM_US);
  const PlanView us(bundle, bundle.events(0), samplePlan(), 80, false);
  EXPECT_THAT(remedyText(us, otherPan()), HasSubstr("of at most 13.5 x 9 in, about 3.5 in high"));
}

TEST(RemedyTextTest, HasWordsForEveryKind) {
  for (int kind = v1::RemedyKind_MIN + 1; kind <= v1::RemedyKind_MAX; ++kind)
    EXPECT_THAT(remedyText(shown(), found(static_cast<v1::RemedyKind>(kind))), Not(HasSubstr("has no words")))
        << kind;
}

TEST(RemedyTextTest, SaysWhatItCosts) {
  v1::Plan plan;
  plan.mutable_quality()->mutable_costs()->set_quality(12);
  plan.mutable_quality()->mutable_costs()->set_people(70);
  plan.add_courses()->set_on_time_chance(0.918);
  EXPECT_EQ(
      remedyCostText(plan),
      "12 min waiting or off its best and 1 h 10 min at unsocial hours or beyond a fair share; in time in "
      "91 of 100 evenings.");
}

}  // namespace
}  // namespace suppertide::terminal
