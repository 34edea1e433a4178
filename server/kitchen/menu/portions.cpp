#include "server/kitchen/menu/portions.h"

#include <algorithm>
#include <set>

#include "server/kitchen/ingredients/ingredient_table.h"
#include "server/kitchen/units.h"

namespace suppertide::kitchen {
namespace {

constexpr double kPound = 453.59237;
constexpr double kOunce = kPound / 16;
constexpr double kWholeBird = 2500;    // grams; below it is a part
constexpr double kTurkeyYield = 0.53;  // as kYield says
constexpr double kRollGrams = 120;     // of dough, at most
constexpr double kFarBelow = 0.6;      // common practice, no source, as kFarAbove
constexpr double kFarAbove = 1.6;

constexpr Source kHotline{"USDA hotline; Kansas State and Missouri extension", Mark::kExcerpt};
constexpr Source kYield{"USDA PA-1331 and Handbook 102, quoted: 53 % of a whole bird, 3 oz a serving",
                        Mark::kSecondary};
constexpr Source kStuffingSheet{"USDA FSIS, Stuffing and Food Safety: 1/2 to 3/4 cup a pound, loose",
                                Mark::kExcerpt};
constexpr Source kIllinois{"University of Illinois Extension", Mark::kExcerpt};
constexpr Source kCommission{"a state agricultural commission: 5 lb peeled for 25 half cups", Mark::kExcerpt};
constexpr Source kUsual{"common practice, no source", Mark::kPractice};

constexpr Guide kTurkey{"whole turkey, raw", AmountKind::kGrams, kPound, 1.5 * kPound, kHotline};
constexpr Guide kTurkeyMeat{"turkey meat to eat", AmountKind::kGrams, 3 * kOunce, 9 * kOunce, kYield};
constexpr Guide kHam{"boneless ham", AmountKind::kGrams, 4 * kOunce, 6 * kOunce, kIllinois};
constexpr Guide kRolls{"rolls", AmountKind::kPieces, 2, 2, kIllinois};
constexpr Guide kMash{"peeled potatoes for mash", AmountKind::kGrams, kPound / 5, 2 * kPound / 5,
                      kCommission};
constexpr Guide kAllMeat{"meat and fish, raw", AmountKind::kGrams, 150, 300, kUsual};
constexpr Guide kAllPlants{"vegetables, potatoes and fruit, raw", AmountKind::kGrams, 250, 800, kUsual};
constexpr Guide kAllBread{"dough of all breads", AmountKind::kGrams, 60, 250, kUsual};

bool hasWord(const std::string& name, std::string_view word) {
  const std::string plain = " " + plainName(name) + " ";
  return plain.find(" " + std::string(word) + " ") != std::string::npos ||
         plain.find(" " + std::string(word) + ", ") != std::string::npos;
}

bool isSection(const std::string& name, ShopSection section) {
  const Ingredient* known = findIngredient(std::string_view(name).substr(0, name.find(','))).ingredient;
  return known != nullptr && known->section == section;
}

bool isFlesh(const PortionDish::Part& part) {
  static const std::set<std::string> kFlesh = {"meat", "beef", "pork",       "poultry", "lamb",
                                               "game", "fish", "crustacean", "mollusc"};
  return isSection(part.name, ShopSection::kMeatFish) ||
         std::any_of(part.holds.begin(), part.holds.end(),
                     [](const std::string& held) { return kFlesh.count(held) > 0; });
}

template <typename Wanted>
double gramsIn(const PortionDish& dish, Wanted wanted) {
  double grams = 0;
  for (const PortionDish::Part& part : dish.parts)
    if (part.amount.kind == AmountKind::kGrams && wanted(part)) grams += part.amount.value;
  return grams;
}

// By the mass of the bird, whoever eats.
Guide stuffingFor(double birdGrams) {
  const double cups = birdGrams / kPound;
  const double cup = millilitresPer(VolumeUnit::kUsCup);
  return {"stuffing that goes into the bird",
          AmountKind::kMillilitres,
          cups * cup / 2,
          cups * cup * 3 / 4,
          kStuffingSheet,
          true};
}

}  // namespace

double turkeyMeat(double grams) {
  return grams * kTurkeyYield;
}

std::vector<GuidedAmount> guidesOf(const PortionDish& dish) {
  std::vector<GuidedAmount> guides;
  const auto add = [&](const Guide& guide, double amount) {
    if (amount > 0) guides.push_back({guide, {guide.kind, amount}});
  };
  const double bird = gramsIn(dish, [](const PortionDish::Part& part) {
    return hasWord(part.name, "turkey") && !hasWord(part.name, "breast") && part.amount.value >= kWholeBird;
  });
  add(kTurkey, bird);
  add(kTurkeyMeat, turkeyMeat(bird));
  if (bird > 0 && hasWord(dish.name, "stuffed")) guides.push_back({stuffingFor(bird), {}});
  add(kHam, gramsIn(dish, [](const PortionDish::Part& part) { return hasWord(part.name, "ham"); }));
  if (hasWord(dish.name, "mash") || hasWord(dish.name, "mashed"))
    add(kMash, gramsIn(dish, [](const PortionDish::Part& part) { return hasWord(part.name, "potato"); }));
  if (dish.pieces > 0 && dish.pieceGrams <= kRollGrams) add(kRolls, dish.pieces);
  return guides;
}

std::vector<GuidedAmount> guidesOfMenu(const std::vector<PortionDish>& dishes) {
  double meat = 0;
  double plants = 0;
  double bread = 0;
  for (const PortionDish& dish : dishes) {
    meat += gramsIn(dish, isFlesh);
    plants += gramsIn(dish, [](const auto& part) { return isSection(part.name, ShopSection::kProduce); });
    bread += dish.pieces * dish.pieceGrams;
  }
  std::vector<GuidedAmount> guides;
  if (meat > 0) guides.push_back({kAllMeat, {AmountKind::kGrams, meat}});
  if (plants > 0) guides.push_back({kAllPlants, {AmountKind::kGrams, plants}});
  if (bread > 0) guides.push_back({kAllBread, {AmountKind::kGrams, bread}});
  return guides;
}

Enough judgeAmount(const GuidedAmount& amount, double portions) {
  if (portions <= 0 || amount.guide.inAll) return Enough::kYes;
  const double each = amount.amount.value / portions;
  if (each < kFarBelow * amount.guide.least) return Enough::kFarTooLittle;
  return each > kFarAbove * amount.guide.most ? Enough::kFarTooMuch : Enough::kYes;
}

}  // namespace suppertide::kitchen
