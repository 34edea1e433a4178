#include "tests/compose/validate_mistakes.h"

namespace suppertide::compose {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(ValidateEventTest, TellsMistakesOfAnEvent) {
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

TEST(ValidateEventTest, TellsReferencesThatLeadNowhere) {
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

TEST(ValidateEventTest, ASkillOfSomeoneWhoDoesNotCookIsNoHelp) {
  v1::Bundle bundle = smallDinner();
  event(bundle).mutable_cooks()->DeleteSubrange(0, 1);
  event(bundle).mutable_dishes(0)->clear_cook_member_id();
  EXPECT_THAT(pathsOf(validate(bundle, true)), ElementsAre("recipes[0].steps[5].skill"));
}

TEST(ValidateEventTest, ReadingsThatNoOvenGivesAreNotStored) {
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

TEST(ValidateEventTest, SaysWhichPanWouldFit) {
  v1::Bundle bundle = smallDinner();
  bake(bundle).mutable_pan()->set_width_mm(900);
  bake(bundle).mutable_pan()->set_depth_mm(600);
  const Violations violations = validate(bundle, true);
  ASSERT_EQ(violations.size(), 1u);
  EXPECT_EQ(violations[0].value(), "900 x 600 x 70 mm");
  EXPECT_EQ(violations[0].description(),
            "must fit an oven of the event's kitchen, as would 450 x 300 x 70 mm in the Large oven");
}

TEST(ValidateEventTest, ABakeMayUseTheRangeItsRecipeAllows) {
  v1::Bundle bundle = smallDinner();
  oven(bundle).set_max_setpoint_celsius(200);
  bake(bundle).set_min_setpoint_celsius(195);
  EXPECT_THAT(validate(bundle, true), IsEmpty());
}

}  // namespace
}  // namespace suppertide::compose
