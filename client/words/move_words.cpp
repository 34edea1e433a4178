#include "client/words/move_words.h"

#include <cmath>

namespace suppertide {

QString MoveWords::was(const v1::MovedStep& moved) const {
  return moved.has_old_start_time() ? view_.words().dayClock(toInstant(moved.old_start_time()))
                                    : tr("not planned");
}

QString MoveWords::now(const v1::MovedStep& moved) const {
  return moved.has_new_start_time() ? view_.words().dayClock(toInstant(moved.new_start_time()))
                                    : tr("not planned");
}

QString MoveWords::instead(const QString& from, const QString& to) const {
  return from.isEmpty() ? to : tr("%1 instead of %2").arg(to, from);
}

QString MoveWords::changes(const v1::MovedStep& moved) const {
  if (!moved.has_old_start_time() || !moved.has_new_start_time()) return {};
  QStringList parts;
  const double by = minutesBetween(toInstant(moved.old_start_time()), toInstant(moved.new_start_time()));
  if (std::abs(by) >= 1) parts << (by > 0 ? tr("%1 later") : tr("%1 earlier")).arg(view_.words().length(by));
  const auto named = [](const std::string& id, const QString& name) { return id.empty() ? QString() : name; };
  const auto add = [&](const std::string& before, const std::string& after, const QString& from,
                       const QString& to) {
    if (before != after && !after.empty()) parts << instead(named(before, from), to);
  };
  const PlanNames& names = view_.names();
  add(moved.old_cook_member_id(), moved.new_cook_member_id(), names.cook(moved.old_cook_member_id()),
      names.cook(moved.new_cook_member_id()));
  add(moved.old_oven_id(), moved.new_oven_id(), names.oven(moved.old_oven_id()),
      names.oven(moved.new_oven_id()));
  add(moved.old_place_id(), moved.new_place_id(), names.place(moved.old_place_id()),
      names.place(moved.new_place_id()));
  const int before = moved.old_setpoint_celsius();
  const int after = moved.new_setpoint_celsius();
  if (before != after && after != 0)
    parts << instead(before == 0 ? QString() : view_.dial(before), view_.dial(after));
  const double stretched =
      minutesBetween(toInstant(moved.old_end_time()), toInstant(moved.new_end_time())) - by;
  if (std::abs(by) < 1 && std::abs(stretched) >= 1)
    parts << tr("until %1").arg(view_.words().dayClock(toInstant(moved.new_end_time())));
  return parts.join(tr(", "));
}

QString MoveWords::by(const v1::MovedStep& moved) const {
  const std::string dish = moved.step_id().substr(0, moved.step_id().find('/'));
  return view_.quoted(moved.cause_step_id(), dish);
}

QString MoveWords::cause(const v1::MovedStep& moved) const {
  const bool known = !moved.cause_step_id().empty();
  const bool burners = moved.thing_id() == "burners";
  const QString thing = burners                    ? tr("The burners")
                        : moved.thing_id().empty() ? QString()
                                                   : view_.names().thing(moved.thing_id());
  switch (moved.cause()) {
    case v1::MOVE_CAUSE_REPORTED:
      return tr("As it was reported.");
    case v1::MOVE_CAUSE_FOLLOWS:
      return known ? tr("Goes with %1.").arg(by(moved)) : tr("Goes with its dish.");
    case v1::MOVE_CAUSE_COOK:
      return known ? tr("%1 is busy then with %2.").arg(thing, by(moved)) : tr("%1 is away then.").arg(thing);
    case v1::MOVE_CAUSE_OVEN:
      return known ? tr("%1 is taken then by %2.").arg(thing, by(moved))
                   : tr("%1 is not to be had then.").arg(thing);
    case v1::MOVE_CAUSE_THING:
      return known ? tr("%1: in use then for %2.").arg(thing, by(moved)) : tr("%1: in use then.").arg(thing);
    case v1::MOVE_CAUSE_NOT_BEGUN:
      return tr("It had not begun.");
    case v1::MOVE_CAUSE_LENGTH:
      return tr("It takes another time now.");
    case v1::MOVE_CAUSE_SERVING:
      return tr("For its serving time.");
    case v1::MOVE_CAUSE_PINNED:
      return tr("Put there by hand.");
    case v1::MOVE_CAUSE_DISH:
      if (!moved.has_new_start_time()) return tr("Its dish is left out.");
      return moved.has_old_start_time() ? tr("Its dish is planned anew.") : tr("Its dish is new.");
    case v1::MOVE_CAUSE_MADE_ROOM:
      return tr("Makes room for others.");
    default:
      return {};
  }
}

}  // namespace suppertide
