// An event being changed, before anybody else sees it: plain edits on the document.
//
// Each edit leaves a document that names nothing twice and nothing that is gone; whether it is
// allowed is the server's to say.
#pragma once

#include <QtCore/qdatetime.h>
#include <QtCore/qtimezone.h>

#include <string>
#include <vector>

#include "suppertide/v1/event.pb.h"

namespace suppertide {

class EventDraft {
 public:
  EventDraft() = default;
  // `zone`: in which days and times of day are meant.
  EventDraft(v1::Event event, QTimeZone zone) : event_(std::move(event)), zone_(std::move(zone)) {}

  // One course at 19:00 on `date`, every cook given, no guests and dishes yet.
  static v1::Event fresh(const std::string& name, const std::string& kitchenId, const QDate& date,
                         const QTimeZone& zone, const std::vector<std::string>& cookIds,
                         const std::string& courseName);

  const v1::Event& event() const { return event_; }

  void setName(const std::string& name) { event_.set_display_name(name); }
  void setLocation(const std::string& location) { event_.set_location(location); }
  void setKitchen(const std::string& kitchenId) { event_.set_kitchen_id(kitchenId); }
  // The day of the first course; all else keeps its hour and its distance in days.
  void moveToDay(const QDate& day);

  std::string addCourse(const std::string& name);  // an hour after the last one; returns its id
  // Its dishes go with it. The last course stays.
  void removeCourse(const std::string& courseId);
  void renameCourse(const std::string& courseId, const std::string& name);
  // On its day; the courses stay in the order of their times. False: no such course.
  bool setServing(const std::string& courseId, int minutesAfterMidnight);

  std::string addGuest(const std::string& name);
  void removeGuest(const std::string& guestId);
  void renameGuest(const std::string& guestId, const std::string& name);
  void setPortion(const std::string& guestId, double portion);
  void addNeed(const std::string& guestId, const std::string& name, v1::NeedSeverity severity);
  void removeNeed(const std::string& guestId, int index);
  void setSeverity(const std::string& guestId, int index, v1::NeedSeverity severity);

  // A recipe may be made twice; each is a dish of its own. Returns its id.
  std::string addDish(const std::string& recipeId, const std::string& courseId);
  // What a person put somewhere of it goes with it.
  void removeDish(const std::string& dishId);
  void setDishCourse(const std::string& dishId, const std::string& courseId);
  // Empty: anyone.
  void setDishCook(const std::string& dishId, const std::string& memberId);
  void setDishServings(const std::string& dishId, int count);  // 0: for all guests

  // A cook who is taken out no longer makes any dish by name.
  void setCooks(const std::string& memberId, bool cooks);

 private:
  v1::Course* course(const std::string& id);
  v1::Guest* guest(const std::string& id);
  v1::Dish* dish(const std::string& id);
  void sortCourses();

  v1::Event event_;
  QTimeZone zone_ = QTimeZone::utc();
};

}  // namespace suppertide
