#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

#include "server/compose/remedies/find_remedies.h"
#include "tests/compose/planned.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Not;

// The rolls and the gratin want their own temperatures in the one oven, and neither may wait.
v1::Bundle clashingDinner() {
  v1::Bundle bundle = smallDinner();
  v1::OvenNeed& rolls = *stepOf(bundle, 0, "bake").mutable_oven();
  rolls.set_min_setpoint_celsius(205);
  rolls.set_max_setpoint_celsius(205);
  v1::OvenNeed& gratin = *stepOf(bundle, 2, "bake").mutable_oven();
  gratin.set_min_setpoint_celsius(185);
  gratin.set_max_setpoint_celsius(185);
  for (const int recipe : {0, 2}) {
    bundle.mutable_recipes(recipe)->mutable_holding()->mutable_longest()->set_seconds(300);
    bundle.mutable_recipes(recipe)->mutable_holding()->clear_best_until();
  }
  bundle.mutable_events(0)->mutable_courses(0)->mutable_late_limit()->set_seconds(0);
  return bundle;
}

std::vector<int> kindsOf(const RemedySearch& search) {
  std::vector<int> kinds;
  for (const FoundRemedy& remedy : search.remedies) kinds.push_back(remedy.changes.front().kind());
  return kinds;
}

std::vector<int> kindsOf(const v1::Clash& clash) {
  std::vector<int> kinds;
  for (const v1::Wish& wish : clash.wishes()) kinds.push_back(wish.kind());
  return kinds;
}

RemedySearch searchFor(const v1::Bundle& bundle, RemedyMonitor* monitor = nullptr) {
  auto search = findRemedies(documentsOf(bundle), {}, monitor);
  EXPECT_TRUE(search.ok()) << search.status();
  return search.ok() ? *std::move(search) : RemedySearch{};
}

