// Dishes that were found to clash, as an event is or with some changes made, and what might help them.
//
// A question about the whole event is dear, one about the few dishes of a clash is not: changes are
// tried on these first, and every question that says no names the next few.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "server/compose/remedies/situation.h"
#include "server/compose/remedies/trial.h"

namespace suppertide::compose {

using DishIds = std::set<std::string>;

struct KnownClash {
  DishIds dishes;
  std::vector<Change> changes;  // of the event as it is, smallest first
};

class KnownClashes {
 public:
  // `asItIs`, `tables` and `stop` must outlive it. `conflicts`: solver effort a question.
  KnownClashes(const Documents& asItIs, BreadTables& tables, std::int64_t conflicts,
               const std::function<bool()>& stop)
      : asItIs_(asItIs), tables_(tables), conflicts_(conflicts), stop_(stop) {}

  // Learns that these do not fit together in `documents`.
  void add(const DishIds& dishes, const Documents& documents);
  // One whose dishes do not fit together in these documents, the one of fewest dishes; null when none is
  // known. Many dishes are not asked about: then the whole event is as good a question. Valid as long as
  // this object.
  const KnownClash* openIn(const Documents& documents);
  // Whether these of the dishes can all be served in time; false also when that took too long to tell.
  // Each question is asked once, and not at all where a plan made for other changes will do.
  bool fit(const Documents& documents, const DishIds& dishes);

 private:
  bool isOpen(const Documents& documents, const DishIds& dishes);
  bool ask(const Documents& documents, const DishIds& dishes, Documents few);

  const Documents& asItIs_;
  BreadTables& tables_;
  std::int64_t conflicts_;
  const std::function<bool()>& stop_;
  std::map<std::pair<std::size_t, DishIds>, KnownClash> clashes_;  // by how many, and which
  std::map<std::string, bool> answers_;                            // by planningKey()
  std::map<DishIds, std::vector<planning::Schedule>> plans_;       // that served these, with some changes
};

// All of the documents that a plan depends on and remedies change, as bytes.
std::string planningKey(const Documents& documents);

// The ids of dishes given by index.
DishIds dishIdsOf(const Composition& composition, const std::vector<int>& dishes);

}  // namespace suppertide::compose
