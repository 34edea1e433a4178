// How far real lengths may be from planned ones, for simulated evenings.
#pragma once

#include <vector>

#include "server/bread/forecast.h"
#include "server/compose/composition.h"

namespace suppertide::compose {

class BreadTables;

// What a recipe says of a length, as ratios to the likely one; `usual` where it
// says neither least nor most.
planning::Spread spreadOf(const v1::Spread& told, const planning::Spread& usual);
// Of plain steps: work takes a little less or a good deal longer, waiting by the
// clock is as it is. Common practice, no source.
planning::Spread usualSpread(v1::StepKind kind);

// One ferment as the bread engine sees it.
struct FermentCase {
  const bread::DoughKind& kind;
  const bread::DoughState& state;
  const std::vector<bread::Stay>& stays;
  const bread::Stage& stage;
};

// How the ferment's length follows its starter's vigour and adaptation and the
// warmth of its place: each by what a shift of one deviation does to the
// forecast. Adds what nobody knows to the problem: one starter is quick or slow
// for all its doughs, one place warm or cool for all that stands there.
// `starter` may be null (yeast alone). A retard that the clock ends follows nothing.
planning::Spread fermentSpread(Composition& composition, const v1::Starter* starter, int place,
                               const FermentCase& ferment, BreadTables& tables);

}  // namespace suppertide::compose
