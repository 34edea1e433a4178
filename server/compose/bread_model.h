// One bread's way from starter to oven, in the bread engine's terms: the same
// steps serve the planner's tables and the forecast of a finished plan.
#pragma once

#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/bread/levain_build.h"
#include "server/compose/composition.h"

namespace suppertide::compose {

// The formula as the bread engine has it, its levain taken out of flour and water.
// InvalidArgument, naming the line and why, when it is no formula.
absl::StatusOr<bread::Formula> formulaOf(const v1::BreadFormula& from);

// Reads the recipe's formula and finds its ferments among the dish's steps.
absl::StatusOr<BreadInfo> breadInfoOf(const Composition& composition, const DishInfo& dish);

class BreadModel {
 public:
  BreadModel(const Composition& composition, const DishInfo& dish, const BreadInfo& bread)
      : composition_(composition), dish_(dish), bread_(bread) {}

  // Flour parts on 1 of starter that the recipe allows.
  std::vector<double> ratios() const;
  // Starter : flour : water that gives the levain's hydration.
  bread::LevainRatio ratio(double flourPerStarter) const;
  // The same for people: "1:2:2".
  std::string ratioText(double flourPerStarter) const;
  bread::DoughKind levainKind() const;
  // A levain just fed.
  absl::StatusOr<bread::DoughState> fedLevain(double flourPerStarter) const;
  double levainBuildGrams() const;  // with what sticks to the jar

  // The dough just mixed with this culture (or its yeast alone).
  absl::StatusOr<bread::DoughState> mixedDough(const bread::Culture& levain) const;
  // What the work between two ferments makes of the dough; `workHours` at room temperature.
  bread::DoughState handled(const bread::DoughState& state, int nextStep, double workHours) const;
  // Likely hours of work on the dough between two of its ferments.
  double workHoursBefore(int step) const;

  // What counts as ready for a ferment step in a place.
  bread::Stage stage(int step, int place) const;
  std::vector<bread::Stay> stays(int place) const;
  double roomCelsius() const;
  // Places where the step's ferment may stand.
  std::vector<int> places(int step) const;
  bool isRetard(int place) const;
  double litres(int step) const;
  // What stands in an oven used as a proofing place.
  planning::Load load(int step) const;
  // Water for the wanted dough temperature, by heat balance; also true without any water.
  double waterCelsius() const;

 private:
  double starterHydration() const;

  const Composition& composition_;
  const DishInfo& dish_;
  const BreadInfo& bread_;
};

}  // namespace suppertide::compose
