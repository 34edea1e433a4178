#include "client/terminal/names.h"

#include "absl/strings/str_cat.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

std::string nameOr(const std::string& name, const std::string& otherwise) {
  return plainLine(name.empty() ? otherwise : name);
}

}  // namespace

Names::Names(const v1::Bundle& bundle, const v1::Event& event) {
  for (const v1::Member& member : bundle.household().members()) {
    cooks_[member.id()] = nameOr(member.display_name(), member.id());
  }
  for (const v1::Kitchen& kitchen : bundle.kitchens()) {
    if (kitchen.id() == event.kitchen_id()) addKitchen(kitchen);
  }
  for (const v1::Course& course : event.courses())
    courses_[course.id()] = nameOr(course.display_name(), course.id());
  std::map<std::string, const v1::Recipe*> recipes;
  for (const v1::Recipe& recipe : bundle.recipes()) recipes[recipe.id()] = &recipe;
  for (const v1::Dish& dish : event.dishes()) {
    const auto recipe = recipes.find(dish.recipe_id());
    const bool known = recipe != recipes.end();
    dishes_[dish.id()] = nameOr(dish.display_name(), known ? recipe->second->display_name() : dish.id());
    courseIds_[dish.id()] = dish.course_id();
    if (!known) continue;
    for (const v1::Step& step : recipe->second->steps()) {
      steps_[absl::StrCat(dish.id(), "/", step.id())] = nameOr(step.title(), step.id());
    }
  }
}

void Names::addKitchen(const v1::Kitchen& kitchen) {
  for (const v1::Oven& oven : kitchen.ovens()) ovens_[oven.id()] = nameOr(oven.display_name(), oven.id());
  for (const v1::Place& place : kitchen.places())
    places_[place.id()] = nameOr(place.display_name(), place.id());
  for (const v1::Equipment& thing : kitchen.equipment()) {
    equipment_[thing.id()] = nameOr(thing.display_name(), thing.id());
  }
}

std::string Names::thing(const std::string& id) const {
  if (id == "burners") return "the burners";
  for (const Map* map : {&cooks_, &ovens_, &equipment_, &places_}) {
    const auto found = map->find(id);
    if (found != map->end()) return found->second;
  }
  return plainLine(id);
}

std::string Names::step(const std::string& dishId, const std::string& stepId) const {
  const auto found = steps_.find(absl::StrCat(dishId, "/", stepId));
  if (found != steps_.end()) return found->second;
  // A step that the plan added: what is taken out for one of the recipe's.
  const std::size_t mark = stepId.find(".fetch");
  return mark == std::string::npos ? plainLine(stepId)
                                   : absl::StrCat("take out for ", step(dishId, stepId.substr(0, mark)));
}

std::string Names::find(const Map& map, const std::string& id) {
  const auto found = map.find(id);
  return found != map.end() ? found->second : plainLine(id);
}

}  // namespace suppertide::terminal
