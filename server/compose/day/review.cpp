#include "server/compose/day/review.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"
#include "server/compose/axis.h"
#include "server/compose/day/local_hours.h"
#include "server/compose/seen_doughs.h"
#include "server/kitchen/safety.h"
#include "server/kitchen/safety_life.h"

namespace suppertide::compose {
namespace {

constexpr double kRoomCelsius = 21;
// Below these a difference teaches nothing; common practice, no source.
constexpr double kLeastMinutes = 3;
constexpr double kLeastShare = 0.15;
constexpr double kLeastPace = 0.05;

// What was reported of a step.
struct Told {
  std::optional<std::int64_t> start;
  std::optional<std::int64_t> end;
  bool skipped = false;
  std::string member;
};

std::map<std::string, Told> toldOf(const v1::Progress& progress) {
  std::map<std::string, Told> told;
  for (const v1::Report* report : standingReports(progress)) {
    const v1::Report::WhatCase what = report->what_case();
    if (what != v1::Report::kStarted && what != v1::Report::kFinished && what != v1::Report::kSkipped)
      continue;
    Told& step = told[absl::StrCat(report->dish_id(), "/", report->step_id())];
    step.member = report->member_id();
    if (what == v1::Report::kStarted) step.start = report->happen_time().seconds();
    if (what == v1::Report::kFinished) step.end = report->happen_time().seconds();
    step.skipped = what == v1::Report::kSkipped;
  }
  return told;
}

google::protobuf::Timestamp at(std::int64_t seconds) {
  google::protobuf::Timestamp time;
  time.set_seconds(seconds);
  return time;
}

const google::protobuf::Timestamp& firstStart(const v1::PlannedStep& step) {
  return step.has_first_start_time() ? step.first_start_time() : step.start_time();
}
const google::protobuf::Timestamp& firstEnd(const v1::PlannedStep& step) {
  return step.has_first_end_time() ? step.first_end_time() : step.end_time();
}

void addSteps(const PastEvent& past, v1::Review& review) {
  const auto told = toldOf(past.progress);
  for (const v1::PlannedStep& step : past.plan.steps()) {
    const auto found = told.find(step.id());
    if (found == told.end()) continue;
    v1::StepReview& row = *review.add_steps();
    row.set_step_id(step.id());
    row.set_title(step.title());
    *row.mutable_planned_start_time() = firstStart(step);
    *row.mutable_planned_end_time() = firstEnd(step);
    if (found->second.start) *row.mutable_start_time() = at(*found->second.start);
    if (found->second.end) *row.mutable_end_time() = at(*found->second.end);
    row.set_skipped(found->second.skipped);
    row.set_member_id(found->second.member);
  }
  std::stable_sort(review.mutable_steps()->begin(), review.mutable_steps()->end(),
                   [](const v1::StepReview& a, const v1::StepReview& b) {
                     return a.planned_start_time().seconds() < b.planned_start_time().seconds();
                   });
}

// When a dish was ready: its last step as told, else as the last plan has it.
std::int64_t readyAt(const PastEvent& past, const std::map<std::string, Told>& told,
                     const std::string& dish) {
  std::int64_t ready = 0;
  for (const v1::PlannedStep& step : past.plan.steps()) {
    if (step.dish_id() != dish || step.left_out()) continue;
    const auto found = told.find(step.id());
    const bool said = found != told.end() && found->second.end;
    ready = std::max(ready, said ? *found->second.end : step.end_time().seconds());
  }
  return ready;
}

void addCourses(const PastEvent& past, v1::Review& review) {
  const auto told = toldOf(past.progress);
  for (const v1::Course& course : past.documents.event.courses()) {
    std::int64_t ready = 0;
    for (const v1::Dish& dish : past.documents.event.dishes())
      if (dish.course_id() == course.id()) ready = std::max(ready, readyAt(past, told, dish.id()));
    if (ready == 0) continue;
    v1::CourseReview& row = *review.add_courses();
    row.set_course_id(course.id());
    *row.mutable_serving_time() = course.serving_time();
    *row.mutable_ready_time() = at(ready);
    row.mutable_late_duration()->set_seconds(
        std::max<std::int64_t>(0, ready - course.serving_time().seconds()));
  }
}

const v1::FermentForecast* stageOf(const v1::Plan& plan, const std::string& stepId) {
  for (const v1::DoughForecast& dough : plan.doughs())
    for (const v1::FermentForecast& stage : dough.stages())
      if (stage.step_id() == stepId) return &stage;
  return nullptr;
}

void addDoughLooks(const PastEvent& past, v1::Review& review) {
  for (const v1::Report* report : standingReports(past.progress)) {
    const bool rise = report->what_case() == v1::Report::kRise;
    if (!rise && report->what_case() != v1::Report::kDoughCelsius) continue;
    v1::DoughReview& row = *review.add_doughs();
    row.set_step_id(absl::StrCat(report->dish_id(), "/", report->step_id()));
    *row.mutable_look_time() = report->happen_time();
    if (rise)
      row.set_seen_rise(report->rise());
    else
      row.set_seen_celsius(report->dough_celsius());
  }
}

kitchen::RuleSet rulesOf(const v1::Household& household) {
  return household.safety_rules() == v1::SAFETY_RULES_FOOD_SERVICE ? kitchen::RuleSet::kFoodService
                                                                   : kitchen::RuleSet::kConsumer;
}

void setLimits(const PastEvent& past, std::int64_t ready, v1::Leftover& left) {
  const kitchen::RuleSet rules = rulesOf(past.documents.household);
  left.set_rules(rules == kitchen::RuleSet::kFoodService ? v1::SAFETY_RULES_FOOD_SERVICE
                                                         : v1::SAFETY_RULES_CONSUMER);
  const absl::TimeZone zone = zoneOf(past.documents.household, past.documents.event);
  const kitchen::Limit& room = kitchen::roomLimit(kRoomCelsius, false, rules);
  *left.mutable_chill_by_time() = at(ready + static_cast<std::int64_t>(room.value * 60));
  left.add_sources(std::string(room.source.title));
  const absl::CivilDay cooked = absl::ToCivilDay(absl::FromUnixSeconds(ready), zone);
  const auto through = kitchen::keepThrough(
      std::chrono::sys_days(std::chrono::days(cooked - absl::CivilDay(1970, 1, 1))), rules);
  const absl::CivilDay last = absl::CivilDay(1970, 1, 1) + through.time_since_epoch().count();
  // The end of that day.
  *left.mutable_use_by_time() = toTimestamp(absl::FromCivil(last + 1, zone));
  left.add_sources(std::string(kitchen::limit(kitchen::LimitKind::kKeepDays, rules).source.title));
  const kitchen::Limit& reheat = kitchen::limit(kitchen::LimitKind::kReheat, rules);
  left.set_reheat_celsius(reheat.value);
  left.add_sources(std::string(reheat.source.title));
}

void addLeftovers(const PastEvent& past, v1::Review& review) {
  std::map<std::string, double> told;
  for (const v1::Report* report : standingReports(past.progress))
    if (report->what_case() == v1::Report::kLeftOverServingCount)
      told[report->dish_id()] = report->left_over_serving_count();
  const auto steps = toldOf(past.progress);
  for (const v1::Dish& dish : past.documents.event.dishes()) {
    const auto found = told.find(dish.id());
    const double count = found != told.end() ? found->second : dish.leftover_serving_count();
    const std::int64_t ready = readyAt(past, steps, dish.id());
    if (count <= 0 || ready == 0) continue;
    v1::Leftover& left = *review.add_leftovers();
    left.set_dish_id(dish.id());
    left.set_serving_count(count);
    left.set_reported(found != told.end());
    setLimits(past, ready, left);
  }
}

const v1::Recipe* recipeOf(const Documents& documents, const std::string& dishId) {
  for (const v1::Dish& dish : documents.event.dishes())
    if (dish.id() == dishId)
      for (const v1::Recipe& recipe : documents.recipes)
        if (recipe.id() == dish.recipe_id()) return &recipe;
  return nullptr;
}

const v1::Step* stepOf(const v1::Recipe& recipe, const std::string& id) {
  for (const v1::Step& step : recipe.steps())
    if (step.id() == id) return &step;
  return nullptr;
}

const v1::Spread& lengthOf(const v1::Step& step) {
  return step.has_oven() ? step.oven().duration() : step.duration();
}

// Minutes: how sure a recipe is of a length, one standard deviation.
double sureness(const v1::Spread& length) {
  const int least = minutesOf(length.least());
  const int most = minutesOf(length.most());
  const double likely = minutesOf(length.likely());
  return std::max({1.0, kLeastShare * likely, least > 0 && most > least ? (most - least) / 4.0 : 0.0});
}

// By recipe and step: how many times as long as planned it took, each time.
std::map<std::pair<std::string, std::string>, std::vector<double>> lengthsSeen(const PastEvent& past) {
  std::map<std::pair<std::string, std::string>, std::vector<double>> seen;
  const auto told = toldOf(past.progress);
  for (const v1::PlannedStep& planned : past.plan.steps()) {
    const auto found = told.find(planned.id());
    const v1::Recipe* recipe = recipeOf(past.documents, planned.dish_id());
    if (found == told.end() || recipe == nullptr || !found->second.start || !found->second.end) continue;
    const v1::Step* step = stepOf(*recipe, planned.step_id());
    const std::int64_t length = firstEnd(planned).seconds() - firstStart(planned).seconds();
    const std::int64_t took = *found->second.end - *found->second.start;
    if (step == nullptr || step->kind() == v1::STEP_KIND_FERMENT || !lengthOf(*step).has_likely() ||
        length < 60 || took < 60)
      continue;
    seen[{recipe->id(), step->id()}].push_back(static_cast<double>(took) / static_cast<double>(length));
  }
  return seen;
}

void addLengthLessons(const PastEvent& past, v1::Review& review) {
  for (const auto& [key, times] : lengthsSeen(past)) {
    const auto recipe = std::find_if(past.documents.recipes.begin(), past.documents.recipes.end(),
                                     [&, id = key.first](const v1::Recipe& r) { return r.id() == id; });
    const v1::Spread& length = lengthOf(*stepOf(*recipe, key.second));
    const double before = minutesOf(length.likely());
    double seen = 0;
    for (const double one : times) seen += one * before / static_cast<double>(times.size());
    if (std::abs(seen - before) < std::max(kLeastMinutes, kLeastShare * before)) continue;
    // The recipe's word counts as one observation more.
    const double count = static_cast<double>(times.size());
    v1::Lesson& lesson = *review.add_lessons();
    lesson.set_id(absl::StrCat("length/", key.first, "/", key.second));
    lesson.set_kind(v1::LESSON_KIND_STEP_LENGTH);
    lesson.set_subject_id(key.first);
    lesson.set_step_id(key.second);
    lesson.set_value_before(before);
    lesson.set_value_seen(seen);
    lesson.set_value_after(std::max(1.0, std::round((before + count * seen) / (1 + count))));
    lesson.set_spread_after(sureness(length) / std::sqrt(1 + count));
    lesson.set_observation_count(static_cast<int>(times.size()));
  }
}

// "1:2:3" as flour and water on one of starter.
bool readRatio(const std::string& ratio, v1::StarterObservation& seen) {
  const std::vector<std::string> parts = absl::StrSplit(ratio, ':');
  double starter = 0;
  double flour = 0;
  double water = 0;
  if (parts.size() != 3 || !absl::SimpleAtod(parts[0], &starter) || !absl::SimpleAtod(parts[1], &flour) ||
      !absl::SimpleAtod(parts[2], &water) || starter <= 0)
    return false;
  seen.set_flour_per_starter(flour / starter);
  seen.set_water_per_starter(water / starter);
  return true;
}

// The rises that were told, as observations of starters.
std::vector<std::pair<std::string, v1::StarterObservation>> risesSeen(const PastEvent& past) {
  std::vector<std::pair<std::string, v1::StarterObservation>> all;
  const auto told = toldOf(past.progress);
  for (const v1::Report* report : standingReports(past.progress)) {
    const std::string id = absl::StrCat(report->dish_id(), "/", report->step_id());
    const v1::FermentForecast* stage = stageOf(past.plan, id);
    const v1::Recipe* recipe = recipeOf(past.documents, report->dish_id());
    if (report->what_case() != v1::Report::kRise || stage == nullptr || recipe == nullptr ||
        !recipe->formula().has_levain() || stage->stage() == v1::FERMENT_STAGE_PREFERMENT)
      continue;
    const auto begun = told.find(id);
    v1::StarterObservation seen;
    *seen.mutable_feed_time() =
        begun != told.end() && begun->second.start ? at(*begun->second.start) : stage->start_time();
    *seen.mutable_observe_time() = report->happen_time();
    seen.set_rise(report->rise());
    if (!stage->place_id().empty()) {
      seen.set_kitchen_id(past.documents.kitchen.id());
      seen.set_place_id(stage->place_id());
    }
    if (stage->stage() == v1::FERMENT_STAGE_LEVAIN) {
      const auto& steps = past.plan.steps();
      const bool known = std::any_of(steps.begin(), steps.end(), [&](const v1::PlannedStep& step) {
        return step.dish_id() == report->dish_id() && readRatio(step.levain_ratio(), seen);
      });
      if (!known) continue;
    } else {
      seen.set_recipe_id(recipe->id());
      seen.set_stage(stage->stage());
    }
    if (seen.observe_time().seconds() <= seen.feed_time().seconds() || seen.rise() < 1 || seen.rise() > 6)
      continue;
    all.emplace_back(recipe->formula().levain().starter_id(), std::move(seen));
  }
  return all;
}

double paceOf(const v1::Starter& starter) {
  const double stated = starter.vigour() > 0 ? starter.vigour() : 1;
  return starter.has_learned_vigour() && starter.learned_vigour().value() > 0
             ? stated * starter.learned_vigour().value()
             : stated;
}

v1::Starter* starterCalled(BreadDocuments& documents, const std::string& id) {
  for (v1::Starter& starter : documents.starters)
    if (starter.id() == id) return &starter;
  return nullptr;
}

bool holds(const v1::Starter& starter, const v1::StarterObservation& seen) {
  return std::any_of(
      starter.observations().begin(), starter.observations().end(),
      [&](const v1::StarterObservation& old) { return old.SerializeAsString() == seen.SerializeAsString(); });
}

// Adds what was seen of the starter. How much of it is new.
int teach(const PastEvent& past, const std::string& starterId, BreadDocuments& documents) {
  constexpr int kMostObservations = 500;
  v1::Starter* starter = starterCalled(documents, starterId);
  if (starter == nullptr) return 0;
  int added = 0;
  for (auto& [id, seen] : risesSeen(past)) {
    if (id != starterId || holds(*starter, seen)) continue;
    *starter->add_observations() = std::move(seen);
    ++added;
  }
  const int surplus = starter->observations_size() - kMostObservations;
  if (surplus > 0) starter->mutable_observations()->DeleteSubrange(0, surplus);
  return added;
}

void addPaceLessons(const PastEvent& past, const BreadDocuments& household, v1::Review& review) {
  const absl::TimeZone zone = zoneOf(past.documents.household, past.documents.event);
  std::set<std::string> starters;
  for (const auto& [id, seen] : risesSeen(past)) starters.insert(id);
  for (const std::string& id : starters) {
    BreadDocuments documents = household;
    v1::Starter* starter = starterCalled(documents, id);
    if (starter == nullptr) continue;
    const double before = paceOf(*starter);
    const int count = teach(past, id, documents);
    if (count == 0 || !learnFromDoughs(documents, zone).ok()) continue;
    starter = starterCalled(documents, id);
    const double after = paceOf(*starter);
    if (std::abs(after / before - 1) < kLeastPace) continue;
    v1::Lesson& lesson = *review.add_lessons();
    lesson.set_id(absl::StrCat("vigour/", id));
    lesson.set_kind(v1::LESSON_KIND_STARTER_VIGOUR);
    lesson.set_subject_id(id);
    lesson.set_value_before(before);
    lesson.set_value_seen(after);
    lesson.set_value_after(after);
    lesson.set_spread_after(starter->learned_vigour().spread() * after);
    lesson.set_observation_count(count);
  }
}

void useLength(const v1::Lesson& lesson, BreadDocuments& household) {
  for (v1::Recipe& recipe : household.recipes) {
    if (recipe.id() != lesson.subject_id()) continue;
    for (v1::Step& step : *recipe.mutable_steps()) {
      if (step.id() != lesson.step_id()) continue;
      v1::Spread& length =
          step.has_oven() ? *step.mutable_oven()->mutable_duration() : *step.mutable_duration();
      const auto likely = durationOf(static_cast<std::int64_t>(lesson.value_after()));
      *length.mutable_likely() = likely;
      if (length.has_least() && length.least().seconds() > likely.seconds()) *length.mutable_least() = likely;
      if (length.has_most() && length.most().seconds() < likely.seconds()) *length.mutable_most() = likely;
    }
  }
}

}  // namespace

v1::Review reviewOf(const PastEvent& past) {
  v1::Review review;
  review.set_id(past.documents.event.id());
  addSteps(past, review);
  addCourses(past, review);
  addDoughLooks(past, review);
  addLeftovers(past, review);
  return review;
}

void addLessons(const PastEvent& past, const BreadDocuments& household, v1::Review& review) {
  addLengthLessons(past, review);
  addPaceLessons(past, household, review);
  std::stable_sort(review.mutable_lessons()->begin(), review.mutable_lessons()->end(),
                   [](const v1::Lesson& a, const v1::Lesson& b) {
                     return std::abs(std::log(a.value_after() / a.value_before())) >
                            std::abs(std::log(b.value_after() / b.value_before()));
                   });
}

absl::Status useLessons(const PastEvent& past, const v1::Review& review,
                        const std::set<std::string>& lessonIds, BreadDocuments& household) {
  bool learn = false;
  for (const v1::Lesson& lesson : review.lessons()) {
    if (lessonIds.count(lesson.id()) == 0) continue;
    if (lesson.kind() == v1::LESSON_KIND_STEP_LENGTH) useLength(lesson, household);
    if (lesson.kind() == v1::LESSON_KIND_STARTER_VIGOUR)
      learn = teach(past, lesson.subject_id(), household) > 0 || learn;
  }
  if (!learn) return absl::OkStatus();
  return learnFromDoughs(household, zoneOf(past.documents.household, past.documents.event)).status();
}

}  // namespace suppertide::compose
