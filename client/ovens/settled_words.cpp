#include "client/ovens/settled_words.h"

#include <algorithm>
#include <cmath>

namespace suppertide {
namespace {

constexpr int kLowestDial = 40;  // degrees Celsius; cooler than that, an oven has only its light on

std::string dishOf(const std::string& plannedId) {
  return plannedId.substr(0, plannedId.find('/'));
}

}  // namespace

QString SettledWords::name(const v1::OvenClash& clash, const std::string& plannedId) const {
  const QString dish = view_.names().dish(dishOf(plannedId));
  const v1::PlannedStep* step = view_.step(plannedId);
  // Two bakes of one dish are told apart by their steps.
  if (step == nullptr || dishOf(clash.step_a_id()) != dishOf(clash.step_b_id())) return dish;
  return tr("“%1” (%2)").arg(QString::fromStdString(step->title()), dish);
}

QString SettledWords::dial(int celsius) const {
  return celsius < kLowestDial ? tr("light only") : view_.dial(celsius);
}

QString SettledWords::wanted(const v1::OvenClash& clash) const {
  const Instant from = std::max(toInstant(clash.naive_a().start()), toInstant(clash.naive_b().start()));
  return tr("%1 (%2) and %3 (%4) both wanted %5 on %6.")
      .arg(name(clash, clash.step_a_id()), dial(clash.naive_setpoint_a_celsius()),
           name(clash, clash.step_b_id()), dial(clash.naive_setpoint_b_celsius()),
           view_.names().oven(clash.oven_id()), view_.words().dayClock(from));
}

QStringList SettledWords::side(const v1::OvenClash& clash, const std::string& plannedId, double movedMinutes,
                               int degrees, int naiveCelsius) const {
  QStringList parts;
  const QString dish = name(clash, plannedId);
  const QString length = view_.words().length(movedMinutes);
  if (movedMinutes <= -1) parts << tr("%1 goes in %2 earlier").arg(dish, length);
  if (movedMinutes >= 1) parts << tr("%1 goes in %2 later").arg(dish, length);
  const v1::PlannedStep* step = view_.step(plannedId);
  if (step != nullptr && !step->oven_id().empty() && step->oven_id() != clash.oven_id())
    parts << tr("%1 bakes in %2 instead").arg(dish, view_.names().oven(step->oven_id()));
  const QString now = view_.dial(naiveCelsius + degrees);
  if (degrees != 0 && now != view_.dial(naiveCelsius))
    parts << tr("%1 bakes at %2 instead of %3").arg(dish, now, view_.dial(naiveCelsius));
  return parts;
}

QString SettledWords::settled(const v1::OvenClash& clash) const {
  QStringList parts = side(clash, clash.step_a_id(), toMinutes(clash.moved_a()), clash.degrees_a(),
                           clash.naive_setpoint_a_celsius());
  parts += side(clash, clash.step_b_id(), toMinutes(clash.moved_b()), clash.degrees_b(),
                clash.naive_setpoint_b_celsius());
  if (clash.shared_setpoint()) parts << tr("they share the oven at one temperature");
  if (parts.isEmpty()) return tr("There was room for both.");
  return tr("%1.").arg(parts.join(tr("; ")));
}

}  // namespace suppertide
