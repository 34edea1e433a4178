// A line, an area below it or a band between two lines, drawn from points of the unit square.
//
// x runs to the right over the item's width, y up over its height. Painted, not a mesh: the
// software renderer draws no meshes.
#pragma once

#include <QtCore/qlist.h>
#include <QtCore/qpoint.h>
#include <QtGui/qcolor.h>
#include <QtGui/qpolygon.h>
#include <QtQuick/qquickpainteditem.h>

namespace suppertide {

class PlotLine : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  // By x.
  Q_PROPERTY(QList<QPointF> points MEMBER points_ NOTIFY changed)
  // The other edge of the band; empty: the bottom.
  Q_PROPERTY(QList<QPointF> base MEMBER base_ NOTIFY changed)
  Q_PROPERTY(QColor color MEMBER color_ NOTIFY changed)
  Q_PROPERTY(QColor fill MEMBER fill_ NOTIFY changed)
  Q_PROPERTY(double lineWidth MEMBER lineWidth_ NOTIFY changed)
  Q_PROPERTY(bool dashed MEMBER dashed_ NOTIFY changed)
 public:
  explicit PlotLine(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 Q_SIGNALS:
  void changed();

 private:
  QPolygonF onItem(const QList<QPointF>& points) const;

  QList<QPointF> points_, base_;
  QColor color_ = Qt::transparent;
  QColor fill_ = Qt::transparent;
  double lineWidth_ = 2;
  bool dashed_ = false;
};

}  // namespace suppertide
