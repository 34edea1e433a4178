#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/validate/documents.h"

namespace suppertide::compose {
namespace {

constexpr int kMostEventSteps = 400;

// Index of the document with this id; -1 when there is none.
template <typename List>
int indexOf(const List& list, const std::string& id) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const auto& d) { return d.id() == id; });
  return found == list.end() ? -1 : static_cast<int>(found - list.begin());
}

class EventReferences {
 public:
  EventReferences(const Checker& top, const v1::Bundle& bundle, int event)
      : top_(top), here_(top.at("events", event)), bundle_(bundle), event_(bundle.events(event)) {}

  void check() {
    checkCooks();
    checkDishes();
    const int kitchen = indexOf(bundle_.kitchens(), event_.kitchen_id());
    if (kitchen < 0) {
      here_.at("kitchenId").wrong(event_.kitchen_id(), "must be one of the kitchens given along");
      return;
    }
    const v1::Kitchen& where = bundle_.kitchens(kitchen);
    for (const int recipe : recipes_) checkRecipeInKitchen(top_, bundle_, recipe, where, skills_);
    for (int i = 0; i < event_.pins_size(); ++i) checkPin(here_.at("pins", i), event_.pins(i), where);
    for (int i = 0; i < event_.unavailable_size(); ++i) {
      const std::string& id = event_.unavailable(i).thing_id();
      if (indexOf(where.ovens(), id) < 0 && indexOf(where.equipment(), id) < 0 &&
          indexOf(where.places(), id) < 0)
        here_.at("unavailable", i)
            .at("thingId")
            .wrong(id, "must be an oven, equipment or a place of the event's kitchen");
    }
  }

 private:
  void checkCooks() {
    for (int i = 0; i < event_.cooks_size(); ++i) {
      const std::string& id = event_.cooks(i).member_id();
      const int member = indexOf(bundle_.household().members(), id);
      const Checker field = here_.at("cooks", i).at("memberId");
      if (member < 0) {
        field.wrong(id, "must be a member of the household");
        continue;
      }
      const v1::Member& known = bundle_.household().members(member);
      if (known.role() != v1::ROLE_COOK && known.role() != v1::ROLE_HOST)
        field.wrong(id, "must be a member who is a cook or a host");
      skills_.insert(known.skills().begin(), known.skills().end());
    }
  }

  void checkDishes() {
    int steps = 0;
    for (int i = 0; i < event_.dishes_size(); ++i) {
      const std::string& id = event_.dishes(i).recipe_id();
      const int recipe = indexOf(bundle_.recipes(), id);
      if (recipe < 0) {
        here_.at("dishes", i).at("recipeId").wrong(id, "must be one of the recipes given along");
        continue;
      }
      recipes_.insert(recipe);
      steps += bundle_.recipes(recipe).steps_size();
    }
    if (steps > kMostEventSteps)
      here_.at("dishes").wrong(absl::StrCat(steps), absl::StrCat("all dishes together must have at most ",
                                                                 kMostEventSteps, " steps"));
  }

  void checkPin(const Checker& field, const v1::StepPin& pin, const v1::Kitchen& kitchen) const {
    const int dish = indexOf(event_.dishes(), pin.dish_id());
    const int recipe = dish < 0 ? -1 : indexOf(bundle_.recipes(), event_.dishes(dish).recipe_id());
    if (recipe >= 0 && indexOf(bundle_.recipes(recipe).steps(), withoutMark(pin.step_id())) < 0)
      field.at("stepId").wrong(pin.step_id(), "must be a step of the dish's recipe");
    if (!pin.oven_id().empty() && indexOf(kitchen.ovens(), pin.oven_id()) < 0)
      field.at("ovenId").wrong(pin.oven_id(), "must be an oven of the event's kitchen");
    if (!pin.place_id().empty() && indexOf(kitchen.places(), pin.place_id()) < 0)
      field.at("placeId").wrong(pin.place_id(), "must be a place of the event's kitchen");
  }

  Checker top_;
  Checker here_;
  const v1::Bundle& bundle_;
  const v1::Event& event_;
  std::set<std::string> skills_;
  std::set<int> recipes_;
};

}  // namespace

void checkEventReferences(const Checker& here, const v1::Bundle& bundle) {
  for (int i = 0; i < bundle.events_size(); ++i) EventReferences(here, bundle, i).check();
}

}  // namespace suppertide::compose
