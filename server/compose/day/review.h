// What really happened of an event against its plan, and what it taught. Pure.
#pragma once

#include <set>
#include <string>
#include <utility>
#include <vector>

#include "server/compose/bread_learning.h"
#include "server/compose/planner.h"
#include "suppertide/v1/progress.pb.h"
#include "suppertide/v1/review.pb.h"

namespace suppertide::compose {

struct PastEvent {
  const Documents& documents;  // as they are now
  const v1::Plan& plan;        // its last one
  const v1::Progress& progress;
};

// Everything but the lessons, by the documents of the event alone.
v1::Review reviewOf(const PastEvent& past);

// Adds what could be used next time: lengths of steps that somebody began and ended, the pace of starters
// whose levains and doughs were looked at and of their breads, and how ovens heat whose temperature was told.
// `household` has all that its doughs ever taught. Small differences are none.
void addLessons(const PastEvent& past, const BreadDocuments& household, v1::Review& review);

// Writes lessons into the documents: likely lengths into recipes; what was seen into starters, and what that
// teaches into starters, places and recipes; temperatures into ovens' curves. A starter's lesson and those of
// its breads come from the same looks: taking one uses them for all. Unknown ids are passed over.
absl::Status useLessons(const PastEvent& past, const v1::Review& review,
                        const std::set<std::string>& lessonIds, BreadDocuments& household);

}  // namespace suppertide::compose
