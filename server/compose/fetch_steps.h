// What leaves fridge or freezer ahead of the step that uses it, as steps of the recipe: so the plan
// has a time and a cook for it, and what stands out counts on the food-safety clocks.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "server/compose/menu/fetch_needs.h"
#include "suppertide/v1/kitchen.pb.h"

namespace suppertide::compose {

// Whether a step's id is one of those made here: "base.fetch", "rub.fetch-frozen", "rub.fetch-thaw".
bool isFetchId(const std::string& stepId);
// "base" for all of them; other ids as they are.
std::string withoutFetch(const std::string& stepId);

// In which step of withFetches() it is taken out: its own one of the recipe, or an added one.
std::string fetchStepId(const FetchNeed& need);

// The recipe with a step for all that one of its steps needs taken out of the same place; null
// where it has all of them. Raw meat from the freezer gets a thawing step, too. What only makes a
// dish better, as soft butter, may be left out when nobody is up in time.
std::shared_ptr<const v1::Recipe> withFetches(const v1::Recipe& recipe, const std::vector<FetchNeed>& needs,
                                              const v1::Kitchen& kitchen);

}  // namespace suppertide::compose
