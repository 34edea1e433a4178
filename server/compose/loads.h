// Bakes in several loads: the recipe's one bake becomes as many steps as there may be loads.
#pragma once

#include <memory>
#include <string>

#include "server/compose/composition.h"

namespace suppertide::compose {

inline constexpr int kMostLoads = 6;
// Minutes that a dough waits at most for its ferment, and after it for what comes next, where the recipe says
// nothing: a shaped dough does not wait. Common practice, no source.
inline constexpr int kFermentGap = 15;

// How many loads a bake may and must be divided into; {1, 1} for one that is not.
struct LoadCount {
  int least = 1;  // fewer do not fit into any oven
  int most = 1;
};
LoadCount loadsOf(const v1::OvenNeed& need, const planning::Problem& problem);

// "bake.load-2"; the first load keeps the recipe's own id.
std::string loadId(const std::string& stepId, int load);
// From 1; 1 for every other step.
int loadNumber(const std::string& stepId);

// Pans in load `load` of `loads`, as even as can be, the first ones with more.
int pansIn(int pans, int load, int loads);

// What stands in the oven in one load of `loads`; load from 1.
planning::Load loadOf(const v1::OvenNeed& need, int load, int loads);

// The recipe with each such bake divided: a later load begins no sooner than the one before it, may
// wait longer for its turn, and what comes after a bake comes after all of it. Null: nothing to divide.
std::shared_ptr<const v1::Recipe> inLoads(const v1::Recipe& recipe, const planning::Problem& problem);

}  // namespace suppertide::compose
