// An oven's estimated temperature as a curve, and what it is set to.
//
// Painted, not a mesh: the software renderer draws no meshes. The view keeps it
// to the timeline's window, so that its picture stays bounded at every zoom.
#pragma once

#include <QtGui/qcolor.h>
#include <QtQuick/qquickpainteditem.h>

#include "client/timeline/curves.h"

namespace suppertide {

class OvenCurveItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::OvenCurve curve MEMBER curve_ NOTIFY changed REQUIRED)
  // The minute at x = 0.
  Q_PROPERTY(double start MEMBER start_ NOTIFY changed REQUIRED)
  Q_PROPERTY(double pixelsPerMinute MEMBER pixelsPerMinute_ NOTIFY changed REQUIRED)
  Q_PROPERTY(QColor lineColor MEMBER lineColor_ NOTIFY changed)
  Q_PROPERTY(QColor fillColor MEMBER fillColor_ NOTIFY changed)
  Q_PROPERTY(QColor setpointColor MEMBER setpointColor_ NOTIFY changed)
 public:
  explicit OvenCurveItem(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 Q_SIGNALS:
  void changed();

 private:
  double x(double minute) const { return (minute - start_) * pixelsPerMinute_; }
  double y(double celsius) const;
  bool isOff(double from, double to) const;
  void paintTemperature(QPainter* painter) const;
  void paintRun(QPainter* painter, const QPolygonF& run) const;
  void paintSetpoint(QPainter* painter, const SetpointSpan& span) const;

  OvenCurve curve_;
  double start_ = 0;
  double pixelsPerMinute_ = 1;
  QColor lineColor_, fillColor_, setpointColor_;
};

}  // namespace suppertide
