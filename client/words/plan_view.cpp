#include "client/words/plan_view.h"

#include <algorithm>
#include <cmath>

namespace suppertide {
namespace {

constexpr int kFahrenheitDialStep = 5;

template <class Map>
auto* findOrNull(const Map& map, const std::string& id) {
  const auto found = map.find(id);
  return found == map.end() ? nullptr : &found->second;
}

std::string zoneOf(const link::Replica& replica, const v1::Event& event) {
  return event.time_zone().empty() ? replica.household.time_zone() : event.time_zone();
}

double fahrenheitOf(double celsius) {
  return celsius * 9 / 5 + 32;
}

}  // namespace

PlanView::PlanView(std::shared_ptr<const link::Replica> replica, const std::string& eventId)
    : replica_(std::move(replica)),
      event_(&replica_->events.at(eventId)),
      plan_(findOrNull(replica_->plans, eventId)),
      kitchen_(findOrNull(replica_->kitchens, event_->kitchen_id())),
      names_(*replica_, *event_),
      words_(zoneOf(*replica_, *event_)) {
  if (plan_ != nullptr) readPlan();
  if (const v1::Progress* progress = findOrNull(replica_->progresses, eventId); progress != nullptr)
    progress_ = ProgressReading(*progress);
}

void PlanView::readPlan() {
  for (const v1::PlannedStep& step : plan_->steps()) steps_[step.id()] = &step;
  for (const v1::PlannedDish& dish : plan_->dishes()) dishes_[dish.dish_id()] = &dish;
}

const v1::PlannedStep* PlanView::step(const std::string& plannedId) const {
  const auto found = steps_.find(plannedId);
  return found == steps_.end() ? nullptr : found->second;
}

const v1::PlannedDish* PlanView::dish(const std::string& dishId) const {
  const auto found = dishes_.find(dishId);
  return found == dishes_.end() ? nullptr : found->second;
}

QString PlanView::quoted(const std::string& plannedId, const std::string& besideDish) const {
  const v1::PlannedStep* known = step(plannedId);
  const QString title = known != nullptr ? QString::fromStdString(known->title()) : names_.step(plannedId);
  const std::string dishId = plannedId.substr(0, plannedId.find('/'));
  if (dishId == besideDish) return tr("“%1”").arg(title);
  return tr("“%1” (%2)").arg(title, names_.dish(dishId));
}

bool PlanView::isPinned(const v1::PlannedStep& step) const {
  return step.pinned() ||
         std::any_of(event_->pins().begin(), event_->pins().end(), [&](const v1::StepPin& pin) {
           return pin.dish_id() == step.dish_id() && pin.step_id() == step.step_id();
         });
}

bool PlanView::fahrenheit() const {
  return replica_->household.temperature_unit() == v1::TEMPERATURE_UNIT_FAHRENHEIT;
}

QString PlanView::dial(int celsius) const {
  if (!fahrenheit()) return QStringLiteral("%1 °C").arg(celsius);
  const long steps = std::lround(fahrenheitOf(celsius) / kFahrenheitDialStep);
  return QStringLiteral("%1 °F").arg(steps * kFahrenheitDialStep);
}

QString PlanView::degrees(double celsius) const {
  return fahrenheit() ? QStringLiteral("%1 °F").arg(std::lround(fahrenheitOf(celsius)))
                      : QStringLiteral("%1 °C").arg(std::lround(celsius));
}

Instant toInstant(const google::protobuf::Timestamp& time) {
  return Instant(std::chrono::seconds(time.seconds()));
}

double toMinutes(const google::protobuf::Duration& length) {
  return static_cast<double>(length.seconds()) / 60.0;
}

}  // namespace suppertide
