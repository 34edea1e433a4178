// Who does what, read from a plan at a moment: the lists of the tasks screen.
#pragma once

#include <QtCore/qcoreapplication.h>

#include <vector>

#include "client/ui/record_model.h"
#include "client/words/plan_view.h"

namespace suppertide {

// What is to be said of the tasks of one cook.
struct TaskLists {
  std::vector<Record> now;      // due or under way, most pressing first
  std::vector<Record> next;     // the rest of the day, by start
  std::vector<Record> later;    // the first task of each later day
  std::vector<Record> resting;  // under way without anybody's hands
  std::vector<Record> others;   // what the other cooks do now
  std::vector<Record> fetches;  // what to take out of freezer and fridge
  int askingCount = 0;          // tasks in `now` that wait for this cook
};

class TaskReader {
  Q_DECLARE_TR_FUNCTIONS(suppertide::TaskReader)
 public:
  TaskReader(const PlanView& view, Instant now) : view_(view), now_(now) {}

  // `memberId` need not be a cook of the event; the lists are then empty but for the others'.
  TaskLists read(const std::string& memberId) const;

 private:
  const std::string& cookOf(const v1::PlannedStep& step) const;
  bool isOpen(const v1::PlannedStep& step) const;
  bool isUnderWay(const v1::PlannedStep& step) const;
  Record record(const v1::PlannedStep& step) const;
  Record actions(const v1::PlannedStep& step) const;
  QString countdown(const v1::PlannedStep& step) const;
  void readResting(const v1::PlannedStep& step, TaskLists& lists) const;
  void readOwn(const v1::PlannedStep& step, TaskLists& lists) const;
  void readOthers(const std::string& memberId, TaskLists& lists) const;
  QString doing(const std::string& memberId) const;
  void readFetches(const std::string& memberId, TaskLists& lists) const;
  bool isToday(Instant time) const;

  const PlanView& view_;
  Instant now_;
};

}  // namespace suppertide
