// How likely a plan's courses are in time, into the plan document.
#pragma once

#include "server/compose/composition.h"
#include "server/planning/model/schedule.h"

namespace suppertide::compose {

// The same schedule, or one that costs no more and is more likely in time; no
// dough of it ends outside its window where none did.
planning::Schedule robust(const Composition& composition, const planning::Schedule& schedule);

// Chances of courses and dishes and bands of steps, by so many simulated
// evenings; `plan` has these already.
void addChances(const Composition& composition, const planning::Schedule& schedule, int evenings,
                v1::Plan& plan);

}  // namespace suppertide::compose
