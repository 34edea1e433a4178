// Planning as people do it: a run, what would help, "what if?". What it changes is taken back by the
// session's undo.
//
// What it previews is not the household's plan yet; the timeline shows it as such.
#pragma once

#include "client/planning/plan_run.h"
#include "client/planning/remedy_search.h"
#include "client/planning/what_if.h"

namespace suppertide {

class Planning : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(suppertide::HouseholdSession* session READ session CONSTANT FINAL)
  Q_PROPERTY(suppertide::PlanRun* run READ run CONSTANT FINAL)
  Q_PROPERTY(suppertide::RemedySearch* remedies READ remedies CONSTANT FINAL)
  Q_PROPERTY(suppertide::WhatIf* whatIf READ whatIf CONSTANT FINAL)
  Q_PROPERTY(bool previewing READ previewing NOTIFY previewChanged FINAL)
  // What is wrong with the stored plan, in a sentence: dishes left out, late. Empty: nothing.
  Q_PROPERTY(QString shortfall READ shortfall NOTIFY stateChanged FINAL)
  // What was changed since it was planned, by name. Empty: nothing.
  Q_PROPERTY(QString outOfDate READ outOfDate NOTIFY stateChanged FINAL)
  // "Proven best" or what a longer search might gain. Empty: no plan.
  Q_PROPERTY(QString proof READ proof NOTIFY stateChanged FINAL)
  Q_PROPERTY(bool hasPlan READ hasPlan NOTIFY stateChanged FINAL)
  Q_PROPERTY(bool mayPlan READ mayPlan NOTIFY stateChanged FINAL)
 public:
  // `session` outlives it.
  explicit Planning(HouseholdSession& session, QObject* parent = nullptr);

  HouseholdSession* session() const { return &session_; }
  PlanRun* run() const { return run_; }
  RemedySearch* remedies() const { return remedies_; }
  WhatIf* whatIf() const { return whatIf_; }
  // The household with what is previewed: an open question before a chosen remedy before the
  // best plan so far. Null: nothing is.
  Household preview() const;
  // What is previewed is set against the stored plan, move by move.
  bool comparing() const { return whatIf_->preview() != nullptr || remedies_->preview() != nullptr; }
  bool previewing() const { return preview() != nullptr; }

  QString shortfall() const;
  QString outOfDate() const;
  QString proof() const;
  bool hasPlan() const;
  bool mayPlan() const { return session_.mayReport() && session_.view() != nullptr; }

 Q_SIGNALS:
  void previewChanged();
  void stateChanged();

 private:
  // `revision`: of the household with `after`.
  void remember(const Household& before, const Household& after, const QString& what, std::int64_t revision);
  void takeBack(const Household& before, const Household& after, const std::string& eventId);

  HouseholdSession& session_;
  PlanRun* run_;
  RemedySearch* remedies_;
  WhatIf* whatIf_;
};

}  // namespace suppertide
