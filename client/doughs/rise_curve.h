// A ferment's forecast as curves on a chart, and its values at a moment.
#pragma once

#include <QtCore/qlist.h>
#include <QtCore/qobject.h>
#include <QtCore/qpoint.h>
#include <QtQml/qqmlregistration.h>

#include <optional>

#include "client/words/plan_view.h"

namespace suppertide {

// What the chart spans: [start, limit) to the right, from volume 1 less a little to `top` upwards.
struct RiseAxis {
  Instant start{};
  Instant limit{};
  double top = 2;

  double x(Instant time) const;
  double y(double rise) const;  // 0 at the bottom, 1 at the top; kept inside
  double riseAt(double y) const;
  friend bool operator==(const RiseAxis&, const RiseAxis&) = default;
};

// All in parts of the chart's width and height.
struct RiseCurve {
  Q_GADGET
  QML_VALUE_TYPE(riseCurve)
  Q_PROPERTY(bool known MEMBER known)
  Q_PROPERTY(QList<QPointF> rise MEMBER rise)
  // As with a slow and with a fast starter: the band.
  Q_PROPERTY(QList<QPointF> slow MEMBER slow)
  Q_PROPERTY(QList<QPointF> fast MEMBER fast)
  // The readiness window; until is 1 when it ends beyond the chart. Below 0: never ready.
  Q_PROPERTY(double readyFrom MEMBER readyFrom)
  Q_PROPERTY(double readyUntil MEMBER readyUntil)
  Q_PROPERTY(double best MEMBER best)
  // The wanted rise, and when the stage ends as planned.
  Q_PROPERTY(double wanted MEMBER wanted)
  Q_PROPERTY(double end MEMBER end)
 public:
  bool known = false;
  QList<QPointF> rise, slow, fast;
  double readyFrom = -1, readyUntil = -1, best = -1, wanted = 0, end = 0;
  friend bool operator==(const RiseCurve&, const RiseCurve&) = default;
};

// The axis on which both forecasts can be seen whole; `other` may be null.
RiseAxis axisOf(const v1::FermentForecast& stage, const v1::FermentForecast* other);
RiseCurve curveOf(const v1::FermentForecast& stage, const RiseAxis& axis);

// Between samples on a straight line; empty outside them.
std::optional<double> riseAt(const v1::FermentForecast& stage, Instant time);
std::optional<double> celsiusAt(const v1::FermentForecast& stage, Instant time);

}  // namespace suppertide
