// A small sign drawn with lines: what kind of step, what state.
#pragma once

#include <QtQuick/qquickpainteditem.h>

namespace suppertide {

class Symbol : public QQuickPaintedItem {
  Q_OBJECT
  Q_PROPERTY(suppertide::Symbol::Shape shape READ shape WRITE setShape NOTIFY changed)
  Q_PROPERTY(QColor color READ color WRITE setColor NOTIFY changed)
  QML_ELEMENT
 public:
  enum Shape {
    Nothing,
    // Kinds of steps.
    Hands,
    Hourglass,
    Dough,
    Oven,
    Pot,
    Snowflake,
    Drop,
    Pause,
    Cover,
    TakeOut,
    // Lanes.
    Cook,
    Shelf,
    // States.
    Late,
    Done,
    Pin,
    Moved,
    Live,
    Offline,
    Refused,
    // Screens.
    Lanes,
    Basket,
    Jar,
    House,
    // Actions and news.
    Undo,
    Bell,
    Paper,
    Stop,
    Plus,
    Minus,
    Close,
    Up,
    Down,
    Back,
  };
  Q_ENUM(Shape)

  explicit Symbol(QQuickItem* parent = nullptr);

  Shape shape() const { return shape_; }
  void setShape(Shape shape);
  QColor color() const { return color_; }
  void setColor(const QColor& color);

  void paint(QPainter* painter) override;

 Q_SIGNALS:
  void changed();

 private:
  Shape shape_ = Nothing;
  QColor color_;
};

}  // namespace suppertide
