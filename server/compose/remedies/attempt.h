// Changes made to an event together, before it is known whether they are enough.
#pragma once

#include <vector>

#include "server/compose/remedies/situation.h"

namespace suppertide::compose {

struct Attempt {
  std::vector<Change> changes;  // no two of a group
  Documents documents;          // of the event with all of them made

  // How big they are to people together, in points.
  int size() const;
  // Whether one of its group, as big or bigger, is made already.
  bool hasAsMuch(const Change& change) const;
};

// One change more, in the place of one of its group; all are made to `asItIs` anew.
Attempt withChange(const Attempt& attempt, const Change& change, const Documents& asItIs);

// The biggest change of the same group among `all`, which are sorted by size and hold `change`.
const Change& biggestLike(const Change& change, const std::vector<Change>& all);

}  // namespace suppertide::compose
