// Where each dough of a plan stands at a moment, in words.
#pragma once

#include <QtCore/qcoreapplication.h>

#include <string>
#include <vector>

#include "client/ui/record_model.h"
#include "client/words/plan_view.h"

namespace suppertide {

class DoughReader {
  Q_DECLARE_TR_FUNCTIONS(suppertide::DoughReader)
 public:
  DoughReader(const PlanView& view, Instant now) : view_(view), now_(now) {}

  // One a dough, in the plan's order.
  std::vector<Record> doughs() const;
  // The stages of one dough, by time.
  std::vector<Record> stages(const v1::DoughForecast& dough) const;
  // The stage under way, else the next, else the last; null without stages.
  const v1::FermentForecast* stageNow(const v1::DoughForecast& dough) const;

  // "Rising: about 1.4 times now. Ready 15:10–16:00, best at 15:40."
  QString state(const v1::FermentForecast& stage) const;
  // "Ready 15:10–16:00, best at 15:40"; says so when it never is.
  QString window(const v1::FermentForecast& stage) const;
  // As forecast for now, or for its start; what was measured comes first.
  QString temperature(const v1::FermentForecast& stage) const;
  // "Next: Shape the rolls at 14:05, Ines"; empty when the plan has nothing more for it.
  QString nextAct(const v1::DoughForecast& dough) const;
  // "Rolls: final proof".
  static QString stageName(v1::FermentStage stage);
  bool isUnderWay(const v1::FermentForecast& stage) const;
  bool isOver(const v1::FermentForecast& stage) const;

 private:
  QString when(Instant time) const;  // with its day when that is not today

  const PlanView& view_;
  Instant now_;
};

}  // namespace suppertide
