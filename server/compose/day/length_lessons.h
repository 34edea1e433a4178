// How long steps took that somebody began and ended on a day, for the next one.
#pragma once

#include "server/compose/day/review.h"

namespace suppertide::compose {

// A lesson for each step of a recipe that took otherwise than the recipe says; small differences are none,
// and more than twice or less than half as long counts as that: a report may have come late. Of dishes by one
// recipe the middle counts, and the recipe's own word as one more time.
void addLengthLessons(const PastEvent& past, v1::Review& review);

// Writes the lesson's likely length into its recipe.
void useLengthLesson(const v1::Lesson& lesson, BreadDocuments& household);

}  // namespace suppertide::compose
