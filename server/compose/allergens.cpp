// Guests who may not have even traces: dishes free of it keep apart from those that hold it.
#include <algorithm>
#include <set>
#include <string>

#include "server/compose/menu/contents.h"
#include "server/compose/parts.h"

namespace suppertide::compose {
namespace {

// Washing up with hot water and soap, and wiping down. Common practice, no source.
constexpr int kCleaningMinutes = 15;

std::set<std::string> neverTraces(const v1::Event& event) {
  std::set<std::string> names;
  for (const v1::Guest& guest : event.guests())
    for (const v1::Need& need : guest.needs())
      if (need.severity() == v1::NEED_SEVERITY_NO_TRACES) names.insert(kitchen::plainName(need.name()));
  return names;
}

// Traces come with a maker's label, not with a kind of food: the recipe itself must tell all.
bool allTold(const v1::Recipe& recipe) {
  const auto told = [](const auto& part) { return part.known_contents(); };
  return std::all_of(recipe.ingredients().begin(), recipe.ingredients().end(), told) &&
         std::all_of(recipe.formula().lines().begin(), recipe.formula().lines().end(), told);
}

// Whether a dish is known to be free of something; what is not known, not told or to be asked
// about is not free.
bool isFree(const DishInfo& dish, const std::string& allergen) {
  if (!allTold(*dish.recipe)) return false;
  const kitchen::GuestNeed need{allergen, kitchen::Severity::kNoTraces};
  return kitchen::fitOf(contentsOf(*dish.dish, *dish.recipe), {need}).fit == kitchen::Fit::kSuits;
}

class Keeper {
 public:
  explicit Keeper(Composition& composition) : composition_(composition) {}

  void keepApart(int cleanDish, int otherDish) {
    for (const int clean : stepsOf(cleanDish))
      for (const int other : stepsOf(otherDish)) {
        shareThings(clean, other);
        shareOven(clean, other);
      }
  }

 private:
  const std::vector<int>& stepsOf(int dish) const {
    return composition_.dishes[static_cast<std::size_t>(dish)].steps;
  }
  const v1::Step& step(int index) const { return *composition_.steps[static_cast<std::size_t>(index)].step; }

  // The same board, pan or mixer: first, or washed in between.
  void shareThings(int clean, int other) {
    for (const v1::EquipmentUse& mine : step(clean).equipment())
      for (const v1::EquipmentUse& theirs : step(other).equipment())
        if (mine.equipment_id() == theirs.equipment_id())
          add({mine.equipment_id(), clean, other, {}, {}, kCleaningMinutes});
  }

  // Never in one oven together.
  void shareOven(int clean, int other) {
    for (int oven = 0; oven < static_cast<int>(composition_.problem.ovens.size()); ++oven) {
      const auto cleanModes = modesIn(oven, clean);
      const auto otherModes = modesIn(oven, other);
      if (!cleanModes.empty() && !otherModes.empty())
        add({composition_.problem.ovens[static_cast<std::size_t>(oven)].id, clean, other, cleanModes,
             otherModes, 0});
    }
  }

  std::vector<int> modesIn(int oven, int index) const {
    std::vector<int> modes;
    const auto& all = composition_.problem.steps[static_cast<std::size_t>(index)].modes;
    for (int m = 0; m < static_cast<int>(all.size()); ++m)
      if (const auto& need = all[static_cast<std::size_t>(m)].oven; need && need->oven == oven)
        modes.push_back(m);
    return modes;
  }

  void add(planning::Separation separation) {
    composition_.problem.separations.push_back(std::move(separation));
  }

  Composition& composition_;
};

}  // namespace

absl::Status addSeparations(Composition& composition) {
  Keeper keeper(composition);
  const int dishes = static_cast<int>(composition.dishes.size());
  std::set<std::pair<int, int>> done;
  for (const std::string& allergen : neverTraces(composition.documents.event)) {
    std::vector<bool> free;
    for (const DishInfo& dish : composition.dishes) free.push_back(isFree(dish, allergen));
    for (int clean = 0; clean < dishes; ++clean)
      for (int other = 0; other < dishes; ++other)
        if (free[static_cast<std::size_t>(clean)] && !free[static_cast<std::size_t>(other)] &&
            done.emplace(clean, other).second)
          keeper.keepApart(clean, other);
  }
  return absl::OkStatus();
}

}  // namespace suppertide::compose
