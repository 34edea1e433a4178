#include "client/event/event_reading.h"

#include <algorithm>

#include "client/words/plan_view.h"
#include "client/words/text.h"

namespace suppertide {
namespace {

constexpr std::chrono::minutes kBefore{30};  // of the line of time, before the first serving
constexpr std::chrono::minutes kAfter{60};   // and after the last
constexpr int kMostMarks = 8;

int minutesOfDay(const QDateTime& time) {
  return time.time().hour() * 60 + time.time().minute();
}

}  // namespace

TimeWords timeWordsOf(const link::Replica& replica, const v1::Event& event) {
  return TimeWords(event.time_zone().empty() ? replica.household.time_zone() : event.time_zone());
}

EventReader::EventReader(const link::Replica& replica, const v1::Event& event,
                         const v1::CheckMenuResponse* check, const QHash<QString, QString>& problems)
    : replica_(replica),
      event_(event),
      check_(check),
      problems_(problems),
      names_(replica, event),
      words_(timeWordsOf(replica, event)),
      menu_(event_, names_) {
  if (event_.courses().empty()) return;
  lineStart_ = toInstant(event_.courses(0).serving_time());
  lineLimit_ = lineStart_;
  for (const v1::Course& course : event_.courses()) {
    lineStart_ = std::min(lineStart_, toInstant(course.serving_time()));
    lineLimit_ = std::max(lineLimit_, toInstant(course.serving_time()));
  }
  lineStart_ -= kBefore;
  lineLimit_ += kAfter;
}

double EventReader::part(Instant time) const {
  return minutesBetween(lineStart_, time) / std::max(1.0, minutesBetween(lineStart_, lineLimit_));
}

QString EventReader::problem(const QString& path) const {
  QStringList found;
  for (auto one = problems_.begin(); one != problems_.end(); ++one)
    if (one.key() == path || one.key().startsWith(path + QLatin1Char('.'))) found << one.value();
  found.sort();
  return found.join(QLatin1Char('\n'));
}

EventLists EventReader::read() const {
  EventLists lists;
  readCourses(lists);
  readMarks(lists);
  readGuests(lists);
  readDishes(lists);
  readCooks(lists);
  readWarnings(lists);
  return lists;
}

void EventReader::readCourses(EventLists& lists) const {
  for (int i = 0; i < event_.courses_size(); ++i) {
    const v1::Course& course = event_.courses(i);
    const Instant time = toInstant(course.serving_time());
    const auto dishes = std::count_if(event_.dishes().begin(), event_.dishes().end(),
                                      [&](const v1::Dish& dish) { return dish.course_id() == course.id(); });
    lists.courses.push_back({{QStringLiteral("courseId"), text(course.id())},
                             {QStringLiteral("name"), text(course.display_name())},
                             {QStringLiteral("serving"), words_.clock(time)},
                             {QStringLiteral("minutes"), minutesOfDay(words_.local(time))},
                             {QStringLiteral("part"), part(time)},
                             {QStringLiteral("dishCount"), static_cast<int>(dishes)},
                             {QStringLiteral("problem"), problem(QStringLiteral("courses[%1]").arg(i))}});
  }
}

void EventReader::readMarks(EventLists& lists) const {
  if (event_.courses().empty()) return;
  const double hours = minutesBetween(lineStart_, lineLimit_) / 60;
  const int step = hours <= kMostMarks ? 1 : hours <= 3 * kMostMarks ? 3 : 12;
  QDateTime at = words_.local(lineStart_);
  at.setTime(QTime(at.time().hour(), 0));
  for (; at.toSecsSinceEpoch() <= lineLimit_.time_since_epoch().count(); at = at.addSecs(step * 3600)) {
    const Instant time{std::chrono::seconds(at.toSecsSinceEpoch())};
    if (time < lineStart_) continue;
    lists.marks.push_back({{QStringLiteral("key"), QString::number(at.toSecsSinceEpoch())},
                           {QStringLiteral("part"), part(time)},
                           {QStringLiteral("label"), words_.clock(time)}});
  }
}

void EventReader::readGuests(EventLists& lists) const {
  int withNeeds = 0;
  for (int i = 0; i < event_.guests_size(); ++i) {
    const v1::Guest& guest = event_.guests(i);
    withNeeds += guest.needs().empty() ? 0 : 1;
    QVariantList needs;
    for (const v1::Need& need : guest.needs())
      needs << QVariantMap{{QStringLiteral("name"), text(need.name())},
                           {QStringLiteral("severity"), static_cast<int>(need.severity())},
                           {QStringLiteral("words"), MenuWords::severity(need.severity())}};
    lists.guests.push_back({{QStringLiteral("guestId"), text(guest.id())},
                            {QStringLiteral("name"), text(guest.display_name())},
                            {QStringLiteral("portion"), guest.portion() == 0 ? 1.0 : guest.portion()},
                            {QStringLiteral("needs"), needs},
                            {QStringLiteral("needsText"), MenuWords::needs(guest)},
                            {QStringLiteral("problem"), problem(QStringLiteral("guests[%1]").arg(i))}});
  }
  const int count = event_.guests_size();
  lists.guestText = count == 0   ? tr("No guests yet")
                    : count == 1 ? tr("1 guest")
                                 : tr("%1 guests").arg(count);
  if (withNeeds > 0) lists.guestText = tr("%1, %2 with needs").arg(lists.guestText).arg(withNeeds);
}

void EventReader::readDishes(EventLists& lists) const {
  static const v1::CheckMenuResponse kUnchecked;
  const v1::CheckMenuResponse& check = check_ != nullptr ? *check_ : kUnchecked;
  for (int i = 0; i < event_.dishes_size(); ++i) {
    const v1::Dish& dish = event_.dishes(i);
    QStringList collisions;
    bool grave = false;
    for (const v1::GuestCourse& cell : check.cells()) {
      for (const v1::DishForGuest& one : cell.dishes()) {
        if (one.dish_id() != dish.id()) continue;
        const QString words = menu_.collision(one, cell.guest_id());
        if (!words.isEmpty()) collisions << words;
        grave = grave || one.fit() == v1::DISH_FIT_HOLDS || one.fit() == v1::DISH_FIT_UNKNOWN;
      }
    }
    const int servings = dish.serving_count();
    lists.dishes.push_back(
        {{QStringLiteral("dishId"), text(dish.id())},
         {QStringLiteral("name"), names_.dish(dish.id())},
         {QStringLiteral("courseId"), text(dish.course_id())},
         {QStringLiteral("cookId"), text(dish.cook_member_id())},
         {QStringLiteral("cookName"),
          dish.cook_member_id().empty() ? QString() : names_.cook(dish.cook_member_id())},
         {QStringLiteral("servings"), servings},
         {QStringLiteral("servingsText"), servings == 0 ? tr("for everybody") : tr("for %1").arg(servings)},
         {QStringLiteral("collisions"), collisions.join(QLatin1Char('\n'))},
         {QStringLiteral("grave"), grave},
         {QStringLiteral("problem"), problem(QStringLiteral("dishes[%1]").arg(i))}});
  }
}

void EventReader::readCooks(EventLists& lists) const {
  for (const v1::Member& member : replica_.household.members()) {
    if (member.role() != v1::ROLE_COOK && member.role() != v1::ROLE_HOST) continue;
    const auto found =
        std::find_if(event_.cooks().begin(), event_.cooks().end(),
                     [&](const v1::EventCook& cook) { return cook.member_id() == member.id(); });
    const bool cooks = found != event_.cooks().end();
    QStringList spans;
    if (cooks) {
      for (const v1::TimeSpan& span : found->available())
        spans << words_.dayClock(toInstant(span.start())) + QStringLiteral("–") +
                     words_.clock(toInstant(span.limit()));
    }
    lists.cooks.push_back({{QStringLiteral("memberId"), text(member.id())},
                           {QStringLiteral("name"), text(member.display_name())},
                           {QStringLiteral("cooks"), cooks},
                           {QStringLiteral("hours"), !cooks            ? QString()
                                                     : spans.isEmpty() ? tr("whenever awake")
                                                                       : spans.join(tr(", "))}});
  }
}

void EventReader::readWarnings(EventLists& lists) const {
  if (check_ == nullptr) return;
  // What a guest cannot eat comes first.
  for (const bool grave : {true, false}) {
    for (const v1::MenuWarning& warning : check_->warnings()) {
      const QString words = menu_.warning(warning);
      if (words.isEmpty() || MenuWords::isGrave(warning) != grave) continue;
      const auto known = [&](const Record& one) { return one.value(QStringLiteral("words")) == words; };
      if (std::any_of(lists.warnings.begin(), lists.warnings.end(), known)) continue;
      lists.warnings.push_back({{QStringLiteral("words"), words}, {QStringLiteral("grave"), grave}});
    }
  }
}

}  // namespace suppertide
