// A change that makes an event fit, in words: what is changed, what it costs.
#pragma once

#include <QtCore/qcoreapplication.h>

#include "client/words/plan_view.h"
#include "suppertide/v1/remedy.pb.h"

namespace suppertide {

class RemedyWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::RemedyWords)
 public:
  // `view` is of the event as it is, `event` and `plan` are with the change made.
  RemedyWords(const PlanView& view, const v1::Event& event, const v1::Plan& plan)
      : view_(view), event_(event), plan_(plan) {}

  // "Serve Main 20 min later, at 19:35.".
  QString sentence(const google::protobuf::RepeatedPtrField<v1::Remedy>& changes) const;
  // "Cost: 40 min waiting or off its best. In time in 96 of 100 evenings.".
  QString cost() const;

 private:
  QString one(const v1::Remedy& what) const;
  QString earlier(const v1::Remedy& what) const;
  QString levain(const v1::Remedy& what) const;
  QString later(const v1::Remedy& what) const;
  QString borrowed(const v1::Remedy& what) const;
  QString otherPan(const v1::Remedy& what) const;
  QString sizeOf(const v1::Pan& pan) const;
  QString heightOf(const v1::Pan& pan) const;
  bool inInches() const;
  QStringList besideInOven(const v1::Remedy& what) const;
  const v1::PlannedCourse* leastSure() const;

  const PlanView& view_;
  const v1::Event& event_;
  const v1::Plan& plan_;
};

}  // namespace suppertide
