#include "client/words/reason_words.h"

#include "client/words/rack_words.h"

namespace suppertide {

const v1::PlannedStep* ReasonWords::blocker(const v1::PlannedStep& step) const {
  return view_.step(step.reason().blocking_step_id());
}

bool ReasonWords::blockerIsLater(const v1::PlannedStep& step) const {
  const v1::PlannedStep* other = blocker(step);
  return other != nullptr && other->start_time().seconds() >= step.end_time().seconds();
}

bool ReasonWords::blockerOverlaps(const v1::PlannedStep& step) const {
  const v1::PlannedStep* other = blocker(step);
  return other != nullptr && other->start_time().seconds() < step.end_time().seconds() &&
         step.start_time().seconds() < other->end_time().seconds();
}

QString ReasonWords::blockerName(const v1::PlannedStep& step) const {
  const v1::PlannedStep* other = blocker(step);
  const QString title = QString::fromStdString(other->title());
  if (other->dish_id() == step.dish_id()) return tr("“%1”").arg(title);
  return tr("“%1” (%2)").arg(title, view_.names().dish(other->dish_id()));
}

QString ReasonWords::busy(const v1::PlannedStep& step, const QString& who) const {
  if (blocker(step) == nullptr) return tr("%1 is busy before and after.").arg(who);
  return (blockerIsLater(step) ? tr("%1 is busy with %2 afterwards.") : tr("%1 is busy with %2 until then."))
      .arg(who, blockerName(step));
}

QString ReasonWords::inUse(const v1::PlannedStep& step, const QString& thing) const {
  if (blocker(step) == nullptr) return tr("%1: in use otherwise.").arg(thing);
  return (blockerIsLater(step) ? tr("%1: in use for %2 afterwards.") : tr("%1: in use for %2 until then."))
      .arg(thing, blockerName(step));
}

QString ReasonWords::setpoint(const v1::PlannedStep& step, const QString& oven) const {
  const v1::PlannedStep* other = blocker(step);
  if (other == nullptr) return tr("%1 has another temperature before and after.").arg(oven);
  const QString needs =
      other->setpoint_celsius() == 0 ? tr("another temperature") : view_.dial(other->setpoint_celsius());
  if (blockerOverlaps(step)) {
    return tr("Beside %1, which needs %2 in %3.").arg(blockerName(step), needs, oven);
  }
  return (blockerIsLater(step) ? tr("Before %1, which needs %2 in %3.")
                               : tr("After %1, which needs %2 in %3."))
      .arg(blockerName(step), needs, oven);
}

QString ReasonWords::sentence(const v1::PlannedStep& step) const {
  const std::string& thingId = step.reason().thing_id();
  const bool burners = thingId == "burners";
  const QString thing = thingId.empty() ? QString()
                        : burners       ? tr("The burners")
                                        : view_.names().thing(thingId);
  const bool known = blocker(step) != nullptr;
  switch (step.reason().cause()) {
    case v1::CAUSE_SERVING:
      return tr("In time for “%1”.").arg(view_.names().courseOfDish(step.dish_id()));
    case v1::CAUSE_FOLLOWS:
      if (!known) return tr("Right after the step before it.");
      return (blockerIsLater(step) ? tr("Before %1.") : tr("After %1.")).arg(blockerName(step));
    case v1::CAUSE_MUST_FOLLOW:
      return known ? tr("Close to %1: they must not be far apart.").arg(blockerName(step))
                   : tr("Must not be far from its next step.");
    case v1::CAUSE_READINESS:
      return known ? tr("%1 is ready then.").arg(blockerName(step)) : tr("The dough is ready then.");
    case v1::CAUSE_COOK_BUSY:
      return busy(step, thing.isEmpty() ? tr("The cook") : thing);
    case v1::CAUSE_COOK_AWAY:
      return tr("%1 is away or asleep otherwise.").arg(thing.isEmpty() ? tr("The cook") : thing);
    case v1::CAUSE_OVEN_SETPOINT:
      return setpoint(step, thing.isEmpty() ? tr("the oven") : thing);
    case v1::CAUSE_OVEN_FULL:
      if (step.reason().may_fit() && known)
        return tr("Not sure to fit into %1 beside %2. %3").arg(thing, blockerName(step), RackWords::mayFit());
      return known ? tr("No rack free in %1 beside %2.").arg(thing, blockerName(step))
                   : tr("No rack free in %1.").arg(thing.isEmpty() ? tr("the oven") : thing);
    case v1::CAUSE_THING_BUSY:
      return inUse(step, thing.isEmpty() ? tr("What it needs") : thing);
    case v1::CAUSE_FOOD_SAFETY:
      return tr("A food-safety limit on time holds it there.");
    case v1::CAUSE_KEPT_APART:
      if (!known) return tr("Kept apart from what a guest must not have.");
      return (blockerIsLater(step) ? tr("Kept apart from what a guest must not have: before %1.")
                                   : tr("Kept apart from what a guest must not have: after %1."))
          .arg(blockerName(step));
    case v1::CAUSE_PINNED:
      return tr("Fixed by hand.");
    case v1::CAUSE_BEST:
      return tr("The best time for it.");
    default:
      return {};
  }
}

}  // namespace suppertide
