// Bread against published values: the product's own table must pass where it says it passes,
// miss only where it says so, and tell what agreement is worth.
#include "server/bread/published_checks.h"

#include <cmath>
#include <map>
#include <set>

#include "tests/published/bread_rows.h"

namespace suppertide::bread {
namespace {

TEST(BreadPublishedTest, EveryRowPassesOrSaysWhyNot) {
  for (const PublishedCheck& check : publishedChecks()) {
    EXPECT_EQ(check.passes, check.knownMiss.empty())
        << check.topic << ": " << check.claim << " is " << check.model << check.unit << ", published "
        << check.low << " to " << check.high << "\n  source: " << check.source << " ("
        << nameOf(check.reading) << ", " << nameOf(check.basis) << ")\n  known miss: " << check.knownMiss;
    EXPECT_EQ(check.passes, check.model >= check.low && check.model <= check.high) << check.claim;
  }
}

TEST(BreadPublishedTest, EveryRowIsComplete) {
  std::set<std::string> claims;
  for (const PublishedCheck& check : publishedChecks()) {
    EXPECT_FALSE(check.topic.empty() || check.claim.empty() || check.source.empty()) << check.claim;
    EXPECT_LE(check.low, check.high) << check.claim;
    EXPECT_TRUE(std::isfinite(check.model)) << check.claim;
    EXPECT_TRUE(claims.insert(check.claim + check.source).second) << check.claim << " is there twice";
    EXPECT_FALSE(nameOf(check.reading).empty() || nameOf(check.basis).empty());
  }
}

TEST(BreadPublishedTest, IndependentRowsAreEnoughToJudgeBy) {
  std::map<CheckBasis, int> rows;
  int independentMisses = 0;
  for (const PublishedCheck& check : publishedChecks()) {
    ++rows[check.basis];
    if (check.passes) continue;
    EXPECT_EQ(check.basis, CheckBasis::kIndependent) << check.claim;
    ++independentMisses;
  }
  EXPECT_GE(rows[CheckBasis::kIndependent], 25);
  EXPECT_LT(3 * independentMisses, rows[CheckBasis::kIndependent]);
}

// Mean temperature of a sphere of dough that exchanges heat at its surface, by finite volumes.
double sphereMean(double start, double air, double surfaceW, double radius, double hours) {
  constexpr int kShells = 60;
  const Lump lump;
  const double diffusivity =
      lump.conductivityWPerMK / (lump.densityKgPerCubicMetre * lump.specificHeatJPerKgK);
  const double width = radius / kShells;
  std::vector<double> celsius(kShells, start), flow(kShells + 1, 0.0);
  const int steps = static_cast<int>(hours * 3600 * diffusivity / (width * width) / 0.2) + 1;
  const double step = hours * 3600 / steps;
  const auto shellVolume = [&](int i) {
    return (std::pow(i + 1, 3) - std::pow(i, 3)) * std::pow(width, 3) / 3;
  };
  for (int s = 0; s < steps; ++s) {
    for (int i = 1; i < kShells; ++i) {
      const auto at = static_cast<std::size_t>(i);
      flow[at] = lump.conductivityWPerMK * std::pow(i * width, 2) * (celsius[at] - celsius[at - 1]) / width;
    }
    const double skin = 1 / (1 / surfaceW + width / 2 / lump.conductivityWPerMK);
    flow[kShells] = radius * radius * skin * (air - celsius[kShells - 1]);
    for (int i = 0; i < kShells; ++i) {
      const auto at = static_cast<std::size_t>(i);
      celsius[at] += step * (flow[at + 1] - flow[at]) /
                     (lump.densityKgPerCubicMetre * lump.specificHeatJPerKgK * shellVolume(i));
    }
  }
  double sum = 0;
  for (int i = 0; i < kShells; ++i) sum += celsius[static_cast<std::size_t>(i)] * shellVolume(i);
  return sum / (std::pow(radius, 3) / 3);
}

TEST(BreadPublishedTest, TheLumpFollowsASphereSolvedInShells) {
  const Lump sphere = {.areaOverSphere = 1};
  const double radius = 3 * sphere.lengthMetres();
  for (double hours : {1.0, 2.0, 4.0, 8.0, 12.0}) {
    EXPECT_NEAR(lumpAfter(28, 4, 0, sphere.timeConstantHours(7), hours), sphereMean(28, 4, 7, radius, hours),
                0.2);
  }
}

}  // namespace
}  // namespace suppertide::bread
