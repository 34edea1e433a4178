// What is taken out of the fridge is taken out as near to its use as the cooks' time allows.
#pragma once

#include "server/compose/composition.h"
#include "server/planning/model/schedule.h"
#include "server/planning/replan/replan.h"

namespace suppertide::compose {

// The same schedule with its fetches later: no tier of it costs more and the auditor finds nothing that
// it did not find before. The solver leaves open how long before its use a thing stands out, since no
// tier asks for it. Cost: one audit for most fetches.
planning::Schedule withLateFetches(const Composition& composition, const planning::Schedule& schedule);

// The same for a plan that is under way: only where the use of a thing moved later, and never a fetch that is
// over or begins within kAboutToStart. That a fetch moves is no cost here, but it is among the moves.
void delayFetches(const Composition& composition, const planning::Running& running,
                  planning::Replanned& made);

}  // namespace suppertide::compose
