// The checks of each document, standing anywhere in a larger message.
#pragma once

#include "server/compose/validate/checker.h"

namespace suppertide::compose {

void checkHousehold(const Checker& here, const v1::Household& household);
void checkKitchen(const Checker& here, const v1::Kitchen& kitchen);
void checkStarter(const Checker& here, const v1::Starter& starter);
// One thing seen of a starter's levain or dough.
void checkObservation(const Checker& here, const v1::StarterObservation& seen);
void checkRecipe(const Checker& here, const v1::Recipe& recipe);
void checkEvent(const Checker& here, const v1::Event& event);

// ---- parts of a recipe; `here` stands at the part ----

void checkFormula(const Checker& here, const v1::BreadFormula& formula);
void checkOvenNeed(const Checker& here, const v1::OvenNeed& need);
void checkFermentNeed(const Checker& here, const v1::FermentNeed& need);
// Whether it may be left out at all: nothing that keeps food safe is.
void checkOptional(const Checker& here, const v1::Step& step, const v1::Recipe& recipe);
// Ids of a bake's later loads and of fetches are made, not given; and the step that such an id belongs to.
void checkNoMadeId(const Checker& id, const std::string& stepId);
std::string withoutMark(const std::string& stepId);
// What comes after what: known steps, gaps with room, no circle. `here` stands at the recipe.
void checkStepOrder(const Checker& here, const v1::Recipe& recipe);

// ---- references in a bundle; `here` stands at the bundle ----

// Members, kitchens, recipes, things, pins and steps that the events name.
void checkEventReferences(const Checker& here, const v1::Bundle& bundle);
// What the steps of recipe number `recipe` ask of the kitchen and cooks of one event.
void checkRecipeInKitchen(const Checker& here, const v1::Bundle& bundle, int recipe,
                          const v1::Kitchen& kitchen, const std::set<std::string>& skills);

}  // namespace suppertide::compose
