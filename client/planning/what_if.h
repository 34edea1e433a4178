// "What if?": a step put elsewhere, what that would move and cost, before anything is changed.
//
// Asked of the server without storing anything. Of several questions asked in a hurry only the
// newest counts: an answer to an older one is dropped.
#pragma once

#include <QtCore/qobject.h>
#include <QtQml/qqmlregistration.h>

#include <optional>

#include "client/planning/documents.h"
#include "client/planning/move_model.h"
#include "client/session/household_session.h"

namespace suppertide {

class WhatIf : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by Planning")
  Q_PROPERTY(suppertide::MoveModel* moves READ moves CONSTANT FINAL)
  // A question is open: asked, or answered and not yet decided.
  Q_PROPERTY(bool open READ isOpen NOTIFY changed FINAL)
  Q_PROPERTY(bool asking READ asking NOTIFY changed FINAL)
  Q_PROPERTY(bool answered READ answered NOTIFY changed FINAL)
  Q_PROPERTY(QString stepId READ stepId NOTIFY changed FINAL)
  // "“Shape the rolls” at Sat 15:20 instead of Sat 15:05".
  Q_PROPERTY(QString question READ question NOTIFY changed FINAL)
  // "Nothing else has to move.", "3 other steps move.".
  Q_PROPERTY(QString summary READ summary NOTIFY changed FINAL)
  // One a line; empty: nothing.
  Q_PROPERTY(QString worse READ worse NOTIFY changed FINAL)
  Q_PROPERTY(QString better READ better NOTIFY changed FINAL)
  // Why it cannot be done or asked; empty: it can.
  Q_PROPERTY(QString obstacle READ obstacle NOTIFY changed FINAL)
  Q_PROPERTY(bool applying READ applying NOTIFY changed FINAL)
  Q_PROPERTY(bool mayApply READ mayApply NOTIFY changed FINAL)
 public:
  explicit WhatIf(HouseholdSession& session, QObject* parent = nullptr);

  // What if the step began so much later (+) or earlier (-) than planned? It is fixed there.
  Q_INVOKABLE void ask(const QString& stepId, double minutesLater);
  // What if the planner were free to put it elsewhere again?
  Q_INVOKABLE void askFree(const QString& stepId);
  // Makes it so for everybody.
  Q_INVOKABLE void apply();
  Q_INVOKABLE void leave();

  // A question under way, by number; for tests without a server.
  int number() const { return number_; }
  void take(int number, const absl::StatusOr<v1::MakePlanResponse>& answer);

  MoveModel* moves() const { return moves_; }
  bool isOpen() const { return !stepId_.empty(); }
  bool asking() const { return asking_; }
  bool answered() const { return answered_; }
  QString stepId() const { return QString::fromStdString(stepId_); }
  QString question() const { return question_; }
  QString summary() const { return summary_; }
  QString worse() const { return worse_; }
  QString better() const { return better_; }
  QString obstacle() const;
  bool applying() const { return applying_; }
  bool mayApply() const;
  // The household as it would be; null: nothing was answered.
  const Household& preview() const { return preview_; }

 Q_SIGNALS:
  void changed();
  void previewChanged();
  void left();
  // To be taken back: what was before apply() and what it made, in which revision of the household.
  void applied(const suppertide::Household& before, const suppertide::Household& after, const QString& what,
               qint64 revision);

 private:
  void askWith(const std::string& stepId, v1::Event event, const QString& question);
  void sendNext();
  void tell(const v1::MakePlanResponse& answer);
  void setPreview(Household preview);
  void clearAnswer();
  v1::ReplanRequest request(bool validateOnly) const;

  HouseholdSession& session_;
  MoveModel* moves_;
  std::string stepId_;
  v1::Event event_;  // with the step put elsewhere
  QString question_, summary_, worse_, better_, trouble_;
  int number_ = 0;  // of the newest question
  bool inFlight_ = false;
  bool waiting_ = false;  // the newest question has not been sent yet
  bool asking_ = false;
  bool answered_ = false;
  bool applying_ = false;
  std::int64_t awaited_ = 0;  // the household revision that has what was applied; 0: none
  Household preview_;
};

}  // namespace suppertide
