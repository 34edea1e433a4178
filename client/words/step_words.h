// Everything that is said about one planned step.
#pragma once

#include <QtCore/qcoreapplication.h>
#include <QtCore/qstringlist.h>
#include <QtQml/qqmlregistration.h>

#include "client/words/plan_view.h"

namespace suppertide {

// What the details panel shows; empty parts are left out.
struct StepDetails {
  Q_GADGET
  QML_VALUE_TYPE(stepDetails)
  Q_PROPERTY(QString id MEMBER id)
  Q_PROPERTY(QString title MEMBER title)
  Q_PROPERTY(QString dish MEMBER dish)
  Q_PROPERTY(QString kind MEMBER kind)
  Q_PROPERTY(int symbol MEMBER symbol)
  Q_PROPERTY(QString state MEMBER state)
  Q_PROPERTY(QString when MEMBER when)
  Q_PROPERTY(QString cook MEMBER cook)
  Q_PROPERTY(QString where MEMBER where)
  Q_PROPERTY(QString why MEMBER why)
  Q_PROPERTY(QString slack MEMBER slack)
  Q_PROPERTY(QString dough MEMBER dough)
  Q_PROPERTY(QString instructions MEMBER instructions)
  Q_PROPERTY(QString weighings MEMBER weighings)
  Q_PROPERTY(QString cautions MEMBER cautions)
  // A person put it where it is; it is done and stays.
  Q_PROPERTY(bool pinned MEMBER pinned)
  Q_PROPERTY(bool done MEMBER done)
  Q_PROPERTY(bool late MEMBER late)
 public:
  QString id, title, dish, kind, state, when, cook, where, why, slack, dough, instructions;
  QString weighings, cautions;  // one a line
  int symbol = 0;
  bool pinned = false;
  bool done = false;
  bool late = false;
  friend bool operator==(const StepDetails&, const StepDetails&) = default;
};

class StepWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::StepWords)
 public:
  explicit StepWords(const PlanView& view) : view_(view) {}

  // "Hands-on", "Ferment", "Oven": the kind in a word; and its sign.
  static QString kind(v1::StepKind kind);
  static int symbol(v1::StepKind kind);

  // "Roast the chickens (load 2 of 3)".
  static QString title(const v1::PlannedStep& step);
  // Whether there is anything to do or to wait for: neither left out nor a wait of no time.
  static bool isNeeded(const v1::PlannedStep& step);
  // "Shape the rolls, 14:05 to 14:30, Ines".
  QString spoken(const v1::PlannedStep& step) const;
  // Whether it makes its dish late: the dish is late and this step has no slack to give.
  bool isLate(const v1::PlannedStep& step) const;
  // "Late: its dish is ready 20 min after its time. Fixed by hand."; empty when there is nothing to say.
  QString state(const v1::PlannedStep& step) const;
  StepDetails details(const v1::PlannedStep& step) const;

 private:
  QString where(const v1::PlannedStep& step) const;
  QString oven(const v1::PlannedStep& step) const;
  QString dough(const v1::PlannedStep& step) const;
  QStringList weighings(const v1::PlannedStep& step) const;

  const PlanView& view_;
};

}  // namespace suppertide
