#include "client/timeline/dough_shape.h"

#include <QtGui/qpainter.h>
#include <QtGui/qpainterpath.h>

#include <algorithm>

namespace suppertide {
namespace {
constexpr double kLowest = 0.50;    // part of the height that a dough fills before it rises
constexpr double kLeastTop = 2.0;   // rise drawn at full height, unless the dough goes higher
constexpr double kPixelStep = 3;    // between two points of the outline,
constexpr double kTolerance = 0.2;  // of which those on a straight line are left out
constexpr double kDiamond = 5;
}  // namespace

DoughShape::DoughShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &DoughShape::changed, this, [this] { update(); });
}

double DoughShape::highest() const {
  double top = kLeastTop;
  for (const QList<CurvePoint>* points : {&rise_.rise, &rise_.fast}) {
    for (const CurvePoint& point : *points) {
      if (point.minute <= rise_.limit) top = std::max(top, point.value);
    }
  }
  return top;
}

double DoughShape::y(double rise) const {
  const double part = std::clamp((rise - 1) / (highest_ - 1), 0.0, 1.0);
  return (height() - 2) * (1 - kLowest - (1 - kLowest) * part) + 1;
}

QPolygonF DoughShape::outline(const QList<CurvePoint>& points, double limit) const {
  const double left = std::max(x(rise_.start), 0.0);
  const double right = std::min(x(limit), width());
  if (right <= left || points.isEmpty()) return {};
  QPolygonF top;
  for (double at = left; at < right; at += kPixelStep)
    top << QPointF(at, y(valueAt(points, start_ + at / pixelsPerMinute_)));
  top << QPointF(right, y(valueAt(points, start_ + right / pixelsPerMinute_)));
  QPolygonF polygon{QPointF(left, height() - 1)};
  polygon << straightened(top, kTolerance) << QPointF(right, height() - 1);
  return polygon;
}

void DoughShape::paint(QPainter* painter) {
  if (!rise_.known()) return;
  highest_ = highest();
  const QPolygonF shape = outline(rise_.rise, rise_.limit);
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen(QPen(lineColor_, 1.5));
  painter->setBrush(fillColor_);
  painter->drawPolygon(shape);
  paintReadiness(painter, shape);
  paintSpread(painter);
}

void DoughShape::paintReadiness(QPainter* painter, const QPolygonF& shape) const {
  const double from = std::max(rise_.readyFrom, rise_.start);
  const double until = std::min(rise_.readyUntil, rise_.limit);
  if (rise_.readyUntil <= rise_.readyFrom || from >= rise_.limit || shape.isEmpty()) return;
  QPainterPath body;
  body.addPolygon(shape);
  painter->save();
  painter->setClipPath(body);
  const QRectF band(QPointF(x(from), 0), QPointF(x(std::max(until, from)), height()));
  painter->fillRect(band, readyColor_);
  painter->fillRect(band, QBrush(readyLineColor_, Qt::BDiagPattern));
  painter->setPen(QPen(readyLineColor_, 2));
  painter->drawLine(QPointF(x(from), 0), QPointF(x(from), height()));
  painter->restore();
  painter->setPen(QPen(lineColor_, 1.5));
  painter->setBrush(Qt::NoBrush);
  painter->drawPolygon(shape);
  if (rise_.best <= 0 || rise_.best > rise_.limit) return;
  const double best = x(rise_.best);
  const double top = y(valueAt(rise_.rise, rise_.best)) + kDiamond + 2;
  painter->setPen(QPen(readyLineColor_, 2));
  painter->drawLine(QPointF(best, top), QPointF(best, height() - 2));
  painter->setBrush(readyLineColor_);
  painter->drawPolygon(QPolygonF(
      {{best, top - kDiamond}, {best + kDiamond, top}, {best, top + kDiamond}, {best - kDiamond, top}}));
}

// How high it would stand with a slow and with a fast starter.
void DoughShape::paintSpread(QPainter* painter) const {
  painter->setPen(QPen(lineColor_, 1, Qt::DotLine));
  painter->setBrush(Qt::NoBrush);
  for (const QList<CurvePoint>* points : {&rise_.slow, &rise_.fast}) {
    QPolygonF line = outline(*points, rise_.limit);
    if (line.size() < 4) continue;
    line.removeFirst();
    line.removeLast();
    painter->drawPolyline(line);
  }
}

}  // namespace suppertide
