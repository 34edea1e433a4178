// What looks at rising doughs on a day teach of starters and their breads.
#pragma once

#include "server/compose/day/review.h"

namespace suppertide::compose {

// A lesson for each starter whose pace is learned otherwise with the day's looks, and for each of its breads;
// small differences are none. `household` has all that its doughs ever taught.
void addPaceLessons(const PastEvent& past, const BreadDocuments& household, v1::Review& review);

// Adds the day's looks to the starter that the lesson is about, or whose bread. How many of them are new.
int teachStarter(const PastEvent& past, const v1::Lesson& lesson, BreadDocuments& household);

}  // namespace suppertide::compose
