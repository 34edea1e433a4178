#include "server/compose/menu/contents.h"

namespace suppertide::compose {
namespace {

template <typename Part>
kitchen::DishPart partOf(const Part& from) {
  return {from.name(), kitchen::contentsOf(from.name(), {from.contains().begin(), from.contains().end()},
                                           from.known_contents())};
}

}  // namespace

kitchen::GuestNeed needOf(const v1::Need& need) {
  kitchen::Severity severity = kitchen::Severity::kAvoid;
  if (need.severity() == v1::NEED_SEVERITY_DISLIKE) severity = kitchen::Severity::kDislike;
  if (need.severity() == v1::NEED_SEVERITY_NO_TRACES) severity = kitchen::Severity::kNoTraces;
  return {need.name(), severity};
}

kitchen::MenuDish contentsOf(const v1::Dish& dish, const v1::Recipe& recipe) {
  kitchen::MenuDish contents{dish.id(), dish.course_id(), {}};
  for (const v1::Ingredient& one : recipe.ingredients()) contents.parts.push_back(partOf(one));
  for (const v1::FormulaLine& line : recipe.formula().lines()) contents.parts.push_back(partOf(line));
  return contents;
}

}  // namespace suppertide::compose
