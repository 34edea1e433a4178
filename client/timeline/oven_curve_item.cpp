#include "client/timeline/oven_curve_item.h"

#include <QtGui/qpainter.h>
#include <QtGui/qpainterpath.h>

#include <algorithm>
#include <cmath>

namespace suppertide {
namespace {
constexpr double kColdest = 20;   // degrees Celsius at the bottom edge
constexpr double kHottest = 280;  // and at the top; hotter ovens are drawn at the edge
constexpr double kFirstGap = 15;  // minutes between samples beyond which the oven was off in between
constexpr double kReach = 2000;   // pixels beyond the edges that are still drawn
constexpr double kLeastStep = 1;  // pixels between two points of the line
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

void OvenCurveItem::paintTemperature(QPainter* painter) const {
  QPolygonF line;
  const auto flush = [&] {
    if (line.size() > 1) {
      QPolygonF fill = line;
      fill << QPointF(line.last().x(), height()) << QPointF(line.first().x(), height());
      painter->setPen(Qt::NoPen);
      painter->setBrush(fillColor_);
      painter->drawPolygon(fill);
      painter->setPen(QPen(lineColor_, 2));
      painter->drawPolyline(line);
    }
    line.clear();
  };
  double before = 0;
  for (const CurvePoint& point : std::as_const(curve_.temperatures)) {
    const auto holds = [&](const SetpointSpan& s) {
      return s.start <= before && point.minute <= s.limit + kFirstGap;
    };
    if (point.minute - before > kFirstGap &&
        std::none_of(curve_.setpoints.begin(), curve_.setpoints.end(), holds))
      flush();
    before = point.minute;
    // Of what lies far beside nothing but the last point is wanted, and far out not every one.
    if (!line.isEmpty() && std::abs(x(point.minute) - line.last().x()) < kLeastStep) continue;
    const QPointF at(x(point.minute), y(point.value));
    // A line across the whole width needs its outer ends; far ones are brought near.
    line << QPointF(std::clamp(at.x(), -kReach, width() + kReach), at.y());
  }
  flush();
}

void OvenCurveItem::paintSetpoint(QPainter* painter, const SetpointSpan& span) const {
  if (span.celsius <= 0) return;
  const double left = std::max(x(span.start), 0.0);
  const double right = std::min(x(span.limit), width());
  painter->setPen(QPen(setpointColor_, 1.5, Qt::DashLine));
  painter->drawLine(QPointF(left, y(span.celsius)), QPointF(right, y(span.celsius)));
}

}  // namespace suppertide
