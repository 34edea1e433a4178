#include "server/compose/menu/servings.h"

#include <algorithm>
#include <cmath>

namespace suppertide::compose {

double eatenServings(const v1::Event& event, const v1::Dish& dish) {
  if (dish.serving_count() > 0) return dish.serving_count();
  double portions = 0;
  for (const v1::Guest& guest : event.guests()) portions += guest.portion() > 0 ? guest.portion() : 1;
  return portions;
}

double wantedServings(const v1::Event& event, const v1::Dish& dish) {
  return eatenServings(event, dish) + dish.leftover_serving_count();
}

double scaleOf(const v1::Event& event, const v1::Dish& dish, const v1::Recipe& recipe) {
  const double wanted = wantedServings(event, dish);
  return wanted > 0 && recipe.serving_count() > 0 ? wanted / recipe.serving_count() : 1;
}

int pansFor(const v1::OvenNeed& need, double scale) {
  constexpr double kIntoTheSame = 0.05;
  const double pans = std::max(1, need.pan().count()) * scale;
  const bool roast = need.food_class() == v1::FOOD_CLASS_ROAST;
  return std::max(1, static_cast<int>(roast ? std::round(pans) : std::ceil(pans - kIntoTheSame)));
}

std::shared_ptr<const v1::Recipe> withPansFor(const v1::Recipe& recipe, double scale) {
  std::shared_ptr<v1::Recipe> sized;
  for (int i = 0; i < recipe.steps_size(); ++i) {
    const v1::OvenNeed& need = recipe.steps(i).oven();
    if (!need.has_pan() || pansFor(need, scale) == std::max(1, need.pan().count())) continue;
    if (sized == nullptr) sized = std::make_shared<v1::Recipe>(recipe);
    sized->mutable_steps(i)->mutable_oven()->mutable_pan()->set_count(pansFor(need, scale));
  }
  return sized;
}

}  // namespace suppertide::compose
