#include "client/timeline/curves.h"

#include <algorithm>
#include <limits>

namespace suppertide {

QVariantList OvenCurve::labels() const {
  QVariantList labels;
  for (const SetpointSpan& span : setpoints)
    labels << QVariantMap{{QStringLiteral("start"), span.start},
                          {QStringLiteral("limit"), span.limit},
                          {QStringLiteral("label"), span.label}};
  return labels;
}

double valueAt(const QList<CurvePoint>& points, double minute) {
  const auto after = std::lower_bound(points.begin(), points.end(), minute,
                                      [](const CurvePoint& p, double m) { return p.minute < m; });
  if (after == points.begin()) return points.front().value;
  if (after == points.end()) return points.back().value;
  const CurvePoint& before = *(after - 1);
  const double part = (minute - before.minute) / (after->minute - before.minute);
  return before.value + part * (after->value - before.value);
}

// From the last kept point on, the slopes are kept that still pass all points left out since; the one before
// the first that none of them reaches is kept.
QPolygonF straightened(const QPolygonF& line, double tolerance) {
  constexpr double kAny = std::numeric_limits<double>::infinity();
  QPolygonF kept;
  double least = -kAny, most = kAny;
  for (qsizetype i = 0; i < line.size(); ++i) {
    const QPointF& point = line[i];
    if (kept.isEmpty()) {
      kept << point;
      continue;
    }
    const auto slopeTo = [&](double y) {
      const double along = point.x() - kept.last().x();
      return along > 0 ? (y - kept.last().y()) / along : y > kept.last().y() ? kAny : -kAny;
    };
    if (const double slope = slopeTo(point.y()); slope < least || slope > most) {
      kept << line[i - 1];
      least = -kAny;
      most = kAny;
    }
    least = std::max(least, slopeTo(point.y() - tolerance));
    most = std::min(most, slopeTo(point.y() + tolerance));
  }
  if (line.size() > 1) kept << line.last();
  return kept;
}

}  // namespace suppertide
