#include "client/ui/symbol_paths.h"

#include <initializer_list>

namespace suppertide {
namespace {

void addLine(QPainterPath& path, std::initializer_list<QPointF> points) {
  const QPointF* point = points.begin();
  path.moveTo(*point);
  while (++point != points.end()) path.lineTo(*point);
}

// An open palm: four fingers on it and a thumb beside.
QPainterPath hands() {
  QPainterPath path;
  path.moveTo(8, 12);
  path.lineTo(8, 6);
  path.moveTo(11.5, 11);
  path.lineTo(11.5, 4);
  path.moveTo(15, 11);
  path.lineTo(15, 5);
  path.moveTo(18.5, 13);
  path.lineTo(18.5, 8);
  path.moveTo(18.5, 12);
  path.lineTo(18.5, 15);
  path.cubicTo(18.5, 19, 16, 21, 13, 21);
  path.cubicTo(10, 21, 8.5, 19.5, 7, 17.5);
  path.lineTo(4, 13.5);
  path.moveTo(8, 11);
  path.lineTo(8, 14);
  return path;
}

QPainterPath hourglass() {
  QPainterPath path;
  addLine(path, {{6, 4}, {18, 4}});
  addLine(path, {{6, 20}, {18, 20}});
  addLine(path, {{8, 4}, {8, 7}, {12, 12}, {16, 7}, {16, 4}});
  addLine(path, {{8, 20}, {8, 17}, {12, 12}, {16, 17}, {16, 20}});
  return path;
}

QPainterPath dough() {
  QPainterPath path;
  path.moveTo(3, 19);
  path.cubicTo(3, 6, 21, 6, 21, 19);
  path.closeSubpath();
  addLine(path, {{9, 14}, {11, 11}});
  addLine(path, {{13, 15}, {15, 12}});
  return path;
}

QPainterPath oven() {
  QPainterPath path;
  path.addRoundedRect(QRectF(4, 3, 16, 18), 2, 2);
  path.addRect(QRectF(7.5, 11, 9, 6.5));
  addLine(path, {{8, 7}, {8.5, 7}});
  addLine(path, {{12, 7}, {12.5, 7}});
  addLine(path, {{16, 7}, {16.5, 7}});
  return path;
}

QPainterPath pot() {
  QPainterPath path;
  addLine(path, {{5, 11}, {5, 18}});
  path.moveTo(5, 11);
  path.lineTo(5, 17);
  path.cubicTo(5, 20, 7, 20, 8, 20);
  path.lineTo(16, 20);
  path.cubicTo(17, 20, 19, 20, 19, 17);
  path.lineTo(19, 11);
  path.closeSubpath();
  addLine(path, {{2, 12}, {5, 12}});
  addLine(path, {{19, 12}, {22, 12}});
  addLine(path, {{10, 4}, {9, 6}, {10, 8}});
  addLine(path, {{15, 4}, {14, 6}, {15, 8}});
  return path;
}

QPainterPath snowflake() {
  QPainterPath path;
  addLine(path, {{12, 3}, {12, 21}});
  addLine(path, {{4.2, 7.5}, {19.8, 16.5}});
  addLine(path, {{19.8, 7.5}, {4.2, 16.5}});
  addLine(path, {{9.5, 4.5}, {12, 7}, {14.5, 4.5}});
  addLine(path, {{9.5, 19.5}, {12, 17}, {14.5, 19.5}});
  return path;
}

QPainterPath drop() {
  QPainterPath path;
  path.moveTo(12, 3);
  path.cubicTo(15, 8, 18, 11, 18, 15);
  path.cubicTo(18, 23, 6, 23, 6, 15);
  path.cubicTo(6, 11, 9, 8, 12, 3);
  return path;
}

// A fridge, and the way out of it.
QPainterPath takeOut() {
  QPainterPath path;
  path.addRoundedRect(QRectF(3, 3, 11, 18), 2, 2);
  addLine(path, {{3, 9}, {14, 9}});
  addLine(path, {{10, 15}, {21, 15}});
  addLine(path, {{17.5, 11.5}, {21, 15}, {17.5, 18.5}});
  return path;
}

QPainterPath cover() {
  QPainterPath path;
  path.moveTo(4, 17);
  path.cubicTo(4, 6, 20, 6, 20, 17);
  path.closeSubpath();
  addLine(path, {{2, 20}, {22, 20}});
  addLine(path, {{12, 5}, {12, 8}});
  return path;
}

QPainterPath cook() {
  QPainterPath path;
  path.addEllipse(QPointF(12, 8), 4, 4);
  path.moveTo(4, 21);
  path.cubicTo(4, 13, 20, 13, 20, 21);
  return path;
}

QPainterPath shelf() {
  QPainterPath path;
  path.addRect(QRectF(4, 3, 16, 18));
  addLine(path, {{4, 9}, {20, 9}});
  addLine(path, {{4, 15}, {20, 15}});
  return path;
}

QPainterPath late() {
  QPainterPath path;
  path.addEllipse(QPointF(12, 12), 9, 9);
  addLine(path, {{12, 6.5}, {12, 12}, {16, 14.5}});
  return path;
}

QPainterPath pin() {
  QPainterPath path;
  addLine(path, {{8, 3}, {16, 3}});
  addLine(path, {{10, 3}, {10, 10}, {7, 14}, {17, 14}, {14, 10}, {14, 3}});
  addLine(path, {{12, 14}, {12, 21}});
  return path;
}

QPainterPath lines(std::initializer_list<std::initializer_list<QPointF>> all) {
  QPainterPath path;
  for (const auto& line : all) addLine(path, line);
  return path;
}

QPainterPath basket() {
  QPainterPath path;
  addLine(path, {{3, 10}, {21, 10}, {18.5, 20}, {5.5, 20}, {3, 10}});
  path.moveTo(7, 10);
  path.cubicTo(8, 2, 16, 2, 17, 10);
  return path;
}

QPainterPath jar() {
  QPainterPath path;
  path.addRoundedRect(QRectF(6, 8, 12, 13), 3, 3);
  addLine(path, {{7, 4}, {17, 4}, {17, 8}, {7, 8}, {7, 4}});
  addLine(path, {{6, 14}, {18, 14}});
  return path;
}

QPainterPath house() {
  QPainterPath path;
  addLine(path, {{3, 12}, {12, 4}, {21, 12}});
  addLine(path, {{6, 10}, {6, 20}, {18, 20}, {18, 10}});
  addLine(path, {{10, 20}, {10, 14}, {14, 14}, {14, 20}});
  return path;
}

QPainterPath undo() {
  QPainterPath path;
  addLine(path, {{9, 4}, {4, 9}, {9, 14}});
  path.moveTo(4, 9);
  path.lineTo(14, 9);
  path.cubicTo(22, 9, 22, 20, 14, 20);
  path.lineTo(9, 20);
  return path;
}

QPainterPath bell() {
  QPainterPath path;
  path.moveTo(4, 18);
  path.cubicTo(8, 14, 4, 5, 12, 5);
  path.cubicTo(20, 5, 16, 14, 20, 18);
  path.closeSubpath();
  addLine(path, {{10, 21}, {14, 21}});
  addLine(path, {{12, 3}, {12, 5}});
  return path;
}

QPainterPath paper() {
  QPainterPath path;
  path.addRect(QRectF(5, 3, 14, 18));
  addLine(path, {{8, 8}, {16, 8}});
  addLine(path, {{8, 12}, {16, 12}});
  addLine(path, {{8, 16}, {13, 16}});
  return path;
}

QPainterPath circle() {
  QPainterPath path;
  path.addEllipse(QPointF(12, 12), 7, 7);
  return path;
}

}  // namespace

QPainterPath symbolPath(Symbol::Shape shape) {
  switch (shape) {
    case Symbol::Hands:
      return hands();
    case Symbol::Hourglass:
      return hourglass();
    case Symbol::Dough:
      return dough();
    case Symbol::Oven:
      return oven();
    case Symbol::Pot:
      return pot();
    case Symbol::Snowflake:
      return snowflake();
    case Symbol::Drop:
      return drop();
    case Symbol::Pause:
      return lines({{{8, 5}, {8, 19}}, {{16, 5}, {16, 19}}});
    case Symbol::TakeOut:
      return takeOut();
    case Symbol::Cover:
      return cover();
    case Symbol::Cook:
      return cook();
    case Symbol::Shelf:
      return shelf();
    case Symbol::Late:
      return late();
    case Symbol::Done:
      return lines({{{4, 13}, {10, 19}, {20, 6}}});
    case Symbol::Pin:
      return pin();
    case Symbol::Moved:
      return lines({{{3, 12}, {21, 12}}, {{8, 7}, {3, 12}, {8, 17}}, {{16, 7}, {21, 12}, {16, 17}}});
    case Symbol::Live:
    case Symbol::Offline:
      return circle();
    case Symbol::Refused:
      return lines({{{12, 3}, {22, 21}, {2, 21}, {12, 3}}, {{12, 10}, {12, 14}}, {{12, 17.5}, {12, 17.6}}});
    case Symbol::Lanes:
      return lines({{{3, 6}, {12, 6}}, {{8, 12}, {18, 12}}, {{13, 18}, {21, 18}}});
    case Symbol::Basket:
      return basket();
    case Symbol::Jar:
      return jar();
    case Symbol::House:
      return house();
    case Symbol::Undo:
      return undo();
    case Symbol::Bell:
      return bell();
    case Symbol::Paper:
      return paper();
    case Symbol::Stop:
      return lines({{{6, 6}, {18, 6}, {18, 18}, {6, 18}, {6, 6}}});
    case Symbol::Plus:
      return lines({{{12, 4}, {12, 20}}, {{4, 12}, {20, 12}}});
    case Symbol::Minus:
      return lines({{{4, 12}, {20, 12}}});
    case Symbol::Close:
      return lines({{{5, 5}, {19, 19}}, {{19, 5}, {5, 19}}});
    case Symbol::Up:
      return lines({{{5, 15}, {12, 8}, {19, 15}}});
    case Symbol::Down:
      return lines({{{5, 9}, {12, 16}, {19, 9}}});
    case Symbol::Back:
      return lines({{{15, 5}, {8, 12}, {15, 19}}});
    case Symbol::Nothing:
      break;
  }
  return {};
}

bool isFilledSymbol(Symbol::Shape shape) {
  return shape == Symbol::Live;
}

}  // namespace suppertide
