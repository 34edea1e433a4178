#include "client/timeline/lane_bars.h"

#include <QtCore/qmath.h>
#include <QtGui/qpainter.h>
#include <QtQuick/qquickwindow.h>
#include <QtQuick/qsgimagenode.h>
#include <QtQuick/qsgnode.h>
#include <QtQuick/qsgrectanglenode.h>

#include <algorithm>
#include <map>
#include <memory>

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

// Nodes are kept from frame to frame; what a frame does not need is empty.
class LaneBars::Node : public QSGTransformNode {
 public:
  Node() {
    appendChildNode(boxes_);
    appendChildNode(signs_);
  }
  ~Node() override {
    for (QSGImageNode* sign : signPool_)
      if (sign->parent() == nullptr) delete sign;
  }

  QSGNode* const boxes_ = new QSGNode;
  QSGNode* const signs_ = new QSGNode;
  std::vector<QSGRectangleNode*> boxPool_;
  std::vector<QSGImageNode*> signPool_;
  std::map<int, std::unique_ptr<QSGTexture>> textures_;  // by Symbol::Shape
};

class LaneBars::Pen {
 public:
  Pen(Node& node, QQuickWindow& window, QColor signColor)
      : node_(node), window_(window), signColor_(std::move(signColor)) {}

  void box(const QRectF& rect, const QColor& color) {
    if (boxCount_ == node_.boxPool_.size()) {
      node_.boxPool_.push_back(window_.createRectangleNode());
      node_.boxes_->appendChildNode(node_.boxPool_.back());
    }
    QSGRectangleNode* node = node_.boxPool_[boxCount_++];
    if (node->rect() != rect) node->setRect(rect);
    if (node->color() != color) node->setColor(color);
  }
  void framed(const QRectF& rect, double line, const QColor& edge, const QColor& fill) {
    box(rect, edge);
    box(rect.adjusted(line, line, -line, -line), fill);
  }
  void sign(const QRectF& rect, int shape) {
    if (signCount_ == node_.signPool_.size()) {
      QSGImageNode* made = window_.createImageNode();
      made->setOwnsTexture(false);
      node_.signPool_.push_back(made);
    }
    QSGImageNode* node = node_.signPool_[signCount_++];
    node->setTexture(texture(shape));
    node->setRect(rect);
    if (node->parent() == nullptr) node_.signs_->appendChildNode(node);
  }
  // What was drawn before and is not now.
  void finish() {
    for (std::size_t i = boxCount_; i < node_.boxPool_.size(); ++i) node_.boxPool_[i]->setRect(QRectF());
    for (std::size_t i = signCount_; i < node_.signPool_.size(); ++i)
      if (node_.signPool_[i]->parent() != nullptr) node_.signs_->removeChildNode(node_.signPool_[i]);
  }

 private:
  QSGTexture* texture(int shape) {
    std::unique_ptr<QSGTexture>& kept = node_.textures_[shape];
    if (kept == nullptr) {
      const double ratio = window_.effectiveDevicePixelRatio();
      const QImage picture = pictureOf(static_cast<Symbol::Shape>(shape), signColor_, qCeil(kSign * ratio));
      kept.reset(window_.createTextureFromImage(picture));
    }
    return kept.get();
  }

  Node& node_;
  QQuickWindow& window_;
  QColor signColor_;
  std::size_t boxCount_ = 0;
  std::size_t signCount_ = 0;
};

LaneBars::LaneBars(QQuickItem* parent) : QQuickItem(parent) {
  setFlag(ItemHasContents);
  connect(this, &LaneBars::looksChanged, this, [this] {
    newSigns_ = true;
    rebuild();
  });
}

void LaneBars::setTimeline(Timeline* timeline) {
  if (timeline == timeline_) return;
  if (timeline_ != nullptr) timeline_->disconnect(this);
  timeline_ = timeline;
  if (timeline_ != nullptr) {
    connect(timeline_, &Timeline::scaleChanged, this, &LaneBars::follow);
    connect(timeline_, &Timeline::windowChanged, this, &LaneBars::rebuild);
  }
  rebuild();
  Q_EMIT sourceChanged();
}

void LaneBars::setSteps(StepModel* steps) {
  if (steps == steps_) return;
  if (steps_ != nullptr) steps_->disconnect(this);
  steps_ = steps;
  if (steps_ != nullptr) connect(steps_, &StepModel::othersChanged, this, &LaneBars::rebuild);
  rebuild();
  Q_EMIT sourceChanged();
}

void LaneBars::focusInEvent(QFocusEvent* event) {
  QQuickItem::focusInEvent(event);
  Q_EMIT entered(event->reason() == Qt::BacktabFocusReason ? -1 : 1);
}

// Panning shifts what there is.
void LaneBars::follow() {
  stale_ = stale_ || drawnScale_ != timeline_->pixelsPerMinute();
  update();
}

void LaneBars::rebuild() {
  setActiveFocusOnTab(steps_ != nullptr && !steps_->allSteps().empty());
  stale_ = true;
  update();
}

QSGNode* LaneBars::updatePaintNode(QSGNode* old, UpdatePaintNodeData*) {
  auto* node = static_cast<Node*>(old);
  if (timeline_ == nullptr || steps_ == nullptr || newSigns_) {
    delete node;
    node = nullptr;
  }
  if (timeline_ == nullptr || steps_ == nullptr) return nullptr;
  if (node == nullptr) {
    node = new Node;
    newSigns_ = false;
    stale_ = true;
  }
  if (stale_) {
    Pen pen(*node, *window(), signColor_);
    draw(pen);
    pen.finish();
    drawnScale_ = timeline_->pixelsPerMinute();
    stale_ = false;
  }
  QMatrix4x4 matrix;
  matrix.translate(static_cast<float>(timeline_->scale().toX(timeline_->windowStart())), 0);
  node->setMatrix(matrix);
  return node;
}

// Placed from the window's start, so that no coordinate grows large.
void LaneBars::draw(Pen& pen) const {
  const double start = timeline_->windowStart();
  const auto [first, limit] = steps_->touching(start, start + timeline_->windowLength());
  for (std::size_t i = first; i < limit; ++i)
    if (!steps_->isBar(i)) drawStep(pen, steps_->allSteps()[i]);
}

void LaneBars::drawStep(Pen& pen, const StepRow& step) const {
  const double scale = timeline_->pixelsPerMinute();
  const double width = std::max(kLeastWidth, step.length * scale - 2);
  const QRectF box((step.start - timeline_->windowStart()) * scale, step.subRow * rowHeight_, width,
                   barHeight_);
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
