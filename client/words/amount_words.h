// An amount of food in words.
#pragma once

#include <QtCore/qcoreapplication.h>
#include <QtCore/qstring.h>

#include "suppertide/v1/menu.pb.h"

namespace suppertide {

class AmountWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::AmountWords)
 public:
  // "450 g", "1.2 kg", "3"; empty when there is none.
  static QString text(const v1::Amount& amount);
};

}  // namespace suppertide
