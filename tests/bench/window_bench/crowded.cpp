#include "tests/bench/window_bench/crowded.h"

#include <string>

namespace suppertide::bench {
namespace {

constexpr std::int64_t kServing = 1'815'000'000;  // some evening
constexpr std::int64_t kDays = 4 * 24 * 60;       // minutes
constexpr int kCooks = 6;
constexpr int kDishes = 20;

void addStep(int number, int bars, v1::Plan& plan) {
  v1::PlannedStep& step = *plan.add_steps();
  const int dish = number % kDishes;
  step.set_dish_id("dish" + std::to_string(dish));
  step.set_step_id("step" + std::to_string(number));
  step.set_id(step.dish_id() + "/" + step.step_id());
  step.set_title("Chop and season no. " + std::to_string(number));
  const std::int64_t start = kServing - kDays * 60 + kDays * 60 * number / bars / 300 * 300;
  const int kind = number % 8;
  const int minutes = kind == 0 ? 180 : 10 + number % 5 * 5;
  step.mutable_start_time()->set_seconds(start);
  step.mutable_end_time()->set_seconds(start + minutes * 60);
  step.mutable_slack_duration()->set_seconds(number % 7 * 600);
  if (kind == 0) {
    step.set_kind(v1::STEP_KIND_FERMENT);
    step.set_dish_id("dish" + std::to_string(number / 8 % 4));
    step.set_id(step.dish_id() + "/" + step.step_id());
    return;
  }
  step.set_kind(kind == 1 ? v1::STEP_KIND_OVEN : kind == 2 ? v1::STEP_KIND_BURNER : v1::STEP_KIND_HANDS_ON);
  step.set_cook_member_id("cook" + std::to_string(number % kCooks));
  step.set_attention_percent(kind == 1 ? 10 : 100);
  if (kind == 1) step.set_oven_id(number % 16 == 1 ? "large" : "small");
  if (kind == 2) step.set_burner_count(1);
}

void addDough(const v1::PlannedStep& step, v1::Plan& plan) {
  v1::DoughForecast* dough = nullptr;
  for (v1::DoughForecast& one : *plan.mutable_doughs())
    if (one.dish_id() == step.dish_id()) dough = &one;
  if (dough == nullptr) {
    dough = plan.add_doughs();
    dough->set_dish_id(step.dish_id());
  }
  v1::FermentForecast& stage = *dough->add_stages();
  stage.set_step_id(step.id());
  *stage.mutable_start_time() = step.start_time();
  *stage.mutable_end_time() = step.end_time();
  *stage.mutable_ready_from_time() = step.end_time();
  stage.mutable_ready_from_time()->set_seconds(step.end_time().seconds() - 1800);
  *stage.mutable_ready_until_time() = step.end_time();
  constexpr int kSamples = 36;
  for (int i = 0; i <= kSamples; ++i) {
    v1::RiseSample& sample = *stage.add_samples();
    sample.mutable_time()->set_seconds(step.start_time().seconds() +
                                       (step.end_time().seconds() - step.start_time().seconds()) * i /
                                           kSamples);
    const double part = static_cast<double>(i) / kSamples;
    sample.set_rise(1 + part * part);
    sample.set_slow_rise(1 + part * part * 0.8);
    sample.set_fast_rise(1 + part * part * 1.2);
  }
}

void addOven(const std::string& id, v1::Plan& plan) {
  v1::OvenProgram& program = *plan.add_oven_programs();
  program.set_oven_id(id);
  for (std::int64_t minute = 0; minute < kDays; minute += 5) {
    v1::TemperatureSample& sample = *program.add_temperatures();
    sample.mutable_time()->set_seconds(kServing - (kDays - minute) * 60);
    sample.set_celsius(20 + static_cast<double>(minute / 5 % 48) * 4);
  }
}

}  // namespace

std::shared_ptr<const link::Replica> crowdedHousehold(int bars) {
  auto household = std::make_shared<link::Replica>();
  household->revision = 1;
  household->household.set_id("home");
  household->household.set_display_name("A crowded house");
  household->household.set_time_zone("Europe/Lisbon");
  v1::Event& event = household->events[kCrowdedEvent];
  event.set_id(kCrowdedEvent);
  event.set_display_name("Feast of all");
  v1::Course& course = *event.add_courses();
  course.set_id("main");
  course.set_display_name("Main");
  course.mutable_serving_time()->set_seconds(kServing + 3600);
  for (int i = 0; i < kCooks; ++i) {
    v1::Member& member = *household->household.add_members();
    member.set_id("cook" + std::to_string(i));
    member.set_display_name("Cook " + std::to_string(i));
    event.add_cooks()->set_member_id(member.id());
  }
  for (int i = 0; i < kDishes; ++i) {
    v1::Dish& dish = *event.add_dishes();
    dish.set_id("dish" + std::to_string(i));
    dish.set_display_name("Dish " + std::to_string(i));
    dish.set_course_id("main");
  }
  v1::Plan& plan = household->plans[kCrowdedEvent];
  plan.set_id(kCrowdedEvent);
  for (int i = 0; i < bars; ++i) addStep(i, bars, plan);
  for (const v1::PlannedStep& step : plan.steps())
    if (step.kind() == v1::STEP_KIND_FERMENT) addDough(step, plan);
  addOven("large", plan);
  addOven("small", plan);
  return household;
}

std::shared_ptr<const link::Replica> withStepLater(const link::Replica& household, int step) {
  auto copy = std::make_shared<link::Replica>(household);
  ++copy->revision;
  v1::PlannedStep& moved = *copy->plans.at(kCrowdedEvent).mutable_steps(step);
  moved.mutable_start_time()->set_seconds(moved.start_time().seconds() + 300);
  moved.mutable_end_time()->set_seconds(moved.end_time().seconds() + 300);
  return copy;
}

}  // namespace suppertide::bench
