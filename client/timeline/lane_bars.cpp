#include "client/timeline/lane_bars.h"

#include <QtCore/qmath.h>
#include <QtGui/qpainter.h>
#include <QtQuick/qquickwindow.h>
#include <QtQuick/qsgimagenode.h>
#include <QtQuick/qsgnode.h>

#include <algorithm>
#include <map>
#include <memory>
#include <utility>
#include <vector>

#include "client/ui/symbol_paths.h"

namespace suppertide {
namespace {
constexpr double kLeastWidth = 8;  // as of a bar with words
constexpr double kSignFrom = 24;   // pixels of width that hold a sign
constexpr double kSign = 16;
constexpr double kSignGrid = 24;
constexpr double kHandsEdge = 4;  // work for hands has a solid edge at its start
constexpr double kHandsFrom = 12;
constexpr double kSlackFrom = 6;
constexpr int kDoughParts = 4;  // columns of a dough too small for its curve
// As Symbol paints it.
QImage pictureOf(Symbol::Shape shape, const QColor& color, int side) {
  QImage picture(side, side, QImage::Format_ARGB32_Premultiplied);
  picture.fill(Qt::transparent);
  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(side / kSignGrid, side / kSignGrid);
  painter.setPen(QPen(color, 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  if (isFilledSymbol(shape)) painter.setBrush(color);
  painter.drawPath(symbolPath(shape));
  return picture;
}

}  // namespace

// Keeps its picture from frame to frame.
class LaneBars::Node : public QSGTransformNode {
 public:
  // Transparent, of that many pixels.
  static QImage canvas(QSize size, double ratio) {
    QImage picture = std::exchange(spare(), QImage());
    if (picture.size() != size || !picture.isDetached())
      picture = QImage(size, QImage::Format_ARGB32_Premultiplied);
    picture.setDevicePixelRatio(ratio);
    picture.fill(Qt::transparent);
    return picture;
  }
  void show(QQuickWindow& window, const QImage& picture) {
    if (image_ == nullptr) {
      image_ = window.createImageNode();
      image_->setOwnsTexture(false);
    }
    std::unique_ptr<QSGTexture> texture(window.createTextureFromImage(picture));
    image_->setTexture(texture.get());
    image_->setRect(QRectF(QPointF(), picture.deviceIndependentSize()));
    texture_ = std::move(texture);
    spare() = std::exchange(picture_, picture);
    if (image_->parent() == nullptr) appendChildNode(image_);
  }
  void clear() {
    delete image_;
    image_ = nullptr;
    texture_ = nullptr;
    picture_ = QImage();
  }

 private:
  // The last picture that was replaced, mostly as large as the next one: memory that is new to a program
  // costs more than all that is painted into it.
  static QImage& spare() {
    thread_local QImage image;
    return image;
  }

  QSGImageNode* image_ = nullptr;  // a child; null: there is nothing to show
  QImage picture_;                 // that it shows
  std::unique_ptr<QSGTexture> texture_;
};

class LaneBars::Pen {
 public:
  Pen(QImage& picture, QColor signColor)
      : picture_(picture), painter_(&picture), signColor_(std::move(signColor)) {}

  void box(const QRectF& rect, const QColor& color) { painter_.fillRect(rect, color); }
  void framed(const QRectF& rect, double line, const QColor& edge, const QColor& fill) {
    box(rect, edge);
    box(rect.adjusted(line, line, -line, -line), fill);
  }
  void sign(const QRectF& rect, int shape) {
    QImage& kept = signs_[shape];
    if (kept.isNull())
      kept = pictureOf(static_cast<Symbol::Shape>(shape), signColor_,
                       qCeil(kSign * picture_.devicePixelRatio()));
    painter_.drawImage(rect, kept);
  }

 private:
  QImage& picture_;
  QPainter painter_;
  QColor signColor_;
  std::map<int, QImage> signs_;  // by Symbol::Shape
};

LaneBars::LaneBars(QQuickItem* parent) : QQuickItem(parent) {
  setFlag(ItemHasContents);
  connect(this, &LaneBars::looksChanged, this, &LaneBars::rebuild);
}

void LaneBars::setTimeline(Timeline* timeline) {
  if (timeline == timeline_) return;
  if (timeline_ != nullptr) timeline_->disconnect(this);
  timeline_ = timeline;
  if (timeline_ != nullptr) {
    connect(timeline_, &Timeline::scaleChanged, this, &LaneBars::update);
  }
  rebuild();
  Q_EMIT sourceChanged();
}

void LaneBars::setSteps(StepModel* steps) {
  if (steps == steps_) return;
  if (steps_ != nullptr) steps_->disconnect(this);
  steps_ = steps;
  if (steps_ != nullptr) {
    for (const auto signal : {&StepModel::othersChanged, &StepModel::laidChanged, &StepModel::inSightChanged})
      connect(steps_, signal, this, &LaneBars::rebuild);
  }
  rebuild();
  Q_EMIT sourceChanged();
}

void LaneBars::focusInEvent(QFocusEvent* event) {
  QQuickItem::focusInEvent(event);
  Q_EMIT entered(event->reason() == Qt::BacktabFocusReason ? -1 : 1);
}

void LaneBars::rebuild() {
  setActiveFocusOnTab(steps_ != nullptr && !steps_->allSteps().empty());
  stale_ = true;
  update();
}

void LaneBars::geometryChange(const QRectF& now, const QRectF& before) {
  QQuickItem::geometryChange(now, before);
  if (now.height() != before.height()) rebuild();
}

QSGNode* LaneBars::updatePaintNode(QSGNode* old, UpdatePaintNodeData*) {
  auto* node = static_cast<Node*>(old);
  if (timeline_ == nullptr || steps_ == nullptr || !steps_->inSight()) {
    delete node;
    stale_ = true;
    return nullptr;
  }
  if (node == nullptr) {
    node = new Node;
    stale_ = true;
  }
  if (stale_) {
    paint(*node);
    stale_ = false;
  }
  const BarView& laid = steps_->laid();
  QMatrix4x4 matrix;
  matrix.translate(static_cast<float>(timeline_->scale().toX(laid.start)), 0);
  matrix.scale(static_cast<float>(timeline_->pixelsPerMinute() / laid.pixelsPerMinute), 1);
  node->setMatrix(matrix);
  return node;
}

void LaneBars::paint(Node& node) const {
  const BarView& laid = steps_->laid();
  const QSizeF size((laid.limit - laid.start) * laid.pixelsPerMinute, height());
  const auto [first, limit] = steps_->touching(laid.start, laid.limit);
  std::vector<const StepRow*> boxes;
  for (std::size_t i = first; i < limit; ++i)
    if (!steps_->isBar(i)) boxes.push_back(&steps_->allSteps()[i]);
  if (boxes.empty() || size.isEmpty()) return node.clear();
  const double ratio = window()->effectiveDevicePixelRatio();
  QImage picture = Node::canvas((size * ratio).toSize(), ratio);
  {
    Pen pen(picture, signColor_);
    for (const StepRow* step : boxes) drawStep(pen, *step);
  }
  node.show(*window(), picture);
}

void LaneBars::drawStep(Pen& pen, const StepRow& step) const {
  const double scale = steps_->laid().pixelsPerMinute;
  const double width = std::max(kLeastWidth, step.length * scale - 2);
  const QRectF box((step.start - steps_->laid().start) * scale, step.subRow * rowHeight_, width, barHeight_);
  if (step.rise.known()) return drawDough(pen, step, box);
  const auto hue = [&](const QList<QColor>& colors) { return colors.value(step.kind, colors.value(0)); };
  const QColor edge = hue(edges_);
  pen.framed(box, step.late || step.handsOn ? 2 : 1, step.late ? lateColor_ : edge,
             step.done ? doneColor_ : hue(fills_));
  if (step.handsOn && width > kHandsFrom)
    pen.box({box.x() + 2, box.y() + 2, kHandsEdge, barHeight_ - 4}, edge);
  if (width >= kSignFrom)
    pen.sign({box.x() + 7, box.y() + (barHeight_ - kSign) / 2, kSign, kSign},
             step.done ? Symbol::Done : step.symbol);
  const double slack = std::min(step.slack, step.roomAfter) * scale - 2;
  if (slack < kSlackFrom || step.done) return;
  pen.box({box.right(), box.bottom() - 3, slack, 2}, edge);
  if (step.slack <= step.roomAfter) pen.box({box.right() + slack - 2, box.bottom() - 8, 2, 8}, edge);
}

// As steps that rise with it.
void LaneBars::drawDough(Pen& pen, const StepRow& step, const QRectF& box) const {
  const double part = box.width() / kDoughParts;
  for (int i = 0; i < kDoughParts; ++i) {
    const double minute = step.start + step.length * (i + 0.5) / kDoughParts;
    const double grown = std::clamp(valueAt(step.rise.rise, minute) - 1, 0.0, 1.0);
    const double height = box.height() * (0.5 + 0.5 * grown);
    const QRectF column(box.x() + i * part, box.bottom() - height, part, height);
    pen.box(column, doughEdgeColor_);
    pen.box(column.adjusted(i == 0 ? 1 : 0, 1, i == kDoughParts - 1 ? -1 : 0, -1), doughColor_);
  }
}

}  // namespace suppertide
