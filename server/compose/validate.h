// What is wrong with a document, all of it at once, before anything is stored.
//
// Paths are in the words of the JSON mapping, from the top of the message given:
// "recipes[2].steps[0].placeKinds[1]". Each violation says what is allowed, in
// words a cook understands. An empty list means valid.
//
// Where the documents state no size, wide ones hold (texts of 2000 characters,
// lists of 10 to 500 items) and the violation says them. What is in a list that
// is too long isn't looked at.
#pragma once

#include <vector>

#include "suppertide/v1/bundle.pb.h"

namespace suppertide::compose {

using Violations = std::vector<v1::FieldViolation>;

// Each document alone: sizes, ranges, required fields, ids, text, orders, cycles in steps.
Violations validate(const v1::Household& household);
Violations validate(const v1::Kitchen& kitchen);
Violations validate(const v1::Starter& starter);
Violations validate(const v1::Recipe& recipe);
Violations validate(const v1::Event& event);

// A bundle: each document, and every reference between them (starters, recipes,
// kitchen, members, equipment, skills, pins). Needs exactly one event when `toPlan`.
Violations validate(const v1::Bundle& bundle, bool toPlan);

}  // namespace suppertide::compose
