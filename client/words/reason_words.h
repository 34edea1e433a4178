// Why a step is neither earlier nor later, in a sentence.
#pragma once

#include <QtCore/qcoreapplication.h>

#include "client/words/plan_view.h"

namespace suppertide {

class ReasonWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::ReasonWords)
 public:
  explicit ReasonWords(const PlanView& view) : view_(view) {}

  // Empty when the plan gives no reason.
  QString sentence(const v1::PlannedStep& step) const;

 private:
  const v1::PlannedStep* blocker(const v1::PlannedStep& step) const;
  bool blockerIsLater(const v1::PlannedStep& step) const;
  bool blockerOverlaps(const v1::PlannedStep& step) const;
  // "“Shape”", with its dish when that is another.
  QString blockerName(const v1::PlannedStep& step) const;
  QString busy(const v1::PlannedStep& step, const QString& who) const;
  QString inUse(const v1::PlannedStep& step, const QString& thing) const;
  QString setpoint(const v1::PlannedStep& step, const QString& oven) const;

  const PlanView& view_;
};

}  // namespace suppertide
