// One plan with what is needed to tell it: its event, names, times and units.
#pragma once

#include <QtCore/qcoreapplication.h>

#include <map>
#include <memory>
#include <string>

#include "client/link/replica.h"
#include "client/words/plan_names.h"
#include "client/words/progress_reading.h"
#include "client/words/time_words.h"

namespace suppertide {

// Shares the replica. All lookups in one event.
class PlanView {
  Q_DECLARE_TR_FUNCTIONS(suppertide::PlanView)
 public:
  // `eventId` is an event of the replica; its plan may be missing.
  PlanView(std::shared_ptr<const link::Replica> replica, const std::string& eventId);

  const link::Replica& replica() const { return *replica_; }
  const v1::Event& event() const { return *event_; }
  const v1::Plan* plan() const { return plan_; }           // null: none yet
  const v1::Kitchen* kitchen() const { return kitchen_; }  // null: not known
  const PlanNames& names() const { return names_; }
  const TimeWords& words() const { return words_; }

  // By planned id, "dish/step"; null when the plan has none.
  const v1::PlannedStep* step(const std::string& plannedId) const;
  const v1::PlannedDish* dish(const std::string& dishId) const;
  // A step's title and, where it is another than `besideDish`, its dish: "“Shape” (Butter rolls)".
  QString quoted(const std::string& plannedId, const std::string& besideDish = {}) const;
  // A person put it where it is.
  bool isPinned(const v1::PlannedStep& step) const;
  // Reported as finished and not taken back.
  bool isDone(const v1::PlannedStep& step) const {
    return progress_.of(step.id()).state == StepProgress::State::kDone;
  }
  const ProgressReading& progress() const { return progress_; }

  // "220 °C" or "425 °F", as the household reads it; a dial has steps of 5 °F.
  QString dial(int celsius) const;
  QString degrees(double celsius) const;

 private:
  bool fahrenheit() const;
  void readPlan();

  std::shared_ptr<const link::Replica> replica_;
  const v1::Event* event_;
  const v1::Plan* plan_ = nullptr;
  const v1::Kitchen* kitchen_ = nullptr;
  PlanNames names_;
  TimeWords words_;
  std::map<std::string, const v1::PlannedStep*> steps_;  // by planned id
  std::map<std::string, const v1::PlannedDish*> dishes_;
  ProgressReading progress_;
};

Instant toInstant(const google::protobuf::Timestamp& time);
double toMinutes(const google::protobuf::Duration& length);

}  // namespace suppertide
