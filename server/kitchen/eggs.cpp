#include "server/kitchen/eggs.h"

#include "server/kitchen/units.h"

namespace suppertide::kitchen {

double leastDozenGrams(UsEggClass eggs) {
  switch (eggs) {
    case UsEggClass::kPeewee:
      return 15 * gramsPer(MassUnit::kOunce);
    case UsEggClass::kSmall:
      return 18 * gramsPer(MassUnit::kOunce);
    case UsEggClass::kMedium:
      return 21 * gramsPer(MassUnit::kOunce);
    case UsEggClass::kLarge:
      return 24 * gramsPer(MassUnit::kOunce);
    case UsEggClass::kExtraLarge:
      return 27 * gramsPer(MassUnit::kOunce);
    case UsEggClass::kJumbo:
      return 30 * gramsPer(MassUnit::kOunce);
  }
  return 0;
}

EuEggClass euEggClass(double grams) {
  if (grams >= 73) return EuEggClass::kXl;
  if (grams >= 63) return EuEggClass::kL;
  return grams >= 53 ? EuEggClass::kM : EuEggClass::kS;
}

double edibleGrams(UsEggClass eggs) {
  switch (eggs) {
    case UsEggClass::kPeewee:
      return 0;
    case UsEggClass::kSmall:
      return 38;
    case UsEggClass::kMedium:
      return 44;
    case UsEggClass::kLarge:
      return 50;
    case UsEggClass::kExtraLarge:
      return 56;
    case UsEggClass::kJumbo:
      return 63;
  }
  return 0;
}

}  // namespace suppertide::kitchen
