// What is mixed ahead of a dough, and what was measured of it: parts of checkFormula.
#pragma once

#include "server/compose/validate/checker.h"
#include "suppertide/v1/recipe.pb.h"

namespace suppertide::compose {

// Levain, preferments and soakers by themselves. True when it makes sense to take them out of the lines.
bool checkParts(const Checker& here, const v1::BreadFormula& formula);
// That each line holds what planning takes out of it for them. The lines must be good by themselves.
void checkPartsTaken(const Checker& here, const v1::BreadFormula& formula);
void checkMixReadings(const Checker& here, const v1::BreadFormula& formula);
// `here`: one reading.
void checkMixReading(const Checker& here, const v1::MixReading& reading);
// An effect of this kind, as AddBreadReadings writes it.
void checkLearned(const Checker& here, const v1::LearnedEffect& learned, v1::EffectKind kind);

}  // namespace suppertide::compose
