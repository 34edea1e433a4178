// Runs a dough's state forward through a sequence of places.
//
// Hours are on the caller's axis; `hourOfDayAtZero` says which local wall-clock
// hour its zero is, so that places with a temperature by hour work.
// Dough temperature is exact (closed form between the air's knots); the rest is
// classical Runge-Kutta of fourth order with steps of at most kStepHours. Against
// steps 64 times finer, rise differs by less than kRiseError (tested).
#pragma once

#include <limits>
#include <span>
#include <vector>

#include "server/bread/dough.h"
#include "server/bread/heat.h"
#include "server/bread/temperature_by_hour.h"

namespace suppertide::bread {

inline constexpr double kStepHours = 0.125;
inline constexpr double kRiseError = 1e-4;
inline constexpr double kOpenEnded = std::numeric_limits<double>::infinity();

struct Stay {
  double hours = kOpenEnded;
  TemperatureByHour air;
  double surfaceW = kStillAir;  // W/(m2 K), see heat.h
};

// Steps through stays; after the last one it stands still unless that one is
// open-ended. Holds pointers to nothing but copies of its arguments' values and
// the span, which must outlive it.
class Fermentation {
 public:
  Fermentation(const DoughKind& kind, const DoughState& state, double startHour, std::span<const Stay> stays,
               double hourOfDayAtZero = 0, double stepHours = kStepHours);

  bool done() const { return stay_ >= stays_.size(); }
  double hour() const { return hour_; }
  const DoughState& state() const { return state_; }
  double rise() const;

  // The length of the coming step, hours: to the grid's next point, the air's next knot or the stay's end.
  double nextStep() const;
  // The state `hours` from now, at most nextStep(), without moving.
  DoughState peek(double hours) const;
  // Moves by nextStep().
  void step();
  // Moves by `hours`, at most nextStep().
  void stepBy(double hours);

 private:
  void enterStay();

  DoughKind kind_;
  DoughState state_;
  double hour_;
  std::span<const Stay> stays_;
  double hourOfDayAtZero_;
  double stepHours_;
  std::size_t stay_ = 0;
  double stayLimit_ = 0;
  double tau_ = 1;
};

// The state after all stays, each of finite length (open-ended ones are skipped).
DoughState ferment(const DoughKind& kind, const DoughState& state, double startHour,
                   std::span<const Stay> stays, double hourOfDayAtZero = 0);

}  // namespace suppertide::bread
