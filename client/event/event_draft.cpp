#include "client/event/event_draft.h"

#include <algorithm>
#include <vector>

namespace suppertide {
namespace {

constexpr int kFirstServing = 19 * 60;  // minutes after midnight
constexpr std::int64_t kHour = 3600;

template <class List>
auto* findIn(List* list, const std::string& id) {
  for (auto& one : *list)
    if (one.id() == id) return &one;
  return static_cast<decltype(&*list->begin())>(nullptr);
}

template <class List, class Gone>
void removeFrom(List* list, Gone gone) {
  list->erase(std::remove_if(list->begin(), list->end(), gone), list->end());
}

// "guest-3": short, not taken, and of the letters that ids may have.
template <class List>
std::string freeId(const List& list, const std::string& stem) {
  for (int number = 1;; ++number) {
    const std::string id = number == 1 ? stem : stem + "-" + std::to_string(number);
    const bool taken = std::any_of(list.begin(), list.end(), [&](const auto& one) { return one.id() == id; });
    if (!taken) return id;
  }
}

std::int64_t secondsOf(const QDate& date, int minutes, const QTimeZone& zone) {
  return QDateTime(date, QTime(0, 0).addSecs(minutes * 60), zone).toSecsSinceEpoch();
}

void shiftDays(google::protobuf::Timestamp* time, qint64 days, const QTimeZone& zone) {
  const QDateTime local = QDateTime::fromSecsSinceEpoch(time->seconds(), zone);
  time->set_seconds(QDateTime(local.date().addDays(days), local.time(), zone).toSecsSinceEpoch());
}

}  // namespace

v1::Event EventDraft::fresh(const std::string& name, const std::string& kitchenId, const QDate& date,
                            const QTimeZone& zone, const std::vector<std::string>& cookIds,
                            const std::string& courseName) {
  v1::Event event;
  event.set_display_name(name);
  event.set_kitchen_id(kitchenId);
  v1::Course* course = event.add_courses();
  course->set_id("course");
  course->set_display_name(courseName);
  course->mutable_serving_time()->set_seconds(secondsOf(date, kFirstServing, zone));
  for (const std::string& id : cookIds) event.add_cooks()->set_member_id(id);
  return event;
}

v1::Course* EventDraft::course(const std::string& id) {
  return findIn(event_.mutable_courses(), id);
}
v1::Guest* EventDraft::guest(const std::string& id) {
  return findIn(event_.mutable_guests(), id);
}
v1::Dish* EventDraft::dish(const std::string& id) {
  return findIn(event_.mutable_dishes(), id);
}

void EventDraft::sortCourses() {
  auto* courses = event_.mutable_courses();
  std::stable_sort(courses->pointer_begin(), courses->pointer_end(),
                   [](const v1::Course* a, const v1::Course* b) {
                     return a->serving_time().seconds() < b->serving_time().seconds();
                   });
}

void EventDraft::moveToDay(const QDate& day) {
  if (event_.courses().empty() || !day.isValid()) return;
  const std::int64_t first = event_.courses(0).serving_time().seconds();
  const qint64 days = QDateTime::fromSecsSinceEpoch(first, zone_).date().daysTo(day);
  for (v1::Course& course : *event_.mutable_courses()) shiftDays(course.mutable_serving_time(), days, zone_);
  if (event_.has_work_start_time()) shiftDays(event_.mutable_work_start_time(), days, zone_);
  for (v1::EventCook& cook : *event_.mutable_cooks()) {
    for (v1::TimeSpan& span : *cook.mutable_available()) {
      shiftDays(span.mutable_start(), days, zone_);
      shiftDays(span.mutable_limit(), days, zone_);
    }
  }
  for (v1::Unavailable& thing : *event_.mutable_unavailable()) {
    shiftDays(thing.mutable_when()->mutable_start(), days, zone_);
    shiftDays(thing.mutable_when()->mutable_limit(), days, zone_);
  }
  for (v1::StepPin& pin : *event_.mutable_pins())
    if (pin.has_start_time()) shiftDays(pin.mutable_start_time(), days, zone_);
}

std::string EventDraft::addCourse(const std::string& name) {
  const std::string id = freeId(event_.courses(), "course");
  const std::int64_t last =
      event_.courses().empty() ? 0 : event_.courses().rbegin()->serving_time().seconds();
  v1::Course* course = event_.add_courses();
  course->set_id(id);
  course->set_display_name(name);
  course->mutable_serving_time()->set_seconds(last + kHour);
  return id;
}

void EventDraft::removeCourse(const std::string& courseId) {
  if (event_.courses_size() < 2) return;
  std::vector<std::string> dishes;
  for (const v1::Dish& dish : event_.dishes())
    if (dish.course_id() == courseId) dishes.push_back(dish.id());
  for (const std::string& id : dishes) removeDish(id);
  removeFrom(event_.mutable_courses(), [&](const v1::Course& one) { return one.id() == courseId; });
}

void EventDraft::renameCourse(const std::string& courseId, const std::string& name) {
  if (v1::Course* found = course(courseId); found != nullptr) found->set_display_name(name);
}

bool EventDraft::setServing(const std::string& courseId, int minutesAfterMidnight) {
  v1::Course* found = course(courseId);
  if (found == nullptr) return false;
  const QDate date = QDateTime::fromSecsSinceEpoch(found->serving_time().seconds(), zone_).date();
  found->mutable_serving_time()->set_seconds(secondsOf(date, minutesAfterMidnight, zone_));
  sortCourses();
  return true;
}

std::string EventDraft::addGuest(const std::string& name) {
  const std::string id = freeId(event_.guests(), "guest");
  v1::Guest* guest = event_.add_guests();
  guest->set_id(id);
  guest->set_display_name(name);
  return id;
}

void EventDraft::removeGuest(const std::string& guestId) {
  removeFrom(event_.mutable_guests(), [&](const v1::Guest& one) { return one.id() == guestId; });
}

void EventDraft::renameGuest(const std::string& guestId, const std::string& name) {
  if (v1::Guest* found = guest(guestId); found != nullptr) found->set_display_name(name);
}

void EventDraft::setPortion(const std::string& guestId, double portion) {
  if (v1::Guest* found = guest(guestId); found != nullptr) found->set_portion(portion);
}

void EventDraft::addNeed(const std::string& guestId, const std::string& name, v1::NeedSeverity severity) {
  v1::Guest* found = guest(guestId);
  if (found == nullptr || name.empty()) return;
  for (v1::Need& need : *found->mutable_needs()) {
    if (need.name() != name) continue;
    need.set_severity(severity);
    return;
  }
  v1::Need* need = found->add_needs();
  need->set_name(name);
  need->set_severity(severity);
}

void EventDraft::removeNeed(const std::string& guestId, int index) {
  v1::Guest* found = guest(guestId);
  if (found == nullptr || index < 0 || index >= found->needs_size()) return;
  found->mutable_needs()->DeleteSubrange(index, 1);
}

void EventDraft::setSeverity(const std::string& guestId, int index, v1::NeedSeverity severity) {
  v1::Guest* found = guest(guestId);
  if (found == nullptr || index < 0 || index >= found->needs_size()) return;
  found->mutable_needs(index)->set_severity(severity);
}

std::string EventDraft::addDish(const std::string& recipeId, const std::string& courseId) {
  const std::string id = freeId(event_.dishes(), recipeId);
  v1::Dish* dish = event_.add_dishes();
  dish->set_id(id);
  dish->set_recipe_id(recipeId);
  dish->set_course_id(courseId);
  return id;
}

void EventDraft::removeDish(const std::string& dishId) {
  removeFrom(event_.mutable_dishes(), [&](const v1::Dish& one) { return one.id() == dishId; });
  removeFrom(event_.mutable_pins(), [&](const v1::StepPin& pin) { return pin.dish_id() == dishId; });
}

void EventDraft::setDishCourse(const std::string& dishId, const std::string& courseId) {
  if (v1::Dish* found = dish(dishId); found != nullptr) found->set_course_id(courseId);
}

void EventDraft::setDishCook(const std::string& dishId, const std::string& memberId) {
  if (v1::Dish* found = dish(dishId); found != nullptr) found->set_cook_member_id(memberId);
}

void EventDraft::setDishServings(const std::string& dishId, int count) {
  if (v1::Dish* found = dish(dishId); found != nullptr) found->set_serving_count(count);
}

void EventDraft::setCooks(const std::string& memberId, bool cooks) {
  removeFrom(event_.mutable_cooks(), [&](const v1::EventCook& one) { return one.member_id() == memberId; });
  if (cooks) {
    event_.add_cooks()->set_member_id(memberId);
    return;
  }
  for (v1::Dish& dish : *event_.mutable_dishes())
    if (dish.cook_member_id() == memberId) dish.clear_cook_member_id();
  for (v1::StepPin& pin : *event_.mutable_pins())
    if (pin.cook_member_id() == memberId) pin.clear_cook_member_id();
}

}  // namespace suppertide
