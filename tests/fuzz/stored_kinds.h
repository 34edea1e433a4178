// The documents that a data file may hold.
#pragma once

#include <google/protobuf/descriptor.h>

#include <string>
#include <vector>

#include "suppertide/v1/sync_service.pb.h"

namespace suppertide::fuzz {

// Each kind as storage names it, with its message; "deleted" is the kind of none.
inline const google::protobuf::FieldDescriptor* storedKind(unsigned number) {
  const auto* kinds = v1::Change::descriptor()->oneof_decl(0);
  return kinds->field(static_cast<int>(number % static_cast<unsigned>(kinds->field_count())));
}

}  // namespace suppertide::fuzz
