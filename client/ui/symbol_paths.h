// The outlines of the small signs, on a grid of 24 by 24.
#pragma once

#include <QtGui/qpainterpath.h>

#include "client/ui/symbol.h"

namespace suppertide {

// Lines to be stroked; the signs differ in outline, so that none needs its colour to be told apart.
QPainterPath symbolPath(Symbol::Shape shape);
// Whether the outline is filled as well.
bool isFilledSymbol(Symbol::Shape shape);

}  // namespace suppertide
