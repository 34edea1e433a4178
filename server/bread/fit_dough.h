// Turns a whole bread round: from the hours in which its proof should be ready to every way
// of getting there, from feeding the levain on.
//
// A way is a ratio and a place for the levain, a place for the bulk, a place for the proof or
// a retard in a cold one, the temperature of the mixed dough, and the hours of feeding,
// mixing, shaping and baking, all within the hours of work.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "absl/status/statusor.h"
#include "server/bread/forecast.h"
#include "server/bread/levain_build.h"

namespace suppertide::bread {

struct BreadPlace {
  TemperatureByHour air;
  bool cold = false;  // for retards of the shaped dough only
  double surfaceW = kStillAir;
};

// The levain a dough is made with.
struct LevainChoice {
  DoughKind kind = kLevainKind;
  Culture starter;
  std::vector<LevainRatio> ratios{kUsualRatios.begin(), kUsualRatios.end()};
  double celsius = 24;
  double kilograms = 0.2;
  double starterHydration = 1;
  Stage stage = kLevainStage;
};

struct BreadWish {
  Interval<double> ready;  // hours in which the proof ends
  double earliestHour = 0;
  std::vector<Interval<double>> workHours;  // none: at any hour
  std::vector<BreadPlace> places;
  std::optional<LevainChoice> levain;  // absent: yeast alone
  DoughKind kind = kEnrichedKind;
  Mixing mixing;                     // its celsius is that of doughCelsius
  std::vector<double> doughCelsius;  // to try, the wanted one first
  double pieceKilograms = 0.05;
  Stage bulk = kEnrichedBulk;
  Stage proof = kEnrichedProof;
  Stage retard = kRetard;
  double logVigourSpread = 0.2;
  double hourOfDayAtZero = 0;
  int pitchMinutes = 30;  // of the feeding (or mixing) hours tried
};

// One ferment of a way, from its start to the moment it is taken on.
struct BreadStage {
  std::size_t place = 0;
  double startHour = 0;
  double endHour = 0;
  ReadinessWindow window;
  DoughState state;  // at its start
};

struct BreadWay {
  std::optional<LevainRatio> ratio;
  std::optional<BreadStage> levain;
  BreadStage bulk;
  BreadStage proof;
  bool retarded = false;
  double doughCelsius = 0;
  double bestFromMiddle = 0;   // hours from the middle of the wanted span; negative: before
  double miss = 0;             // hours; 0: the windows meet; positive: ready too late; negative: too early
  double coveredShare = 0;     // of the wanted span
  bool readyWhenFast = false;  // one dough in ten; shaped at the planned hour
  bool readyWhenSlow = false;
  double penalty = 0;  // what ranks it, lower first
};

struct BreadFit {
  std::vector<BreadWay> ways;       // one for each ratio and places, best first, at most kMostWays
  std::optional<BreadWay> nearest;  // only where there is no way: the one with the smallest miss
};
inline constexpr std::size_t kMostWays = 24;

// InvalidArgument when the wanted span or the places are empty, nothing leavens, or a number is
// out of range. Neither way nor nearest: no hour of work is early enough, or no place is warm
// enough. Cost: about 10 microseconds for each feeding hour, ratio and triple of places.
// `stop` is asked before each feeding hour; true ends the search with CANCELLED.
absl::StatusOr<BreadFit> fitBread(const BreadWish& wish, const std::function<bool()>& stop = nullptr);

}  // namespace suppertide::bread
