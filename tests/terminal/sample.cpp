#include "tests/terminal/sample.h"

#include "google/protobuf/util/time_util.h"

namespace suppertide::terminal::testing {
namespace {

v1::Recipe recipe(const std::string& id, const std::string& name) {
  v1::Recipe r;
  r.set_id(id);
  r.set_display_name(name);
  r.set_serving_count(8);
  return r;
}

void addStep(v1::Recipe& recipe, const std::string& id, const std::string& title) {
  v1::Step& step = *recipe.add_steps();
  step.set_id(id);
  step.set_title(title);
  step.set_kind(v1::STEP_KIND_HANDS_ON);
}

void addDish(v1::Event& event, const std::string& id, const std::string& recipeId,
             const std::string& courseId) {
  v1::Dish& dish = *event.add_dishes();
  dish.set_id(id);
  dish.set_recipe_id(recipeId);
  dish.set_course_id(courseId);
}

v1::PlannedStep& addPlanned(v1::Plan& plan, const std::string& dish, const std::string& step,
                            const std::string& title, const std::string& start, const std::string& end,
                            const std::string& cook, v1::Cause cause) {
  v1::PlannedStep& planned = *plan.add_steps();
  planned.set_id(dish + "/" + step);
  planned.set_dish_id(dish);
  planned.set_step_id(step);
  planned.set_title(title);
  *planned.mutable_start_time() = at(start);
  *planned.mutable_end_time() = at(end);
  planned.set_cook_member_id(cook);
  planned.set_attention_percent(cook.empty() ? 0 : 100);
  planned.mutable_reason()->set_cause(cause);
  return planned;
}

void addBreadSteps(v1::Plan& plan) {
  v1::PlannedStep& feed = addPlanned(plan, "rye", "feed", "Feed the levain", "2026-06-19T21:00:00+01:00",
                                     "2026-06-19T21:10:00+01:00", "ana", v1::CAUSE_READINESS);
  feed.mutable_reason()->set_blocking_step_id("rye/levain");
  feed.set_levain_ratio("1:5:5");
  *feed.mutable_slack_duration() = minutes(45);
  v1::Weighing& starter = *feed.add_weighings();
  starter.set_name("starter");
  starter.set_mass_g(8.2);
  v1::Weighing& flour = *feed.add_weighings();
  flour.set_name("flour");
  flour.set_mass_g(41);
  v1::PlannedStep& levain = addPlanned(plan, "rye", "levain", "Levain ripens", "2026-06-19T21:10:00+01:00",
                                       "2026-06-20T07:00:00+01:00", "", v1::CAUSE_FOLLOWS);
  levain.mutable_reason()->set_blocking_step_id("rye/feed");
  levain.set_kind(v1::STEP_KIND_FERMENT);
  levain.set_place_id("counter");
  v1::PlannedStep& mix = addPlanned(plan, "rye", "mix", "Mix the dough", "2026-06-20T07:00:00+01:00",
                                    "2026-06-20T07:20:00+01:00", "ana", v1::CAUSE_READINESS);
  mix.mutable_reason()->set_blocking_step_id("rye/levain");
  mix.add_equipment_ids("mixer");
  mix.set_water_celsius(27);
  mix.add_cautions(v1::CAUTION_RAW_FLOUR);
  *mix.mutable_slack_duration() = minutes(30);
}

void addOvenSteps(v1::Plan& plan) {
  v1::PlannedStep& bake = addPlanned(plan, "rye", "bake", "Bake the loaves", "2026-06-20T16:00:00+01:00",
                                     "2026-06-20T16:45:00+01:00", "ana", v1::CAUSE_OVEN_SETPOINT);
  bake.set_oven_id("big");
  bake.set_setpoint_celsius(230);
  bake.set_recipe_setpoint_celsius(230);
  bake.set_attention_percent(25);
  bake.mutable_reason()->set_blocking_step_id("gratin/bake");
  bake.mutable_reason()->set_thing_id("big");
  *bake.mutable_check_from_time() = at("2026-06-20T16:38:00+01:00");
  *bake.mutable_slack_duration() = minutes(10);
  v1::PlannedStep& gratin = addPlanned(plan, "gratin", "bake", "Bake the gratin", "2026-06-20T17:40:00+01:00",
                                       "2026-06-20T18:50:00+01:00", "ben", v1::CAUSE_SERVING);
  gratin.set_oven_id("big");
  gratin.set_setpoint_celsius(190);
  gratin.set_recipe_setpoint_celsius(180);
  gratin.add_cautions(v1::CAUTION_HOT_OVEN);
}

void addProgram(v1::Plan& plan) {
  v1::OvenProgram& program = *plan.add_oven_programs();
  program.set_oven_id("big");
  const auto segment = [&](v1::OvenSegmentKind kind, const std::string& start, const std::string& end,
                           int celsius) -> v1::OvenSegment& {
    v1::OvenSegment& s = *program.add_segments();
    s.set_kind(kind);
    *s.mutable_start_time() = at(start);
    *s.mutable_end_time() = at(end);
    s.set_setpoint_celsius(celsius);
    return s;
  };
  segment(v1::OVEN_SEGMENT_KIND_HEATING, "2026-06-20T15:30:00+01:00", "2026-06-20T16:00:00+01:00", 230);
  v1::RackUse& loaf =
      *segment(v1::OVEN_SEGMENT_KIND_HOLDING, "2026-06-20T16:00:00+01:00", "2026-06-20T16:45:00+01:00", 230)
           .add_racks();
  loaf.set_step_id("rye/bake");
  loaf.add_positions(2);
  segment(v1::OVEN_SEGMENT_KIND_HEATING, "2026-06-20T17:20:00+01:00", "2026-06-20T17:40:00+01:00", 190);
  segment(v1::OVEN_SEGMENT_KIND_HOLDING, "2026-06-20T17:40:00+01:00", "2026-06-20T18:50:00+01:00", 190)
      .add_racks()
      ->set_step_id("gratin/bake");
  for (const auto& [time, celsius] :
       {std::pair("2026-06-20T15:55:00+01:00", 220.0), std::pair("2026-06-20T16:05:00+01:00", 228.0)}) {
    v1::TemperatureSample& sample = *program.add_temperatures();
    *sample.mutable_time() = at(time);
    sample.set_celsius(celsius);
  }
  plan.add_oven_programs()->set_oven_id("small");
}

void addDough(v1::Plan& plan) {
  v1::DoughForecast& dough = *plan.add_doughs();
  dough.set_dish_id("rye");
  dough.set_levain_ratio("1:5:5");
  dough.set_dough_mass_g(1840);
  dough.set_levain_mass_g(90);
  dough.set_hydration_percent(74);
  dough.set_prefermented_flour_percent(4.6);
  dough.set_water_celsius(27);
  v1::FermentForecast& stage = *dough.add_stages();
  stage.set_step_id("rye/levain");
  stage.set_stage(v1::FERMENT_STAGE_LEVAIN);
  stage.set_place_id("counter");
  *stage.mutable_start_time() = at("2026-06-19T21:10:00+01:00");
  *stage.mutable_end_time() = at("2026-06-20T07:00:00+01:00");
  *stage.mutable_ready_from_time() = at("2026-06-20T05:40:00+01:00");
  *stage.mutable_best_time() = at("2026-06-20T06:50:00+01:00");
  *stage.mutable_ready_until_time() = at("2026-06-20T08:30:00+01:00");
  *stage.mutable_fast_time() = at("2026-06-20T05:30:00+01:00");
  *stage.mutable_slow_time() = at("2026-06-20T08:40:00+01:00");
  stage.set_wanted_rise(2.4);
  stage.set_rise_at_end(2.45);
  stage.set_celsius_at_end(21);
  for (int i = 0; i <= 12; ++i) {
    v1::RiseSample& sample = *stage.add_samples();
    *sample.mutable_time() =
        google::protobuf::util::TimeUtil::SecondsToTimestamp(stage.start_time().seconds() + i * 3600);
    sample.set_rise(1.0 + 1.6 * i * i / 144.0);
  }
}

}  // namespace

google::protobuf::Timestamp at(const std::string& rfc3339) {
  google::protobuf::Timestamp time;
  google::protobuf::util::TimeUtil::FromString(rfc3339, &time);
  return time;
}

google::protobuf::Duration minutes(int count) {
  return google::protobuf::util::TimeUtil::MinutesToDuration(count);
}

v1::Bundle sampleBundle() {
  v1::Bundle bundle;
  v1::Household& household = *bundle.mutable_household();
  household.set_id("h1");
  household.set_display_name("Calçada 9");
  household.set_time_zone("Europe/Lisbon");
  for (const auto& [id, name] : {std::pair("ana", "Ana"), std::pair("ben", "Benoît")}) {
    v1::Member& member = *household.add_members();
    member.set_id(id);
    member.set_display_name(name);
    member.set_role(v1::ROLE_HOST);
  }
  v1::Kitchen& kitchen = *bundle.add_kitchens();
  kitchen.set_id("k1");
  kitchen.set_display_name("Kitchen");
  for (const auto& [id, name] : {std::pair("big", "Large oven"), std::pair("small", "Small oven")}) {
    v1::Oven& oven = *kitchen.add_ovens();
    oven.set_id(id);
    oven.set_display_name(name);
  }
  v1::Place& counter = *kitchen.add_places();
  counter.set_id("counter");
  counter.set_display_name("Counter by the window");
  counter.set_kind(v1::PLACE_KIND_COUNTER);
  v1::Equipment& mixer = *kitchen.add_equipment();
  mixer.set_id("mixer");
  mixer.set_display_name("Stand mixer");
  v1::Recipe& rye = *bundle.add_recipes() = recipe("r-rye", "Rye loaf");
  addStep(rye, "feed", "Feed the levain");
  v1::Recipe& gratin = *bundle.add_recipes() = recipe("r-gratin", "Leek gratin");
  addStep(gratin, "bake", "Bake the gratin");
  v1::Recipe& tart = *bundle.add_recipes() = recipe("r-tart", "Plum tart");
  addStep(tart, "bake", "Bake the tart");
  v1::Event& event = *bundle.add_events();
  event.set_id("e1");
  event.set_display_name("Midsummer supper");
  event.set_kitchen_id("k1");
  event.set_location("Calçada 9");
  v1::Course& main = *event.add_courses();
  main.set_id("main");
  main.set_display_name("Main course");
  *main.mutable_serving_time() = at("2026-06-20T19:00:00+01:00");
  addDish(event, "rye", "r-rye", "main");
  addDish(event, "gratin", "r-gratin", "main");
  return bundle;
}

v1::Plan samplePlan() {
  v1::Plan plan;
  plan.set_id("e1");
  plan.set_time_zone("Europe/Lisbon");
  addBreadSteps(plan);
  addOvenSteps(plan);
  addProgram(plan);
  addDough(plan);
  v1::PlannedCourse& course = *plan.add_courses();
  course.set_course_id("main");
  *course.mutable_serving_time() = at("2026-06-20T19:00:00+01:00");
  *course.mutable_ready_time() = at("2026-06-20T18:50:00+01:00");
  *course.mutable_slack_duration() = minutes(10);
  plan.add_dishes()->set_dish_id("rye");
  plan.add_dishes()->set_dish_id("gratin");
  v1::OvenClash& clash = *plan.add_oven_clashes();
  clash.set_oven_id("big");
  clash.set_step_a_id("rye/bake");
  clash.set_step_b_id("gratin/bake");
  *clash.mutable_naive_a()->mutable_start() = at("2026-06-20T17:10:00+01:00");
  *clash.mutable_naive_b()->mutable_start() = at("2026-06-20T17:40:00+01:00");
  clash.set_naive_setpoint_a_celsius(230);
  clash.set_naive_setpoint_b_celsius(180);
  *clash.mutable_moved_a() = minutes(-70);
  clash.set_degrees_b(10);
  for (const char* step : {"rye/feed", "rye/mix", "gratin/bake"}) {
    v1::FirstAction& action = *plan.add_first_actions();
    action.set_step_id(step);
    action.set_date(std::string(step) == "rye/feed" ? "2026-06-19" : "2026-06-20");
    action.set_cook_member_id(std::string(step) == "gratin/bake" ? "ben" : "ana");
  }
  v1::Quality& quality = *plan.mutable_quality();
  quality.mutable_costs()->set_quality(50);
  quality.mutable_bounds()->set_quality(12);
  quality.set_proven_tier_count(3);
  return plan;
}

}  // namespace suppertide::terminal::testing
