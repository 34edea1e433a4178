// Rows about levains and doughs.
#include <algorithm>

#include "server/bread/forecast.h"
#include "server/bread/levain_build.h"
#include "server/bread/published_rows.h"

namespace suppertide::bread::rows {
namespace {

constexpr const char* kEquations = "the model's own equations, solved independently";
constexpr const char* kHomeBakers = "practice of home bakers";

Stay always(double celsius) {
  return {kOpenEnded, TemperatureByHour(celsius), kStillAir};
}

DoughKind halfWholeLevain() {
  return withComposition(kLevainKind, 0.5, 0, 0);
}

// A levain fed 1:parts:parts from a mature starter and kept at one temperature.
Forecast levain(double parts, double celsius, double vigour = 1, DoughKind kind = halfWholeLevain()) {
  const Stay stay = always(celsius);
  return forecast(kind, *mixLevain(kind, {.vigour = vigour}, {1, parts, parts}, celsius, 0.2), 0, {&stay, 1},
                  kLevainStage);
}

double doubles(double parts, double celsius) {
  return levain(parts, celsius).lowHour.value_or(kNeverHours);
}

// The least factor by which a doubling takes longer with a leaner feeding, over temperatures.
double leastByRatio() {
  double least = kNeverHours;
  for (double celsius : {18.0, 21.0, 24.0, 26.0}) {
    const double hours[] = {doubles(1, celsius), doubles(2, celsius), doubles(5, celsius),
                            doubles(10, celsius)};
    for (std::size_t i = 1; i < 4; ++i) least = std::min(least, hours[i] / hours[i - 1]);
  }
  return least;
}

// The same for a colder place, over ratios.
double leastByCold() {
  double least = kNeverHours;
  for (double parts : {1.0, 2.0, 5.0, 10.0}) {
    const double hours[] = {doubles(parts, 26), doubles(parts, 24), doubles(parts, 21), doubles(parts, 18)};
    for (std::size_t i = 1; i < 4; ++i) least = std::min(least, hours[i] / hours[i - 1]);
  }
  return least;
}

double leaklessDoubling(double vigour) {
  DoughKind kind = halfWholeLevain();
  kind.leakPerHour = 0;
  return levain(1, 22, vigour, kind).lowHour.value_or(kNeverHours);
}

// Enriched dough with 19 % of its mass levain that was used at 7 h, 2 % salt and 10 % sugar.
DoughKind enriched() {
  DoughKind kind = kEnrichedKind;
  kind.gasFactor = 0.80;
  kind.growthFactor = 0.85;
  return kind;
}

DoughState enrichedMixed(double celsius) {
  return *mix(enriched(), {.ripeness = 0.583, .lag = kPeakLevainLag},
              {.inoculation = 0.185, .cultureShare = 0.19, .celsius = celsius, .kilograms = 1});
}

DoughState enrichedAfter(double celsius, double hours) {
  const Stay stay = always(celsius);
  return stateAfter(enriched(), enrichedMixed(celsius), 0, {&stay, 1}, hours);
}

double proofHours(double rise) {
  const DoughState shaped = shape(enriched(), enrichedAfter(28, 2.5), 0.06);
  const Stay stay = always(28);
  return forecast(enriched(), shaped, 0, {&stay, 1}, {rise, rise, kNoHighRise}).lowHour.value_or(kNeverHours);
}

DoughState chilled(double hours) {
  const Stay stays[] = {{1.5, TemperatureByHour(28.0), kStillAir}, always(4)};
  return stateAfter(enriched(), enrichedMixed(28), 0, stays, 1.5 + hours);
}

double yeastedDoubles(double compressedPercent, double celsius) {
  DoughKind kind = kLeanKind;
  kind.gasFactor = 0.9;
  kind.yeastPercent = compressedPercent;
  const Stay stay = always(celsius);
  return forecast(kind, *mix(kind, {}, {.celsius = celsius}), 0, {&stay, 1}, {2, 2, 3})
      .lowHour.value_or(kNeverHours);
}

// Lean dough with 12 % of its flour from a ripe sponge, to the volume of a fully proofed test loaf.
double spongeDoughHours() {
  const DoughKind kind = withComposition(kLeanKind, 0, 2, 0);
  const Stay stay = always(30);
  const DoughState state = *mix(kind, {.lag = kPeakLevainLag},
                                {.inoculation = 0.12, .cultureShare = 0.11, .celsius = 30, .kilograms = 0.5});
  return forecast(kind, state, 0, {&stay, 1}, {3.55, 3.55, kNoHighRise}).lowHour.value_or(kNeverHours);
}

double grown(double yeastPercent) {
  const DoughKind kind = prefermentKind(0.6, 0, yeastPercent, 0);
  const Stay stay = always(27);
  return stateAfter(kind, *mix(kind, Culture{0, 0, 1}, {0, 0, 27, 0.4}), 0, {&stay, 1}, 6).yeastFactor;
}

double poolishRipe(double yeastPercent) {
  const DoughKind kind = prefermentKind(1, 0, yeastPercent, 0);
  const std::vector<Stay> stays = {{kOpenEnded, TemperatureByHour(21), kStillAir}};
  const auto found = forecast(kind, *mix(kind, Culture{0, 0, 1}, {0, 0, 21, 0.4}), 0, stays, kPoolishStage);
  return found.window ? found.window->best : kNeverHours;
}

}  // namespace

void addLevains(Rows& rows) {
  const Origin own = {"levain", kEquations, SourceReading::kComputed, CheckBasis::kArithmetic};
  const Origin ownFit = {"levain", kEquations, SourceReading::kComputed, CheckBasis::kFitted};
  const Forecast equalParts = levain(1, 22);
  rows.push_back(near(ownFit, "1:1:1 at 22 °C doubles", "h", 6.0, 0.1, *equalParts.lowHour));
  rows.push_back(near(own, "1:1:1 at 22 °C peaks", "h", 9.0, 0.1, equalParts.peakHour));
  rows.push_back(near(own, "1:1:1 at 22 °C rises to", "times", 2.52, 0.03, equalParts.peakRise));
  rows.push_back(near(own, "doubling time of twice the vigour, no leak", "", 0.5, 5e-4,
                      leaklessDoubling(2) / leaklessDoubling(1)));
  const Origin hamelman = {"levain",
                           "textbook liquid levain, about 1:5:6 at 21 °C, ripe at 12-16 h (Hamelman)",
                           SourceReading::kSecondHand, CheckBasis::kIndependent};
  rows.push_back(between(hamelman, "1:5:5 at 21 °C peaks", "h", 12, 16, levain(5, 21).peakHour));
  rows.push_back(
      missed(between(hamelman, "1:5:5 at 21 °C doubles, were that called ripe", "h", 12, 16, doubles(5, 21)),
             "it doubles half an hour before the window of the textbook, and peaks inside it"));
  const Origin sponge = {"levain", "San Francisco sponge, refreshed every 7-8 h at 27 °C",
                         SourceReading::kSecondHand, CheckBasis::kIndependent};
  const Forecast warm = levain(1, 27);
  rows.push_back(between(sponge, "1:1:1 at 27 °C peaks before it is refreshed", "h", 4, 8, warm.peakHour));
  rows.push_back(between(sponge, "1:1:1 at 27 °C is ready until it is refreshed", "h", 7, 10,
                         warm.window ? warm.window->hours.limit : kNeverHours));
  rows.push_back(between(
      {"levain", "Brandt, Hammes, Gaenzle 2004, Eur. Food Res. Technol. 218:333-338: inhibited at 35 °C",
       SourceReading::kAbstract, CheckBasis::kIndependent},
      "1:1:1 at 35 °C never doubles", "h", kNeverHours, kNeverHours, doubles(1, 35)));
  const Origin faq = {"levain",
                      "Gaenzle in the rec.food.sourdough FAQ: less starter and less warmth take longer",
                      SourceReading::kRead, CheckBasis::kIndependent};
  rows.push_back(between(faq, "a leaner feeding takes longer by at least", "", 1, 3, leastByRatio()));
  rows.push_back(between(faq, "a colder place takes longer by at least", "", 1, 3, leastByCold()));
  const Origin practice = {"levain", kHomeBakers, SourceReading::kCommonPractice, CheckBasis::kIndependent};
  const Origin fitted = {"levain", kHomeBakers, SourceReading::kCommonPractice, CheckBasis::kFitted};
  const char* steep =
      "the published curve is steeper than the practice's one band for 20 to 24 °C; the starter decides";
  rows.push_back(missed(
      between(practice, "1:1:1, half whole grain, at 20 °C doubles", "h", 5, 7, doubles(1, 20)), steep));
  rows.push_back(between(fitted, "1:1:1, half whole grain, at 22 °C doubles", "h", 5, 7, doubles(1, 22)));
  rows.push_back(between(fitted, "1:1:1, half whole grain, at 23 °C doubles", "h", 5, 7, doubles(1, 23)));
  rows.push_back(missed(
      between(practice, "1:1:1, half whole grain, at 24 °C doubles", "h", 5, 7, doubles(1, 24)), steep));
  rows.push_back(between(fitted, "1:1:1 at 22 °C stays usable after its peak", "h", 1, 3,
                         equalParts.window->hours.limit - equalParts.peakHour));
}

namespace {

void addPreferments(Rows& rows) {
  const Origin growth = {"preferment", "baking textbook: yeast cells in dough of 27 °C, 6 h",
                         SourceReading::kSecondHand, CheckBasis::kFitted};
  rows.push_back(
      near(growth, "0.5 % of yeast grows to, times what was added", "times", 1.88, 0.05, grown(0.5)));
  rows.push_back(near(growth, "2 % of yeast grows to, times what was added", "times", 1.29, 0.05, grown(2)));
  const Origin practice = {"preferment", "practice: poolish by fresh yeast on its flour, 21 °C",
                           SourceReading::kCommonPractice, CheckBasis::kFitted};
  rows.push_back(
      between(practice, "a poolish with 0.1 % of yeast is ripe after", "h", 12, 16, poolishRipe(0.1)));
  rows.push_back(
      between(practice, "a poolish with 0.25 % of yeast is ripe after", "h", 8, 12, poolishRipe(0.25)));
  rows.push_back(between(practice, "a poolish with 1 % of yeast is ripe after", "h", 3, 5, poolishRipe(1)));
}

}  // namespace

void addDoughs(Rows& rows) {
  const Origin practice = {"dough", "practice of home bakers: enriched, a fifth levain, 28 °C",
                           SourceReading::kCommonPractice, CheckBasis::kFitted};
  rows.push_back(between(practice, "bulk of 2.5 h rises to", "times", 1.45, 1.6,
                         riseOf(enriched(), enrichedAfter(28, 2.5))));
  rows.push_back(
      between(practice, "proof, to the rise wanted", "h", 1.5, 2, proofHours(kEnrichedProof.wantedRise)));
  const Forecast feeding = levain(1, 24);
  const double bakingAndCooling = 0.6;
  rows.push_back(
      between({"dough", kHomeBakers, SourceReading::kCommonPractice, CheckBasis::kIndependent},
              "rolls from feeding at 24 °C to the table", "h", 8, 12,
              feeding.window->best + 2.5 + proofHours(kEnrichedProof.wantedRise) + bakingAndCooling));
  rows.push_back(between({"dough", "San Francisco dough, 12 % prefermented flour, near 30 °C: 6-8 h",
                          SourceReading::kMemory, CheckBasis::kIndependent},
                         "to 3.55 times, a fully proofed test loaf", "h", 6, 8, spongeDoughHours()));
  rows.push_back(between({"dough", "wanted of a retard: still once it is cold",
                          SourceReading::kCommonPractice, CheckBasis::kIndependent},
                         "volume at 12 h over that at 4 h in a 4 °C fridge", "", 0.97, 1.03,
                         riseOf(enriched(), chilled(12)) / riseOf(enriched(), chilled(4))));
  rows.push_back(near({"dough", kHomeBakers, SourceReading::kCommonPractice, CheckBasis::kFitted},
                      "2 % compressed yeast at 26 °C doubles", "h", 1.75, 0.05, yeastedDoubles(2, 26)));
  const Origin cards = {"dough", "US Army recipe cards", SourceReading::kRead, CheckBasis::kIndependent};
  const char* apart = "the two cards differ by a factor of 2.5 themselves; yeast wants its own vigour";
  rows.push_back(missed(between(cards, "short-time bread, 1.6 % dry yeast at 27 °C", "h", 0.75, 0.84,
                                yeastedDoubles(1.6 * kCompressedPerActiveDry, 27)),
                        apart));
  rows.push_back(missed(near(cards, "D-010, 1.4 % dry yeast at 27 °C, 2 h or until double", "h", 2, 0.25,
                             yeastedDoubles(1.4 * kCompressedPerActiveDry, 27)),
                        apart));
  addPreferments(rows);
}

}  // namespace suppertide::bread::rows
