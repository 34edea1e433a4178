// What the oven temperatures that were reported on a day teach for the next one.
#pragma once

#include "server/compose/day/review.h"

namespace suppertide::compose {

// A lesson for each oven of the event's kitchen whose curve, fitted with the day's readings too, heats
// otherwise than believed; small differences are none.
void addOvenLessons(const PastEvent& past, v1::Review& review);

// Writes the day's readings of the lesson's oven into its curve.
void useOvenLesson(const PastEvent& past, const v1::Lesson& lesson, BreadDocuments& household);

}  // namespace suppertide::compose
