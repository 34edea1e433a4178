#include "server/bread/mix_learning.h"

#include <cmath>

namespace suppertide::bread {

MixCorrection learnMixing(std::span<const double> misses) {
  constexpr double kReadingWeight = 1 / (kMixReadingSpread * kMixReadingSpread);
  double weight = 1 / (kMixPriorSpread * kMixPriorSpread);
  double sum = 0;
  for (const double miss : misses) {
    sum += kReadingWeight * miss;
    weight += kReadingWeight;
  }
  return {sum / weight, std::sqrt(1 / weight), static_cast<int>(misses.size())};
}

double frictionOf(const MixTemperatures& reading, bool withPreferment) {
  const double factors = withPreferment ? 4 : 3;
  return factors * reading.dough - reading.room - reading.flour - reading.water -
         (withPreferment ? reading.preferment : 0);
}

}  // namespace suppertide::bread
