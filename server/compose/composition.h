// A planning problem together with what its indexes mean in the documents.
//
// Points into the Documents it was made from, which must outlive it.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/bread/dough.h"
#include "server/bread/forecast.h"
#include "server/compose/axis.h"
#include "server/compose/bread_recipe.h"
#include "server/compose/planner.h"
#include "server/kitchen/oven.h"
#include "server/kitchen/racks.h"
#include "server/planning/model/problem.h"

namespace suppertide::compose {

class BreadTables;

// What a mode means beyond the planning problem.
struct ModeInfo {
  int oven = -1;               // index into Kitchen.ovens
  int setpointCelsius = 0;     // as turned on that oven's dial
  int ownSetpointCelsius = 0;  // the recipe's own on that dial
  int checkFromMinutes = 0;    // after the start; 0: no such time
  int place = -1;              // index into Kitchen.places
  double flourPerStarter = 0;  // levain builds
  int placeBefore = -1;        // proofs: where the bulk stood, as this mode assumes
  bool leftOut = false;        // lasts no time and needs nothing
  int loads = 0;               // bakes that may be divided: into so many
};

struct StepInfo {
  int dish = 0;  // index into Event.dishes
  const v1::Step* step = nullptr;
  std::vector<ModeInfo> modes;  // as planning::Step::modes
  bool impossible = false;      // no mode at all: nowhere to bake or rise
};

// A preferment's steps in the problem, -1 where the recipe has none.
struct PrefermentSteps {
  int mixStep = -1;  // the work before it stands
  int step = -1;     // it ripens
};

// A bread's dough, worked out once.
struct BreadInfo {
  std::optional<BreadRecipe> recipe;  // with what is lost in handling
  int pieces = 0;
  const v1::Starter* starter = nullptr;
  std::vector<PrefermentSteps> preferments;  // as BreadFormula.preferments
  // Problem steps; -1 when the bread has none.
  int levainStep = -1;
  int feedStep = -1;            // the work before the levain stands
  int mixStep = -1;             // the work before the first ferment of the dough
  std::vector<int> doughSteps;  // its ferments in order: bulk, proof
};

struct DishInfo {
  const v1::Dish* dish = nullptr;
  const v1::Recipe* recipe = nullptr;  // with loads and what is taken out as steps of their own
  const v1::Course* course = nullptr;
  double scale = 1;        // of one making
  std::vector<int> steps;  // problem steps, as Recipe.steps
  std::optional<BreadInfo> bread;
};

// What stands in an oven in a mode, for packing.
kitchen::Pan panOf(const planning::Load& load);

struct Composition {
  Composition(const Documents& from, TimeAxis timeAxis) : documents(from), axis(std::move(timeAxis)) {}

  const Documents& documents;
  BreadTables* tables = nullptr;  // remembered from composition to composition; may be null
  TimeAxis axis;
  planning::Problem problem;
  std::vector<StepInfo> steps;                             // as Problem::steps
  std::vector<DishInfo> dishes;                            // as Problem::dishes and Event.dishes
  std::vector<std::shared_ptr<const v1::Recipe>> divided;  // recipes with steps of our own: loads, fetches
  std::vector<std::string> resourceIds;  // "burners", equipment and place ids, as Problem::resources
  std::vector<kitchen::Oven> ovens;      // as Problem::ovens and Kitchen.ovens
  std::vector<const v1::Member*> cooks;  // as Problem::cooks and Event.cooks
  std::vector<int> placeResource;        // by Kitchen.places: index into resources or -1
  int burnerResource = -1;

  std::string stepId(int step) const;    // "dish/step"
  double placeCelsius(int place) const;  // mean over the day; 21 for -1
};

// InvalidArgument for what validate() would refuse; a step that can't be done
// anywhere is not an error but `impossible`. `tables`, if given, spares the forecasts it knows.
absl::StatusOr<Composition> composeProblem(const Documents& documents, BreadTables* tables = nullptr);

}  // namespace suppertide::compose
