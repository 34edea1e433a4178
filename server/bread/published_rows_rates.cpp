// Rows about rates, gas and heat.
#include <cmath>
#include <numbers>

#include "server/bread/dough.h"
#include "server/bread/heat.h"
#include "server/bread/published_rows.h"
#include "server/bread/temperature_response.h"

namespace suppertide::bread::rows {
namespace {

double optimumOf(const GrowthCurve& curve, double low, double high) {
  double best = low;
  for (double celsius = low; celsius <= high; celsius += 2e-3) {
    if (curve.rate(celsius) > curve.rate(best)) best = celsius;
  }
  return best;
}

}  // namespace

void addGrowth(Rows& rows) {
  const Origin paper = {"growth", "Gaenzle, Ehmann, Hammes 1998, Appl. Environ. Microbiol. 64:2616-2623",
                        SourceReading::kSecondHand, CheckBasis::kTakenOver};
  const auto yeast = [](double celsius) { return kSourdoughYeast.rate(celsius); };
  for (const auto& [celsius, rate, tolerance] :
       {std::tuple{4, 0.0083, 0.00005}, {20, 0.2247, 0.0011}, {28, 0.4168, 0.0021}, {32, 0.2020, 0.0010}}) {
    rows.push_back(near(paper, "sourdough yeast grows at " + std::to_string(celsius) + " °C", "/h", rate,
                        tolerance, yeast(celsius)));
  }
  Origin abstract = paper;
  abstract.reading = SourceReading::kAbstract;
  rows.push_back(near(abstract, "sourdough yeast at 36 °C", "/h", 0, 0, yeast(36)));
  rows.push_back(near(abstract, "sourdough yeast at 40 °C", "/h", 0, 0, yeast(40)));
  rows.push_back(near(abstract, "sourdough yeast's optimum, about 27", "°C", 27.115, 0.01,
                      optimumOf(kSourdoughYeast, 20, 35)));
  rows.push_back(near(paper, "sourdough yeast's best rate", "/h", 0.4234, 0.0004,
                      yeast(kSourdoughYeast.optimumCelsius())));
  rows.push_back(near(paper, "lactobacilli at 20 °C", "/h", 0.2390, 0.0012, kLactobacilli.rate(20)));
  rows.push_back(near(paper, "lactobacilli at 32 °C", "/h", 0.6576, 0.0033, kLactobacilli.rate(32)));
  rows.push_back(
      near(paper, "lactobacilli's optimum, 32-33", "°C", 33.02, 0.01, optimumOf(kLactobacilli, 25, 40)));
  const Origin faq = {"growth",
                      "Gaenzle (the curve's author), message reprinted in the rec.food.sourdough FAQ, 1998",
                      SourceReading::kRead, CheckBasis::kIndependent};
  const char* rounded = "the message gives round halves and quarters; the model keeps the paper's curve";
  rows.push_back(near(faq, "half the best rate at 20 °C", "", 0.5, 0.06, sourdoughYeastActivity(20)));
  rows.push_back(near(faq, "half the best rate at 32 °C", "", 0.5, 0.06, sourdoughYeastActivity(32)));
  rows.push_back(missed(
      near(faq, "a quarter of the best rate at 14 °C", "", 0.25, 0.06, sourdoughYeastActivity(14)), rounded));
  rows.push_back(missed(
      near(faq, "a quarter of the best rate at 34 °C", "", 0.25, 0.06, sourdoughYeastActivity(34)), rounded));
  const Origin retarder = {"growth", "baking textbook: fermentation nearly stops below 10 °C",
                           SourceReading::kRead, CheckBasis::kIndependent};
  rows.push_back(
      between(retarder, "share of the best rate at 10 °C", "", 0, 0.1, sourdoughYeastActivity(10)));
  const CardinalCurve manual = {1, 5, 20, 30};
  const Origin library = {"growth", "manual of an open library, cardinal model for 5, 20, 30 °C",
                          SourceReading::kRead, CheckBasis::kArithmetic};
  rows.push_back(near(library, "cardinal model at 22 °C", "", 0.96333, 1e-5, manual.rate(22)));
  rows.push_back(near(library, "cardinal model at 10 °C", "", 0.33333, 1e-5, manual.rate(10)));
  rows.push_back(near(library, "cardinal model at 26 °C", "", 0.65333, 1e-5, manual.rate(26)));
  const Origin rosso = {"growth", "Rosso, Lobry, Flandrois 1993, J. Theor. Biol. 162:447-463",
                        SourceReading::kMemory, CheckBasis::kArithmetic};
  rows.push_back(near(rosso, "cardinal model at its optimum", "", 1, 1e-12, manual.rate(20)));
  rows.push_back(near(rosso, "cardinal model at its minimum", "", 0, 1e-12, manual.rate(5)));
  rows.push_back(near(rosso, "cardinal model at its maximum", "", 0, 1e-12, manual.rate(30)));
  const Origin gassing = {"growth", "food-fermentation textbook extract, gassing in bread doughs",
                          SourceReading::kSecondHand, CheckBasis::kTakenOver};
  rows.push_back(between(gassing, "baker's yeast gasses best at", "°C", 36, 39, kBakersYeast.optimumCelsius));
  const Origin gause = {"growth", "Gause 1932, Q. Rev. Biol. 7, growth from 15 to 28 °C, Q10 from its rates",
                        SourceReading::kRead, CheckBasis::kIndependent};
  rows.push_back(near(gause, "baker's yeast Q10 from 18 to 28 °C", "", 2.2, 0.4,
                      kBakersYeast.rate(28) / kBakersYeast.rate(18)));
}

void addGas(Rows& rows) {
  const Origin murray = {"gas", "Murray and Riley 1971, in the IUPAC-NIST solubility database",
                         SourceReading::kRead, CheckBasis::kFitted};
  rows.push_back(near(murray, "CO2 in water at 20 °C", "volumes", 0.930, 0.0093, carbonDioxideHeld(20)));
  rows.push_back(near(murray, "CO2 in water at 25 °C", "volumes", 0.822, 0.0082, carbonDioxideHeld(25)));
  rows.push_back(near(murray, "CO2 in water at 30 °C", "volumes", 0.736, 0.0074, carbonDioxideHeld(30)));
  const Origin kunerth = {"gas", "Kunerth 1922", SourceReading::kRead, CheckBasis::kIndependent};
  rows.push_back(near(kunerth, "CO2 in water at 20 °C", "volumes", 0.900, 0.0315, carbonDioxideHeld(20)));
  rows.push_back(near(kunerth, "CO2 in water at 30 °C", "volumes", 0.729, 0.0255, carbonDioxideHeld(30)));
  const Origin findlay = {"gas", "Findlay", SourceReading::kRead, CheckBasis::kIndependent};
  rows.push_back(near(findlay, "CO2 in water at 25 °C", "volumes", 0.825, 0.0289, carbonDioxideHeld(25)));
  const Origin split = {"gas", "the partition solved independently", SourceReading::kComputed,
                        CheckBasis::kArithmetic};
  for (const auto& [gas, celsius, volume] : {std::tuple{0.5, 25.0, 1.2098},
                                             {1.0, 25.0, 1.6199},
                                             {2.0, 25.0, 2.5251},
                                             {0.5, 4.0, 1.0859},
                                             {1.0, 4.0, 1.3439},
                                             {2.0, 4.0, 2.1400}}) {
    rows.push_back(near(split,
                        "volume with " + std::to_string(gas).substr(0, 3) + " of CO2 at " +
                            std::to_string(static_cast<int>(celsius)) + " °C",
                        "times", volume, 1e-3, splitGas(0.45, gas, celsius).volume));
  }
  const Origin chemistry = {"gas", "stoichiometry", SourceReading::kComputed, CheckBasis::kArithmetic};
  // C6H12O6 -> 2 CO2 + 2 C2H5OH; the gas law at 25 degrees and 1 atm.
  const double gramsPerGram = 2 * 44.0095 / 180.156;
  rows.push_back(near(chemistry, "CO2 of 1 g of hexose", "g", 0.4886, 0.0005, gramsPerGram));
  const double millilitres = gramsPerGram / 44.0095 * 8.314462618 * 298.15 / 101325 * 1e6;
  rows.push_back(near(chemistry, "CO2 of 1 g of hexose at 25 °C", "mL", 271.6, 0.3, millilitres));
  const Origin flour = {"gas", "handbook of food fermentation, sugars of wheat flour with maltose set free",
                        SourceReading::kSecondHand, CheckBasis::kIndependent};
  // A gram of flour (1.45 g/mL) with a gram of water.
  const double levainMillilitresPerGram = 1 / 1.45 + 1;
  rows.push_back(between(flour, "a levain's sugar, on its flour", "%", 1, 4.4,
                         100 * kLevainKind.sugarVolumes * levainMillilitresPerGram / millilitres));
  const Origin gassing = {"gas", "textbooks: 1 % compressed yeast at 27-30 °C", SourceReading::kMemory,
                          CheckBasis::kIndependent};
  const double doughMillilitresPerGram = 1 / 1.45 + 0.65;
  rows.push_back(between(gassing, "gas of 1 % compressed yeast at 28 °C, per g of flour", "mL/h", 0.85, 1.05,
                         kYeastGasRate * kBakersYeast.rate(28) * doughMillilitresPerGram));
}

void addHeat(Rows& rows) {
  const Lump kilo;
  const Origin newton = {"heat", "Newton's law", SourceReading::kComputed, CheckBasis::kArithmetic};
  rows.push_back(
      near(newton, "28 to 4 °C after one time constant", "°C", 12.83, 0.01, lumpAfter(28, 4, 0, 2.22, 2.22)));
  const Origin lump = {"heat", "linear driving force", SourceReading::kComputed, CheckBasis::kArithmetic};
  rows.push_back(near(lump, "transfer of 1 kg in still air", "W/m2K", 6.03, 0.06, kilo.overallW(kStillAir)));
  rows.push_back(near(lump, "Biot number of 1 kg", "", 0.268, 0.0027, kilo.biot(kStillAir)));
  struct Case {
    double kilograms, surfaceW, hours;
  };
  for (const Case& c :
       {Case{1, 7, 2.22}, {0.05, 7, 0.75}, {0.5, 7, 1.71}, {2, 7, 2.90}, {2, 20, 1.33}, {0.25, 5, 1.81}}) {
    rows.push_back(near(lump,
                        "time constant of " + std::to_string(static_cast<int>(c.kilograms * 1000)) +
                            " g at " + std::to_string(static_cast<int>(c.surfaceW)) + " W/m2K",
                        "h", c.hours, 0.011 * c.hours + 0.004,
                        Lump{.kilograms = c.kilograms}.timeConstantHours(c.surfaceW)));
  }
  const Lump sphere = {.areaOverSphere = 1};
  const double radius = 3 * sphere.lengthMetres();
  const double diffusivity =
      sphere.conductivityWPerMK / (sphere.densityKgPerCubicMetre * sphere.specificHeatJPerKgK);
  const double tauSeconds = sphere.timeConstantHours(sphere.conductivityWPerMK / radius) * 3600;
  const Origin eigenvalue = {"heat", "textbook: slowest mode of a sphere at Bi 1 is (pi/2)^2",
                             SourceReading::kRead, CheckBasis::kArithmetic};
  rows.push_back(near(eigenvalue, "the lump's own decay at Bi 1", "", std::pow(std::numbers::pi / 2, 2), 0.04,
                      radius * radius / (diffusivity * tauSeconds)));
  const Origin volumes = {"heat", "finite volumes: mean of a 1 kg sphere from 28 in air of 4 °C",
                          SourceReading::kComputed, CheckBasis::kArithmetic};
  for (const auto& [hours, celsius] : {std::pair{1, 20.5}, {2, 15.5}, {4, 9.6}, {8, 5.3}}) {
    rows.push_back(near(volumes, "lump after " + std::to_string(hours) + " h", "°C", celsius, 0.25,
                        lumpAfter(28, 4, 0, sphere.timeConstantHours(kStillAir), hours)));
  }
  rows.push_back(near({"heat", "first term of the series", SourceReading::kComputed, CheckBasis::kArithmetic},
                      "Fourier number of a centre from 28 to 95 °C in 100 °C", "", 0.3405, 1e-4,
                      sphereFourier(28, 100, 95)));
}

}  // namespace suppertide::bread::rows
