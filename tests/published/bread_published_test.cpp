// Bread against published values: one row a claim, each with its source and how it was read.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "server/bread/baking.h"
#include "server/bread/forecast.h"
#include "server/bread/levain_build.h"
#include "server/bread/temperature_response.h"
#include "server/bread/water_temperature.h"
#include "tests/published/bread_rows.h"

namespace suppertide::bread {
namespace {

double argmax(const std::function<double(double)>& f, double low, double high) {
  double best = low;
  for (double x = low; x <= high; x += 1e-3) {
    if (f(x) > f(best)) best = x;
  }
  return best;
}

double percentOf(std::size_t index, const std::vector<Weighed>& weighed) {
  return Formula::fromGrams(weighed)->ingredients()[index].percent;
}

std::vector<Weighed> hotRolls() {
  return {{usual("flour", Role::kFlour, 0), 192},
          {usual("sugar", Role::kSugar, 0), 24},
          {usual("salt", Role::kSalt, 0), 4},
          {usual("fat", Role::kFat, 0), 26},
          {usual("water", Role::kLiquid, 0), 116}};
}

std::vector<Weighed> sweetDough() {
  return {{usual("flour", Role::kFlour, 0), 160},
          {usual("egg", Role::kEgg, 0), 28},
          {usual("sugar", Role::kSugar, 0), 28},
          {usual("fat", Role::kFat, 0), 26}};
}

// 1,000 g of the worked dough: flour 100, liquid 58, egg 15, butter 15, sugar 10, salt 2, 19 % levain.
Formula workedDough() {
  Ingredient part = usual("levain", Role::kLevain, 0);
  return *splitLevain(
      {usual("flour", Role::kFlour, 100), usual("liquid", Role::kLiquid, 58), usual("egg", Role::kEgg, 15),
       usual("butter", Role::kFat, 15), usual("sugar", Role::kSugar, 10), usual("salt", Role::kSalt, 2)},
      part, 0.19);
}

double workedGrams(std::size_t index) {
  return (*workedDough().gramsForDough(1000))[index].grams;
}

const char* kGaenzle = "Gaenzle, Ehmann, Hammes 1998, Appl. Environ. Microbiol. 64:2616-2623";
const char* kFaq = "Gaenzle, message reprinted in the rec.food.sourdough FAQ, 1998";
const char* kRosso = "Rosso, Lobry, Flandrois 1993, J. Theor. Biol. 162:447-463";
const char* kTreatise = "Wihlfahrt, A Treatise on Baking";
const char* kPractice = "practice of home bakers";

TEST(BreadPublishedTest, Growth) {
  const auto yeast = [](double celsius) { return [=] { return kSourdoughYeast.rate(celsius); }; };
  const auto lacto = [](double celsius) { return [=] { return kLactobacilli.rate(celsius); }; };
  const CardinalCurve manual = {1, 5, 20, 30};
  const auto cardinal = [=](double celsius) { return [=] { return manual.rate(celsius); }; };
  checkRows({
      near("yeast at 4", kGaenzle, "second-hand coefficients", 0.0083, 0.0083 * 0.006, yeast(4)),
      near("yeast at 20", kGaenzle, "second-hand coefficients", 0.2247, 0.2247 * 0.005, yeast(20)),
      near("yeast at 28", kGaenzle, "second-hand coefficients", 0.4168, 0.4168 * 0.005, yeast(28)),
      near("yeast at 32", kGaenzle, "second-hand coefficients", 0.2020, 0.2020 * 0.005, yeast(32)),
      near("yeast at 36", kGaenzle, "abstract: none at 36", 0, 0, yeast(36)),
      near("yeast at 40", kGaenzle, "abstract: none at 36", 0, 0, yeast(40)),
      near("yeast's optimum", kGaenzle, "computed; abstract says 27", 27.115, 0.01,
           [] { return argmax([](double t) { return kSourdoughYeast.rate(t); }, 20, 35); }),
      near("yeast's best rate", kGaenzle, "computed", 0.4234, 0.0004,
           [] { return kSourdoughYeast.rate(kSourdoughYeast.optimumCelsius()); }),
      near("lactobacilli at 20", kGaenzle, "second-hand coefficients", 0.2390, 0.0012, lacto(20)),
      near("lactobacilli at 32", kGaenzle, "second-hand coefficients", 0.6576, 0.0033, lacto(32)),
      near("lactobacilli's optimum", kGaenzle, "computed; FAQ says 32-33", 33.02, 0.01,
           [] { return argmax([](double t) { return kLactobacilli.rate(t); }, 25, 40); }),
      near("half the yeast's rate at 20", kFaq, "read", 0.5, 0.06, [] { return sourdoughYeastActivity(20); }),
      near("half the yeast's rate at 32", kFaq, "read", 0.5, 0.06, [] { return sourdoughYeastActivity(32); }),
      near("cardinal model at 22", "manual of an open library, for 5, 20, 30", "read", 0.96333, 1e-5,
           cardinal(22)),
      near("cardinal model at 10", "the same manual", "read", 0.33333, 1e-5, cardinal(10)),
      near("cardinal model at 26", "the same manual", "read", 0.65333, 1e-5, cardinal(26)),
      near("cardinal model at its optimum", kRosso, "memory", 1, 1e-12, cardinal(20)),
      near("cardinal model at its minimum", kRosso, "memory", 0, 1e-12, cardinal(5)),
      near("cardinal model at its maximum", kRosso, "memory", 0, 1e-12, cardinal(30)),
      near("baker's yeast Q10 from 20 to 30", "assumed curve", "computed", 2.15, 0.01,
           [] { return kBakersYeast.rate(30) / kBakersYeast.rate(20); }),
  });
}

TEST(BreadPublishedTest, Gas) {
  const auto held = [](double celsius) { return [=] { return carbonDioxideHeld(celsius); }; };
  const auto volume = [](double gas, double celsius) {
    return [=] { return splitGas(0.45, gas, celsius).volume; };
  };
  const char* murray = "Murray and Riley 1971, in the IUPAC-NIST solubility database";
  checkRows({
      near("CO2 in water at 20", murray, "read, fitted", 0.930, 0.0093, held(20)),
      near("CO2 in water at 25", murray, "read, fitted", 0.822, 0.0082, held(25)),
      near("CO2 in water at 30", murray, "read, fitted", 0.736, 0.0074, held(30)),
      near("CO2 in water at 20", "Kunerth 1922", "read", 0.900, 0.900 * 0.035, held(20)),
      near("CO2 in water at 30", "Kunerth 1922", "read", 0.729, 0.729 * 0.035, held(30)),
      near("CO2 in water at 25", "Findlay", "read", 0.825, 0.825 * 0.035, held(25)),
      near("volume with 0.5 at 25", kModel, "computed", 1.2098, 1e-3, volume(0.5, 25)),
      near("volume with 1 at 25", kModel, "computed", 1.6199, 1e-3, volume(1, 25)),
      near("volume with 2 at 25", kModel, "computed", 2.5251, 1e-3, volume(2, 25)),
      near("volume with 0.5 at 4", kModel, "computed", 1.0859, 1e-3, volume(0.5, 4)),
      near("volume with 1 at 4", kModel, "computed", 1.3439, 1e-3, volume(1, 4)),
      near("volume with 2 at 4", kModel, "computed", 2.1400, 1e-3, volume(2, 4)),
      // C6H12O6 -> 2 CO2: 271.6 mL a gram at 25 degrees; 1 g of flour (1.45 g/mL) with 1 g of water.
      near("a levain's sugar is 2.5 % hexose on flour", "stoichiometry", "computed", 4.0, 0.06,
           [] { return 4.0 / kLevainKind.sugarVolumes * 0.025 * 271.6 / (1 / 1.45 + 1); }),
  });
}

TEST(BreadPublishedTest, DoughTemperature) {
  checkRows({
      near("wanted 78, room 85, flour 67", kTreatise, "read", 82, 0,
           [] { return waterByThreeFactors(78, 85, 67, 0); }),
      near("wanted 78, room 72, flour 62", kTreatise, "read", 100, 0,
           [] { return waterByThreeFactors(78, 72, 62, 0); }),
      near("wanted 75, room 65, flour 65, friction 8", "baking-school handout", "second-hand", 87, 0,
           [] { return waterByThreeFactors(75, 65, 65, 8); }),
      near("wanted 80, room 72, flour 68, friction 20", "Gisslen, Professional Baking", "memory", 80, 0,
           [] { return waterByThreeFactors(80, 72, 68, 20); }),
      near("four factors: wanted 75, three at 71, friction 20", "cookery magazine example", "read", 67, 0,
           [] { return waterByFourFactors(75, 71, 71, 71, 20); }),
      near("friction of a test batch", "US Navy, NAVEDTRA 14163, p. 8-4", "formula read, numbers memory", 20,
           0, [] { return frictionFromTestBatch(80, 72, 68, 80); }),
      // Specific heat 1.8 of flour, as in the worked comparison.
      near("heat balance where the rule asks 38", "arithmetic", "computed", 30.2, 0.06,
           [] {
             return waterByHeatBalance({{"flour", 100, 20, 0.2 / 2.58}}, 62, 26, 0)->celsius;
           }),
  });
}

TEST(BreadPublishedTest, Formula) {
  const char* rolls = "US Armed Forces Recipe Service, hot rolls D-033";
  const char* sweet = "US Armed Forces Recipe Service, sweet dough D-036";
  const auto ofRolls = [](std::size_t i) { return [=] { return percentOf(i, hotRolls()); }; };
  const auto ofSweet = [](std::size_t i) { return [=] { return percentOf(i, sweetDough()); }; };
  const auto inoculum = [](double parts) {
    return [=] { return LevainRatio{1, parts, parts}.inoculation(); };
  };
  checkRows({
      near("hot rolls: sugar", rolls, "read", 12.5, 0.01, ofRolls(1)),
      near("hot rolls: salt", rolls, "read", 2.08, 0.01, ofRolls(2)),
      near("hot rolls: fat", rolls, "read", 13.54, 0.01, ofRolls(3)),
      near("hot rolls: water", rolls, "read", 60.42, 0.01, ofRolls(4)),
      near("sweet dough: egg", sweet, "read", 17.5, 0.01, ofSweet(1)),
      near("sweet dough: sugar", sweet, "read", 17.5, 0.01, ofSweet(2)),
      near("sweet dough: fat", sweet, "read", 16.25, 0.01, ofSweet(3)),
      near("19 % levain of a dough of 200 %", "identity", "computed", 0.19, 1e-12,
           [] { return workedDough().prefermentedFlourShare(); }),
      near("worked dough: flour", "identity", "computed", 405, 0.1, [] { return workedGrams(0); }),
      near("worked dough: liquid", "identity", "computed", 195, 0.1, [] { return workedGrams(1); }),
      near("worked dough: levain", "identity", "computed", 190, 0.1, [] { return workedGrams(6); }),
      near("190 g of 1:1:1", "identity", "computed", 63.3, 0.05,
           [] {
             return buildLevain(190, {1, 1, 1}, 1, 0)->starterGrams;
           }),
      near("inoculum of 1:1:1", "identity", "computed", 1.0 / 3, 1e-12, inoculum(1)),
      near("inoculum of 1:2:2", "identity", "computed", 1.0 / 5, 1e-12, inoculum(2)),
      near("inoculum of 1:5:5", "identity", "computed", 1.0 / 11, 1e-12, inoculum(5)),
      near("inoculum of 1:10:10", "identity", "computed", 1.0 / 21, 1e-12, inoculum(10)),
  });
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

TEST(BreadPublishedTest, Heat) {
  const Lump kilo;
  const Lump sphere = {.areaOverSphere = 1};
  const double radius = 3 * sphere.lengthMetres();
  std::vector<Row> rows = {
      near("28 to 4 after one time constant", "Newton's law", "computed", 12.83, 0.01,
           [] { return lumpAfter(28, 4, 0, 2.22, 2.22); }),
      near("U of 1 kg", "linear driving force", "computed", 6.03, 0.06, [=] { return kilo.overallW(7); }),
      near("time constant of 1 kg", "linear driving force", "computed", 2.22, 0.022,
           [=] { return kilo.timeConstantHours(7); }),
      near("Biot number of 1 kg", "definition", "computed", 0.268, 0.0027, [=] { return kilo.biot(7); }),
      near("time constant of 50 g", "linear driving force", "computed", 0.75, 0.0075,
           [] { return Lump{.kilograms = 0.05}.timeConstantHours(7); }),
      near("time constant of 2 kg, moved air", "linear driving force", "computed", 1.33, 0.0133,
           [] { return Lump{.kilograms = 2}.timeConstantHours(20); }),
      // The slowest mode of a sphere with Bi 1 on its radius decays with (pi/2)^2.
      near("corrected lump against the sphere's slowest mode at Bi 1", "textbook eigenvalue pi/2", "computed",
           std::pow(std::numbers::pi / 2, 2), 0.04,
           [=] {
             const double diffusivity =
                 sphere.conductivityWPerMK / (sphere.densityKgPerCubicMetre * sphere.specificHeatJPerKgK);
             const double tau = sphere.timeConstantHours(sphere.conductivityWPerMK / radius) * 3600;
             return radius * radius / (diffusivity * tau);
           }),
      near("Fourier number of a centre from 28 to 95", "first term of the series", "computed", 0.3405, 1e-4,
           [] { return sphereFourier(28, 100, 95); }),
  };
  for (double hours : {1.0, 2.0, 4.0, 8.0, 12.0}) {
    const double mean = sphereMean(28, 4, 7, radius, hours);
    rows.push_back(near("lump against the sphere's mean", "finite volumes", "computed", mean, 0.2,
                        [=] { return lumpAfter(28, 4, 0, sphere.timeConstantHours(7), hours); }));
  }
  checkRows(rows);
}

TEST(BreadPublishedTest, LevainsAndDoughs) {
  const char* textbook = "textbook liquid levain, about 1:5:6 at 21 degrees (Hamelman)";
  const auto leakless = [](double vigour) {
    return [=] {
      DoughKind kind = withComposition(kLevainKind, 0.5, 0, 0);
      kind.leakPerHour = 0;
      const Stay stay = always(22);
      const auto state = *mixLevain(kind, {.vigour = vigour}, {1, 1, 1}, 22, 0.2);
      return vigour * forecast(kind, state, 0, {&stay, 1}, kLevainStage).lowHour.value_or(kNever);
    };
  };
  checkRows({
      near("1:1:1 at 22 doubles", kModel, "computed, fitted", 6.0, 0.1, [] { return doubles(1, 22); }),
      near("1:1:1 at 22 peaks", kModel, "computed", 9.0, 0.1, [] { return levain(1, 22).peakHour; }),
      near("1:1:1 at 22 peaks at", kModel, "computed", 2.52, 0.03, [] { return levain(1, 22).peakRise; }),
      within("1:5:5 at 21 doubles in the ripe band", textbook, "second-hand", 11, 16,
             [] { return doubles(5, 21); }),
      within("1:5:5 at 21 peaks in the ripe band", textbook, "second-hand", 11, 16,
             [] { return levain(5, 21).peakHour; }),
      within("1:1:1 at 27 is ripe", "San Francisco sponge, refreshed every 7-8 h at 27", "second-hand", 6, 8,
             [] { return levain(1, 27).peakHour; }),
      within("1:1:1 at 35 never doubles",
             "Brandt, Hammes, Gaenzle 2004, Eur. Food Res. Technol. 218:333-338: inhibited at 35", "abstract",
             kNever, kNever, [] { return doubles(1, 35); }),
      near("doubled vigour halves the time", kModel, "computed", leakless(1)(), 1e-3 * leakless(1)(),
           leakless(2)),
      within("4 degrees, from 4 to 12 h in the fridge, changes the volume by", "wanted of a retard",
             "computed", 0.97, 1.03,
             [] { return riseOf(enriched(), chilled(1, 12)) / riseOf(enriched(), chilled(1, 4)); }),
      near("2 % compressed yeast at 26 doubles", kPractice, "common practice, fitted", 1.75, 0.05,
           [] { return yeastedDoubles(2, 26); }),
  });
  for (double celsius : {18.0, 21.0, 24.0, 26.0}) {
    EXPECT_LT(doubles(1, celsius), doubles(2, celsius)) << kFaq;
    EXPECT_LT(doubles(2, celsius), doubles(5, celsius)) << kFaq;
    EXPECT_LT(doubles(5, celsius), doubles(10, celsius)) << kFaq;
  }
  for (double parts : {1.0, 2.0, 5.0, 10.0}) {
    EXPECT_GT(doubles(parts, 18), doubles(parts, 21)) << kFaq;
    EXPECT_GT(doubles(parts, 21), doubles(parts, 24)) << kFaq;
    EXPECT_GT(doubles(parts, 24), doubles(parts, 26)) << kFaq;
  }
}

TEST(BreadPublishedTest, Baking) {
  checkRows({
      within("765 g at 218 from 50 g in 15 min", "US Army recipe card D-010", "read", 35, 40,
             [] { return bakeTime(15, 0.05, 0.765)->minutes; }),
      near("765 g from 50 g in 15 min", "exponent of two cards", "computed", 39, 1,
           [] { return bakeTime(15, 0.05, 0.765)->minutes; }),
      // Flour 100 with 14 % moisture, water 62 and 3 of solids.
      near("loss to 62 % solids", "21 CFR 136.110", "read, computed", 0.130, 0.001,
           [] { return lossToSolids(89.0 / 165, 0.62); }),
      near("half a pound is bread", "21 CFR 136.3", "read", 1, 0, [] { return isLoaf(0.227) ? 1.0 : 0.0; }),
      near("less is a roll", "21 CFR 136.3", "read", 0, 0, [] { return isLoaf(0.226) ? 1.0 : 0.0; }),
      within("bake loss", "trade dictionary", "read", 0.098, 0.115, [] { return kBakeLossShare; }),
  });
}

TEST(BreadPublishedTest, CommonPractice) {  // no published source: bands only
  const char* mark = "common practice, no source";
  checkRows({
      within("an equal-parts levain doubles at 22", kPractice, mark, 5, 7, [] { return doubles(1, 22); }),
      within("... at 23", kPractice, mark, 5, 7, [] { return doubles(1, 23); }),
      within("... sooner than that band's end when warmer", kPractice, mark, 0, 5,
             [] { return doubles(1, 26); }),
      within("... later when colder", kPractice, mark, 7, 24, [] { return doubles(1, 19); }),
      within("rise of an enriched bulk of 2.5 h at 28", kPractice, mark, 1.45, 1.6,
             [] {
               const Stay stay = always(28);
               return riseOf(enriched(), stateAfter(enriched(), enrichedMixed(28), 0, {&stay, 1}, 2.5));
             }),
      within("rise of its proof after 1.5 h", kPractice, mark, kEnrichedProof.lowRise,
             kEnrichedProof.highRise, [] { return proofRise(1.5); }),
      within("rise of its proof after 2 h", kPractice, mark, kEnrichedProof.lowRise, kEnrichedProof.highRise,
             [] { return proofRise(2); }),
      within("rolls of 100 g from 50 g in 15 min", kPractice, mark, 18, 25,
             [] { return bakeTime(15, 0.05, 0.1)->minutes; }),
      within("rolls cool", kPractice, mark, 5, 20, [] { return leastCoolingMinutes(0.06); }),
      within("an army short-time bread, 1.6 % dry yeast at 27, 45-50 min on the card (model 57)",
             "US Army recipe card", "read; the model is known to be slower", 0.75, 1.1,
             [] { return yeastedDoubles(1.6 * kCompressedPerActiveDry, 27); }),
  });
}

}  // namespace
}  // namespace suppertide::bread
