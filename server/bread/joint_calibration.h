// Whose doing was it: the starter's, the place's or the dough's?
//
// One ferment that was slow speaks against all three alike. Several, with starters,
// places and doughs in different company, can tell them apart: learnTogether fits all
// effects to all observations at once and says of each effect what the data allow
// to say. Keep the observations: the fit starts from the beliefs of old each time.
#pragma once

#include <span>
#include <vector>

#include "server/bread/calibration.h"

namespace suppertide::bread {

enum class EffectKind {
  kVigour,  // of a starter: logarithm
  kLag,     // of a starter: share of its h0
  kPlace,   // kelvin
  kDough,   // of a recipe and its flour: logarithm of the gas rate
};

// Standard deviation of a recipe's gas rate against its composition's factor; assumed, and
// as wide as the factors themselves are (whole grain 0.3, salt and sugar 0.2).
inline constexpr double kDoughSpread = 0.15;

struct Effect {
  EffectKind kind = EffectKind::kVigour;
  int subject = 0;  // which starter, place or dough, as numbered by the caller
  double mean = 0;
  double spread = 0;  // standard deviation; 0: known
};

struct JointObservation {
  Observation seen;
  int starter = 0;
  int dough = 0;
  std::vector<int> places;  // of seen.stays, in order
};

enum class Telling {
  kTold,    // the spread fell to kToldShare of what it was, or to kToldThoughTied where it is tied
  kTied,    // only together with another effect: the data can't say which of the two
  kUntold,  // the data say little of it
};
inline constexpr double kToldShare = 0.6;
inline constexpr double kToldThoughTied = 0.4;
inline constexpr double kTiedCorrelation = 0.4;

struct LearntEffect {
  Effect effect;           // as believed now
  double spreadShare = 1;  // of the spread before
  Telling telling = Telling::kUntold;
  int tiedTo = -1;         // index of the effect with the strongest correlation; -1: none with any
  double correlation = 0;  // with that one; negative: the more of one, the less of the other
};

// In the order of `before`. Effects that no observation mentions come back as they
// were. InvalidArgument as by checkObservation, or when an observation has not one
// place a stay. Cost: 10 * (2 * effects + 1) runs of each observation's ferment.
absl::StatusOr<std::vector<LearntEffect>> learnTogether(std::span<const Effect> before,
                                                        std::span<const JointObservation> observations);

}  // namespace suppertide::bread
