#include "server/compose/menu/fetch_needs.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "server/kitchen/ingredients/ingredient_table.h"
#include "server/kitchen/safety.h"

namespace suppertide::compose {
namespace {

constexpr int kFullDay = 24 * 60;
constexpr std::size_t kStem = 4;  // "filling" is for the step that fills

bool hasWord(const std::string& text, const std::string& word) {
  return plainWords(text).find(" " + word + " ") != std::string::npos;
}

// What is taken out for a dough or batter, and minutes before. Common practice, no source.
struct Tempered {
  const char* word;
  int minutes;
};
constexpr const char* kButter = "butter";
constexpr Tempered kTempered[] = {{kButter, 60}, {"egg", 30}, {"cream cheese", 60}, {"curd cheese", 30}};

const Tempered* temperedBy(const std::string& name) {
  for (const Tempered& one : kTempered)
    if (hasWord(name, one.word)) return &one;
  return nullptr;
}

bool isBaking(const v1::Recipe& recipe) {
  if (recipe.has_formula()) return true;
  return std::any_of(recipe.steps().begin(), recipe.steps().end(), [](const v1::Step& step) {
    const v1::FoodClass food = step.oven().food_class();
    return food == v1::FOOD_CLASS_CUSTARD || food == v1::FOOD_CLASS_SPONGE || food == v1::FOOD_CLASS_PASTRY;
  });
}

bool works(const v1::Step& step) {
  return step.kind() == v1::STEP_KIND_HANDS_ON || step.kind() == v1::STEP_KIND_BURNER ||
         step.kind() == v1::STEP_KIND_OVEN;
}

bool isOfDough(const v1::Step& step) {
  return step.ferment().stage() == v1::FERMENT_STAGE_BULK ||
         step.ferment().stage() == v1::FERMENT_STAGE_PROOF;
}

// The hands-on step that mixes a dough: the last one listed before its first ferment; -1 without.
int mixOf(const v1::Recipe& recipe) {
  int mix = -1;
  for (int k = 0; k < recipe.steps_size(); ++k) {
    if (isOfDough(recipe.steps(k))) return mix;
    if (recipe.steps(k).kind() == v1::STEP_KIND_HANDS_ON) mix = k;
  }
  return -1;
}

// "butter for the filling": "fill".
std::string purposeOf(const std::string& name) {
  constexpr std::string_view kFor = " for the ";
  const std::size_t at = name.find(kFor);
  return at == std::string::npos ? "" : kitchen::plainName(name.substr(at + kFor.size())).substr(0, kStem);
}

const v1::Step* userOf(const DishIngredient& one, const v1::Recipe& recipe) {
  const int mix = mixOf(recipe);
  if (one.inFormula && mix >= 0) return &recipe.steps(mix);
  const std::string purpose = purposeOf(one.name);
  const v1::Step* user = nullptr;
  int best = -1;
  for (int k = 0; k < recipe.steps_size(); ++k) {
    const v1::Step& step = recipe.steps(k);
    if (!works(step) || step.title().rfind("Take", 0) == 0) continue;
    const std::string text = plainWords(step.title() + " " + step.instructions());
    const bool serves = !purpose.empty() && text.find(" " + purpose) != std::string::npos;
    // What a bread's formula does not list goes in or on after the dough is mixed.
    const int score = (serves ? 4 : 0) + (speaksOf(step, one.name) ? 2 : 0) + (mix >= 0 && k > mix ? 1 : 0);
    if (score > best) user = &step;
    best = std::max(best, score);
  }
  return user;
}

const v1::Step* thawOf(const v1::Recipe& recipe) {
  for (const v1::Step& step : recipe.steps())
    if (step.kind() == v1::STEP_KIND_THAW) return &step;
  return nullptr;
}

const v1::Step* takingOut(const v1::Recipe& recipe, const std::string& word) {
  for (const v1::Step& step : recipe.steps()) {
    const bool takes = step.kind() == v1::STEP_KIND_FETCH || step.title().rfind("Take", 0) == 0;
    if (takes && hasWord(step.title() + " " + step.instructions(), word)) return &step;
  }
  return nullptr;
}

// What the recipe has of it itself: taking it out of the freezer, or at least its thawing.
const v1::Step* takingFromFreezer(const v1::Recipe& recipe) {
  const v1::Step* takes = takingOut(recipe, "freezer");
  return takes != nullptr ? takes : thawOf(recipe);
}

bool isRawMeat(v1::SafetyClass food) {
  switch (food) {
    case v1::SAFETY_CLASS_WHOLE_MEAT:
    case v1::SAFETY_CLASS_GROUND_MEAT:
    case v1::SAFETY_CLASS_POULTRY:
    case v1::SAFETY_CLASS_GROUND_POULTRY:
    case v1::SAFETY_CLASS_STUFFING:
    case v1::SAFETY_CLASS_RAW_HAM:
    case v1::SAFETY_CLASS_FISH:
      return true;
    default:
      return false;
  }
}

v1::SafetyClass classOf(const v1::Recipe& recipe, const v1::Step& step) {
  return step.safety_class() != v1::SAFETY_CLASS_UNSPECIFIED ? step.safety_class() : recipe.safety_class();
}

bool isPlant(const std::string& name) {
  const kitchen::Ingredient* known = kitchen::findIngredient(name).ingredient;
  return known != nullptr && known->section != kitchen::ShopSection::kMeatFish &&
         known->section != kitchen::ShopSection::kOther;
}

bool setTempering(const DishIngredient& one, const v1::Recipe& recipe, FetchNeed& need) {
  const Tempered* tempered = temperedBy(one.name);
  if (tempered == nullptr || !isBaking(recipe)) return false;
  // A dough's water makes up for cold eggs; fat must be soft.
  if (one.inFormula && std::string_view(tempered->word) != kButter) return false;
  need.leadMinutes = tempered->minutes;
  need.to = v1::PLACE_KIND_COUNTER;
  need.source = "common practice, no source";
  need.own = takingOut(recipe, tempered->word);
  return true;
}

void setThawing(const DishIngredient& one, const v1::Recipe& recipe, FetchNeed& need) {
  const bool weighs = one.amount.kind == kitchen::AmountKind::kGrams;
  const double hours =
      weighs ? kitchen::thawHours(one.amount.value / 1000, kitchen::ThawWay::kFridge).most : 0;
  need.leadMinutes = std::max(kFullDay, static_cast<int>(std::ceil(hours * 60)));
  need.to = v1::PLACE_KIND_FRIDGE;
  need.source = std::string(kitchen::thawSource().title);
  need.own = takingFromFreezer(recipe);
}

}  // namespace

std::vector<FetchNeed> fetchNeeds(const v1::Recipe& recipe, const std::vector<DishIngredient>& lines) {
  std::vector<FetchNeed> needs;
  for (const DishIngredient& one : lines) {
    FetchNeed need;
    need.name = one.name;
    need.amount = one.amount;
    need.from = one.keptIn;
    if (one.keptIn == v1::PLACE_KIND_FREEZER)
      setThawing(one, recipe, need);
    else if (one.keptIn != v1::PLACE_KIND_FRIDGE || !setTempering(one, recipe, need))
      continue;
    need.user = userOf(one, recipe);
    if (need.user == nullptr) continue;
    need.thaws =
        need.from == v1::PLACE_KIND_FREEZER && isRawMeat(classOf(recipe, *need.user)) && !isPlant(one.name);
    needs.push_back(std::move(need));
  }
  return needs;
}

}  // namespace suppertide::compose
