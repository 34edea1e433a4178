#include "client/timeline/ghost_item.h"

#include <QtGui/qpainter.h>

namespace suppertide {
namespace {
constexpr double kLine = 2;
constexpr double kRadius = 6;
constexpr double kLeastGhostWidth = 8;
}  // namespace

GhostItem::GhostItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &GhostItem::changed, this, [this] { update(); });
}

void GhostItem::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  QPen pen(color_, kLine, Qt::DashLine);
  pen.setDashPattern({4, 3});
  painter->setPen(pen);
  for (const Ghost& ghost : ghosts_.list) {
    const double left = (ghost.start - start_) * pixelsPerMinute_;
    const double width = std::max(kLeastGhostWidth, (ghost.limit - ghost.start) * pixelsPerMinute_ - 2);
    const QRectF box(left, ghost.subRow * rowHeight_, width, barHeight_);
    painter->drawRoundedRect(box.adjusted(1, 1, -1, -1), kRadius, kRadius);
  }
}

}  // namespace suppertide
