// How much dough: by the pans it is to fill, or the guests it is for.
#pragma once

#include "absl/status/statusor.h"

namespace suppertide::bread {

// Inner sizes in millimetres. Round where a diameter is given. Without a height there are no
// walls to rise against, and only the area counts.
struct PanSize {
  double lengthMm = 0;
  double widthMm = 0;
  double diameterMm = 0;
  double heightMm = 0;

  double areaCm2() const;
  double volumeMl() const;  // 0 without a height
};

// Millilitres of pan on a gram of dough that fills it once baked. Common practice, no source: a tin of
// 1.9 litres takes about 900 g. Whole grain rises less.
inline constexpr double kPanMlPerGram = 2.1;
inline constexpr double kWholeGrainPanMlPerGram = 1.7;  // from half of the flour on
// Dough on a square centimetre of a flat sheet; common practice, no source (thin 0.4, thick 0.8).
inline constexpr double kSheetGramsPerCm2 = 0.6;

double panMlPerGram(double wholeGrainShare);

// Dough for one pan; `mlPerGram` for a pan with walls. InvalidArgument when the pan has no area, or a
// number is negative or not finite.
absl::StatusOr<double> doughForPan(const PanSize& pan, double mlPerGram);

// Whole pieces for `guests` when `pieces` serve `served`; at least 1. All above 0.
int piecesForGuests(int pieces, int served, int guests);

}  // namespace suppertide::bread
