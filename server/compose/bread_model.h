// One bread's way from starter to oven, in the bread engine's terms: the same
// steps serve the planner's tables and the forecast of a finished plan.
#pragma once

#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/compose/composition.h"

namespace suppertide::compose {

// Reads the recipe's formula and finds its ferments among the dish's steps.
absl::StatusOr<BreadInfo> breadInfoOf(const Composition& composition, const DishInfo& dish);

class BreadModel {
 public:
  BreadModel(const Composition& composition, const DishInfo& dish, const BreadInfo& bread)
      : composition_(composition), dish_(dish), bread_(bread) {}

  const BreadRecipe& recipe() const { return *bread_.recipe; }
  // The soaker that is made at a step; empty: none.
  const std::string& soakerOf(int step) const {
    return composition_.steps[static_cast<std::size_t>(step)].step->soaker_id();
  }

  // A levain just fed, a preferment just mixed; and the dough with this culture (or its yeast alone), and
  // the yeast of its preferments grown by these factors.
  absl::StatusOr<bread::DoughState> fedLevain(double flourPerStarter) const;
  absl::StatusOr<bread::DoughState> mixedPreferment(int index) const;
  absl::StatusOr<bread::DoughState> mixedDough(const bread::Culture& levain,
                                               const std::vector<double>& grown) const;
  // What the work between two ferments makes of the dough; `workHours` at room temperature.
  bread::DoughState handled(const bread::DoughState& state, int nextStep, double workHours) const;
  // Likely hours of work on the dough between two of its ferments.
  double workHoursBefore(int step) const;

  // How unsure the forecast of a ferment step in that place is.
  bread::Uncertainty uncertainty(int step, int place) const;
  bool isPreferment(int step) const;
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
  // Water for the wanted dough temperature, everything else as warm as the room.
  WaterWays water() const;

 private:
  bread::DoughKind kind() const { return recipe().kind(); }
  double pieceKilograms() const { return recipe().from().piece_mass_g() / 1000; }

  const Composition& composition_;
  const DishInfo& dish_;
  const BreadInfo& bread_;
};

// What a bread's step weighs: levain build, preferment, soaker or dough; nothing at other steps.
// `flourPerStarter` as planned, 0 without a levain.
void addWeighings(const BreadInfo& bread, const BreadModel& model, int step, double flourPerStarter,
                  v1::PlannedStep& out);

}  // namespace suppertide::compose
