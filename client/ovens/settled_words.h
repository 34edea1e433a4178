// Where two bakes wanted one oven, and how the plan settled it; a sentence each.
#pragma once

#include <QtCore/qcoreapplication.h>

#include "client/words/plan_view.h"

namespace suppertide {

class SettledWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::SettledWords)
 public:
  explicit SettledWords(const PlanView& view) : view_(view) {}

  // "Loaf (240 °C) and Beetroot (200 °C) both wanted Large oven on Sat 15:10."
  QString wanted(const v1::OvenClash& clash) const;
  // "Loaf goes in 40 min earlier; they share the oven at one temperature."; never empty.
  QString settled(const v1::OvenClash& clash) const;

 private:
  QString name(const v1::OvenClash& clash, const std::string& plannedId) const;
  QString dial(int celsius) const;
  QStringList side(const v1::OvenClash& clash, const std::string& plannedId, double movedMinutes, int degrees,
                   int naiveCelsius) const;

  const PlanView& view_;
};

}  // namespace suppertide
