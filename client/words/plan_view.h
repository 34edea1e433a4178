// One plan with what is needed to tell it: its event, names, times and units.
#pragma once

#include <map>
#include <memory>
#include <set>
#include <string>

#include "client/link/replica.h"
#include "client/words/plan_names.h"
#include "client/words/time_words.h"

namespace suppertide {

// Shares the replica. All lookups in one event.
class PlanView {
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
  // Reported as finished and not taken back.
  bool isDone(const v1::PlannedStep& step) const { return done_.count(step.id()) > 0; }

  // "220 °C" or "425 °F", as the household reads it; a dial has steps of 5 °F.
  QString dial(int celsius) const;
  QString degrees(double celsius) const;

 private:
  bool fahrenheit() const;
  void readPlan();
  void readProgress();

  std::shared_ptr<const link::Replica> replica_;
  const v1::Event* event_;
  const v1::Plan* plan_ = nullptr;
  const v1::Kitchen* kitchen_ = nullptr;
  PlanNames names_;
  TimeWords words_;
  std::map<std::string, const v1::PlannedStep*> steps_;  // by planned id
  std::map<std::string, const v1::PlannedDish*> dishes_;
  std::set<std::string> done_;  // planned ids
};

Instant toInstant(const google::protobuf::Timestamp& time);
double toMinutes(const google::protobuf::Duration& length);

}  // namespace suppertide
