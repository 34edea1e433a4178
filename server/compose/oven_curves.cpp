#include "server/compose/oven_curves.h"

#include <cmath>

#include "absl/strings/str_cat.h"
#include "server/kitchen/oven_fit.h"

namespace suppertide::compose {
namespace {

// Against how many timed rises a curve stands: less when it is only the usual one.
constexpr double kUsualCurveRises = 1;
constexpr double kOwnCurveRises = 3;

using HeatReadings = google::protobuf::RepeatedPtrField<v1::HeatReading>;

double minutesIn(const google::protobuf::Duration& duration) {
  return static_cast<double>(duration.seconds()) / 60.0;
}

class CurveFitter {
 public:
  explicit CurveFitter(const v1::HeatCurve& readings) : readings_(readings) {}

  FittedOven run() {
    const kitchen::ThermalCurve& curve = fitted_.after;
    fit("heating", readings_.heating(), kitchen::heatingFaults(listOf(readings_.heating())),
        [&](const auto& list) { return kitchen::fitHeating(curve, list); });
    const double room = curve.roomCelsius;
    fit("cooling", readings_.cooling(), kitchen::coolingFaults(room, listOf(readings_.cooling())),
        [&](const auto& list) { return kitchen::fitCooling(curve, list, kitchen::Door::kClosed); });
    fit("coolingAjar", readings_.cooling_ajar(),
        kitchen::coolingFaults(room, listOf(readings_.cooling_ajar())),
        [&](const auto& list) { return kitchen::fitCooling(curve, list, kitchen::Door::kAjar); });
    learn();
    if (count_ > 0) {
      fitted_.residualBefore = std::sqrt(squaresBefore_ / count_);
      fitted_.residualAfter = std::sqrt(squaresAfter_ / count_);
    }
    return std::move(fitted_);
  }

 private:
  static std::vector<kitchen::OvenReading> listOf(const HeatReadings& from) {
    std::vector<kitchen::OvenReading> to;
    for (const v1::HeatReading& reading : from) to.push_back({minutesIn(reading.after()), reading.celsius()});
    return to;
  }

  void wrong(const std::string& path, const std::string& value, const std::string& what) {
    v1::FieldViolation& violation = fitted_.violations.emplace_back();
    violation.set_field_path(path);
    violation.set_value(value);
    violation.set_description(what);
  }

  template <typename Fit>
  void fit(const std::string& name, const HeatReadings& given,
           const std::vector<kitchen::ReadingFault>& faults, const Fit& fitList) {
    if (given.empty()) return;
    const std::string list = absl::StrCat("heatCurve.", name);
    for (const kitchen::ReadingFault& fault : faults) {
      const v1::HeatReading& reading = given[fault.reading];
      wrong(absl::StrCat(list, "[", fault.reading, "]"),
            absl::StrCat(reading.celsius(), " °C after ", minutesIn(reading.after()), " min"), fault.why);
    }
    if (!faults.empty()) return;
    const absl::StatusOr<kitchen::CurveFit> fit = fitList(listOf(given));
    if (!fit.ok()) return wrong(list, absl::StrCat(given.size(), " readings"), plain(fit.status()));
    fitted_.after = fit->curve;
    for (int i = 0; i < given.size(); ++i) {
      const auto& at = fit->readings[static_cast<std::size_t>(i)];
      fitted_.readings.push_back({absl::StrCat(list, "[", i, "]"), minutesIn(given[i].after()),
                                  given[i].celsius(), at.before, at.after, at.leftOut});
      if (at.leftOut) continue;
      squaresBefore_ += std::pow(at.before - given[i].celsius(), 2);
      squaresAfter_ += std::pow(at.after - given[i].celsius(), 2);
      ++count_;
    }
  }

  // What is wrong, without saying again what was being done.
  static std::string plain(const absl::Status& status) {
    const std::string text(status.message());
    const std::size_t colon = text.find(": ");
    return colon == std::string::npos ? text : text.substr(colon + 2);
  }

  void learn() {
    const bool own = !readings_.heating().empty();
    learn("rises", readings_.rises(), kitchen::riseFaults, kitchen::learnRises, own);
    learn("fallsAjar", readings_.falls_ajar(), kitchen::fallFaults, kitchen::learnFalls,
          !readings_.cooling_ajar().empty());
  }

  template <typename Faults, typename Learn>
  void learn(const std::string& name, const google::protobuf::RepeatedPtrField<v1::HeatRise>& given,
             const Faults& faultsOf, const Learn& learnFrom, bool own) {
    if (given.empty() || !fitted_.violations.empty()) return;
    std::vector<kitchen::OvenRise> timed;
    for (const v1::HeatRise& one : given)
      timed.push_back({one.from_celsius(), one.to_celsius(), minutesIn(one.duration())});
    const auto path = [&](int i) { return absl::StrCat("heatCurve.", name, "[", i, "]"); };
    for (const kitchen::ReadingFault& fault : faultsOf(fitted_.after, timed)) {
      const auto& one = timed[static_cast<std::size_t>(fault.reading)];
      wrong(path(fault.reading),
            absl::StrCat(one.fromCelsius, " to ", one.toCelsius, " °C in ", one.minutes, " min"), fault.why);
    }
    if (!fitted_.violations.empty()) return;
    const auto fit = learnFrom(fitted_.after, timed, own ? kOwnCurveRises : kUsualCurveRises);
    if (!fit.ok())
      return wrong(absl::StrCat("heatCurve.", name), absl::StrCat(timed.size(), " of them"),
                   plain(fit.status()));
    fitted_.after = fit->curve;
    for (std::size_t i = 0; i < timed.size(); ++i)
      fitted_.readings.push_back({path(static_cast<int>(i)), timed[i].minutes, timed[i].toCelsius,
                                  fit->readings[i].before, fit->readings[i].after, fit->readings[i].leftOut});
  }

  const v1::HeatCurve& readings_;
  FittedOven fitted_;
  double squaresBefore_ = 0;
  double squaresAfter_ = 0;
  int count_ = 0;
};

}  // namespace

kitchen::Oven plainOven(const v1::Oven& from) {
  kitchen::Oven oven;
  oven.id = from.id();
  oven.leastCelsius = from.min_setpoint_celsius();
  oven.mostCelsius = from.max_setpoint_celsius();
  oven.stepCelsius = from.setpoint_step_celsius() > 0 ? from.setpoint_step_celsius() : 5;
  oven.clearHeightsMm.assign(from.rack_clear_height_mm().begin(), from.rack_clear_height_mm().end());
  oven.shelfWidthMm = from.shelf_width_mm();
  oven.shelfDepthMm = from.shelf_depth_mm();
  oven.fan = from.fan();
  return oven;
}

FittedOven fitOven(const v1::Oven& oven) {
  FittedOven fitted = CurveFitter(oven.heat_curve()).run();
  // An oven reaches every setting of its own dial.
  const double most = oven.max_setpoint_celsius();
  if (fitted.violations.empty() && !oven.heat_curve().heating().empty() &&
      fitted.after.maximumCelsius <= most) {
    v1::FieldViolation& violation = fitted.violations.emplace_back();
    violation.set_field_path("heatCurve.heating");
    violation.set_value(absl::StrCat(oven.heat_curve().heating_size(), " readings"));
    violation.set_description(absl::StrCat("level off at ", std::lround(fitted.after.maximumCelsius),
                                           " °C, below the highest setting, ", oven.max_setpoint_celsius(),
                                           " °C: read at full power, and up to near the setting"));
  }
  return fitted;
}

}  // namespace suppertide::compose
