// What a thermometer in the mixed dough teaches for the next mixing.
//
// The rule's friction and the heat balance's rise both stand for a mixer and a bowl that nobody
// measured. Each reading says how far off they were; the next water is corrected by their mean,
// drawn towards no correction while readings are few.
#pragma once

#include <span>

namespace suppertide::bread {

struct MixTemperatures {
  double room = 21;
  double flour = 21;
  double water = 21;
  double preferment = 21;  // levain and preferments; not used where there are none
  double dough = 24;       // measured after mixing
};

// Standard deviations, in kelvin of the dough; assumed. One mixing differs from the next by its time, the
// bowl and the thermometer.
inline constexpr double kMixPriorSpread = 1.5;
inline constexpr double kMixReadingSpread = 0.7;

struct MixCorrection {
  double kelvin = 0;  // to add to the dough temperature that was worked out
  double spread = kMixPriorSpread;
  int readings = 0;
};

// From the misses: measured less worked out, in kelvin of the dough.
MixCorrection learnMixing(std::span<const double> misses);

// The sum term of the rule that gives this reading: of three factors, or four with a preferment.
double frictionOf(const MixTemperatures& reading, bool withPreferment);

}  // namespace suppertide::bread
