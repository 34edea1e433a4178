#include "server/compose/menu/menu.h"

#include <algorithm>

#include "server/compose/menu/amounts.h"
#include "server/compose/menu/contents.h"
#include "server/compose/menu/uses.h"
#include "server/kitchen/guests/menu_check.h"

namespace suppertide::compose {
namespace {

constexpr std::size_t kMostReasons = 20;

std::string shownOf(const kitchen::IngredientLine& line, kitchen::Measures measures) {
  using kitchen::AmountKind;
  if (line.grams) return shownAmount({AmountKind::kGrams, *line.grams}, measures);
  if (line.millilitres) return shownAmount({AmountKind::kMillilitres, *line.millilitres}, measures);
  return line.count ? shownAmount({AmountKind::kPieces, *line.count}, measures) : "";
}

// The documents' words in the order of the engine's.
v1::LineDoubt doubtOf(kitchen::Doubt doubt) {
  return static_cast<v1::LineDoubt>(static_cast<int>(doubt) + 1);
}
static_assert(static_cast<int>(kitchen::Doubt::kNoQuantity) + 1 == v1::LINE_DOUBT_NO_QUANTITY);
static_assert(static_cast<int>(kitchen::Doubt::kEmpty) + 1 == v1::LINE_DOUBT_EMPTY);

v1::DishFit fitOf(kitchen::Fit fit) {
  return static_cast<v1::DishFit>(static_cast<int>(fit) + 1);
}
static_assert(static_cast<int>(kitchen::Fit::kSuits) + 1 == v1::DISH_FIT_SUITS);
static_assert(static_cast<int>(kitchen::Fit::kHolds) + 1 == v1::DISH_FIT_HOLDS);

v1::NeedSeverity severityOf(kitchen::Severity severity) {
  return static_cast<v1::NeedSeverity>(static_cast<int>(severity) + 1);
}

v1::MenuWarningKind kindOf(kitchen::MenuWarningKind kind) {
  return static_cast<v1::MenuWarningKind>(static_cast<int>(kind) + 1);
}
static_assert(static_cast<int>(kitchen::MenuWarningKind::kNoTraces) + 1 == v1::MENU_WARNING_KIND_NO_TRACES);

v1::GuestCourse cellOf(const kitchen::GuestCourse& from) {
  v1::GuestCourse cell;
  cell.set_guest_id(from.guestId);
  cell.set_course_id(from.courseId);
  cell.set_suiting_count(from.suitingCount);
  for (const kitchen::DishFit& dish : from.dishes) {
    v1::DishForGuest& told = *cell.add_dishes();
    told.set_dish_id(dish.dishId);
    told.set_fit(fitOf(dish.fit));
    for (std::size_t i = 0; i < std::min(dish.reasons.size(), kMostReasons); ++i) {
      v1::FitReason& reason = *told.add_reasons();
      reason.set_need(dish.reasons[i].need);
      reason.set_severity(severityOf(dish.reasons[i].severity));
      reason.set_fit(fitOf(dish.reasons[i].fit));
      reason.set_ingredient(dish.reasons[i].part);
      reason.set_substance(dish.reasons[i].substance);
    }
  }
  return cell;
}

std::vector<kitchen::MenuDish> dishesOf(const Menu& menu) {
  std::vector<kitchen::MenuDish> dishes;
  for (const v1::Dish& dish : menu.event->dishes()) {
    const auto recipe = menu.recipes.find(dish.recipe_id());
    if (recipe != menu.recipes.end()) dishes.push_back(contentsOf(dish, *recipe->second));
  }
  return dishes;
}

std::vector<kitchen::MenuGuest> guestsOf(const v1::Event& event) {
  std::vector<kitchen::MenuGuest> guests;
  for (const v1::Guest& guest : event.guests()) {
    guests.push_back({guest.id(), {}});
    for (const v1::Need& need : guest.needs()) guests.back().needs.push_back(needOf(need));
  }
  return guests;
}

// A dish's recipe leaves out what the table knows of an ingredient.
void warnOfContents(const Menu& menu, std::vector<v1::MenuWarning>& warnings) {
  for (const DishIngredient& one : ingredientsOf(menu)) {
    if (!one.knownContents) continue;
    for (const std::string& unsaid : kitchen::unsaidAllergens(one.name, one.contains)) {
      v1::MenuWarning& warning = warnings.emplace_back();
      warning.set_kind(v1::MENU_WARNING_KIND_CONTENTS_DIFFER);
      warning.set_dish_id(one.dish->id());
      warning.set_ingredient(one.name);
      warning.set_substance(unsaid);
    }
  }
}

}  // namespace

Menu menuOf(const v1::Bundle& bundle, const v1::Event& event) {
  Menu menu{&bundle.household(), &event, {}, nullptr};
  for (const v1::Recipe& recipe : bundle.recipes()) menu.recipes[recipe.id()] = &recipe;
  for (const v1::Plan& plan : bundle.plans())
    if (plan.id() == event.id()) menu.plan = &plan;
  return menu;
}

kitchen::Measures measuresOf(v1::KitchenMeasures asked, const v1::Household& household) {
  switch (asked) {
    case v1::KITCHEN_MEASURES_METRIC:
      return kitchen::Measures::kMetric;
    case v1::KITCHEN_MEASURES_US:
      return kitchen::Measures::kUs;
    case v1::KITCHEN_MEASURES_IMPERIAL:
      return kitchen::Measures::kImperial;
    case v1::KITCHEN_MEASURES_AUSTRALIAN:
      return kitchen::Measures::kAustralian;
    default:
      break;
  }
  return household.measure_system() == v1::MEASURE_SYSTEM_US ? kitchen::Measures::kUs
                                                             : kitchen::Measures::kMetric;
}

v1::ParsedIngredient parsedIngredient(const std::string& text, kitchen::Measures measures,
                                      kitchen::Measures shownIn) {
  const kitchen::IngredientLine line = kitchen::readLine(text, measures);
  v1::ParsedIngredient parsed;
  parsed.set_line(text);
  if (line.quantity) parsed.set_quantity(*line.quantity);
  if (line.mostQuantity) parsed.set_most_quantity(*line.mostQuantity);
  parsed.set_unit(line.unit);
  parsed.set_name(line.name);
  parsed.set_form(line.form);
  parsed.set_note(line.note);
  if (line.grams) parsed.set_mass_g(*line.grams);
  if (line.millilitres) parsed.set_volume_ml(*line.millilitres);
  if (line.count) parsed.set_count(*line.count);
  parsed.set_mass_source(line.massSource);
  for (const kitchen::Doubt doubt : line.doubts) parsed.add_doubts(doubtOf(doubt));
  parsed.set_shown(shownOf(line, shownIn));
  if (line.ingredient == nullptr) return parsed;
  parsed.set_ingredient(line.ingredient->name);
  for (const std::string& held : line.ingredient->contents.holds) parsed.add_contains(held);
  parsed.set_known_contents(line.ingredient->contents.complete && line.ingredient->contents.mayHold.empty());
  return parsed;
}

MenuTable checkMenu(const Menu& menu) {
  std::vector<std::string> courses;
  for (const v1::Course& course : menu.event->courses()) courses.push_back(course.id());
  const kitchen::MenuCheck check = kitchen::checkMenu(guestsOf(*menu.event), courses, dishesOf(menu));
  MenuTable table;
  for (const kitchen::GuestCourse& cell : check.cells) table.cells.push_back(cellOf(cell));
  for (const kitchen::MenuWarning& from : check.warnings) {
    v1::MenuWarning& warning = table.warnings.emplace_back();
    warning.set_kind(kindOf(from.kind));
    warning.set_guest_id(from.guestId);
    warning.set_course_id(from.courseId);
    warning.set_need(from.need);
  }
  warnOfContents(menu, table.warnings);
  return table;
}

}  // namespace suppertide::compose
