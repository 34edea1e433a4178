#include "server/kitchen/conduction.h"

#include <cmath>
#include <numbers>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace suppertide::kitchen {
namespace {

constexpr double kPi = std::numbers::pi;

// Zero where `zeta` solves the surface condition; rises through it in the bracket.
double surfaceBalance(Shape shape, double biot, double zeta) {
  if (shape == Shape::kSlab) return zeta * std::sin(zeta) - biot * std::cos(zeta);
  return std::sin(zeta) * (1 - biot) - zeta * std::cos(zeta);
}

double firstRoot(Shape shape, double biot) {
  double low = 0;
  double high = shape == Shape::kSlab ? kPi / 2 : kPi;
  // The sphere's balance is also 0 at 0, so the bracket starts beside it.
  if (shape == Shape::kSphere) low = 1e-9;
  for (int i = 0; i < 100; ++i) {
    const double middle = (low + high) / 2;
    (surfaceBalance(shape, biot, middle) < 0 ? low : high) = middle;
  }
  return (low + high) / 2;
}

double seriesCoefficient(Shape shape, double zeta) {
  if (shape == Shape::kSlab) return 4 * std::sin(zeta) / (2 * zeta + std::sin(2 * zeta));
  return 4 * (std::sin(zeta) - zeta * std::cos(zeta)) / (2 * zeta - std::sin(2 * zeta));
}

absl::Status reachable(double oven, double start, double end) {
  const bool heating = start < end && end < oven;
  const bool cooling = start > end && end > oven;
  if (heating || cooling) return absl::OkStatus();
  return absl::OutOfRangeError(absl::StrCat("time to temperature: ", end, " is never reached from ", start,
                                            " in surroundings of ", oven));
}

}  // namespace

FirstTerm firstTerm(Shape shape, double biot) {
  if (std::isinf(biot)) {
    return shape == Shape::kSlab ? FirstTerm{kPi / 2, 4 / kPi} : FirstTerm{kPi, 2};
  }
  const double zeta = firstRoot(shape, biot);
  return {zeta, seriesCoefficient(shape, zeta)};
}

absl::StatusOr<double> lumpedTime(double tau, double oven, double start, double end) {
  if (absl::Status status = reachable(oven, start, end); !status.ok()) return status;
  return tau * std::log((oven - start) / (oven - end));
}

absl::StatusOr<double> firstTermSeconds(Shape shape, double biot, double half, double diffusivity,
                                        double oven, double start, double end) {
  if (absl::Status status = reachable(oven, start, end); !status.ok()) return status;
  const FirstTerm term = firstTerm(shape, biot);
  const double scale = half * half / (diffusivity * term.zeta * term.zeta);
  return scale * std::log(term.coefficient * (oven - start) / (oven - end));
}

absl::StatusOr<double> timeRatio(Shape shape, double biot, double oven, double otherOven, double start,
                                 double end) {
  if (absl::Status status = reachable(oven, start, end); !status.ok()) return status;
  if (absl::Status status = reachable(otherOven, start, end); !status.ok()) return status;
  const double coefficient = biot > 0 ? firstTerm(shape, biot).coefficient : 1;
  return std::log(coefficient * (otherOven - start) / (otherOven - end)) /
         std::log(coefficient * (oven - start) / (oven - end));
}

double massTimeFactor(double massBefore, double massAfter) {
  return std::pow(massAfter / massBefore, 2.0 / 3);
}

double panofskyHours(double kilograms) {
  constexpr double kPound = 0.45359237;
  constexpr double kPanofsky = 1.5;
  return std::pow(kilograms / kPound, 2.0 / 3) / kPanofsky;
}

}  // namespace suppertide::kitchen
