#include "client/timeline/oven_curve_item.h"

#include <QtGui/qpainter.h>

#include <algorithm>

namespace suppertide {
namespace {
constexpr double kColdest = 20;   // degrees Celsius at the bottom edge
constexpr double kHottest = 280;  // and at the top; hotter ovens are drawn at the edge
constexpr double kFirstGap = 15;  // minutes between samples beyond which the oven was off in between
constexpr double kLine = 2;
constexpr double kAside = (kLine - 1) / 2;
constexpr double kTolerance = 0.25;  // pixels by which the line may miss a point
}  // namespace

OvenCurveItem::OvenCurveItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &OvenCurveItem::changed, this, [this] { update(); });
}

double OvenCurveItem::y(double celsius) const {
  const double part = std::clamp((celsius - kColdest) / (kHottest - kColdest), 0.0, 1.0);
  return (height() - 1) * (1 - part);
}

void OvenCurveItem::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  paintTemperature(painter);
  for (const SetpointSpan& span : std::as_const(curve_.setpoints)) {
    if (x(span.limit) > 0 && x(span.start) < width()) paintSetpoint(painter, span);
  }
}

// Off between the two: neither is it held at a temperature, nor was it looked at in between.
bool OvenCurveItem::isOff(double from, double to) const {
  if (to - from <= kFirstGap) return false;
  return std::none_of(curve_.setpoints.begin(), curve_.setpoints.end(), [&](const SetpointSpan& span) {
    return span.start <= from && to <= span.limit + kFirstGap;
  });
}

void OvenCurveItem::paintTemperature(QPainter* painter) const {
  const QList<CurvePoint>& points = curve_.temperatures;
  QPolygonF run;  // while it is on
  for (qsizetype i = 0; i < points.size(); ++i) {
    if (i > 0 && isOff(points[i - 1].minute, points[i].minute)) {
      paintRun(painter, run);
      run.clear();
    }
    // Beside the picture, the nearest one at each side is enough.
    if (i + 1 < points.size() && x(points[i + 1].minute) < -kLine) continue;
    run << QPointF(x(points[i].minute), y(points[i].value));
    if (run.last().x() > width() + kLine) break;
  }
  paintRun(painter, run);
}

void OvenCurveItem::paintRun(QPainter* painter, const QPolygonF& run) const {
  if (run.size() < 2) return;
  const QPolygonF line = straightened(run, kTolerance);
  QPolygonF fill = line;
  fill << QPointF(line.last().x(), height()) << QPointF(line.first().x(), height());
  painter->setPen(Qt::NoPen);
  painter->setBrush(fillColor_);
  // Its edge is under the line.
  painter->setRenderHint(QPainter::Antialiasing, false);
  painter->drawPolygon(fill);
  painter->setRenderHint(QPainter::Antialiasing);
  // Thin lines beside each other: a thick one that slants is painted many times slower.
  QPen pen(lineColor_, 1);
  pen.setCosmetic(true);
  painter->setPen(pen);
  for (const QPointF& aside :
       {QPointF(0, -kAside), QPointF(0, kAside), QPointF(-kAside, 0), QPointF(kAside, 0)})
    painter->drawPolyline(line.translated(aside));
}

void OvenCurveItem::paintSetpoint(QPainter* painter, const SetpointSpan& span) const {
  if (span.celsius <= 0) return;
  const double left = std::max(x(span.start), 0.0);
  const double right = std::min(x(span.limit), width());
  painter->setPen(QPen(setpointColor_, 1.5, Qt::DashLine));
  painter->drawLine(QPointF(left, y(span.celsius)), QPointF(right, y(span.celsius)));
}

}  // namespace suppertide
