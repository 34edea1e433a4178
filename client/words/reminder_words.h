// What a reminder says: a title that can be read from two metres, and a line of where and why.
#pragma once

#include <QtCore/qcoreapplication.h>

#include "client/words/plan_view.h"
#include "suppertide/v1/reminder.pb.h"

namespace suppertide {

class ReminderWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::ReminderWords)
 public:
  // "Now: Shape the rolls", "Set the big oven to 220 °C".
  static QString title(const PlanView& view, const v1::Reminder& reminder);
  // "Butter rolls · at 15:05"; may be empty.
  static QString text(const PlanView& view, const v1::Reminder& reminder);
  static int symbol(v1::ReminderKind kind);
};

}  // namespace suppertide