TEST(PlanClashTest, ThePlanTellsTheWishesThatClash) {
  const v1::Bundle bundle = clashingDinner();
  const Documents documents = documentsOf(bundle);
  const auto plan = planEvent(documents, {.seed = 1, .workLimit = 5'000});
  ASSERT_TRUE(plan.ok());
  ASSERT_EQ(plan->unserved_size(), 1);
  EXPECT_EQ(plan->unserved(0).dish_id(), "gratin") << "bread is missed more";
  EXPECT_EQ(plan->quality().costs().unserved(), 1);
  ASSERT_GE(plan->clashes_size(), 1);
  const v1::Clash& clash = plan->clashes(0);
  EXPECT_TRUE(clash.smallest());
  EXPECT_THAT(kindsOf(clash), ElementsAre(v1::WISH_KIND_SERVED, v1::WISH_KIND_SERVED, v1::WISH_KIND_SETPOINT,
                                          v1::WISH_KIND_SETPOINT, v1::WISH_KIND_COUNT, v1::WISH_KIND_FRESH,
                                          v1::WISH_KIND_FRESH));
  EXPECT_EQ(clash.wishes(0).dish_id(), "rolls");
  EXPECT_EQ(clash.wishes(2).step_id(), "rolls/bake");
  EXPECT_EQ(clash.wishes(2).celsius(), 205);
  EXPECT_EQ(clash.wishes(4).thing_id(), "large");
  EXPECT_EQ(clash.wishes(5).duration().seconds(), 300);
}

TEST(PlanClashTest, APlanThatFitsTellsNone) {
  const Documents documents = documentsOf(smallDinner());
  const auto plan = planEvent(documents, {.seed = 1, .workLimit = 2'000});
  ASSERT_TRUE(plan.ok());
  EXPECT_EQ(plan->clashes_size(), 0);
}

TEST(FindRemediesTest, SaysThatADinnerFitsAsItIs) {
  const RemedySearch search = searchFor(smallDinner());
  EXPECT_TRUE(search.fits);
  EXPECT_THAT(search.remedies, IsEmpty());
}

TEST(FindRemediesTest, EachIsPlannedAndKeepsEveryRule) {
  const RemedySearch search = searchFor(clashingDinner());
  EXPECT_FALSE(search.fits);
  ASSERT_GE(search.remedies.size(), 3u);
  EXPECT_LE(search.remedies.size(), 5u);
  for (const FoundRemedy& remedy : search.remedies) {
    SCOPED_TRACE(remedy.changes.front().ShortDebugString());
    EXPECT_EQ(remedy.plan.unserved_size(), 0);
    EXPECT_EQ(remedy.plan.quality().costs().lateness(), 0);
    const auto audit = auditPlan(remedy.documents, remedy.plan);
    ASSERT_TRUE(audit.ok()) << audit.status();
    EXPECT_THAT(audit->breaches, IsEmpty());
  }
}

TEST(FindRemediesTest, SharesATemperatureAndKeepsItInsideTheFoodsTolerance) {
  const RemedySearch search = searchFor(clashingDinner());
  ASSERT_THAT(kindsOf(search), Contains(v1::REMEDY_KIND_SHARE_TEMPERATURE));
  for (const FoundRemedy& remedy : search.remedies) {
    const v1::Remedy& what = remedy.changes.front();
    if (what.kind() != v1::REMEDY_KIND_SHARE_TEMPERATURE) continue;
    const int own = what.dish_id() == "rolls" ? 205 : 185;
    EXPECT_LT(what.min_celsius(), what.max_celsius());
    EXPECT_GE(what.min_celsius(), own - 30);
    EXPECT_LE(what.max_celsius(), own + 30);
  }
}

TEST(FindRemediesTest, RanksSmallerChangesFirst) {
  const RemedySearch search = searchFor(clashingDinner());
  for (std::size_t k = 1; k < search.remedies.size(); ++k)
    EXPECT_LE(search.remedies[k - 1].size, search.remedies[k].size);
}

TEST(FindRemediesTest, ChangesNoRecipeThatOtherEventsUse) {
  const v1::Bundle bundle = clashingDinner();
  const RemedySearch search = searchFor(bundle);
  for (const FoundRemedy& remedy : search.remedies)
    for (const v1::Recipe& recipe : bundle.recipes()) {
      const auto same = [&](const v1::Recipe& now) {
        return now.SerializeAsString() == recipe.SerializeAsString();
      };
      EXPECT_TRUE(std::any_of(remedy.documents.recipes.begin(), remedy.documents.recipes.end(), same));
    }
}

TEST(FindRemediesTest, AsksForMoreHoursOnlyWhereTheHoursClash) {
  EXPECT_THAT(kindsOf(searchFor(clashingDinner())), Not(Contains(v1::REMEDY_KIND_HOURS)));
}

TEST(FindRemediesTest, OffersAnotherCookWhereTheOnlyOneIsAway) {
  v1::Bundle bundle = smallDinner();
  v1::Event& event = *bundle.mutable_events(0);
  event.mutable_cooks()->RemoveLast();
  event.mutable_dishes()->DeleteSubrange(0, 1);  // the rolls want a skill
  v1::TimeSpan& there = *event.mutable_cooks(0)->add_available();
  there.mutable_start()->set_seconds(event.courses(0).serving_time().seconds() - 1800);
  there.mutable_limit()->set_seconds(event.courses(0).serving_time().seconds());
  event.mutable_courses(0)->mutable_late_limit()->set_seconds(0);
  const RemedySearch search = searchFor(bundle);
  EXPECT_THAT(kindsOf(search), Contains(v1::REMEDY_KIND_OTHER_COOK));
}

// What is told of clashes, list by list.
class ClashLists : public RemedyMonitor {
 public:
  void clashesKnown(const std::vector<v1::Clash>& clashes) override { sizes_.push_back(clashes.size()); }
  std::vector<std::size_t> sizes_;
};

// The rolls and the gratin are in each other's way, and so are the cream and the foam.
v1::Bundle twiceClashingDinner() {
  v1::Bundle bundle = clashingDinner();
  // Beside the oven, the mixer: two whipped things at once, nothing may wait.
  v1::Recipe& cream = *bundle.add_recipes();
  cream.set_id("cream");
  cream.set_display_name("Whipped cream");
  cream.set_serving_count(8);
  v1::Step& whip = *cream.add_steps();
  whip.set_id("whip");
  whip.set_title("Whip");
  whip.set_kind(v1::STEP_KIND_WAIT);
  whip.mutable_duration()->mutable_likely()->set_seconds(1200);
  whip.add_equipment()->set_equipment_id("mixer");
  for (const char* id : {"cream", "foam"}) {
    v1::Dish& dish = *bundle.mutable_events(0)->add_dishes();
    dish.set_id(id);
    dish.set_recipe_id("cream");
    dish.set_course_id("main");
  }
  return bundle;
}

TEST(FindRemediesTest, PutsChangesTogetherWhereOneIsNotEnough) {
  const RemedySearch search = searchFor(twiceClashingDinner());
  EXPECT_GE(search.clashes.size(), 2u);
  ASSERT_GE(search.remedies.size(), 1u);
  EXPECT_GE(search.remedies.front().changes.size(), 2u);
  EXPECT_EQ(search.remedies.front().plan.breaches_size(), 0);
}

TEST(FindRemediesTest, OneThreadFindsTheSameAsTwo) {
  const Documents documents = documentsOf(twiceClashingDinner());
  RemedyOptions alone;
  alone.twoThreads = false;
  const auto one = findRemedies(documents, alone);
  const auto two = findRemedies(documents, {});
  ASSERT_TRUE(one.ok() && two.ok());
  ASSERT_EQ(one->remedies.size(), two->remedies.size());
  for (std::size_t k = 0; k < one->remedies.size(); ++k) {
    const FoundRemedy& a = one->remedies[k];
    const FoundRemedy& b = two->remedies[k];
    ASSERT_EQ(a.changes.size(), b.changes.size());
    for (std::size_t c = 0; c < a.changes.size(); ++c)
      EXPECT_EQ(a.changes[c].SerializeAsString(), b.changes[c].SerializeAsString());
    ASSERT_EQ(a.plan.steps_size(), b.plan.steps_size());
    for (int step = 0; step < a.plan.steps_size(); ++step)
      EXPECT_EQ(a.plan.steps(step).SerializeAsString(), b.plan.steps(step).SerializeAsString());
  }
}

TEST(FindRemediesTest, TellsEachClashAsSoonAsItIsKnown) {
  ClashLists lists;
  const RemedySearch search = searchFor(twiceClashingDinner(), &lists);
  ASSERT_GE(search.clashes.size(), 2u);
  ASSERT_EQ(lists.sizes_.size(), search.clashes.size());
  for (std::size_t k = 0; k < lists.sizes_.size(); ++k) EXPECT_EQ(lists.sizes_[k], k + 1);
}

TEST(FindRemediesTest, NoTwoAskForTheSameAndNoneForOneThingTwice) {
  const RemedySearch search = searchFor(twiceClashingDinner());
  std::set<std::set<std::string>> all;
  for (const FoundRemedy& remedy : search.remedies) {
    std::set<std::string> changes;
    std::set<std::string> things;
    for (const v1::Remedy& change : remedy.changes) {
      changes.insert(change.SerializeAsString());
      v1::Remedy thing = change;
      thing.clear_duration();
      thing.clear_size();
      EXPECT_TRUE(things.insert(thing.SerializeAsString()).second) << change.ShortDebugString();
    }
    EXPECT_TRUE(all.insert(changes).second);
  }
}

// A gratin and a squash of the same temperature and minute, in an oven with one shelf, too narrow for both.
v1::Bundle crowdedOven() {
  v1::Bundle bundle = smallDinner();
  v1::Oven& oven = *bundle.mutable_kitchens(0)->mutable_ovens(0);
  oven.clear_rack_clear_height_mm();
  oven.add_rack_clear_height_mm(120);
  bundle.mutable_recipes(2)->mutable_holding()->mutable_longest()->set_seconds(300);
  v1::Recipe& squash = *bundle.add_recipes();
  squash = bundle.recipes(2);
  squash.set_id("squash");
  squash.set_display_name("Baked squash");
  v1::Pan& pan = *stepOf(bundle, 3, "bake").mutable_oven()->mutable_pan();
  pan.set_width_mm(250);
  pan.set_depth_mm(300);
  v1::Event& event = *bundle.mutable_events(0);
  event.mutable_dishes()->DeleteSubrange(0, 2);
  v1::Dish& dish = *event.add_dishes();
  dish.set_id("squash");
  dish.set_recipe_id("squash");
  dish.set_course_id("main");
  event.mutable_courses(0)->mutable_late_limit()->set_seconds(0);
  return bundle;
}

// The remedies that are this one change.
std::vector<const FoundRemedy*> otherPans(const RemedySearch& search) {
  std::vector<const FoundRemedy*> found;
  for (const FoundRemedy& remedy : search.remedies)
    if (remedy.changes.size() == 1 && remedy.changes[0].kind() == v1::REMEDY_KIND_OTHER_PAN)
      found.push_back(&remedy);
  return found;
}

const v1::Step& bakeOf(const Documents& documents, const std::string& dishId) {
  for (const v1::Dish& dish : documents.event.dishes())
    for (const v1::Recipe& recipe : documents.recipes)
      if (dish.id() == dishId && recipe.id() == dish.recipe_id())
        for (const v1::Step& step : recipe.steps())
          if (step.id() == "bake") return step;
  throw std::runtime_error("no bake of " + dishId);
}

const v1::PlannedStep& plannedIn(const v1::Plan& plan, const std::string& id) {
  for (const v1::PlannedStep& step : plan.steps())
    if (step.id() == id) return step;
  throw std::runtime_error("no planned step " + id);
}

TEST(FindRemediesTest, ASmallerPanStandsBesideTheOtherDishAndHoldsAsMuch) {
  const RemedySearch search = searchFor(crowdedOven());
  EXPECT_FALSE(search.fits);
  const auto found = otherPans(search);
  ASSERT_EQ(found.size(), 2u);
  std::set<std::string> dishes;
  for (const FoundRemedy* remedy : found) {
    const v1::Remedy& what = remedy->changes[0];
    dishes.insert(what.dish_id());
    EXPECT_EQ(what.step_id(), what.dish_id() + "/bake");
    EXPECT_EQ(what.thing_id(), "large");
    // 220 mm are left beside the gratin, 200 beside the squash.
    const bool gratin = what.dish_id() == "gratin";
    EXPECT_EQ(what.pan().width_mm(), gratin ? 285 : 220);
    EXPECT_EQ(what.pan().depth_mm(), gratin ? 198 : 265);
    EXPECT_GE(what.pan().width_mm() * what.pan().depth_mm() * what.pan().height_mm(),
              gratin ? 330 * 230 * 70 : 250 * 300 * 70);
    const v1::Step& bake = bakeOf(remedy->documents, what.dish_id());
    EXPECT_EQ(bake.oven().pan().width_mm(), what.pan().width_mm());
    EXPECT_EQ(bake.oven().pan().height_mm(), what.pan().height_mm());
    EXPECT_GT(bake.oven().duration().likely().seconds(), 2700);
    EXPECT_LT(bake.oven().duration().likely().seconds(), 2700 * 1.5 * 1.5);
    EXPECT_EQ(remedy->plan.unserved_size(), 0);
    const auto audit = auditPlan(remedy->documents, remedy->plan);
    ASSERT_TRUE(audit.ok()) << audit.status();
    EXPECT_THAT(audit->breaches, IsEmpty());
    const v1::PlannedStep& one = plannedIn(remedy->plan, "gratin/bake");
    const v1::PlannedStep& other = plannedIn(remedy->plan, "squash/bake");
    EXPECT_LT(one.start_time().seconds(), other.end_time().seconds());
    EXPECT_LT(other.start_time().seconds(), one.end_time().seconds());
  }
  EXPECT_EQ(dishes.size(), 2u);
}

TEST(FindRemediesTest, OffersNoSmallerPanThatWouldStandTooHigh) {
  v1::Bundle bundle = crowdedOven();
  bundle.mutable_kitchens(0)->mutable_ovens(0)->set_rack_clear_height_mm(0, 90);
  EXPECT_THAT(otherPans(searchFor(bundle)), IsEmpty());
}

TEST(FindRemediesTest, OffersNoSmallerPanThatIsTooDeepForTheFood) {
  v1::Bundle bundle = crowdedOven();
  for (const int recipe : {2, 3})
    stepOf(bundle, recipe, "bake").mutable_oven()->set_food_class(v1::FOOD_CLASS_VEGETABLE);
  EXPECT_THAT(otherPans(searchFor(bundle)), IsEmpty());
}

TEST(FindRemediesTest, OffersNoSmallerPanForARoastOrABread) {
  v1::Bundle bundle = crowdedOven();
  stepOf(bundle, 2, "bake").mutable_oven()->set_food_class(v1::FOOD_CLASS_ROAST);
  stepOf(bundle, 3, "bake").mutable_oven()->set_food_class(v1::FOOD_CLASS_BREAD);
  EXPECT_THAT(otherPans(searchFor(bundle)), IsEmpty());
}

TEST(FindRemediesTest, OffersNoSmallerPanWhereThePansStandTogether) {
  EXPECT_THAT(kindsOf(searchFor(clashingDinner())), Not(Contains(v1::REMEDY_KIND_OTHER_PAN)));
}

// Stops after the first remedy.
class Impatient : public RemedyMonitor {
 public:
  void clashesKnown(const std::vector<v1::Clash>& clashes) override {
    clashesFirst_ = found_ == 0 && !clashes.empty();
  }
  void found(const FoundRemedy&) override { ++found_; }
  bool stop() override { return found_ > 0; }
  int found_ = 0;
  bool clashesFirst_ = false;
};

TEST(FindRemediesTest, TellsTheClashFirstAndKeepsWhatItHasWhenStopped) {
  Impatient monitor;
  const RemedySearch search = searchFor(clashingDinner(), &monitor);
  EXPECT_TRUE(monitor.clashesFirst_);
  EXPECT_EQ(monitor.found_, 1);
  EXPECT_EQ(search.remedies.size(), 1u);
}

}  // namespace
}  // namespace suppertide::compose
