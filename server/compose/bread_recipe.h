// A bread formula with its starter in the bread engine's terms: the same for the doughs of a
// plan and for those outside any.
//
// Points at the formula and the starter, which must outlive it.
#pragma once

#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/bread/forecast.h"
#include "server/bread/formula_parts.h"
#include "server/bread/mix_learning.h"
#include "server/bread/water_temperature.h"
#include "suppertide/v1/plan.pb.h"
#include "suppertide/v1/recipe.pb.h"
#include "suppertide/v1/starter.pb.h"

namespace suppertide::compose {

inline constexpr double kUsualRoomCelsius = 21;

// The lines of an overall formula, and what is mixed ahead of the dough.
std::vector<bread::Ingredient> linesOf(const v1::BreadFormula& formula);
bread::FormulaParts partsOf(const v1::BreadFormula& formula);
// For people: its name, or its kind's word.
std::string nameOf(const v1::Preferment& preferment);
std::string nameOf(const v1::Soaker& soaker);
double hydrationOf(const v1::Preferment& preferment);

// A place's temperature, warmer by what doughs taught of it. 21 degrees where nothing is stated.
bread::TemperatureByHour airOf(const v1::TemperatureByHour& stated, const v1::LearnedEffect& warmth = {});

// A starter as it is when a levain is fed from it, with what observations taught.
bread::Culture cultureOf(const v1::Starter& starter);

// How warm the water should be, two ways, and what readings taught of it.
struct WaterWays {
  bread::WaterPlan balance;
  double rule = 0;
  int factors = 3;
  double friction = 0;  // sum term of the rule
  double rise = 0;      // of the balance, by mixing, uncorrected
  bread::MixCorrection correction;
};

class BreadRecipe {
 public:
  // `starter` may be null where there is no levain. `doughGrams` as mixed; 0: the formula's own
  // pieces. InvalidArgument, naming the line and why, when it is no formula.
  static absl::StatusOr<BreadRecipe> of(const v1::BreadFormula& from, const v1::Starter* starter,
                                        double doughGrams = 0);

  const v1::BreadFormula& from() const { return *from_; }
  const bread::Formula& mix() const { return split_.mix; }
  // What goes into preferments, then soakers, in the formula's order.
  const std::vector<bread::PartLines>& parts() const { return split_.parts; }
  // With the yeast that preferments bring when they are used at their best.
  const bread::DoughKind& kind() const { return kind_; }
  double doughGrams() const { return doughGrams_; }
  double flourGrams() const { return doughGrams_ * 100 / mix().totalPercent(); }
  double doughCelsius() const;
  bool enriched() const { return from_->dough_class() == v1::DOUGH_CLASS_ENRICHED; }
  bread::Stage bulk() const { return enriched() ? bread::kEnrichedBulk : bread::kLeanBulk; }
  bread::Stage proof() const { return enriched() ? bread::kEnrichedProof : bread::kLeanProof; }

  bool hasLevain() const { return from_->has_levain(); }
  double levainGrams() const { return doughGrams_ * mix().levainShare(); }
  double levainBuildGrams() const;  // with what sticks to the jar
  double levainHydration() const;
  double starterHydration() const;
  // Flour parts on 1 of starter that the formula allows.
  std::vector<double> flourPerStarter() const;
  // Starter : flour : water that gives the levain's hydration; for people: "1:2:2".
  bread::LevainRatio ratio(double flourPerStarter) const;
  std::string ratioText(double flourPerStarter) const;
  bread::DoughKind levainKind() const;
  bread::Culture starterCulture() const;
  // How warm a levain is when just fed in such a room.
  static double fedCelsius(double roomCelsius);
  absl::StatusOr<bread::DoughState> fedLevain(double flourPerStarter, double mixedCelsius) const;

  // Preferments by their index in the formula.
  int prefermentCount() const { return from_->preferments_size(); }
  double prefermentGrams(int index) const;  // that go into the dough
  bread::DoughKind prefermentKind(int index) const;
  bread::Stage prefermentStage(int index) const;
  absl::StatusOr<bread::DoughState> mixedPreferment(int index, double celsius) const;
  // How far its yeast grows until it is at its best, at room temperature.
  double likelyGrowth(int index) const { return likelyGrowth_[static_cast<std::size_t>(index)]; }
  // The dough's yeast factor when the yeast of each preferment has grown by these factors.
  double yeastFactor(const std::vector<double>& grown) const;

  absl::StatusOr<bread::DoughState> mixedDough(const bread::Culture& levain, double celsius,
                                               double yeastFactor = 1) const;
  bread::Mixing mixing(double celsius) const;
  // Mixed with a levain fed by `flourPerStarter` (0: the formula's first) and preferments, each used at its
  // best at the dough's temperature; and shaped at the best moment of its bulk in such a place.
  absl::StatusOr<bread::DoughState> mixedAtBest(double celsius, double flourPerStarter = 0) const;
  absl::StatusOr<bread::DoughState> mixedAtBest() const { return mixedAtBest(doughCelsius()); }
  absl::StatusOr<bread::DoughState> shapedAtBest(double celsius, double flourPerStarter = 0) const;
  absl::StatusOr<bread::DoughState> shapedAtBest() const { return shapedAtBest(doughCelsius()); }

  // How unsure its forecasts are in a place with this learned warmth, by starter and place.
  bread::Uncertainty uncertainty(const v1::LearnedEffect& warmth = {}) const;
  // The same of a preferment, of which nothing is learned but by its place.
  static bread::Uncertainty yeastUncertainty(const v1::LearnedEffect& warmth);

  // Everything in the mix but the water that is poured, at these temperatures; and that water.
  std::vector<bread::MixPart> mixedIn(const bread::MixTemperatures& at, double& waterGrams) const;
  bread::MixCorrection mixCorrection() const;
  // The water for `at.dough`; `at.water` isn't used. The balance is true also without any water.
  WaterWays water(const bread::MixTemperatures& at) const;
  // How warm the dough gets with `at.water`; its wanted temperature where no water is poured.
  double doughWith(const bread::MixTemperatures& at) const;

 private:
  bread::DoughState atBest(const bread::DoughKind& kind, const bread::DoughState& state,
                           const bread::Stage& stage) const;
  BreadRecipe(const v1::BreadFormula& from, const v1::Starter* starter, bread::SplitFormula split)
      : from_(&from), starter_(starter), split_(std::move(split)) {}

  double frictionSum() const;
  double prefermentYeast(int index) const;  // compressed, on all flour, as weighed

  const v1::BreadFormula* from_;
  const v1::Starter* starter_;
  bread::SplitFormula split_;
  bread::DoughKind kind_;
  double doughGrams_ = 0;
  std::vector<double> likelyGrowth_;
};

// The masses and shares of a dough, as its forecast tells them; not its stages nor its water.
void describeDough(const BreadRecipe& recipe, v1::DoughForecast& out);

}  // namespace suppertide::compose
