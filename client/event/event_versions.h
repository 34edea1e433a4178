// Two versions of one event side by side: what differs, for the person who has to choose.
#pragma once

#include <QtCore/qcoreapplication.h>

#include <vector>

#include "client/link/replica.h"
#include "client/ui/record_model.h"

namespace suppertide {

class EventVersions {
  Q_DECLARE_TR_FUNCTIONS(suppertide::EventVersions)
 public:
  // One row a difference: "what", "mine", "theirs". Names of kitchens, recipes and members are the replica's.
  static std::vector<Record> differences(const link::Replica& replica, const v1::Event& mine,
                                         const v1::Event& theirs);
};

}  // namespace suppertide
