#include "server/service/oven_fitting.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "absl/strings/str_cat.h"
#include "server/compose/oven_curves.h"
#include "server/compose/oven_learning.h"
#include "server/compose/validate.h"

namespace suppertide::service {
namespace {

v1::OvenCurve curveOf(const kitchen::ThermalCurve& from) {
  v1::OvenCurve curve;
  curve.set_maximum_celsius(from.maximumCelsius);
  curve.set_heat_minutes(from.heatMinutes);
  curve.set_closed_minutes(from.closedMinutes);
  curve.set_ajar_minutes(from.ajarMinutes);
  curve.set_soak_minutes(from.soakMinutes);
  curve.set_room_celsius(from.roomCelsius);
  return curve;
}

google::protobuf::Duration secondsOf(double minutes) {
  google::protobuf::Duration duration;
  duration.set_seconds(std::lround(minutes * 60));
  return duration;
}

// As kitchen documents are checked, with the oven as the only thing in one.
compose::Violations violationsIn(const v1::Oven& oven) {
  v1::Kitchen kitchen;
  kitchen.set_id("k");
  kitchen.set_display_name("kitchen");
  *kitchen.add_ovens() = oven;
  compose::Violations violations = compose::validate(kitchen);
  static const std::string kWrapper = "ovens[0]";
  for (v1::FieldViolation& violation : violations)
    if (violation.field_path().rfind(kWrapper, 0) == 0)
      violation.set_field_path("oven" + violation.field_path().substr(kWrapper.size()));
  return violations;
}

// From cold to the usual settings, and between the coolest and hottest of them.
std::vector<std::pair<int, int>> usualChanges(const v1::Oven& oven) {
  std::vector<int> settings;
  for (const int celsius : {150, 180, 200, 230})
    if (celsius >= oven.min_setpoint_celsius() && celsius <= oven.max_setpoint_celsius())
      settings.push_back(celsius);
  std::vector<std::pair<int, int>> changes;
  for (const int celsius : settings) changes.emplace_back(0, celsius);
  if (settings.size() < 2) return changes;
  changes.emplace_back(settings.front(), settings.back());
  changes.emplace_back(settings.back(), settings.front());
  return changes;
}

void addChanges(const v1::Oven& oven, const kitchen::ThermalCurve& curveBefore,
                const kitchen::ThermalCurve& curveAfter, v1::FitOvenResponse& answer) {
  const auto minutes = [](const kitchen::ThermalCurve& curve, int from, int to) {
    return from == 0 ? kitchen::minutesFromCold(curve, to)
                     : kitchen::minutesBetween(curve, from, to, kitchen::Door::kAjar);
  };
  for (const auto& [from, to] : usualChanges(oven)) {
    const auto before = minutes(curveBefore, from, to);
    const auto after = minutes(curveAfter, from, to);
    if (!before.ok() || !after.ok()) continue;
    v1::OvenChange& change = *answer.add_changes();
    change.set_from_celsius(from);
    change.set_to_celsius(to);
    *change.mutable_before_duration() = secondsOf(std::ceil(*before));
    *change.mutable_after_duration() = secondsOf(std::ceil(*after));
  }
}

Failure missing(const std::string& what, const std::string& reason) {
  return failure(absl::FailedPreconditionError(what), reason);
}

static_assert(static_cast<int>(compose::OvenFate::kUsed) + 1 == v1::OVEN_REPORT_FATE_USED);
static_assert(static_cast<int>(compose::OvenFate::kNotOn) + 1 == v1::OVEN_REPORT_FATE_NOT_ON);

const v1::Oven* ovenIn(const v1::Bundle& bundle, const std::string& id) {
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    for (const v1::Oven& oven : kitchen.ovens())
      if (oven.id() == id) return &oven;
  return nullptr;
}

}  // namespace

Failure fitOven(const v1::Oven& oven, v1::FitOvenResponse& answer) {
  if (const auto wrong = violationsIn(oven); !wrong.empty()) return invalid(wrong);
  const compose::FittedOven fitted = compose::fitOven(oven);
  if (!fitted.violations.empty()) {
    compose::Violations violations = fitted.violations;
    for (v1::FieldViolation& violation : violations)
      violation.set_field_path("oven." + violation.field_path());
    return invalid(violations);
  }
  if (fitted.readings.empty())
    return invalidField("oven.heatCurve", "no readings", "must have readings or timed rises to fit");
  *answer.mutable_before() = curveOf(fitted.before);
  *answer.mutable_after() = curveOf(fitted.after);
  for (const compose::FittedReading& reading : fitted.readings) {
    v1::ReadingFit& told = *answer.add_readings();
    told.set_field_path(absl::StrCat("oven.", reading.path));
    *told.mutable_after() = secondsOf(reading.minutes);
    told.set_celsius(reading.celsius);
    told.set_before_celsius(reading.before);
    told.set_after_celsius(reading.after);
    told.set_left_out(reading.leftOut);
  }
  answer.set_residual_before_k(fitted.residualBefore);
  answer.set_residual_after_k(fitted.residualAfter);
  addChanges(oven, fitted.before, fitted.after, answer);
  return {};
}

Failure fitOvenByDay(const v1::Bundle& bundle, const v1::FitOvenRequest& request,
                     v1::FitOvenResponse& answer) {
  const std::string& id = request.has_oven() ? request.oven().id() : request.oven_id();
  const v1::Oven* stored = ovenIn(bundle, id);
  if (stored == nullptr)
    return invalidField(request.has_oven() ? "oven.id" : "ovenId", id,
                        "must be an oven of the event's kitchen");
  const v1::Oven& oven = request.has_oven() ? request.oven() : *stored;
  if (const auto wrong = violationsIn(oven); !wrong.empty()) return invalid(wrong);
  if (bundle.plans().empty()) return missing("the event has no plan to tell what the oven did", "NO_PLAN");
  const v1::Progress progress = bundle.progresses().empty() ? v1::Progress() : bundle.progresses(0);
  compose::OvenLearning learning = compose::learnFromDay(oven, bundle.plans(0), progress);
  if (learning.uses.empty())
    return missing("nobody reported a temperature of this oven at the event", "NO_REPORTS");
  if (learning.oven.has_heat_curve())
    if (const Failure wrong = fitOven(learning.oven, answer); wrong.failed()) return wrong;
  const kitchen::ThermalCurve before = compose::fitOven(oven).after;
  const kitchen::ThermalCurve after = compose::fitOven(learning.oven).after;
  *answer.mutable_before() = curveOf(before);
  *answer.mutable_after() = curveOf(after);
  answer.clear_changes();
  addChanges(oven, before, after, answer);
  for (const compose::DayReading& reading : learning.uses) {
    v1::OvenReportUse& use = *answer.add_reports();
    use.set_report_id(reading.reportId);
    use.mutable_time()->set_seconds(reading.seconds);
    use.set_celsius(reading.celsius);
    use.set_fate(static_cast<v1::OvenReportFate>(static_cast<int>(reading.fate) + 1));
    use.set_setpoint_celsius(reading.setpointCelsius);
  }
  if (learning.told) *answer.mutable_learned_oven() = std::move(learning.oven);
  if (learning.dialOffset) answer.set_dial_offset_k(*learning.dialOffset);
  return {};
}

}  // namespace suppertide::service
