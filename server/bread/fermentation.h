// Runs a dough's state forward through a sequence of places.
//
// Hours are on the caller's axis; `hourOfDayAtZero` says which local wall-clock
// hour its zero is, so that places with a temperature by hour work.
// Dough temperature is exact (closed form between the air's knots); the rest is
// classical Runge-Kutta of fourth order with steps of kStepHours, shorter for
// vigorous and for yeasted doughs, longer for those that work slowly. Against steps
// 64 times finer, rise differs by less than kRiseError (tested over both kinds, 4 to
// 35 degrees); against CVODE over random doughs and places by less than 0.5 % (tested).
#pragma once

#include <limits>
#include <span>
#include <vector>

#include "server/bread/dough.h"
#include "server/bread/heat.h"
#include "server/bread/temperature_by_hour.h"

namespace suppertide::bread {

inline constexpr double kStepHours = 0.2;
inline constexpr double kRiseError = 1e-4;
inline constexpr double kOpenEnded = std::numeric_limits<double>::infinity();

struct Stay {
  double hours = kOpenEnded;
  TemperatureByHour air;
  double surfaceW = kStillAir;  // W/(m2 K), see heat.h
};

// Steps through stays and then stands still. Keeps the span, which must outlive it.
class Fermentation {
 public:
  Fermentation(const DoughKind& kind, const DoughState& state, double startHour, std::span<const Stay> stays,
               double hourOfDayAtZero = 0);

  bool done() const { return stay_ >= stays_.size(); }
  double hour() const { return hour_; }
  const DoughState& state() const { return state_; }
  double rise() const;

  // Steps this many times finer from now on, to check the error.
  void refine(double times) { stepHours_ /= times; }

  // The length of the coming step, hours: to the grid's next point, the air's next knot or the stay's end.
  double nextStep() const;
  // The state `hours` from now, at most nextStep(), without moving.
  DoughState peek(double hours) const;
  double riseIn(double hours) const { return riseOf(peek(hours)); }
  double riseOf(const DoughState& state) const { return bread::riseOf(kind_, state); }
  // Moves by nextStep().
  void step();
  // Moves by `hours`, at most nextStep().
  void stepBy(double hours);
  // The same where peek(hours) is known already.
  void moveTo(const DoughState& peeked, double hours);

 private:
  // What depends on the dough's temperature alone.
  struct Warmth {
    double celsius;
    double pace;         // of the fastest leavening at work over its best at vigour 1
    double growth;       // of adaptation and population, per hour
    double cultureGas;   // of a ripe, active culture with sugar enough, volumes per hour
    double yeastGas;     // the same for baker's yeast that is awake
    double yeastGrowth;  // per hour, far below its capacity
    double expansion;    // of a gas, over 25 degrees
    double air;          // volumes
    double dissolved;    // volumes of CO2 that the dough's water holds
  };
  struct Flow {
    double ripeness, activeShare, gas, sugar;  // per hour
  };
  // The air from `hour_` on until the next knot or the stay's end: linear.
  struct AirPiece {
    double celsius;
    double slope;  // per hour
    double limit;  // hour
  };

  void enterStay();
  void enterAirPiece();
  // After a time over which a difference to still air shrinks to its share `decay`.
  double celsiusAfter(double hours, double decay) const;
  Warmth warmthAt(double celsius) const;
  Flow flow(const DoughState& state, const Warmth& warmth, double yeastAtWork) const;
  // The yeast's factor after it has grown by `growth` generations' worth (rate times hours).
  double yeastAfter(double growth) const;

  DoughKind kind_;
  DoughState state_;
  double hour_;
  std::span<const Stay> stays_;
  double hourOfDayAtZero_;
  double stepHours_;
  std::size_t stay_ = 0;
  double stayLimit_ = 0;  // hour
  double tau_ = 1;
  AirPiece air_{};
  Warmth warmth_;  // at state_.celsius
};

// The state `hours` after the start, or after all stays where these are shorter.
DoughState stateAfter(const DoughKind& kind, const DoughState& state, double startHour,
                      std::span<const Stay> stays, double hours, double hourOfDayAtZero = 0);

// The state after the stays up to the first open-ended one.
DoughState ferment(const DoughKind& kind, const DoughState& state, double startHour,
                   std::span<const Stay> stays, double hourOfDayAtZero = 0);

}  // namespace suppertide::bread
