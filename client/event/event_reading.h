// An event as lists for the screen: courses on a line of time, guests, dishes, cooks, warnings.
#pragma once

#include <QtCore/qcoreapplication.h>
#include <QtCore/qhash.h>

#include <memory>
#include <vector>

#include "client/event/menu_words.h"
#include "client/link/replica.h"
#include "client/link/session.h"
#include "client/ui/record_model.h"
#include "client/words/time_words.h"

namespace suppertide {

struct EventLists {
  std::vector<Record> courses, guests, dishes, cooks, warnings, marks;
  QString guestText;  // "14 guests, 3 with needs"
};

class EventReader {
  Q_DECLARE_TR_FUNCTIONS(suppertide::EventReader)
 public:
  // `check` may be null: not checked yet. `problems`: what is wrong, by field path ("guests[2].displayName").
  EventReader(const link::Replica& replica, const v1::Event& event, const v1::CheckMenuResponse* check,
              const QHash<QString, QString>& problems);

  EventLists read() const;

 private:
  void readCourses(EventLists& lists) const;
  void readMarks(EventLists& lists) const;
  void readGuests(EventLists& lists) const;
  void readDishes(EventLists& lists) const;
  void readCooks(EventLists& lists) const;
  void readWarnings(EventLists& lists) const;
  QString problem(const QString& path) const;  // of the field or anything below it
  double part(Instant time) const;             // on the line of time

  const link::Replica& replica_;
  const v1::Event& event_;
  const v1::CheckMenuResponse* check_;
  const QHash<QString, QString>& problems_;
  PlanNames names_;
  TimeWords words_;
  MenuWords menu_;
  Instant lineStart_{}, lineLimit_{};
};

// The event's own zone, else the household's.
TimeWords timeWordsOf(const link::Replica& replica, const v1::Event& event);

}  // namespace suppertide
