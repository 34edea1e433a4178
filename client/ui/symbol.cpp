#include "client/ui/symbol.h"

#include <QtGui/qpainter.h>

#include "client/ui/symbol_paths.h"

namespace suppertide {
namespace {
constexpr double kGrid = 24;
constexpr double kLine = 2;
}  // namespace

Symbol::Symbol(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setImplicitSize(20, 20);
  setAntialiasing(true);
}

void Symbol::setShape(Shape shape) {
  if (shape == shape_) return;
  shape_ = shape;
  update();
  Q_EMIT changed();
}

void Symbol::setColor(const QColor& color) {
  if (color == color_) return;
  color_ = color;
  update();
  Q_EMIT changed();
}

void Symbol::paint(QPainter* painter) {
  const double side = qMin(width(), height());
  painter->setRenderHint(QPainter::Antialiasing);
  painter->translate((width() - side) / 2, (height() - side) / 2);
  painter->scale(side / kGrid, side / kGrid);
  painter->setPen(QPen(color_, kLine, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  if (isFilledSymbol(shape_)) painter->setBrush(color_);
  painter->drawPath(symbolPath(shape_));
}

}  // namespace suppertide
