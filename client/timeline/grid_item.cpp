#include "client/timeline/grid_item.h"

#include <QtQuick/qquickwindow.h>
#include <QtQuick/qsgnode.h>
#include <QtQuick/qsgrectanglenode.h>

namespace suppertide {
namespace {
constexpr double kThin = 1;
constexpr double kThick = 2;
}  // namespace

GridItem::GridItem(QQuickItem* parent) : QQuickItem(parent) {
  setFlag(ItemHasContents);
  connect(this, &GridItem::colorsChanged, this, &GridItem::rebuild);
}

void GridItem::setTimeline(Timeline* timeline) {
  if (timeline == timeline_) return;
  if (timeline_ != nullptr) timeline_->disconnect(this);
  timeline_ = timeline;
  if (timeline_ != nullptr) {
    connect(timeline_, &Timeline::scaleChanged, this, &GridItem::follow);
    connect(timeline_, &Timeline::windowChanged, this, &GridItem::rebuild);
    connect(timeline_, &Timeline::pictureChanged, this, &GridItem::rebuild);
  }
  rebuild();
  Q_EMIT timelineChanged();
}

// Panning shifts what there is.
void GridItem::follow() {
  stale_ = stale_ || drawnScale_ != timeline_->pixelsPerMinute();
  update();
}

void GridItem::rebuild() {
  stale_ = true;
  update();
}

void GridItem::geometryChange(const QRectF& now, const QRectF& before) {
  QQuickItem::geometryChange(now, before);
  if (now.height() != before.height()) rebuild();
}

QSGNode* GridItem::updatePaintNode(QSGNode* old, UpdatePaintNodeData*) {
  auto* shift = static_cast<QSGTransformNode*>(old);
  if (timeline_ == nullptr) {
    delete shift;
    return nullptr;
  }
  if (shift == nullptr) {
    shift = new QSGTransformNode;
    stale_ = true;
  }
  if (stale_) {
    while (QSGNode* child = shift->firstChild()) {
      shift->removeChildNode(child);
      delete child;
    }
    addRectangles(shift);
    drawnScale_ = timeline_->pixelsPerMinute();
    stale_ = false;
  }
  QMatrix4x4 matrix;
  matrix.translate(static_cast<float>(timeline_->scale().toX(timeline_->windowStart())), 0);
  shift->setMatrix(matrix);
  return shift;
}

// Placed from the window's start, so that no coordinate grows large.
void GridItem::addRectangles(QSGNode* parent) const {
  const double scale = timeline_->pixelsPerMinute();
  const auto x = [&](double minute) { return (minute - timeline_->windowStart()) * scale; };
  const auto add = [&](double left, double width, const QColor& color) {
    QSGRectangleNode* node = window()->createRectangleNode();
    node->setRect(QRectF(left, 0, width, height()));
    node->setColor(color);
    parent->appendChildNode(node);
  };
  for (const DaySpan& night : timeline_->nights())
    add(x(night.start), x(night.limit) - x(night.start), nightColor_);
  for (const TickMark& mark : timeline_->marks())
    add(x(mark.minute), mark.midnight ? kThick : kThin, mark.midnight ? midnightColor_ : tickColor_);
  for (const CourseRow& course : timeline_->courses()->courses())
    add(x(course.minute) - kThick / 2, kThick, servingColor_);
}

}  // namespace suppertide
