// Dishes that were found to clash, as an event is or with some changes made, and what might help them.
//
// A question about the whole event is dear, one about the few dishes of a clash is not: changes are
// tried on these first, and every question that says no names the next few.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "server/compose/remedies/fit_answers.h"
#include "server/compose/remedies/situation.h"

namespace suppertide::compose {

struct KnownClash {
  DishIds dishes;
  std::vector<Change> changes;  // of the event as it is, smallest first
};

// What those who look for remedies of one event have in common. All of it outlives them.
struct Looking {
  const Documents& asItIs;
  FitAnswers& answers;
  std::int64_t conflicts;      // solver effort a question about a few dishes
  std::function<bool()> stop;  // asked within a question
};

class KnownClashes {
 public:
  explicit KnownClashes(const Looking& looking) : looking_(&looking) {}
  // The same knowledge for another who looks.
  KnownClashes(const KnownClashes& other, const Looking& looking) : KnownClashes(other) {
    looking_ = &looking;
  }

  // Learns that these do not fit together in `documents`.
  void add(const DishIds& dishes, const Documents& documents);
  // Of a known clash.
  const std::vector<Change>& changesOf(const DishIds& dishes) const {
    return clashes_.at({dishes.size(), dishes}).changes;
  }
  // One whose dishes do not fit together in these documents, the one of fewest dishes; null when none is
  // known. Many dishes are not asked about: then the whole event is as good a question. Valid as long as
  // this object.
  const KnownClash* openIn(const Documents& documents);
  // Whether these of the dishes can all be served in time; false also when that took too long to tell.
  bool fit(const Documents& documents, const DishIds& dishes);

 private:
  KnownClashes(const KnownClashes&) = default;
  bool isOpen(const Documents& documents, const DishIds& dishes);
  bool ask(const Documents& documents, const DishIds& dishes, const Documents& few);

  const Looking* looking_;
  std::map<std::pair<std::size_t, DishIds>, KnownClash> clashes_;  // by how many, and which
  std::map<std::string, bool> known_;                              // by planningKey()
};

}  // namespace suppertide::compose
