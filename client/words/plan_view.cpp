#include "client/words/plan_view.h"

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
  if (plan_ == nullptr) return;
  readPlan();
  readProgress();
}

void PlanView::readPlan() {
  for (const v1::PlannedStep& step : plan_->steps()) steps_[step.id()] = &step;
  for (const v1::PlannedDish& dish : plan_->dishes()) dishes_[dish.dish_id()] = &dish;
}

void PlanView::readProgress() {
  const v1::Progress* progress = findOrNull(replica_->progresses, event_->id());
  if (progress == nullptr) return;
  std::map<std::string, std::string> finished;  // planned id by report
  for (const v1::Report& report : progress->reports()) {
    if (report.what_case() == v1::Report::kUndoneReportId) finished.erase(report.undone_report_id());
    if (report.what_case() == v1::Report::kFinished)
      finished[report.id()] = report.dish_id() + "/" + report.step_id();
  }
  for (const auto& [report, step] : finished) done_.insert(step);
}

const v1::PlannedStep* PlanView::step(const std::string& plannedId) const {
  const auto found = steps_.find(plannedId);
  return found == steps_.end() ? nullptr : found->second;
}

const v1::PlannedDish* PlanView::dish(const std::string& dishId) const {
  const auto found = dishes_.find(dishId);
  return found == dishes_.end() ? nullptr : found->second;
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
