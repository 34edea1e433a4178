// Rows about the trade's arithmetic and about baking.
#include "server/bread/baking.h"
#include "server/bread/formula_parts.h"
#include "server/bread/levain_build.h"
#include "server/bread/published_rows.h"
#include "server/bread/water_temperature.h"

namespace suppertide::bread::rows {
namespace {

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

// Flour 100, liquid 58, egg 15, butter 15, sugar 10, salt 2, and 19 % of the dough levain.
Formula workedDough() {
  return splitFormula({usual("flour", Role::kFlour, 100), usual("liquid", Role::kLiquid, 58),
                       usual("egg", Role::kEgg, 15), usual("butter", Role::kFat, 15),
                       usual("sugar", Role::kSugar, 10), usual("salt", Role::kSalt, 2)},
                      {LevainPart{0.19, 1, 0}, {}, {}})
      ->mix;
}

}  // namespace

void addDoughTemperature(Rows& rows) {
  const auto origin = [](std::string source, SourceReading reading) {
    return Origin{"dough temperature", std::move(source), reading, CheckBasis::kArithmetic};
  };
  const Origin treatise = origin("Wihlfahrt, A Treatise on Baking", SourceReading::kRead);
  rows.push_back(
      near(treatise, "wanted 78, room 85, flour 67: water", "°F", 82, 0, waterByThreeFactors(78, 85, 67, 0)));
  rows.push_back(near(treatise, "wanted 78, room 72, flour 62: water", "°F", 100, 0,
                      waterByThreeFactors(78, 72, 62, 0)));
  rows.push_back(near(origin("baking-school handout", SourceReading::kSecondHand),
                      "wanted 75, room 65, flour 65, friction 8: water", "°F", 87, 0,
                      waterByThreeFactors(75, 65, 65, 8)));
  rows.push_back(near(origin("Gisslen, Professional Baking", SourceReading::kMemory),
                      "wanted 80, room 72, flour 68, friction 20: water", "°F", 80, 0,
                      waterByThreeFactors(80, 72, 68, 20)));
  rows.push_back(near(origin("cookery magazine example", SourceReading::kRead),
                      "four factors: wanted 75, three at 71, friction 20: water", "°F", 67, 0,
                      waterByFourFactors(75, 71, 71, 71, 20)));
  rows.push_back(near(origin("US Navy, NAVEDTRA 14163, p. 8-4; numbers from memory", SourceReading::kRead),
                      "friction of a test batch: room 72, flour 68, water 80, mixed 80", "°F", 20, 0,
                      frictionFromTestBatch(80, 72, 68, 80)));
  // Specific heat 1.8 of flour, as in the worked comparison.
  rows.push_back(near(origin("arithmetic", SourceReading::kComputed),
                      "water by the heat balance where the rule asks 38", "°C", 30.2, 0.06,
                      waterByHeatBalance({{"flour", 100, 20, 0.2 / 2.58}}, 62, 26, 0)->celsius));
}

void addFormula(Rows& rows) {
  const auto card = [](std::string name) {
    return Origin{"formula", "US Armed Forces Recipe Service, " + name, SourceReading::kRead,
                  CheckBasis::kArithmetic};
  };
  const Origin rolls = card("hot rolls D-033"), sweet = card("sweet dough D-036");
  rows.push_back(near(rolls, "hot rolls: sugar", "%", 12.5, 0.01, percentOf(1, hotRolls())));
  rows.push_back(near(rolls, "hot rolls: salt", "%", 2.08, 0.01, percentOf(2, hotRolls())));
  rows.push_back(near(rolls, "hot rolls: fat", "%", 13.54, 0.01, percentOf(3, hotRolls())));
  rows.push_back(near(rolls, "hot rolls: water", "%", 60.42, 0.01, percentOf(4, hotRolls())));
  rows.push_back(near(sweet, "sweet dough: egg", "%", 17.5, 0.01, percentOf(1, sweetDough())));
  rows.push_back(near(sweet, "sweet dough: sugar", "%", 17.5, 0.01, percentOf(2, sweetDough())));
  rows.push_back(near(sweet, "sweet dough: fat", "%", 16.25, 0.01, percentOf(3, sweetDough())));
  const Origin identity = {"formula", "identity", SourceReading::kComputed, CheckBasis::kArithmetic};
  const Formula worked = workedDough();
  const auto grams = *worked.gramsForDough(1000);
  rows.push_back(near(identity, "19 % levain in a dough of 200 %: prefermented flour", "", 0.19, 1e-12,
                      worked.prefermentedFlourShare()));
  rows.push_back(near(identity, "1,000 g worked dough: flour", "g", 405, 0.1, grams[0].grams));
  rows.push_back(near(identity, "1,000 g worked dough: liquid", "g", 195, 0.1, grams[1].grams));
  rows.push_back(near(identity, "1,000 g worked dough: levain", "g", 190, 0.1, grams[6].grams));
  rows.push_back(near(identity, "190 g of 1:1:1: starter", "g", 63.3, 0.05,
                      buildLevain(190, {1, 1, 1}, 1, 0)->starterGrams));
  for (const auto& [parts, share] : {std::pair{1, 1.0 / 3}, {2, 1.0 / 5}, {5, 1.0 / 11}, {10, 1.0 / 21}}) {
    const double each = parts;
    rows.push_back(near(identity,
                        "starter's flour in 1:" + std::to_string(parts) + ":" + std::to_string(parts), "",
                        share, 1e-12, LevainRatio{1, each, each}.inoculation()));
  }
}

void addBaking(Rows& rows) {
  const auto fromRoll = [](double kilograms) { return bakeTime(15, 0.05, kilograms)->minutes; };
  const Origin card = {"baking", "US Army recipe card D-010", SourceReading::kRead, CheckBasis::kFitted};
  rows.push_back(between(card, "765 g at 218 °C, from 50 g in 15 min", "min", 35, 40, fromRoll(0.765)));
  Origin hotter = card;
  hotter.basis = CheckBasis::kIndependent;
  rows.push_back(missed(
      between(hotter, "610 g at 232 °C, from 50 g in 15 min at 204 °C", "min", 25, 30, fromRoll(0.610)),
      "the scaling is by mass only and knows no hotter oven; the core temperature decides"));
  rows.push_back(missed(near({"baking", "institutional quantity recipe, reposted", SourceReading::kSecondHand,
                              CheckBasis::kIndependent},
                             "57 g sweet rolls crowded at 191 °C, from 50 g in 15 min at 204 °C", "min", 25,
                             2, fromRoll(0.057)),
                        "rolls that touch bake as one sheet, in a cooler oven"));
  rows.push_back(near({"baking", "exponent of two cards", SourceReading::kComputed, CheckBasis::kFitted},
                      "765 g from 50 g in 15 min", "min", 39, 1, fromRoll(0.765)));
  const Origin law = {"baking", "21 CFR 136", SourceReading::kRead, CheckBasis::kArithmetic};
  // Flour 100 with 14 % moisture, water 62 and 3 of other solids.
  rows.push_back(
      near(law, "loss of a dough to 62 % solids", "", 0.130, 0.001, lossToSolids(89.0 / 165, 0.62)));
  rows.push_back(near(law, "0.227 kg is bread", "", 1, 0, isLoaf(0.227) ? 1 : 0));
  rows.push_back(near(law, "0.226 kg is a roll", "", 0, 0, isLoaf(0.226) ? 1 : 0));
  rows.push_back(between({"baking", "trade dictionary", SourceReading::kRead, CheckBasis::kTakenOver},
                         "loss in oven and cooling", "", 0.098, 0.115, kBakeLossShare));
  const Origin practice = {"baking", "practice of home bakers", SourceReading::kCommonPractice,
                           CheckBasis::kIndependent};
  rows.push_back(between(practice, "rolls of 100 g, from 50 g in 15 min", "min", 18, 25, fromRoll(0.1)));
  rows.push_back(between(practice, "rolls of 60 g cool", "min", 5, 20, leastCoolingMinutes(0.06)));
}

}  // namespace suppertide::bread::rows
