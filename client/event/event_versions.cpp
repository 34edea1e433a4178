#include "client/event/event_versions.h"

#include <QtCore/qlocale.h>

#include <algorithm>
#include <functional>

#include "client/event/event_reading.h"
#include "client/words/joined.h"
#include "client/words/plan_names.h"
#include "client/words/plan_view.h"
#include "client/words/text.h"

namespace suppertide {
namespace {

// One side in words: what a course, guest or dish of that version is.
class Side {
 public:
  Side(const link::Replica& replica, const v1::Event& event)
      : event_(event), words_(timeWordsOf(replica, event)), names_(replica, event) {}

  QString of(const v1::Course& course) const {
    return EventVersions::tr("%1, %2").arg(text(course.display_name()),
                                           words_.dayClock(toInstant(course.serving_time())));
  }
  QString of(const v1::Guest& guest) const {
    QStringList parts{text(guest.display_name())};
    for (const v1::Need& need : guest.needs()) parts << text(need.name());
    if (guest.portion() > 0 && guest.portion() != 1)
      parts << EventVersions::tr("portion %1").arg(QLocale().toString(guest.portion(), 'g', 3));
    return parts.join(EventVersions::tr(", "));
  }
  QString of(const v1::Dish& dish) const {
    QStringList parts{names_.dish(dish.id()), names_.courseOfDish(dish.id())};
    if (!dish.cook_member_id().empty()) parts << names_.cook(dish.cook_member_id());
    if (dish.serving_count() > 0) parts << EventVersions::tr("for %1").arg(dish.serving_count());
    return parts.join(EventVersions::tr(", "));
  }
  QString cooks() const {
    QStringList parts;
    for (const v1::EventCook& cook : event_.cooks()) parts << names_.cook(cook.member_id());
    return Joined::words(parts);
  }

 private:
  const v1::Event& event_;
  TimeWords words_;
  PlanNames names_;
};

class Rows {
 public:
  void add(const QString& key, const QString& what, const QString& mine, const QString& theirs) {
    if (mine == theirs) return;
    const QString none = EventVersions::tr("not there");
    rows_.push_back({{QStringLiteral("key"), key},
                     {QStringLiteral("what"), what},
                     {QStringLiteral("mine"), mine.isEmpty() ? none : mine},
                     {QStringLiteral("theirs"), theirs.isEmpty() ? none : theirs}});
  }
  template <class List>
  void addEach(const QString& what, const List& mine, const Side& mySide, const List& theirs,
               const Side& theirSide) {
    const auto find = [](const List& list, const std::string& id) {
      return std::find_if(list.begin(), list.end(), [&](const auto& one) { return one.id() == id; });
    };
    for (const auto& one : mine) {
      const auto other = find(theirs, one.id());
      add(what + text(one.id()), what, mySide.of(one),
          other == theirs.end() ? QString() : theirSide.of(*other));
    }
    for (const auto& one : theirs)
      if (find(mine, one.id()) == mine.end()) add(what + text(one.id()), what, {}, theirSide.of(one));
  }
  std::vector<Record> take() { return std::move(rows_); }

 private:
  std::vector<Record> rows_;
};

QString kitchenName(const link::Replica& replica, const std::string& id) {
  const auto found = replica.kitchens.find(id);
  return found == replica.kitchens.end() ? text(id) : text(found->second.display_name());
}

}  // namespace

std::vector<Record> EventVersions::differences(const link::Replica& replica, const v1::Event& mine,
                                               const v1::Event& theirs) {
  const Side my(replica, mine);
  const Side their(replica, theirs);
  Rows rows;
  rows.add(QStringLiteral("name"), tr("Name"), text(mine.display_name()), text(theirs.display_name()));
  rows.add(QStringLiteral("where"), tr("Where"), text(mine.location()), text(theirs.location()));
  rows.add(QStringLiteral("kitchen"), tr("Kitchen"), kitchenName(replica, mine.kitchen_id()),
           kitchenName(replica, theirs.kitchen_id()));
  rows.addEach(tr("Course"), mine.courses(), my, theirs.courses(), their);
  rows.addEach(tr("Guest"), mine.guests(), my, theirs.guests(), their);
  rows.addEach(tr("Dish"), mine.dishes(), my, theirs.dishes(), their);
  rows.add(QStringLiteral("cooks"), tr("Cooks"), my.cooks(), their.cooks());
  return rows.take();
}

}  // namespace suppertide
