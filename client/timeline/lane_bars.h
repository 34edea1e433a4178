// The bars of one lane that have no room for words: plain boxes with their sign.
//
// One scene-graph item for all of them, of rectangles and images that the software renderer draws, too; a
// thousand bars cost no object each. Their places are set anew when the scale or the steps change; while
// panning they are only shifted. Its coordinates are the view's. A lane with steps is a stop of Tab.
#pragma once

#include <QtCore/qpointer.h>
#include <QtGui/qcolor.h>
#include <QtQuick/qquickitem.h>

#include "client/timeline/timeline.h"

namespace suppertide {

class LaneBars : public QQuickItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Timeline* timeline READ timeline WRITE setTimeline NOTIFY sourceChanged REQUIRED)
  Q_PROPERTY(suppertide::StepModel* steps READ steps WRITE setSteps NOTIFY sourceChanged REQUIRED)
  // Of one sub-row with its gap, and of a bar in it.
  Q_PROPERTY(double rowHeight MEMBER rowHeight_ NOTIFY looksChanged REQUIRED)
  Q_PROPERTY(double barHeight MEMBER barHeight_ NOTIFY looksChanged REQUIRED)
  // By kind of step, as StepColors.
  Q_PROPERTY(QList<QColor> fills MEMBER fills_ NOTIFY looksChanged REQUIRED)
  Q_PROPERTY(QList<QColor> edges MEMBER edges_ NOTIFY looksChanged REQUIRED)
  Q_PROPERTY(QColor doneColor MEMBER doneColor_ NOTIFY looksChanged REQUIRED)
  Q_PROPERTY(QColor lateColor MEMBER lateColor_ NOTIFY looksChanged REQUIRED)
  Q_PROPERTY(QColor signColor MEMBER signColor_ NOTIFY looksChanged REQUIRED)
  Q_PROPERTY(QColor doughColor MEMBER doughColor_ NOTIFY looksChanged REQUIRED)
  Q_PROPERTY(QColor doughEdgeColor MEMBER doughEdgeColor_ NOTIFY looksChanged REQUIRED)
 public:
  explicit LaneBars(QQuickItem* parent = nullptr);

  Timeline* timeline() const { return timeline_; }
  void setTimeline(Timeline* timeline);
  StepModel* steps() const { return steps_; }
  void setSteps(StepModel* steps);

 Q_SIGNALS:
  void sourceChanged();
  void looksChanged();
  // The focus has come to the lane: forwards (1) or back (-1).
  void entered(int by);

 protected:
  void focusInEvent(QFocusEvent* event) override;
  QSGNode* updatePaintNode(QSGNode* old, UpdatePaintNodeData* data) override;

 private:
  class Node;
  class Pen;

  void follow();
  void rebuild();
  void draw(Pen& pen) const;
  void drawStep(Pen& pen, const StepRow& step) const;
  void drawDough(Pen& pen, const StepRow& step, const QRectF& box) const;

  QPointer<Timeline> timeline_;
  QPointer<StepModel> steps_;
  double rowHeight_ = 0;
  double barHeight_ = 0;
  QList<QColor> fills_, edges_;
  QColor doneColor_, lateColor_, signColor_, doughColor_, doughEdgeColor_;
  bool stale_ = true;     // the boxes; the shift is always set
  bool newSigns_ = true;  // their colour has changed
  double drawnScale_ = 0;
};

}  // namespace suppertide
