#include "client/doughs/rise_curve.h"

#include <algorithm>

namespace suppertide {
namespace {

constexpr double kBottom = 0.9;     // below the volume at the start
constexpr double kHeadroom = 1.06;  // above the highest line
constexpr double kLeastTop = 1.5;

double highest(const v1::FermentForecast& stage) {
  double top = std::max(stage.high_rise(), stage.wanted_rise());
  for (const v1::RiseSample& sample : stage.samples())
    top = std::max({top, sample.rise(), sample.fast_rise()});
  return top;
}

Instant last(const v1::FermentForecast& stage) {
  Instant limit = toInstant(stage.end_time());
  if (stage.samples_size() > 0) limit = std::max(limit, toInstant(stage.samples().rbegin()->time()));
  if (stage.has_ready_until_time()) limit = std::max(limit, toInstant(stage.ready_until_time()));
  return limit;
}

template <class Value>
std::optional<double> valueAt(const v1::FermentForecast& stage, Instant time, Value value) {
  const v1::RiseSample* before = nullptr;
  for (const v1::RiseSample& sample : stage.samples()) {
    const Instant at = toInstant(sample.time());
    if (at == time) return value(sample);
    if (at > time) {
      if (before == nullptr) return std::nullopt;
      const double whole = minutesBetween(toInstant(before->time()), at);
      const double part = minutesBetween(toInstant(before->time()), time) / whole;
      return value(*before) + part * (value(sample) - value(*before));
    }
    before = &sample;
  }
  return std::nullopt;
}

}  // namespace

double RiseAxis::x(Instant time) const {
  return minutesBetween(start, time) / std::max(1.0, minutesBetween(start, limit));
}

double RiseAxis::y(double rise) const {
  return std::clamp((rise - kBottom) / (top - kBottom), 0.0, 1.0);
}

double RiseAxis::riseAt(double y) const {
  return kBottom + std::clamp(y, 0.0, 1.0) * (top - kBottom);
}

RiseAxis axisOf(const v1::FermentForecast& stage, const v1::FermentForecast* other) {
  RiseAxis axis{toInstant(stage.start_time()), last(stage), highest(stage)};
  if (other != nullptr) {
    axis.start = std::min(axis.start, toInstant(other->start_time()));
    axis.limit = std::max(axis.limit, last(*other));
    axis.top = std::max(axis.top, highest(*other));
  }
  axis.top = std::max(axis.top * kHeadroom, kLeastTop);
  return axis;
}

RiseCurve curveOf(const v1::FermentForecast& stage, const RiseAxis& axis) {
  RiseCurve curve;
  curve.known = stage.samples_size() > 1;
  for (const v1::RiseSample& sample : stage.samples()) {
    const double x = axis.x(toInstant(sample.time()));
    curve.rise << QPointF(x, axis.y(sample.rise()));
    curve.slow << QPointF(x, axis.y(sample.slow_rise()));
    curve.fast << QPointF(x, axis.y(sample.fast_rise()));
  }
  curve.wanted = axis.y(stage.wanted_rise());
  curve.end = axis.x(toInstant(stage.end_time()));
  if (!stage.has_ready_from_time()) return curve;
  curve.readyFrom = axis.x(toInstant(stage.ready_from_time()));
  curve.readyUntil = stage.has_ready_until_time() ? axis.x(toInstant(stage.ready_until_time())) : 1;
  if (stage.has_best_time()) curve.best = axis.x(toInstant(stage.best_time()));
  return curve;
}

std::optional<double> riseAt(const v1::FermentForecast& stage, Instant time) {
  return valueAt(stage, time, [](const v1::RiseSample& sample) { return sample.rise(); });
}

std::optional<double> celsiusAt(const v1::FermentForecast& stage, Instant time) {
  return valueAt(stage, time, [](const v1::RiseSample& sample) { return sample.celsius(); });
}

}  // namespace suppertide
