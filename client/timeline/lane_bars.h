// The bars of one lane that have no room for words: plain boxes with their sign.
//
// One picture for all of them: a thousand bars cost no object each, and no node. It is painted for what the
// lane is laid out for, and shifted and stretched while the view moves. Its coordinates are the view's. A
// lane with steps is a stop of Tab.
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
  void geometryChange(const QRectF& now, const QRectF& before) override;
  QSGNode* updatePaintNode(QSGNode* old, UpdatePaintNodeData* data) override;

 private:
  class Node;
  class Pen;

  void rebuild();
  void paint(Node& node) const;
  void drawStep(Pen& pen, const StepRow& step) const;
  void drawDough(Pen& pen, const StepRow& step, const QRectF& box) const;

  QPointer<Timeline> timeline_;
  QPointer<StepModel> steps_;
  double rowHeight_ = 0;
  double barHeight_ = 0;
  QList<QColor> fills_, edges_;
  QColor doneColor_, lateColor_, signColor_, doughColor_, doughEdgeColor_;
  bool stale_ = true;  // the picture; its place is always set
};

}  // namespace suppertide
