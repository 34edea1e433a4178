// What guests may not eat, as lists of law, diets and their own words.
//
// The law's lists differ: the US names nine allergens, the EU fourteen, and
// "tree nuts" is not the same set on both. A guest's own word is wider than
// either: what a list leaves out but people react to is a question to the guest.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "server/kitchen/source.h"

namespace suppertide::kitchen {

enum class NeedKind {
  kUsList,  // an allergen of the US list
  kEuList,  // one of the EU list
  kDiet,
  kOwnWords,  // anything else: compared by name only
};

// What one need excludes, in words of the table of ingredients.
struct Avoidance {
  NeedKind kind = NeedKind::kOwnWords;
  std::vector<std::string> excluded;
  std::vector<std::string> ask;  // not excluded by the list, but to be asked about
  Source source;
};

// Reads a need: "gluten", "US tree nuts", "EU nuts", "vegan", "beetroot". Without
// "US" or "EU" before it an allergen excludes what either list does. Any case,
// singular or plural. What is not known excludes just its own word.
Avoidance avoidanceOf(std::string_view need);

// The allergens of the lists that a substance belongs to: "wheat" gives
// {"wheat"} and {"cereals containing gluten"}.
std::vector<std::string> usAllergensOf(std::string_view substance);
std::vector<std::string> euAllergensOf(std::string_view substance);

}  // namespace suppertide::kitchen
