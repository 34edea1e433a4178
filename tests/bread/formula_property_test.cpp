#include <gtest/gtest.h>

#include <random>

#include "server/bread/formula.h"

namespace suppertide::bread {
namespace {

// Some flours, perhaps a levain, and up to five other things; flours add up to 100.
std::vector<Ingredient> randomIngredients(std::mt19937_64& random) {
  std::uniform_real_distribution<double> share(0, 1);
  std::vector<Ingredient> ingredients;
  double flourLeft = 100;
  if (share(random) < 0.6) {
    Ingredient levain = usual("levain", Role::kLevain, 5 + 60 * share(random));
    levain.hydration = 0.5 + share(random);
    levain.wholeGrainShare = share(random);
    flourLeft -= levain.percent / (1 + levain.hydration);
    ingredients.push_back(levain);
  }
  const int flours = 1 + static_cast<int>(3 * share(random));
  for (int i = 0; i < flours; ++i) {
    const double percent = i + 1 == flours ? flourLeft : flourLeft * share(random);
    ingredients.push_back(usual("flour " + std::to_string(i), Role::kFlour, percent));
    ingredients.back().wholeGrainShare = share(random);
    flourLeft -= percent;
  }
  const Role others[] = {Role::kLiquid, Role::kFat,   Role::kSugar, Role::kSalt,
                         Role::kEgg,    Role::kYeast, Role::kOther};
  for (Role role : others) {
    if (share(random) < 0.7) ingredients.push_back(usual("other", role, 80 * share(random)));
  }
  return ingredients;
}

TEST(FormulaPropertyTest, PercentToGramsAndBackLosesNothing) {
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937_64 random(seed);
    const auto formula = Formula::fromPercents(randomIngredients(random));
    ASSERT_TRUE(formula.ok()) << formula.status();
    const double dough = std::uniform_real_distribution<double>(50, 5000)(random);
    const auto grams = formula->gramsForDough(dough);
    ASSERT_TRUE(grams.ok());
    double sum = 0;
    for (const Weighed& weighed : *grams) sum += weighed.grams;
    EXPECT_NEAR(sum, dough, 1e-9 * dough);
    const auto again = Formula::fromGrams(*grams);
    ASSERT_TRUE(again.ok()) << again.status();
    for (std::size_t i = 0; i < grams->size(); ++i) {
      const double wanted = formula->ingredients()[i].percent;
      EXPECT_NEAR(again->ingredients()[i].percent, wanted, 1e-12 * (1 + wanted));
    }
    EXPECT_NEAR(again->hydration(), formula->hydration(), 1e-12);
  }
}

}  // namespace
}  // namespace suppertide::bread
