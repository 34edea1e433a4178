// What was seen of the doughs and levains of a running plan, as today's doughs are believed to be by it.
//
// Unlike what bread_learning.h keeps of all doughs ever seen, this holds for one evening and is never stored:
// it is worked out anew from the reports each time.
#pragma once

#include <vector>

#include "server/compose/composition.h"
#include "server/planning/replan/happened.h"
#include "suppertide/v1/progress.pb.h"

namespace suppertide::compose {

// Writes into `documents`, a copy of those that were composed: a seen rise or dent test of a levain as its
// starter's vigour, of a dough as its recipe's pace; a dough's temperature after mixing, or in its first
// ferment, as the recipe's wanted one. Weighed against how unsure the forecast was. Two doughs of one recipe
// go at one pace. Preferments teach nothing here, nor do temperatures after the first ferment. Returns the
// dishes that were seen, ascending.
std::vector<int> learnToday(const Composition& composition, const planning::Running& running,
                            const v1::Progress& progress, Documents& documents);

// Gives the ferments under way of these dishes the window of their own path, by true times.
void setWindowsUnderWay(Composition& composition, const planning::Running& running,
                        const std::vector<int>& dishes);

// Which reports still hold: none that was taken back, nor the taking back itself, nor one that
// agrees with another that holds.
std::vector<const v1::Report*> standingReports(const v1::Progress& progress);

}  // namespace suppertide::compose
