#include "server/kitchen/ingredients/line_units.h"

#include <array>
#include <cctype>

#include "server/kitchen/ingredients/plain_text.h"
#include "server/kitchen/units.h"

namespace suppertide::kitchen {
namespace {

struct MassWord {
  std::string_view word;
  std::string_view name;
  MassUnit unit;
};
constexpr std::array<MassWord, 15> kMass = {{{"kilograms", "kg", MassUnit::kKilogram},
                                             {"kilogram", "kg", MassUnit::kKilogram},
                                             {"kilos", "kg", MassUnit::kKilogram},
                                             {"kilo", "kg", MassUnit::kKilogram},
                                             {"kg", "kg", MassUnit::kKilogram},
                                             {"grams", "g", MassUnit::kGram},
                                             {"gram", "g", MassUnit::kGram},
                                             {"g", "g", MassUnit::kGram},
                                             {"mg", "mg", MassUnit::kMilligram},
                                             {"pounds", "lb", MassUnit::kPound},
                                             {"pound", "lb", MassUnit::kPound},
                                             {"lbs", "lb", MassUnit::kPound},
                                             {"lb", "lb", MassUnit::kPound},
                                             {"ounces", "oz", MassUnit::kOunce},
                                             {"ounce", "oz", MassUnit::kOunce}}};

// One measure by kitchen: metric, US, imperial, Australian.
struct VolumeWord {
  std::string_view word;
  std::string_view name;
  std::array<VolumeUnit, 4> units;
};
constexpr std::array<VolumeUnit, 4> all(VolumeUnit unit) {
  return {unit, unit, unit, unit};
}
constexpr std::array<VolumeUnit, 4> kCup = {VolumeUnit::kMetricCup, VolumeUnit::kUsCup,
                                            VolumeUnit::kImperialCup, VolumeUnit::kMetricCup};
constexpr std::array<VolumeUnit, 4> kTbsp = {VolumeUnit::kMetricTablespoon, VolumeUnit::kUsTablespoon,
                                             VolumeUnit::kMetricTablespoon,
                                             VolumeUnit::kAustralianTablespoon};
constexpr std::array<VolumeUnit, 4> kTsp = {VolumeUnit::kMetricTeaspoon, VolumeUnit::kUsTeaspoon,
                                            VolumeUnit::kMetricTeaspoon, VolumeUnit::kMetricTeaspoon};
constexpr std::array<VolumeUnit, 4> kFlOz = {VolumeUnit::kImperialFluidOunce, VolumeUnit::kUsFluidOunce,
                                             VolumeUnit::kImperialFluidOunce,
                                             VolumeUnit::kImperialFluidOunce};
constexpr std::array<VolumeUnit, 4> kPint = {VolumeUnit::kImperialPint, VolumeUnit::kUsPint,
                                             VolumeUnit::kImperialPint, VolumeUnit::kImperialPint};
// Longer words before those they begin with.
constexpr std::array<VolumeWord, 29> kVolume = {{{"tablespoons", "tbsp", kTbsp},
                                                 {"tablespoon", "tbsp", kTbsp},
                                                 {"tbsps", "tbsp", kTbsp},
                                                 {"tbsp", "tbsp", kTbsp},
                                                 {"tbs", "tbsp", kTbsp},
                                                 {"teaspoons", "tsp", kTsp},
                                                 {"teaspoon", "tsp", kTsp},
                                                 {"tsps", "tsp", kTsp},
                                                 {"tsp", "tsp", kTsp},
                                                 {"cups", "cup", kCup},
                                                 {"cup", "cup", kCup},
                                                 {"fluid ounces", "fl oz", kFlOz},
                                                 {"fluid ounce", "fl oz", kFlOz},
                                                 {"fl. oz", "fl oz", kFlOz},
                                                 {"fl oz", "fl oz", kFlOz},
                                                 {"pints", "pint", kPint},
                                                 {"pint", "pint", kPint},
                                                 {"quarts", "quart", all(VolumeUnit::kUsQuart)},
                                                 {"quart", "quart", all(VolumeUnit::kUsQuart)},
                                                 {"gallon", "gallon", all(VolumeUnit::kUsGallon)},
                                                 {"millilitres", "ml", all(VolumeUnit::kMillilitre)},
                                                 {"milliliters", "ml", all(VolumeUnit::kMillilitre)},
                                                 {"ml", "ml", all(VolumeUnit::kMillilitre)},
                                                 {"cl", "cl", all(VolumeUnit::kCentilitre)},
                                                 {"dl", "dl", all(VolumeUnit::kDecilitre)},
                                                 {"litres", "l", all(VolumeUnit::kLitre)},
                                                 {"liters", "l", all(VolumeUnit::kLitre)},
                                                 {"litre", "l", all(VolumeUnit::kLitre)},
                                                 {"l", "l", all(VolumeUnit::kLitre)}}};

struct PieceWord {
  std::string_view word;
  std::string_view name;
  double pieces = 1;
};
constexpr std::array<PieceWord, 38> kPieces = {
    {{"cloves", "clove"},    {"clove", "clove"},   {"sticks", "stick"},       {"stick", "stick"},
     {"packets", "packet"},  {"packet", "packet"}, {"packages", "packet"},    {"package", "packet"},
     {"sachets", "packet"},  {"sachet", "packet"}, {"envelopes", "envelope"}, {"envelope", "envelope"},
     {"cans", "can"},        {"can", "can"},       {"tins", "can"},           {"tin", "can"},
     {"jars", "jar"},        {"jar", "jar"},       {"bunches", "bunch"},      {"bunch", "bunch"},
     {"sprigs", "sprig"},    {"sprig", "sprig"},   {"slices", "slice"},       {"slice", "slice"},
     {"stalks", "stalk"},    {"stalk", "stalk"},   {"ribs", "stalk"},         {"sheets", "sheet"},
     {"sheet", "sheet"},     {"leaves", "leaf"},   {"heads", "head"},         {"head", "head"},
     {"cakes", "cake"},      {"cake", "cake"},     {"pieces", "piece"},       {"piece", "piece"},
     {"dozen", "dozen", 12}, {"bottle", "bottle"}}};

constexpr std::array<std::string_view, 14> kVague = {"pinches", "pinch", "dashes",   "dash",    "handfuls",
                                                     "handful", "knob",  "splash",   "drizzle", "squeeze",
                                                     "glug",    "some",  "a little", "a few"};

// Whether `word` is the whole first word (or words) of `text`; takes it and a full stop.
bool take(std::string_view& text, std::string_view word) {
  if (!beginsWith(text, word)) return false;
  std::string_view rest = text.substr(word.size());
  if (!rest.empty() && std::isalpha(static_cast<unsigned char>(rest[0])) != 0) return false;
  if (!rest.empty() && (rest[0] == '-' || rest[0] == '%' || rest[0] == '\'')) return false;
  takeFront(rest, ".");
  text = trimmedFront(rest);
  return true;
}

LineUnit volumeUnit(const VolumeWord& word, Measures measures) {
  const double held = millilitresPer(word.units[static_cast<std::size_t>(measures)]);
  LineUnit unit{UnitKind::kVolume, std::string(word.name), held, false};
  for (const VolumeUnit other : word.units) {
    const double ratio = millilitresPer(other) / held;
    if (ratio > 1.03 || ratio < 1 / 1.03) unit.differs = true;
  }
  if (word.name == "quart" || word.name == "gallon") unit.differs = measures != Measures::kUs;
  return unit;
}

}  // namespace

std::optional<LineUnit> takeUnit(std::string_view& text, Measures measures) {
  text = trimmedFront(text);
  const auto spoon = [&](std::string_view letter, std::string_view name,
                         const std::array<VolumeUnit, 4>& units) -> std::optional<LineUnit> {
    if (text.substr(0, 1) != letter || !take(text, letter)) return std::nullopt;
    return volumeUnit({letter, name, units}, measures);
  };
  if (const auto unit = spoon("T", "tbsp", kTbsp)) return unit;
  if (const auto unit = spoon("t", "tsp", kTsp)) return unit;
  if (const auto unit = spoon("c", "cup", kCup)) return unit;
  for (const VolumeWord& word : kVolume)
    if (take(text, word.word)) return volumeUnit(word, measures);
  for (const MassWord& word : kMass)
    if (take(text, word.word))
      return LineUnit{UnitKind::kMass, std::string(word.name), gramsPer(word.unit), false};
  if (take(text, "oz")) return LineUnit{UnitKind::kMass, "oz", gramsPer(MassUnit::kOunce), false};
  for (const PieceWord& word : kPieces)
    if (take(text, word.word)) return LineUnit{UnitKind::kPieces, std::string(word.name), word.pieces, false};
  for (const std::string_view word : kVague)
    if (take(text, word)) return LineUnit{UnitKind::kVague, std::string(word), 0, false};
  return std::nullopt;
}

}  // namespace suppertide::kitchen
