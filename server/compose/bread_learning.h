// What all that was seen of a household's doughs teaches about its starters, places and recipes.
//
// Learned anew from every observation each time, from the vigours, temperatures and compositions as stated:
// what is kept beside these is the answer, never an input, so nothing is counted twice.
#pragma once

#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "absl/time/time.h"
#include "server/bread/mix_learning.h"
#include "suppertide/v1/kitchen.pb.h"
#include "suppertide/v1/recipe.pb.h"
#include "suppertide/v1/starter.pb.h"

namespace suppertide::compose {

// The newest count; older ones are kept but speak of a starter that has changed since.
inline constexpr int kMostObservationsUsed = 120;

struct BreadDocuments {
  std::vector<v1::Starter> starters;
  std::vector<v1::Kitchen> kitchens;
  std::vector<v1::Recipe> recipes;
};

// How the water of a bread with readings after mixing is corrected.
struct WaterLesson {
  std::string recipeId;
  double friction = 0;  // sum term of the rule
  bread::MixCorrection correction;
};

struct BreadLessons {
  std::vector<v1::LearnedEffect> effects;
  std::vector<WaterLesson> waters;
  int used = 0;
  int unused = 0;
};

// Writes what was learned into the documents: learned_vigour and learned_waking of starters, learned_warmth
// of places, learned_pace of recipes; nothing where nothing was seen. `zone` is where the clocks are, for
// places whose temperature goes by the hour. Cost: about 0.2 ms for each observation and effect.
absl::StatusOr<BreadLessons> learnFromDoughs(BreadDocuments& documents, const absl::TimeZone& zone);

}  // namespace suppertide::compose
