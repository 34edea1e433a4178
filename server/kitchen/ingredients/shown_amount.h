// Amounts in a household's measures, as a cook would read them aloud.
#pragma once

#include <string>

#include "server/kitchen/ingredients/line.h"

namespace suppertide::kitchen {

// "281 g", "1.5 kg"; US and imperial: "10 oz", "2 lb 4 oz". Rounded as a scale shows it.
std::string shownMass(double grams, Measures measures);

// "150 ml", "1.2 l"; in cups and spoons for the others: "2 1/4 cups", "1/8 tsp".
std::string shownVolume(double millilitres, Measures measures);

// "3", "2 1/2".
std::string shownCount(double count);

}  // namespace suppertide::kitchen
