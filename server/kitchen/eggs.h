// Weight classes of shell eggs.
//
// The US classes bind the dozen, the European ones each egg: a US Large is a
// European M.
#pragma once

namespace suppertide::kitchen {

enum class UsEggClass { kPeewee, kSmall, kMedium, kLarge, kExtraLarge, kJumbo };
enum class EuEggClass { kS, kM, kL, kXl };

// Least grams of a dozen, with shells (USDA AMS 56).
double leastDozenGrams(UsEggClass eggs);

// Class of one egg of `grams`, with its shell (Regulation (EC) 589/2008).
EuEggClass euEggClass(double grams);

// Grams without the shell of one US egg (USDA Standard Reference 01123); 0 for
// a class the table does not have.
double edibleGrams(UsEggClass eggs);

}  // namespace suppertide::kitchen
