// What must leave freezer or fridge in time, as documents.
#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>

#include "server/compose/documents.h"
#include "server/compose/menu/amounts.h"
#include "server/compose/menu/uses.h"
#include "server/kitchen/safety.h"

namespace suppertide::compose {
namespace {

constexpr int kFullDay = 24 * 60;
constexpr int kLookPitch = 5;          // minutes between the moments tried
constexpr int kEarlierOnCounter = 45;  // at most; with the lead below the two hours that food may stand out
constexpr int kEarlierInFridge = 24 * 60;

bool hasWord(const std::string& text, const std::string& word) {
  return (" " + kitchen::plainName(text) + " ").find(" " + word + " ") != std::string::npos;
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

const v1::Step* stepOfKind(const v1::Recipe& recipe, v1::StepKind kind) {
  for (const v1::Step& step : recipe.steps())
    if (step.kind() == kind) return &step;
  return nullptr;
}

const v1::Step* stepThatTakesOut(const v1::Recipe& recipe, const std::string& word) {
  for (const v1::Step& step : recipe.steps())
    if (step.title().rfind("Take", 0) == 0 && hasWord(step.title(), word)) return &step;
  return nullptr;
}

// Fills where from and to, and how long before; false when it may stay where it is until used.
bool setLead(const DishIngredient& one, const v1::Recipe& recipe, v1::Fetch& fetch) {
  int minutes = 0;
  if (one.keptIn == v1::PLACE_KIND_FRIDGE) {
    const Tempered* tempered = temperedBy(one.name);
    if (tempered == nullptr || !isBaking(recipe)) return false;
    // A dough's water makes up for cold eggs; fat must be soft.
    if (one.inFormula && std::string_view(tempered->word) != kButter) return false;
    minutes = tempered->minutes;
    fetch.set_to(v1::PLACE_KIND_COUNTER);
    fetch.set_source("common practice, no source");
    fetch.set_own_step(stepThatTakesOut(recipe, tempered->word) != nullptr);
  } else if (one.keptIn == v1::PLACE_KIND_FREEZER) {
    const bool weighs = one.amount.kind == kitchen::AmountKind::kGrams;
    const double hours =
        weighs ? kitchen::thawHours(one.amount.value / 1000, kitchen::ThawWay::kFridge).most : 0;
    minutes = std::max(kFullDay, static_cast<int>(std::ceil(hours * 60)));
    fetch.set_to(v1::PLACE_KIND_FRIDGE);
    fetch.set_source(std::string(kitchen::thawSource().title));
    fetch.set_own_step(stepOfKind(recipe, v1::STEP_KIND_THAW) != nullptr);
  } else {
    return false;
  }
  fetch.mutable_lead_duration()->set_seconds(minutes * 60);
  return true;
}

// The planned steps of one dish, by start.
std::vector<const v1::PlannedStep*> stepsOf(const v1::Plan& plan, const std::string& dishId) {
  std::vector<const v1::PlannedStep*> steps;
  for (const v1::PlannedStep& step : plan.steps())
    if (step.dish_id() == dishId && !step.left_out()) steps.push_back(&step);
  return steps;
}

// The step that weighs it, else the first that speaks of it, else the first that works at all.
const v1::PlannedStep* stepFor(const DishIngredient& one, const std::vector<const v1::PlannedStep*>& steps) {
  for (const v1::PlannedStep* step : steps)
    for (const v1::Weighing& weighing : step->weighings())
      if (weighing.name() == one.name) return step;
  const Tempered* tempered = temperedBy(one.name);
  const v1::PlannedStep* first = nullptr;
  for (const v1::PlannedStep* step : steps) {
    const bool works = step->kind() == v1::STEP_KIND_HANDS_ON || step->kind() == v1::STEP_KIND_BURNER ||
                       step->kind() == v1::STEP_KIND_OVEN;
    if (!works) continue;
    if (first == nullptr) first = step;
    if (tempered != nullptr &&
        (hasWord(step->title(), tempered->word) || hasWord(step->instructions(), tempered->word)))
      return step;
  }
  return first;
}

class Taker {
 public:
  explicit Taker(const std::vector<Hands>& hands) : hands_(hands) {}

  // The latest moment in time, then earlier ones: whoever is to use it, else anyone who is there.
  void place(const v1::PlannedStep& step, v1::Fetch& fetch) const {
    const std::int64_t latest = step.start_time().seconds() - fetch.lead_duration().seconds();
    const int earlier = fetch.to() == v1::PLACE_KIND_COUNTER ? kEarlierOnCounter : kEarlierInFridge;
    fetch.set_for_step_id(step.id());
    fetch.mutable_take_out_time()->set_seconds(latest);
    for (int before = 0; before <= earlier; before += kLookPitch) {
      const Hands* taker = whoIsThere(latest - before * 60, step.cook_member_id());
      if (taker == nullptr) continue;
      fetch.mutable_take_out_time()->set_seconds(latest - before * 60);
      fetch.set_cook_member_id(taker->memberId);
      return;
    }
  }

 private:
  const Hands* whoIsThere(std::int64_t time, const std::string& rather) const {
    const Hands* anyone = nullptr;
    for (const Hands& one : hands_) {
      const bool there = std::any_of(one.there.begin(), one.there.end(),
                                     [&](const auto& span) { return span.contains(time); });
      if (there && one.memberId == rather) return &one;
      if (there && anyone == nullptr) anyone = &one;
    }
    return anyone;
  }

  const std::vector<Hands>& hands_;
};

void placeOwnStep(const std::vector<const v1::PlannedStep*>& steps, const v1::Recipe& recipe,
                  const std::string& name, v1::Fetch& fetch) {
  const Tempered* tempered = temperedBy(name);
  const v1::Step* own = fetch.from() == v1::PLACE_KIND_FREEZER ? stepOfKind(recipe, v1::STEP_KIND_THAW)
                        : tempered != nullptr                  ? stepThatTakesOut(recipe, tempered->word)
                                                               : nullptr;
  for (const v1::PlannedStep* step : steps)
    if (own != nullptr && step->step_id() == own->id()) {
      *fetch.mutable_take_out_time() = step->start_time();
      fetch.set_for_step_id(step->id());
      fetch.set_cook_member_id(step->cook_member_id());
    }
}

}  // namespace

std::vector<v1::Fetch> fetchesOf(const Menu& menu, const std::vector<Hands>& hands) {
  std::vector<v1::Fetch> fetches;
  for (const DishIngredient& one : ingredientsOf(menu)) {
    const v1::Recipe& recipe = *menu.recipes.at(one.dish->recipe_id());
    v1::Fetch fetch;
    if (!setLead(one, recipe, fetch)) continue;
    fetch.set_dish_id(one.dish->id());
    fetch.set_name(one.name);
    *fetch.mutable_amount() = amountOf(one.amount);
    fetch.set_from(one.keptIn);
    if (menu.plan != nullptr) {
      const auto steps = stepsOf(*menu.plan, one.dish->id());
      if (fetch.own_step())
        placeOwnStep(steps, recipe, one.name, fetch);
      else if (const v1::PlannedStep* step = stepFor(one, steps); step != nullptr)
        Taker(hands).place(*step, fetch);
    }
    fetches.push_back(std::move(fetch));
  }
  std::stable_sort(fetches.begin(), fetches.end(), [](const v1::Fetch& a, const v1::Fetch& b) {
    if (a.has_take_out_time() != b.has_take_out_time()) return a.has_take_out_time();
    return a.take_out_time().seconds() < b.take_out_time().seconds();
  });
  return fetches;
}

void addFetches(const Composition& composition, v1::Plan& plan) {
  const Documents& documents = composition.documents;
  Menu menu{&documents.household, &documents.event, {}, &plan};
  for (const v1::Recipe& recipe : documents.recipes) menu.recipes[recipe.id()] = &recipe;
  for (v1::Fetch& fetch : fetchesOf(menu, handsOf(menu)))
    if (!fetch.own_step() && fetch.has_take_out_time()) *plan.add_fetches() = std::move(fetch);
}

}  // namespace suppertide::compose
