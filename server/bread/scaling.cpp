#include "server/bread/scaling.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace suppertide::bread {
namespace {

constexpr double kMm2PerCm2 = 100;
constexpr double kMm3PerMl = 1000;
constexpr double kMostlyWholeGrain = 0.5;

}  // namespace

double PanSize::areaCm2() const {
  const double mm2 = diameterMm > 0 ? std::numbers::pi * diameterMm * diameterMm / 4 : lengthMm * widthMm;
  return mm2 / kMm2PerCm2;
}

double PanSize::volumeMl() const {
  return areaCm2() * kMm2PerCm2 * heightMm / kMm3PerMl;
}

double panMlPerGram(double wholeGrainShare) {
  return wholeGrainShare >= kMostlyWholeGrain ? kWholeGrainPanMlPerGram : kPanMlPerGram;
}

absl::StatusOr<double> doughForPan(const PanSize& pan, double mlPerGram) {
  for (const double size : {pan.lengthMm, pan.widthMm, pan.diameterMm, pan.heightMm})
    if (!(std::isfinite(size) && size >= 0))
      return absl::InvalidArgumentError(absl::StrCat("dough for a pan: size ", size, " mm is not 0 or more"));
  if (!(pan.areaCm2() > 0))
    return absl::InvalidArgumentError("dough for a pan: it needs length and width, or a diameter");
  if (pan.heightMm == 0) return pan.areaCm2() * kSheetGramsPerCm2;
  if (!(std::isfinite(mlPerGram) && mlPerGram > 0))
    return absl::InvalidArgumentError(
        absl::StrCat("dough for a pan: ", mlPerGram, " ml on a gram is not above 0"));
  return pan.volumeMl() / mlPerGram;
}

int piecesForGuests(int pieces, int served, int guests) {
  const double exact = static_cast<double>(pieces) * guests / served;
  return std::max(1, static_cast<int>(std::ceil(exact - 1e-9)));
}

}  // namespace suppertide::bread
