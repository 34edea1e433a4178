#include "client/words/plan_names.h"

#include "client/words/text.h"

namespace suppertide {
namespace {

QString nameOr(const std::string& name, const std::string& otherwise) {
  return text(name.empty() ? otherwise : name);
}

}  // namespace

PlanNames::PlanNames(const link::Replica& replica, const v1::Event& event) {
  for (const v1::Member& member : replica.household.members())
    cooks_[text(member.id())] = nameOr(member.display_name(), member.id());
  for (const v1::Course& course : event.courses())
    courses_[text(course.id())] = nameOr(course.display_name(), course.id());
  for (const v1::Dish& dish : event.dishes()) {
    const auto recipe = replica.recipes.find(dish.recipe_id());
    const std::string fallback = recipe == replica.recipes.end() ? dish.id() : recipe->second.display_name();
    dishes_[text(dish.id())] = nameOr(dish.display_name(), fallback);
    courseIds_[text(dish.id())] = text(dish.course_id());
    if (recipe == replica.recipes.end()) continue;
    for (const v1::Step& step : recipe->second.steps())
      steps_[text(dish.id() + "/" + step.id())] = nameOr(step.title(), step.id());
  }
  const auto kitchen = replica.kitchens.find(event.kitchen_id());
  if (kitchen == replica.kitchens.end()) return;
  for (const v1::Oven& oven : kitchen->second.ovens())
    ovens_[text(oven.id())] = nameOr(oven.display_name(), oven.id());
  for (const v1::Place& place : kitchen->second.places())
    places_[text(place.id())] = nameOr(place.display_name(), place.id());
  for (const v1::Equipment& thing : kitchen->second.equipment())
    equipment_[text(thing.id())] = nameOr(thing.display_name(), thing.id());
}

QString PlanNames::courseOfDish(const std::string& dishId) const {
  return find(courses_, courseIds_.value(text(dishId)).toStdString());
}

QString PlanNames::thing(const std::string& id) const {
  if (id == "burners") return {};
  for (const Map* map : {&cooks_, &ovens_, &equipment_, &places_}) {
    const auto found = map->find(text(id));
    if (found != map->end()) return *found;
  }
  return text(id);
}

QString PlanNames::find(const Map& map, const std::string& id) {
  return map.value(text(id), text(id));
}

}  // namespace suppertide
