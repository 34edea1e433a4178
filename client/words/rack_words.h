// What is not sure about pans in an oven, in a sentence.
#pragma once

#include <QtCore/qcoreapplication.h>

#include "client/words/plan_view.h"

namespace suppertide {

class RackWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::RackWords)
 public:
  // Of pans whose place was neither found nor ruled out.
  static QString mayFit();
  // What may stand in the oven together after all, a line each; empty when all is sure.
  static QString doubts(const PlanView& view, const std::string& ovenId);
};

}  // namespace suppertide
