// The parts of composing, in the order they run. Each fills its share of the Composition.
#pragma once

#include <string>
#include <vector>

#include "absl/status/status.h"
#include "server/bread/temperature_by_hour.h"
#include "server/compose/composition.h"
#include "server/kitchen/bake_tolerance.h"

namespace suppertide::compose {

// Cooks with their hours.
absl::Status addPeople(Composition& composition);
// Ovens (setpoints come later), burners, equipment and places.
absl::Status addThings(Composition& composition);
// Dishes and plain steps with their gaps; oven steps and ferments still lack modes.
absl::Status addDishes(Composition& composition);
// Modes of bakes by oven and setpoint; the ovens' setpoints and change times.
absl::Status addBakes(Composition& composition);
// Modes of levains, bulks and proofs by place, from forecasts.
absl::Status addBreads(Composition& composition);
// Modes in which steps that may be left out are.
absl::Status addOptional(Composition& composition);
// Takes out the starts of bakes and of what is put away at which nobody is awake and at home.
absl::Status addPresence(Composition& composition);
// Separations for guests who may not have even traces of something.
absl::Status addSeparations(Composition& composition);
// The costs of the lower tiers: air, interruptions, empty heating.
absl::Status addComfort(Composition& composition);
// Pins of the event.
absl::Status addPins(Composition& composition);

// Clocks of the food-safety rules, once modes are final.
absl::Status addSafety(Composition& composition);
// For a plan under way, which may overrun a recipe's gaps: the clocks that those gaps would keep, too. By
// gap, whether such clocks hold what is safe, so that its most says only how good the dish gets.
std::vector<bool> addSafetyUnderWay(Composition& composition);

// ---- shared pieces ----

// How many minutes a course's dishes may be late at most.
int lateLimit(const v1::Course& course);

// What leaving a dish out costs in the first tier: one dish less always outweighs which one it is.
constexpr int kOneDish = 1000;
// On top of that, for food that is under way.
constexpr int kDishBegun = 8;

// Adds a mode in which the step lasts no time and needs nothing, at a cost in quality.
void addLeftOut(Composition& composition, int step, int points);

// Gives a step one mode that cannot be chosen: its dish will be unserved.
void makeImpossible(Composition& composition, int step);

// The mode's attention and cooks by the step's needs and the dish's wish.
void setWork(const Composition& composition, const v1::Step& step, const v1::Dish& dish,
             planning::Mode& mode);

// Adds what standing at `place` takes; true when the place has that room at all.
bool usePlace(const Composition& composition, int place, double litres, planning::Mode& mode);

// Setpoint index of the light-on temperature of an oven; -1 when it has none.
int proofingSetpoint(const Composition& composition, int oven);

bread::TemperatureByHour airOf(const v1::Place& place);

}  // namespace suppertide::compose
