// A ferment as a swelling shape: as high as the dough has risen, with the window
// in which it is ready and its best moment.
//
// Painted and bounded as the oven's curve. Readiness is told by a hatched band
// between two posts, the best moment by a post with a diamond: by shape, not colour alone.
#pragma once

#include <QtGui/qcolor.h>
#include <QtQuick/qquickpainteditem.h>

#include "client/timeline/curves.h"

namespace suppertide {

class DoughShape : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::DoughRise rise MEMBER rise_ NOTIFY changed REQUIRED)
  // The minute at x = 0.
  Q_PROPERTY(double start MEMBER start_ NOTIFY changed REQUIRED)
  Q_PROPERTY(double pixelsPerMinute MEMBER pixelsPerMinute_ NOTIFY changed REQUIRED)
  Q_PROPERTY(QColor fillColor MEMBER fillColor_ NOTIFY changed)
  Q_PROPERTY(QColor lineColor MEMBER lineColor_ NOTIFY changed)
  Q_PROPERTY(QColor readyColor MEMBER readyColor_ NOTIFY changed)
  Q_PROPERTY(QColor readyLineColor MEMBER readyLineColor_ NOTIFY changed)
 public:
  explicit DoughShape(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 Q_SIGNALS:
  void changed();

 private:
  double x(double minute) const { return (minute - start_) * pixelsPerMinute_; }
  double y(double rise) const;
  double highest() const;
  // The outline from the stage's start to `limit`, closed at the bottom.
  QPolygonF outline(const QList<CurvePoint>& points, double limit) const;
  void paintReadiness(QPainter* painter, const QPolygonF& shape) const;
  void paintSpread(QPainter* painter) const;

  DoughRise rise_;
  double highest_ = 1;  // rise at full height, of what is being painted
  double start_ = 0;
  double pixelsPerMinute_ = 1;
  QColor fillColor_, lineColor_, readyColor_, readyLineColor_;
};

}  // namespace suppertide
