// The run sheet in the reader's language: a sheet a cook, then ovens, breads and shopping.
#pragma once

#include <QtCore/qcoreapplication.h>

#include <string>
#include <vector>

#include "client/paper/paper.h"
#include "client/words/plan_view.h"
#include "suppertide/v1/menu.pb.h"

namespace suppertide {

class SheetWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::SheetWords)
 public:
  // `view` has a plan.
  explicit SheetWords(const PlanView& view) : view_(view) {}

  // Of all cooks, with ovens, breads and what to buy; with a `memberId` that cook's alone. A list to buy
  // without items is left out.
  std::vector<paper::Sheet> sheets(const std::vector<v1::ShoppingItem>& shopping,
                                   const std::string& memberId = {}) const;

 private:
  std::string courses() const;
  paper::Item stepItem(const v1::PlannedStep& step) const;
  paper::Sheet cookSheet(const std::string& memberId) const;
  paper::Sheet ovenSheet() const;
  paper::Item segmentItem(const v1::OvenSegment& segment) const;
  paper::Sheet breadSheet() const;
  paper::Item stageItem(const v1::FermentForecast& stage) const;
  paper::Sheet shoppingSheet(const std::vector<v1::ShoppingItem>& shopping) const;
  QString titleWithDish(const v1::PlannedStep& step) const;

  const PlanView& view_;
};

}  // namespace suppertide
