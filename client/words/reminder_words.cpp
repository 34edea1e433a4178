#include "client/words/reminder_words.h"

#include <QtCore/qlocale.h>

#include "client/ui/symbol.h"
#include "client/words/step_words.h"

namespace suppertide {
namespace {

QString stepTitle(const PlanView& view, const v1::Reminder& reminder) {
  const v1::PlannedStep* step = view.step(reminder.step_id());
  return step != nullptr ? StepWords::title(*step) : QString::fromStdString(reminder.title());
}

QString when(const PlanView& view, const v1::Reminder& reminder) {
  const Instant due = toInstant(reminder.due_time());
  const bool sameDay =
      view.words().local(due).date() == view.words().local(toInstant(reminder.remind_time())).date();
  return sameDay ? view.words().clock(due) : view.words().dayClock(due);
}

QString dishOf(const PlanView& view, const v1::Reminder& reminder) {
  const std::string& step = reminder.step_id();
  const std::string id = reminder.dish_id().empty() ? step.substr(0, step.find('/')) : reminder.dish_id();
  return id.empty() ? QString() : view.names().dish(id);
}

QString oven(const PlanView& view, const v1::Reminder& reminder) {
  return reminder.oven_id().empty() ? QString() : view.names().oven(reminder.oven_id());
}

}  // namespace

QString ReminderWords::title(const PlanView& view, const v1::Reminder& reminder) {
  const QString step = stepTitle(view, reminder);
  switch (reminder.kind()) {
    case v1::REMINDER_KIND_TOMORROW:
      return tr("First thing tomorrow: %1").arg(step);
    case v1::REMINDER_KIND_MORNING:
      return tr("First thing today: %1").arg(step);
    case v1::REMINDER_KIND_STEP_SOON:
      //: A time of day, and what is to be done then.
      return tr("At %1: %2").arg(when(view, reminder), step);
    case v1::REMINDER_KIND_PREHEAT:
      //: An oven by its name, and a temperature.
      return tr("%1 to %2").arg(oven(view, reminder), view.dial(reminder.setpoint_celsius()));
    case v1::REMINDER_KIND_DOUGH_LOOK:
      return tr("Look at the dough: %1").arg(dishOf(view, reminder));
    case v1::REMINDER_KIND_FETCH:
      return tr("Take out: %1").arg(QString::fromStdString(reminder.title()));
    case v1::REMINDER_KIND_TAKE_OUT:
      return reminder.oven_id().empty()
                 ? tr("Out of the oven: %1").arg(dishOf(view, reminder))
                 //: An oven by its name, and a dish.
                 : tr("Out of %1: %2").arg(oven(view, reminder), dishOf(view, reminder));
    default:
      return tr("Now: %1").arg(step);
  }
}

QString ReminderWords::text(const PlanView& view, const v1::Reminder& reminder) {
  const QString dish = dishOf(view, reminder);
  switch (reminder.kind()) {
    case v1::REMINDER_KIND_TOMORROW:
    case v1::REMINDER_KIND_MORNING:
      //: A dish, and a time.
      return tr("%1, %2").arg(dish, when(view, reminder));
    case v1::REMINDER_KIND_PREHEAT:
      return tr("For “%1” at %2").arg(stepTitle(view, reminder), when(view, reminder));
    case v1::REMINDER_KIND_DOUGH_LOOK: {
      const bool known = reminder.has_until_time();
      const QString until = known ? view.words().clock(toInstant(reminder.until_time())) : QString();
      if (!known) return tr("It may be ready from now on.");
      if (reminder.wanted_rise() <= 0) return tr("Ready from now until about %1.").arg(until);
      return tr("Ready from now until about %1, at %2 times its size.")
          .arg(until, QLocale().toString(reminder.wanted_rise(), 'f', 1));
    }
    case v1::REMINDER_KIND_FETCH: {
      const bool frozen = reminder.from() == v1::PLACE_KIND_FREEZER;
      return frozen ? tr("From the freezer, for %1.").arg(dish) : tr("From the fridge, for %1.").arg(dish);
    }
    case v1::REMINDER_KIND_TAKE_OUT:
      return stepTitle(view, reminder);
    default:
      return dish;
  }
}

int ReminderWords::symbol(v1::ReminderKind kind) {
  switch (kind) {
    case v1::REMINDER_KIND_PREHEAT:
    case v1::REMINDER_KIND_TAKE_OUT:
      return Symbol::Oven;
    case v1::REMINDER_KIND_DOUGH_LOOK:
      return Symbol::Dough;
    case v1::REMINDER_KIND_FETCH:
      return Symbol::TakeOut;
    default:
      return Symbol::Bell;
  }
}

}  // namespace suppertide
