// Changing an overall formula in grams or in baker's percentages.
//
// A Making is a formula and how much of it is made; a value, so the way back from any change
// is the Making before it. Percentages hold on to the flour's mass, grams to all other grams:
// "58 g more water" leaves the flour alone, "2 g more flour" changes every percentage.
#pragma once

#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/bread/formula.h"

namespace suppertide::bread {

struct Making {
  std::vector<Ingredient> lines;  // flours add up to 100
  double doughGrams = 0;
};

// Sum of the flours' percentages is 100 within kFlourSumTolerance; grams of every line, in order.
inline constexpr double kFlourSumTolerance = 0.05;
double flourGrams(const Making& making);
std::vector<double> gramsOf(const Making& making);

// As people read and type them: grams to 0.1 below 10 and to 1 from there on, percentages to 0.1
// from 10 on and to 0.01 below.
double shownGrams(double grams);
double shownPercent(double percent);

// Each gives the changed making. InvalidArgument, naming the line and why, when there is no line or more than
// one of that name, a number is negative, not finite or makes a flour more than all flour, or no
// flour would be left. A value that is shown as the line already is changes nothing at all.
//
// The flour's mass stays. Of a flour: the other flours give way in proportion.
absl::StatusOr<Making> withPercent(const Making& making, const std::string& line, double percent);
// The grams of all other lines stay.
absl::StatusOr<Making> withGrams(const Making& making, const std::string& line, double grams);
// As withPercent to 0, and the line is gone.
absl::StatusOr<Making> without(const Making& making, const std::string& line);
// A new line at the end, with its percent; a flour as by withPercent.
absl::StatusOr<Making> withLine(const Making& making, const Ingredient& line);

}  // namespace suppertide::bread
