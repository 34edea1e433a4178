// An amount of food in words, in the reader's measures.
#pragma once

#include <QtCore/qcoreapplication.h>
#include <QtCore/qstring.h>

#include "suppertide/v1/household.pb.h"
#include "suppertide/v1/menu.pb.h"

namespace suppertide {

class AmountWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::AmountWords)
 public:
  // "450 g", "1.25 kg", "3"; in US measures "1 lb", "1½ cups". Empty when there is none.
  static QString text(const v1::Amount& amount, v1::MeasureSystem system = v1::MEASURE_SYSTEM_METRIC);
  static QString mass(double grams, v1::MeasureSystem system);
  static QString volume(double millilitres, v1::MeasureSystem system);
  // Pieces: whole ones and the usual parts, "1½".
  static QString count(double pieces);
  // Rounded up as shops sell.
  static QString toBuy(const v1::Amount& amount, v1::MeasureSystem system);
};

}  // namespace suppertide
