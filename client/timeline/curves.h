// What is drawn as curves: an oven's temperature, a dough's rise. Values that
// pass through QML to the items that draw them; copies share their points.
#pragma once

#include <QtCore/qlist.h>
#include <QtCore/qobject.h>
#include <QtCore/qvariant.h>
#include <QtGui/qpolygon.h>
#include <QtQml/qqmlregistration.h>

namespace suppertide {

struct CurvePoint {
  double minute = 0;
  double value = 0;
  friend bool operator==(const CurvePoint&, const CurvePoint&) = default;
};

// A stretch of one setpoint.
struct SetpointSpan {
  double start = 0;
  double limit = 0;
  double celsius = 0;
  QString label;  // "220 °C", "light only"
  friend bool operator==(const SetpointSpan&, const SetpointSpan&) = default;
};

struct OvenCurve {
  Q_GADGET
  QML_VALUE_TYPE(ovenCurve)
  // Of its setpoints: start, limit, label.
  Q_PROPERTY(QVariantList labels READ labels)
 public:
  QVariantList labels() const;

  QList<CurvePoint> temperatures;  // degrees Celsius, by time
  QList<SetpointSpan> setpoints;   // by time, holes where it is off
  friend bool operator==(const OvenCurve&, const OvenCurve&) = default;
};

// One stage of a dough. Volume over volume at its start.
struct DoughRise {
  Q_GADGET
  QML_VALUE_TYPE(doughRise)
  Q_PROPERTY(bool known READ known)
  Q_PROPERTY(double readyFrom MEMBER readyFrom)
 public:
  bool known() const { return rise.size() > 1; }

  QList<CurvePoint> rise;  // by time
  QList<CurvePoint> slow;  // same with a slow starter; may be empty
  QList<CurvePoint> fast;
  double start = 0;
  double limit = 0;
  // Half-open window of readiness; empty when it is never ready.
  double readyFrom = 0;
  double readyUntil = 0;
  double best = 0;  // 0: none
  friend bool operator==(const DoughRise&, const DoughRise&) = default;
};

// Where a step stood before it was moved.
struct Ghost {
  double start = 0;
  double limit = 0;
  int subRow = 0;
  friend bool operator==(const Ghost&, const Ghost&) = default;
};

struct Ghosts {
  Q_GADGET
  QML_VALUE_TYPE(laneGhosts)
  Q_PROPERTY(bool any READ any)
 public:
  bool any() const { return !list.isEmpty(); }

  QList<Ghost> list;
  friend bool operator==(const Ghosts&, const Ghosts&) = default;
};

// The value at `minute`, straight between points, held at both sides. `points` not empty.
double valueAt(const QList<CurvePoint>& points, double minute);
// Fewer points, with both ends: straight lines between them miss none by more than `tolerance` in y. `line`
// goes to the right.
QPolygonF straightened(const QPolygonF& line, double tolerance);

}  // namespace suppertide
