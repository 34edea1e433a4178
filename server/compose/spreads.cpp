#include "server/compose/spreads.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "server/bread/uncertainty.h"
#include "server/compose/bread_tables.h"

namespace suppertide::compose {
namespace {

constexpr double kNoon = 12;
constexpr double kLeastRatio = 0.1;
// Yeast from a packet varies less than a culture; assumed.
constexpr double kLogYeastVigour = 0.10;
// One deviation of a place's warmth; about 10 % a degree. Only the product with
// the power counts, which the forecast gives.
constexpr double kLogPlaceWarmth = 0.07;
// A dough that one deviation keeps from ever being ready counts as taking twice as long.
constexpr double kNeverRatio = 2;
constexpr double kLeastPower = 0.02;

int unknownFor(Composition& composition, const std::string& id, double sigma) {
  auto& unknowns = composition.problem.unknowns;
  const auto found = std::find_if(unknowns.begin(), unknowns.end(),
                                  [&](const planning::Unknown& unknown) { return unknown.id == id; });
  if (found != unknowns.end()) return static_cast<int>(found - unknowns.begin());
  unknowns.push_back({id, sigma});
  return static_cast<int>(unknowns.size()) - 1;
}

// How many times as long it takes after one deviation to the slow side.
double slowRatio(const FermentCase& ferment, const bread::Shift& slow, BreadTables& tables) {
  const auto hours = [&](const bread::Shift& shift) {
    return tables.bestHours(ferment.kind, ferment.state, kNoon, ferment.stays, ferment.stage, shift);
  };
  const double likely = hours({});
  if (likely <= 0) return 1;
  const double slowly = hours(slow);
  return slowly <= 0 ? kNeverRatio : std::clamp(slowly / likely, 1.0, kNeverRatio);
}

}  // namespace

planning::Spread spreadOf(const v1::Spread& told, const planning::Spread& usual) {
  if (!told.has_least() && !told.has_most()) return usual;
  planning::Spread spread;
  const double likely = minutesOf(told.likely());
  if (likely <= 0) return spread;
  if (told.has_least()) spread.least = std::clamp(minutesOf(told.least()) / likely, kLeastRatio, 1.0);
  if (told.has_most()) spread.most = std::max(1.0, minutesOf(told.most()) / likely);
  return spread;
}

planning::Spread usualSpread(v1::StepKind kind) {
  switch (kind) {
    case v1::STEP_KIND_HANDS_ON:
      return {0.8, 1.5, {}};
    case v1::STEP_KIND_BURNER:
      return {0.9, 1.25, {}};
    default:
      return {};
  }
}

planning::Spread fermentSpread(Composition& composition, const v1::Starter* starter, int place,
                               const FermentCase& ferment, BreadTables& tables) {
  const bread::Uncertainty usual;
  planning::Spread spread;
  const auto follow = [&](const std::string& id, double sigma, const bread::Shift& slow) {
    const double power = std::log(slowRatio(ferment, slow, tables)) / sigma;
    if (power >= kLeastPower) spread.follows.push_back({unknownFor(composition, id, sigma), power});
  };
  const std::string culture = starter == nullptr ? "yeast" : absl::StrCat("starter ", starter->id());
  double vigour = usual.logVigour;
  if (starter == nullptr) {
    vigour = kLogYeastVigour;
  } else if (starter->learned_vigour().spread() > 0) {
    vigour = starter->learned_vigour().spread();
  } else if (starter->vigour_spread() > 0) {
    vigour = starter->vigour_spread();
  }
  double lag = usual.lag;
  if (starter != nullptr && starter->learned_waking().spread() > 0) lag = starter->learned_waking().spread();
  follow(absl::StrCat(culture, ": vigour"), vigour, {-vigour, 0, 0});
  if (starter != nullptr) follow(absl::StrCat(culture, ": adaptation"), lag, {0, lag, 0});
  const v1::Place& where = composition.documents.kitchen.places(place);
  const double kelvin =
      where.learned_warmth().spread() > 0 ? where.learned_warmth().spread() : usual.placeKelvin;
  follow(absl::StrCat("warmth of ", where.id()), kLogPlaceWarmth, {0, 0, -kelvin});
  return spread;
}

}  // namespace suppertide::compose
