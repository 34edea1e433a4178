// Guests who may not have even traces: dishes free of it keep apart from those that hold it.
#include <algorithm>
#include <cctype>
#include <set>
#include <string>

#include "absl/strings/str_cat.h"
#include "server/compose/parts.h"

namespace suppertide::compose {
namespace {

// Washing up with hot water and soap, and wiping down. Common practice, no source.
constexpr int kCleaningMinutes = 15;

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
  return text;
}

std::set<std::string> neverTraces(const v1::Event& event) {
  std::set<std::string> names;
  for (const v1::Guest& guest : event.guests())
    for (const v1::Need& need : guest.needs())
      if (need.severity() == v1::NEED_SEVERITY_NO_TRACES) names.insert(lower(need.name()));
  return names;
}

// Whether a recipe is known to be free of something; what is not known or not told is not free.
bool isFree(const v1::Recipe& recipe, const std::string& allergen) {
  if (recipe.ingredients().empty() && recipe.formula().lines().empty()) return false;
  const auto holds = [&](const auto& part) {
    if (!part.known_contents()) return true;
    return std::any_of(part.contains().begin(), part.contains().end(),
                       [&](const std::string& name) { return lower(name) == allergen; });
  };
  return std::none_of(recipe.ingredients().begin(), recipe.ingredients().end(), holds) &&
         std::none_of(recipe.formula().lines().begin(), recipe.formula().lines().end(), holds);
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
  for (const std::string& allergen : neverTraces(composition.documents.event))
    for (int clean = 0; clean < dishes; ++clean) {
      if (!isFree(*composition.dishes[static_cast<std::size_t>(clean)].recipe, allergen)) continue;
      for (int other = 0; other < dishes; ++other)
        if (!isFree(*composition.dishes[static_cast<std::size_t>(other)].recipe, allergen) &&
            done.emplace(clean, other).second)
          keeper.keepApart(clean, other);
    }
  return absl::OkStatus();
}

}  // namespace suppertide::compose
