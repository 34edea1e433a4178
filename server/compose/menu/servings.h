// How many adult portions a dish is made for.
#pragma once

#include <memory>

#include "suppertide/v1/event.pb.h"
#include "suppertide/v1/recipe.pb.h"

namespace suppertide::compose {

// What the guests of a dish eat: as it says, else all guests by their portions.
double eatenServings(const v1::Event& event, const v1::Dish& dish);

// The same with what shall be left over.
double wantedServings(const v1::Event& event, const v1::Dish& dish);

// Makings of the recipe for that; 1 when nobody is invited yet.
double scaleOf(const v1::Event& event, const v1::Dish& dish, const v1::Recipe& recipe);

// Pans of a bake in so many makings: a larger roast is one roast in its tin for long; of the
// rest a twentieth more goes into the same pans. At least 1.
int pansFor(const v1::OvenNeed& need, double scale);

// The recipe with the pans that its bakes then need; null where they stay as they are.
std::shared_ptr<const v1::Recipe> withPansFor(const v1::Recipe& recipe, double scale);

}  // namespace suppertide::compose
