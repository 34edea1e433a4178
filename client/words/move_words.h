// What another plan moves, in words: where a step was and is, and why.
#pragma once

#include <QtCore/qcoreapplication.h>
#include <QtCore/qstringlist.h>

#include "client/words/plan_view.h"

namespace suppertide {

class MoveWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::MoveWords)
 public:
  // `view` is of either plan: only names are looked up in it.
  explicit MoveWords(const PlanView& view) : view_(view) {}

  // "Sat 15:05"; "not planned" where the plan has no such step.
  QString was(const v1::MovedStep& moved) const;
  QString now(const v1::MovedStep& moved) const;
  // "15 min later, Noor instead of Ines"; empty for a step that is new or gone.
  QString changes(const v1::MovedStep& moved) const;
  // "Goes with “Shape”."; empty when no cause is told.
  QString cause(const v1::MovedStep& moved) const;

 private:
  QString instead(const QString& from, const QString& to) const;
  QString by(const v1::MovedStep& moved) const;

  const PlanView& view_;
};

}  // namespace suppertide
