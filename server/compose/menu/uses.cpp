#include "server/compose/menu/uses.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <iterator>

#include "server/compose/menu/servings.h"

namespace suppertide::compose {
namespace {

kitchen::Amount scaled(const v1::Ingredient& from, double scale) {
  using kitchen::AmountKind;
  switch (from.amount_case()) {
    case v1::Ingredient::kMassG:
      return {AmountKind::kGrams, from.mass_g() * scale};
    case v1::Ingredient::kVolumeMl:
      return {AmountKind::kMillilitres, from.volume_ml() * scale};
    case v1::Ingredient::kCount:
      return {AmountKind::kPieces, from.count() * scale};
    case v1::Ingredient::AMOUNT_NOT_SET:
      break;
  }
  return {};
}

template <typename Part>
DishIngredient partOf(const v1::Dish& dish, const Part& from, kitchen::Amount amount) {
  return {&dish,
          from.name(),
          amount,
          from.kept_in(),
          {from.contains().begin(), from.contains().end()},
          from.known_contents()};
}

void addFormula(const v1::Dish& dish, const v1::BreadFormula& formula, double scale,
                std::vector<DishIngredient>& to) {
  double all = 0;
  for (const v1::FormulaLine& line : formula.lines()) all += line.percent();
  if (all <= 0) return;
  const double pieces = std::ceil(formula.piece_count() * scale - 1e-9);
  const double dough = pieces * formula.piece_mass_g() / (1 - formula.handling_loss_percent() / 100);
  for (const v1::FormulaLine& line : formula.lines()) {
    to.push_back(partOf(dish, line, {kitchen::AmountKind::kGrams, dough * line.percent() / all}));
    to.back().inFormula = true;
  }
}

// The nouns of a name: "dry cider, cold" is cider, "juniper berries" are both.
std::vector<std::string> wordsOf(const std::string& name) {
  constexpr std::size_t kShortest = 3;
  std::vector<std::string> words;
  const std::string plain =
      kitchen::plainName(name.substr(0, std::min(name.find(','), name.find(" for the "))));
  for (std::size_t from = 0; from < plain.size();) {
    const std::size_t to = std::min(plain.find(' ', from), plain.size());
    if (to - from >= kShortest) words.push_back(plain.substr(from, to - from));
    from = to + 1;
  }
  if (words.size() > 2) words.erase(words.begin(), words.end() - 2);
  return words;
}

template <typename Step>
bool hasAWord(const Step& step, const std::vector<std::string>& words) {
  const std::string text = plainWords(step.title() + " " + step.instructions());
  return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
    const std::size_t at = text.find(" " + word);
    return at != std::string::npos &&
           std::isalpha(static_cast<unsigned char>(text[at + word.size() + 1])) == 0;
  });
}

bool speaksOf(const v1::PlannedStep& step, const DishIngredient& one, const std::vector<std::string>& words) {
  for (const v1::Weighing& weighing : step.weighings())
    if (weighing.name() == one.name) return true;
  return hasAWord(step, words);
}

// When work on a dish begins, taking it out and thawing aside.
google::protobuf::Timestamp afterThawing(const v1::Plan& plan, const std::string& dishId,
                                         const google::protobuf::Timestamp& begin) {
  std::int64_t thawed = 0;
  for (const v1::PlannedStep& step : plan.steps())
    if (step.dish_id() == dishId && step.kind() == v1::STEP_KIND_THAW)
      thawed = std::max(thawed, step.end_time().seconds());
  for (const v1::PlannedStep& step : plan.steps())
    if (step.dish_id() == dishId && step.start_time().seconds() >= thawed) return step.start_time();
  return begin;
}

}  // namespace

std::vector<DishIngredient> ingredientsOf(const Menu& menu) {
  std::vector<DishIngredient> all;
  for (const v1::Dish& dish : menu.event->dishes()) {
    const auto found = menu.recipes.find(dish.recipe_id());
    if (found == menu.recipes.end()) continue;
    auto own = ingredientsOf(dish, *found->second, scaleOf(*menu.event, dish, *found->second));
    std::move(own.begin(), own.end(), std::back_inserter(all));
  }
  return all;
}

std::vector<DishIngredient> ingredientsOf(const v1::Dish& dish, const v1::Recipe& recipe, double scale) {
  std::vector<DishIngredient> all;
  for (const v1::Ingredient& one : recipe.ingredients()) all.push_back(partOf(dish, one, scaled(one, scale)));
  addFormula(dish, recipe.formula(), scale, all);
  return all;
}

std::string plainWords(const std::string& text) {
  std::string words = text;
  std::replace_if(
      words.begin(), words.end(), [](unsigned char c) { return c < 128 && std::isalnum(c) == 0; }, ' ');
  return " " + kitchen::plainName(words) + " ";
}

bool speaksOf(const v1::Step& step, const std::string& ingredient) {
  return hasAWord(step, wordsOf(ingredient));
}

absl::TimeZone zoneOf(const Menu& menu) {
  const std::string& name =
      menu.event->time_zone().empty() ? menu.household->time_zone() : menu.event->time_zone();
  absl::TimeZone zone = absl::UTCTimeZone();
  absl::LoadTimeZone(name, &zone);
  return zone;
}

std::optional<google::protobuf::Timestamp> beginOf(const Menu& menu, const std::string& dishId) {
  std::optional<google::protobuf::Timestamp> begin;
  if (menu.plan == nullptr) return begin;
  for (const v1::PlannedStep& step : menu.plan->steps())
    if (step.dish_id() == dishId && (!begin || step.start_time().seconds() < begin->seconds()))
      begin = step.start_time();
  return begin;
}

std::optional<google::protobuf::Timestamp> neededOf(const Menu& menu, const DishIngredient& one) {
  const auto begin = beginOf(menu, one.dish->id());
  if (!begin || one.keptIn == v1::PLACE_KIND_FREEZER) return begin;
  const std::vector<std::string> words = wordsOf(one.name);
  std::optional<google::protobuf::Timestamp> needed;
  for (const v1::PlannedStep& step : menu.plan->steps())
    if (step.dish_id() == one.dish->id() && !step.left_out() && speaksOf(step, one, words) &&
        (!needed || step.start_time().seconds() < needed->seconds()))
      needed = step.start_time();
  return needed ? needed : afterThawing(*menu.plan, one.dish->id(), *begin);
}

}  // namespace suppertide::compose
