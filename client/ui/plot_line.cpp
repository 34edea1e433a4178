#include "client/ui/plot_line.h"

#include <QtGui/qpainter.h>

#include <algorithm>

namespace suppertide {

PlotLine::PlotLine(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &PlotLine::changed, this, [this] { update(); });
}

QPolygonF PlotLine::onItem(const QList<QPointF>& points) const {
  QPolygonF polygon;
  polygon.reserve(points.size());
  for (const QPointF& point : points)
    polygon << QPointF(point.x() * width(), (1 - point.y()) * (height() - 1));
  return polygon;
}

void PlotLine::paint(QPainter* painter) {
  if (points_.size() < 2) return;
  painter->setRenderHint(QPainter::Antialiasing);
  const QPolygonF line = onItem(points_);
  if (fill_.alpha() > 0) {
    QPolygonF area = line;
    QPolygonF edge = onItem(base_);
    if (edge.isEmpty()) edge << QPointF(line.first().x(), height()) << QPointF(line.last().x(), height());
    std::reverse(edge.begin(), edge.end());
    area << edge;
    painter->setPen(Qt::NoPen);
    painter->setBrush(fill_);
    painter->drawPolygon(area);
  }
  painter->setPen(
      QPen(color_, lineWidth_, dashed_ ? Qt::DashLine : Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  if (color_.alpha() > 0) painter->drawPolyline(line);
}

}  // namespace suppertide
