// What lies beneath all lanes: nights, marks of the axis, serving times.
//
// One scene-graph item of plain rectangles, which the software renderer draws,
// too. Rebuilt when the scale or the window changes; while panning only shifted.
#pragma once

#include <QtGui/qcolor.h>
#include <QtQuick/qquickitem.h>

#include "client/timeline/timeline.h"

namespace suppertide {

class GridItem : public QQuickItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Timeline* timeline READ timeline WRITE setTimeline NOTIFY timelineChanged REQUIRED)
  Q_PROPERTY(QColor nightColor MEMBER nightColor_ NOTIFY colorsChanged)
  Q_PROPERTY(QColor tickColor MEMBER tickColor_ NOTIFY colorsChanged)
  Q_PROPERTY(QColor midnightColor MEMBER midnightColor_ NOTIFY colorsChanged)
  Q_PROPERTY(QColor servingColor MEMBER servingColor_ NOTIFY colorsChanged)
 public:
  explicit GridItem(QQuickItem* parent = nullptr);

  Timeline* timeline() const { return timeline_; }
  void setTimeline(Timeline* timeline);

 Q_SIGNALS:
  void timelineChanged();
  void colorsChanged();

 protected:
  QSGNode* updatePaintNode(QSGNode* old, UpdatePaintNodeData* data) override;
  void geometryChange(const QRectF& now, const QRectF& before) override;

 private:
  void follow();
  void rebuild();
  void addRectangles(QSGNode* parent) const;

  Timeline* timeline_ = nullptr;
  QColor nightColor_, tickColor_, midnightColor_, servingColor_;
  bool stale_ = true;  // the rectangles; the shift is always set
  double drawnScale_ = 0;
};

}  // namespace suppertide
