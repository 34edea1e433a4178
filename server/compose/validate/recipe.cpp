#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/validate/documents.h"

namespace suppertide::compose {
namespace {

constexpr int kMostIngredients = 80;
constexpr int kMostSteps = 60;
constexpr int kMostUses = 20;

void checkAmount(const Checker& here, const v1::Ingredient& ingredient) {
  switch (ingredient.amount_case()) {
    case v1::Ingredient::kMassG:
      here.at("massG").aboveZero(ingredient.mass_g(), 100'000, "g");
      break;
    case v1::Ingredient::kVolumeMl:
      here.at("volumeMl").aboveZero(ingredient.volume_ml(), 100'000, "ml");
      break;
    case v1::Ingredient::kCount:
      here.at("count").aboveZero(ingredient.count(), 10'000);
      break;
    case v1::Ingredient::AMOUNT_NOT_SET:
      break;
  }
}

void checkIngredient(const Checker& here, const v1::Ingredient& ingredient) {
  here.at("name").text(ingredient.name(), 100);
  checkAmount(here, ingredient);
  here.at("note").optionalText(ingredient.note());
  here.at("keptIn").known(ingredient.kept_in(), "a kind of place");
  if (!here.at("contains").count(ingredient.contains_size(), 0, kMostUses * 5, "things it holds")) return;
  for (int i = 0; i < ingredient.contains_size(); ++i)
    here.at("contains", i).text(ingredient.contains(i), 60);
}

bool mayLast(v1::StepKind kind) {
  switch (kind) {
    case v1::STEP_KIND_WAIT:
    case v1::STEP_KIND_CHILL:
    case v1::STEP_KIND_REST:
    case v1::STEP_KIND_THAW:
    case v1::STEP_KIND_HOLD:
      return true;
    default:
      return false;
  }
}

void checkLongest(const Checker& here, const v1::Step& step) {
  const Checker longest = here.at("longestDuration");
  if (!mayLast(step.kind()) && step.kind() != v1::STEP_KIND_UNSPECIFIED)
    longest.wrong(minutesAsText(minutesIn(step.longest_duration())),
                  "only waiting, chilling, resting, thawing and holding may last longer");
  else if (longest.minutes(step.longest_duration(), 1, kHorizonMinutes) &&
           step.longest_duration().seconds() < step.duration().likely().seconds())
    longest.wrong(minutesAsText(minutesIn(step.longest_duration())),
                  absl::StrCat("must not be less than the likely ",
                               minutesAsText(minutesIn(step.duration().likely()))));
}

// Ferments and bakes take their length from elsewhere; thawing may take it from the mass.
void checkDuration(const Checker& here, const v1::Step& step) {
  if (step.has_longest_duration()) checkLongest(here, step);
  const bool unused = step.kind() == v1::STEP_KIND_FERMENT || step.kind() == v1::STEP_KIND_OVEN;
  const bool byMass =
      step.kind() == v1::STEP_KIND_THAW && step.mass_g() > 0 && step.thaw_way() != v1::THAW_WAY_MICROWAVE;
  const bool mayBeNothing = unused || byMass || (mayLast(step.kind()) && step.has_longest_duration());
  here.at("duration").spread(step.duration(), mayBeNothing ? 0 : 1, kHorizonMinutes);
}

template <typename Parts>
bool holds(const Parts& parts, const std::string& id) {
  return std::any_of(parts.begin(), parts.end(), [&](const auto& part) { return part.id() == id; });
}

// The preferment or soaker of the formula that a step names.
void checkPartOf(const Checker& here, const v1::Step& step, const v1::BreadFormula& formula) {
  const std::string& preferment = step.ferment().preferment_id();
  const Checker field = here.at("ferment").at("prefermentId");
  if (step.ferment().stage() == v1::FERMENT_STAGE_PREFERMENT) {
    if (!holds(formula.preferments(), preferment))
      field.wrong(preferment, "must be the id of one of the formula's preferments");
  } else if (!preferment.empty()) {
    field.wrong(preferment, "only a ferment of the stage preferment names one");
  }
  if (!step.soaker_id().empty() && !holds(formula.soakers(), step.soaker_id()))
    here.at("soakerId").wrong(step.soaker_id(), "must be the id of one of the formula's soakers");
}

void checkNeeds(const Checker& here, const v1::Step& step, const v1::Recipe& recipe) {
  const bool bake = step.kind() == v1::STEP_KIND_OVEN;
  const bool ferment = step.kind() == v1::STEP_KIND_FERMENT;
  if (bake && !step.has_oven())
    here.at("oven").wrong("", "a step in the oven must say its temperature and time");
  if (!bake && step.has_oven()) here.at("oven").wrong("", "only a step of the oven kind may ask for an oven");
  if (step.has_oven()) checkOvenNeed(here.at("oven"), step.oven());
  if (ferment && !step.has_ferment())
    here.at("ferment").wrong("",
                             "a step that ferments must say its stage: levain, preferment, bulk or proof");
  if (!ferment && step.has_ferment())
    here.at("ferment").wrong("", "only a step of the ferment kind may have a stage of the dough");
  if (step.has_ferment()) checkFermentNeed(here.at("ferment"), step.ferment());
  if (ferment && !recipe.has_formula())
    here.at("kind").wrong("ferment", "only a recipe with a formula can ferment");
  if (step.ferment().stage() == v1::FERMENT_STAGE_LEVAIN && recipe.has_formula() &&
      !recipe.formula().has_levain())
    here.at("ferment").at("stage").wrong("levain", "the formula has no levain");
  checkPartOf(here, step, recipe.formula());
}

// Each preferment ripens in one step, each soaker is made in one.
void checkPartsMade(const Checker& here, const v1::Recipe& recipe) {
  const auto once = [&](const Checker& part, const std::string& id, const char* what, auto idIn) {
    const auto count = std::count_if(recipe.steps().begin(), recipe.steps().end(),
                                     [&](const v1::Step& step) { return idIn(step) == id; });
    if (count != 1 && !id.empty())
      part.at("id").wrong(id, absl::StrCat("must be named by one step ", what, ", not by ", count));
  };
  const Checker formula = here.at("formula");
  for (int i = 0; i < recipe.formula().preferments_size(); ++i)
    once(formula.at("preferments", i), recipe.formula().preferments(i).id(), "in which it ripens",
         [](const v1::Step& step) { return step.ferment().preferment_id(); });
  for (int i = 0; i < recipe.formula().soakers_size(); ++i)
    once(formula.at("soakers", i), recipe.formula().soakers(i).id(), "that makes it",
         [](const v1::Step& step) { return step.soaker_id(); });
}

void checkUses(const Checker& here, const v1::Step& step) {
  if (here.at("equipment").count(step.equipment_size(), 0, kMostUses, "kinds of equipment")) {
    Once things;
    for (int i = 0; i < step.equipment_size(); ++i) {
      const Checker use = here.at("equipment", i);
      use.at("equipmentId").id(step.equipment(i).equipment_id());
      things.add(use.at("equipmentId"), step.equipment(i).equipment_id());
      use.at("count").range(step.equipment(i).count(), 0, 100);
    }
  }
  if (here.at("placeKinds").count(step.place_kinds_size(), 0, kMostUses, "kinds of place")) {
    Once kinds;
    for (int i = 0; i < step.place_kinds_size(); ++i) {
      const Checker kind = here.at("placeKinds", i);
      if (kind.chosen(static_cast<v1::PlaceKind>(step.place_kinds(i)), "a kind of place"))
        kinds.add(kind, v1::PlaceKind_Name(step.place_kinds(i)));
    }
  }
  if (here.at("cautions").count(step.cautions_size(), 0, kMostUses, "warnings"))
    for (int i = 0; i < step.cautions_size(); ++i)
      here.at("cautions", i).chosen(static_cast<v1::Caution>(step.cautions(i)), "a known warning");
}

void checkServingBounds(const Checker& here, const v1::Step& step) {
  const Checker latest = here.at("latestBeforeServing");
  const bool good =
      here.at("earliestBeforeServing").minutes(step.earliest_before_serving(), 0, kHorizonMinutes);
  if (!latest.minutes(step.latest_before_serving(), 0, kHorizonMinutes) || !good) return;
  if (step.has_earliest_before_serving() && step.has_latest_before_serving() &&
      step.latest_before_serving().seconds() > step.earliest_before_serving().seconds())
    latest.wrong(minutesAsText(minutesIn(step.latest_before_serving())),
                 "must not be longer before serving than the earliest start");
}

void checkStep(const Checker& here, const v1::Step& step, const v1::Recipe& recipe) {
  if (here.at("id").id(step.id())) checkNoMadeId(here.at("id"), step.id());
  here.at("title").text(step.title(), 100);
  here.at("kind").chosen(step.kind(),
                         "a kind of step: hands-on, wait, ferment, oven, burner, chill, thaw, "
                         "rest or hold");
  checkDuration(here, step);
  if (step.has_attention_percent()) here.at("attentionPercent").range(step.attention_percent(), 0, 100, "%");
  here.at("skill").optionalText(step.skill(), 60);
  if (step.has_burner_count()) here.at("burnerCount").range(step.burner_count(), 0, 4, "burners");
  here.at("volumeL").range(step.volume_l(), 0, 1000, "litres");
  here.at("instructions").optionalText(step.instructions(), 2000);
  here.at("massG").range(step.mass_g(), 0, 100'000, "g");
  here.at("safetyClass").known(step.safety_class(), "a class of food that safety limits are known for");
  const Checker thaw = here.at("thawWay");
  if (thaw.known(step.thaw_way(), "a way to thaw: in the fridge, in cold water or in a microwave") &&
      step.thaw_way() != v1::THAW_WAY_UNSPECIFIED && step.kind() != v1::STEP_KIND_THAW)
    thaw.wrong(v1::ThawWay_Name(step.thaw_way()), "only a step of the thaw kind may have a way to thaw");
  checkNeeds(here, step, recipe);
  checkUses(here, step);
  checkServingBounds(here, step);
  checkOptional(here, step, recipe);
}

void checkHolding(const Checker& here, const v1::Holding& holding) {
  const bool waits = holding.longest().seconds() > 0;
  if (waits)
    here.at("kind").chosen(holding.kind(), "a way to wait: hot, warm, at room temperature or cold");
  else
    here.at("kind").known(holding.kind(), "a way to wait: hot, warm, at room temperature or cold");
  bool good = here.at("longest").minutes(holding.longest(), 0, kHorizonMinutes);
  good = here.at("bestFrom").minutes(holding.best_from(), 0, kHorizonMinutes) && good;
  good = here.at("bestUntil").minutes(holding.best_until(), 0, kHorizonMinutes) && good;
  if (!good) return;
  const auto longest = minutesIn(holding.longest());
  const auto from = minutesIn(holding.best_from());
  const auto until = holding.has_best_until() ? minutesIn(holding.best_until()) : longest;
  if (until > longest)
    here.at("bestUntil")
        .wrong(minutesAsText(until),
               absl::StrCat("must not be more than the longest, ", minutesAsText(longest)));
  if (from > until)
    here.at("bestFrom")
        .wrong(minutesAsText(from),
               absl::StrCat("must not be more than where the best ends, ", minutesAsText(until)));
}

}  // namespace

void checkRecipe(const Checker& here, const v1::Recipe& recipe) {
  here.at("id").id(recipe.id());
  here.at("displayName").text(recipe.display_name(), 100);
  here.at("servingCount").range(recipe.serving_count(), 1, 200, "guests");
  if (here.at("ingredients").count(recipe.ingredients_size(), 0, kMostIngredients, "ingredients"))
    for (int i = 0; i < recipe.ingredients_size(); ++i)
      checkIngredient(here.at("ingredients", i), recipe.ingredients(i));
  if (recipe.has_formula()) checkFormula(here.at("formula"), recipe.formula());
  if (recipe.has_holding()) checkHolding(here.at("holding"), recipe.holding());
  here.at("note").optionalText(recipe.note());
  here.at("safetyClass").known(recipe.safety_class(), "a class of food that safety limits are known for");
  if (!here.at("steps").count(recipe.steps_size(), 1, kMostSteps, "steps")) return;
  Once ids;
  for (int i = 0; i < recipe.steps_size(); ++i) {
    checkStep(here.at("steps", i), recipe.steps(i), recipe);
    ids.add(here.at("steps", i).at("id"), recipe.steps(i).id());
  }
  checkStepOrder(here, recipe);
  checkPartsMade(here, recipe);
}

Violations validate(const v1::Recipe& recipe) {
  Violations violations;
  checkRecipe(Checker(violations), recipe);
  return violations;
}

}  // namespace suppertide::compose
