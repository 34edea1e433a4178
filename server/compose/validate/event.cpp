#include <algorithm>

#include "absl/strings/str_cat.h"
#include "absl/time/time.h"
#include "server/compose/validate/documents.h"

namespace suppertide::compose {
namespace {

constexpr int kMostCourses = 12;
constexpr int kMostGuests = 200;
constexpr int kMostDishes = 60;
constexpr int kMostCooks = 20;
constexpr int kMostNeeds = 50;
constexpr std::int64_t kSecondsPerDay = 24 * 60 * 60;
constexpr std::int64_t kUsualWorkDays = 4;  // work starts so long before the first course
constexpr std::int64_t kMostWorkDays = 10;

std::string said(std::int64_t seconds) {
  return absl::FormatTime("%Y-%m-%d %H:%M UTC", absl::FromUnixSeconds(seconds), absl::UTCTimeZone());
}

// Serving times in order, and within ten days after work starts.
void checkTimes(const Checker& here, const v1::Event& event) {
  bool good = true;
  for (int i = 0; i < event.courses_size(); ++i)
    good = here.at("courses", i)
               .at("servingTime")
               .time(event.courses(i).has_serving_time(), event.courses(i).serving_time()) &&
           good;
  if (event.has_work_start_time())
    good = here.at("workStartTime").time(true, event.work_start_time()) && good;
  if (!good || event.courses().empty()) return;
  const std::int64_t start = event.has_work_start_time() ? event.work_start_time().seconds()
                                                         : event.courses(0).serving_time().seconds() -
                                                               kUsualWorkDays * kSecondsPerDay;
  for (int i = 0; i < event.courses_size(); ++i) {
    const Checker field = here.at("courses", i).at("servingTime");
    const std::int64_t time = event.courses(i).serving_time().seconds();
    if (time <= start || time > start + kMostWorkDays * kSecondsPerDay)
      field.wrong(said(time), absl::StrCat("must be within 10 days after work starts, ", said(start)));
    if (i > 0 && time < event.courses(i - 1).serving_time().seconds())
      field.wrong(said(time), "must not be before the course listed before it");
  }
}

std::set<std::string> checkCourses(const Checker& here, const v1::Event& event) {
  std::set<std::string> known;
  if (!here.at("courses").count(event.courses_size(), 1, kMostCourses, "courses")) return known;
  Once ids;
  for (int i = 0; i < event.courses_size(); ++i) {
    const Checker course = here.at("courses", i);
    course.at("id").id(event.courses(i).id());
    ids.add(course.at("id"), event.courses(i).id());
    course.at("displayName").optionalText(event.courses(i).display_name());
    course.at("lateLimit").minutes(event.courses(i).late_limit(), 0, kMinutesPerDay);
    known.insert(event.courses(i).id());
  }
  checkTimes(here, event);
  return known;
}

void checkGuests(const Checker& here, const v1::Event& event) {
  if (!here.at("guests").count(event.guests_size(), 0, kMostGuests, "guests")) return;
  Once ids;
  for (int i = 0; i < event.guests_size(); ++i) {
    const v1::Guest& guest = event.guests(i);
    const Checker field = here.at("guests", i);
    field.at("id").id(guest.id());
    ids.add(field.at("id"), guest.id());
    field.at("displayName").optionalText(guest.display_name());
    field.at("portion").zeroOrRange(guest.portion(), 0.25, 3, "portions");
    if (!field.at("needs").count(guest.needs_size(), 0, kMostNeeds, "needs")) continue;
    for (int n = 0; n < guest.needs_size(); ++n) {
      field.at("needs", n).at("name").text(guest.needs(n).name(), 60);
      field.at("needs", n)
          .at("severity")
          .chosen(guest.needs(n).severity(), "how strictly: dislikes it, avoids it or not even traces");
    }
  }
}

std::set<std::string> checkCooks(const Checker& here, const v1::Event& event) {
  std::set<std::string> known;
  if (!here.at("cooks").count(event.cooks_size(), 1, kMostCooks, "cooks")) return known;
  Once ids;
  for (int i = 0; i < event.cooks_size(); ++i) {
    const v1::EventCook& cook = event.cooks(i);
    const Checker field = here.at("cooks", i);
    field.at("memberId").id(cook.member_id());
    ids.add(field.at("memberId"), cook.member_id());
    known.insert(cook.member_id());
    if (!field.at("available").count(cook.available_size(), 0, kMostItems, "spans")) continue;
    for (int s = 0; s < cook.available_size(); ++s) field.at("available", s).span(true, cook.available(s));
  }
  return known;
}

void checkCook(const Checker& field, const std::string& id, const std::set<std::string>& cooks) {
  if (!id.empty() && cooks.count(id) == 0) field.wrong(id, "must be one of the event's cooks");
}

void checkDishes(const Checker& here, const v1::Event& event, const std::set<std::string>& courses,
                 const std::set<std::string>& cooks) {
  if (!here.at("dishes").count(event.dishes_size(), 1, kMostDishes, "dishes")) return;
  Once ids;
  for (int i = 0; i < event.dishes_size(); ++i) {
    const v1::Dish& dish = event.dishes(i);
    const Checker field = here.at("dishes", i);
    field.at("id").id(dish.id());
    ids.add(field.at("id"), dish.id());
    field.at("displayName").optionalText(dish.display_name(), 100);
    field.at("recipeId").id(dish.recipe_id());
    if (courses.count(dish.course_id()) == 0)
      field.at("courseId").wrong(dish.course_id(), "must be one of the event's courses");
    field.at("servingCount").range(dish.serving_count(), 0, kMostGuests, "guests");
    field.at("leftoverServingCount").range(dish.leftover_serving_count(), 0, kMostGuests, "portions");
    checkCook(field.at("cookMemberId"), dish.cook_member_id(), cooks);
  }
}

void checkPins(const Checker& here, const v1::Event& event, const std::set<std::string>& cooks) {
  if (!here.at("pins").count(event.pins_size(), 0, kMostItems, "pins")) return;
  Once pinned;
  for (int i = 0; i < event.pins_size(); ++i) {
    const v1::StepPin& pin = event.pins(i);
    const Checker field = here.at("pins", i);
    const bool known = std::any_of(event.dishes().begin(), event.dishes().end(),
                                   [&](const v1::Dish& d) { return d.id() == pin.dish_id(); });
    if (!known) field.at("dishId").wrong(pin.dish_id(), "must be one of the event's dishes");
    field.at("stepId").id(pin.step_id());
    pinned.add(field.at("stepId"), absl::StrCat(pin.dish_id(), "/", pin.step_id()));
    if (pin.has_start_time()) field.at("startTime").time(true, pin.start_time());
    checkCook(field.at("cookMemberId"), pin.cook_member_id(), cooks);
    field.at("ovenId").optionalId(pin.oven_id());
    field.at("placeId").optionalId(pin.place_id());
  }
}

}  // namespace

void checkEvent(const Checker& here, const v1::Event& event) {
  here.at("id").id(event.id());
  here.at("displayName").text(event.display_name(), 100);
  here.at("kitchenId").id(event.kitchen_id());
  here.at("location").optionalText(event.location());
  if (!event.time_zone().empty() && !isTimeZone(event.time_zone()))
    here.at("timeZone").wrong(event.time_zone(), "must be empty or a known time zone, as \"Europe/Lisbon\"");
  const auto courses = checkCourses(here, event);
  const auto cooks = checkCooks(here, event);
  checkGuests(here, event);
  checkDishes(here, event, courses, cooks);
  checkPins(here, event, cooks);
  if (!here.at("unavailable").count(event.unavailable_size(), 0, kMostItems, "things")) return;
  for (int i = 0; i < event.unavailable_size(); ++i) {
    const Checker field = here.at("unavailable", i);
    field.at("thingId").id(event.unavailable(i).thing_id());
    field.at("when").span(event.unavailable(i).has_when(), event.unavailable(i).when());
  }
}

Violations validate(const v1::Event& event) {
  Violations violations;
  checkEvent(Checker(violations), event);
  return violations;
}

}  // namespace suppertide::compose
