#include "client/timeline/curves.h"

#include <algorithm>

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

}  // namespace suppertide
