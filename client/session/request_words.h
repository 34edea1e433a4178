// What a person did, in a few words: for undo, and for what waits or was refused.
#pragma once

#include <google/protobuf/message.h>

#include <QtCore/qcoreapplication.h>

#include "absl/status/status.h"
#include "client/link/replica.h"

namespace suppertide {

class RequestWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::RequestWords)
 public:
  // "“Shape the rolls”: done", "Change of the recipe “Rye loaf”". `replica` has the names.
  static QString of(const google::protobuf::Message& request, const link::Replica& replica);

  // A refusal that names fields at fault, without its technical part, else as the server said it.
  static QString why(const absl::Status& status);
};

}  // namespace suppertide
