// Quantities for guests against published ones, each with its source and how it was read.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "server/kitchen/menu/portions.h"
#include "server/kitchen/units.h"

namespace suppertide::kitchen {
namespace {

const double kPound = gramsPer(MassUnit::kPound);

const Guide& guideNamed(const std::vector<GuidedAmount>& guides, std::string_view name) {
  for (const GuidedAmount& one : guides)
    if (one.guide.name == name) return one.guide;
  static const Guide none{};
  ADD_FAILURE() << "no guide " << name;
  return none;
}

PortionDish dish(const std::string& name, const std::string& part, double grams) {
  return {name, {{part, {AmountKind::kGrams, grams}, {}}}, 0, 0};
}

struct Row {
  const char* claim;
  const char* source;
  const char* mark;
  double expected;
  double tolerance;
  double value;
};

TEST(PortionsPublishedTest, Quantities) {
  const auto turkey = guidesOf(dish("Stuffed turkey", "turkey", 12 * kPound));
  const Guide& raw = guideNamed(turkey, "whole turkey, raw");
  const Guide& stuffing = guideNamed(turkey, "stuffing that goes into the bird");
  const auto mash = guidesOf(dish("Mash", "potatoes", 5 * kPound));
  const auto rolls = guidesOf({"Rolls", {}, 20, 60});
  const double ounces = convertMass(turkeyMeat(12 * kPound), MassUnit::kGram, MassUnit::kOunce);
  const double cups = stuffing.most / millilitresPer(VolumeUnit::kUsCup);
  const Row rows[] = {
      {"12 guests, whole turkey, lb", "USDA hotline; Kansas State and Missouri extension", "excerpt", 12,
       1e-9, 12 * raw.least / kPound},
      {"12 guests, with leftovers, lb", "USDA hotline; Kansas State and Missouri extension", "excerpt", 18,
       1e-9, 12 * raw.most / kPound},
      {"12 lb turkey, edible oz", "USDA PA-1331 and Handbook 102, quoted", "secondary", 101.8, 0.1, ounces},
      {"12 lb turkey, three-ounce servings", "USDA PA-1331 and Handbook 102, quoted", "computed", 33.9, 0.1,
       ounces / 3},
      {"12 lb turkey, stuffing at 3/4 cup a pound, cups", "USDA FSIS, Stuffing and Food Safety", "excerpt", 9,
       1e-9, cups},
      {"25 guests, half a cup of mash, lb of peeled potatoes", "a state agricultural commission", "excerpt",
       5, 1e-9, 25 * mash.front().guide.least / kPound},
      {"rolls for a guest", "University of Illinois Extension", "excerpt", 2, 0, rolls.front().guide.least},
  };
  for (const Row& row : rows)
    EXPECT_NEAR(row.value, row.expected, row.tolerance)
        << row.claim << "\n  source: " << row.source << " (" << row.mark << ")";
}

}  // namespace
}  // namespace suppertide::kitchen
