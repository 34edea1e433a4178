// Where the bars of one lane stood before: dashed outlines beneath the bars.
//
// Painted and bounded as the oven's curve.
#pragma once

#include <QtGui/qcolor.h>
#include <QtQuick/qquickpainteditem.h>

#include "client/timeline/curves.h"

namespace suppertide {

class GhostItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Ghosts ghosts MEMBER ghosts_ NOTIFY changed REQUIRED)
  // The minute at x = 0.
  Q_PROPERTY(double start MEMBER start_ NOTIFY changed REQUIRED)
  Q_PROPERTY(double pixelsPerMinute MEMBER pixelsPerMinute_ NOTIFY changed REQUIRED)
  // Of one sub-row with its gap, and of a bar in it.
  Q_PROPERTY(double rowHeight MEMBER rowHeight_ NOTIFY changed REQUIRED)
  Q_PROPERTY(double barHeight MEMBER barHeight_ NOTIFY changed REQUIRED)
  Q_PROPERTY(QColor color MEMBER color_ NOTIFY changed)
 public:
  explicit GhostItem(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 Q_SIGNALS:
  void changed();

 private:
  Ghosts ghosts_;
  double start_ = 0;
  double pixelsPerMinute_ = 1;
  double rowHeight_ = 0;
  double barHeight_ = 0;
  QColor color_;
};

}  // namespace suppertide
