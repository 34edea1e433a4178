// Warnings in one sentence each.
#pragma once

#include <QtCore/qcoreapplication.h>

#include "suppertide/v1/recipe.pb.h"

namespace suppertide {

class CautionWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::CautionWords)
 public:
  static QString sentence(v1::Caution caution);
};

}  // namespace suppertide
