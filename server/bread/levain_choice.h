// Turns the forecast round: from the hours in which something should be ready to
// how and where to start it.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "server/bread/forecast.h"
#include "server/bread/levain_build.h"

namespace suppertide::bread {

// Where something ferments: after the stays in `first`, if any, in this air until it is ready.
struct FermentPlace {
  std::string name;
  TemperatureByHour air;
  double surfaceW = kStillAir;
  std::vector<Stay> first;
};

// `last` entered after `hoursBefore` in `before` and, in whole `pitchHours`, `least` to
// `most` hours in `cold`: one place for each length of the retard, in ascending order.
// Names are kept from `last`; the retard's length is first[1].hours. Empty when
// least > most or the pitch isn't above 0.
std::vector<FermentPlace> retardsOf(const FermentPlace& before, double hoursBefore, const FermentPlace& cold,
                                    double least, double most, const FermentPlace& last,
                                    double pitchHours = 1);

// What speaks for and against an option: figures, never a sentence.
struct ChoiceReasons {
  double coveredShare = 0;  // of the wanted hours in which it is ready, 0 to 1
  double bestFromMiddle =
      0;                   // hours from the middle of the wanted hours to the best moment; negative: before
  double readyBefore = 0;  // hours that it is ready before the wanted hours begin; negative: later
  double readyAfter = 0;   // hours that it is still ready after they end
  bool readyWhenFast = false;  // also a fast one is ready at some wanted moment
  bool readyWhenSlow = false;
  double hoursToBest = 0;
  double meanAirCelsius = 0;  // of the place, from start to best
};

struct LevainOption {
  LevainRatio ratio;
  std::size_t place = 0;  // index into LevainWish::places
  double feedHour = 0;
  ReadinessWindow window;
  ChoiceReasons reasons;
};

struct LevainWish {
  Interval<double> ready;  // hours in which it will be used
  std::vector<FermentPlace> places;
  std::vector<Interval<double>> workHours;  // feeding happens inside one of these; none: at any hour
  std::vector<LevainRatio> ratios{kUsualRatios.begin(), kUsualRatios.end()};
  Culture starter;
  double wholeGrainShare = 0.5;
  double mixedCelsius = 24;
  double kilograms = 0.2;
  Stage stage = kLevainStage;
  Uncertainty uncertainty;
  double hourOfDayAtZero = 0;
  double longestHours = 36;  // from feeding to use
  int pitchMinutes = 10;     // of the feeding times tried (each span of workHours adds its first moment)
};

// For each ratio and place the best feeding time, if any lets it be ready at some
// moment of `ready`; best first: most of the wanted hours covered, then ready also
// when fast and when slow, then nearest the middle. Empty when nothing fits.
// InvalidArgument when `ready` is empty, there is no place, or a ratio or number is
// out of range. Cost: ratios * places * feeding times * about 20 microseconds.
absl::StatusOr<std::vector<LevainOption>> levainChoices(const LevainWish& wish);

struct DoughOption {
  std::size_t place = 0;  // index into DoughWish::places
  double startHour = 0;
  ReadinessWindow window;
  ChoiceReasons reasons;
};

// The same for a mixed or shaped dough: where to put it, and when to begin.
struct DoughWish {
  Interval<double> ready;
  std::vector<FermentPlace> places;
  std::vector<Interval<double>> startHours;  // as workHours
  DoughKind kind = kEnrichedKind;
  DoughState state;
  Stage stage = kEnrichedBulk;
  Uncertainty uncertainty;
  double hourOfDayAtZero = 0;
  double longestHours = 36;
  int pitchMinutes = 10;
};
absl::StatusOr<std::vector<DoughOption>> doughChoices(const DoughWish& wish);

}  // namespace suppertide::bread
