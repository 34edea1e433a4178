#include "tests/compose/planned.h"

#include <gtest/gtest.h>

#include "tests/compose/small_dinner.h"

namespace suppertide::compose {

v1::Plan planOf(const v1::Bundle& bundle, std::int64_t workLimit) {
  const Documents documents = documentsOf(bundle);
  auto made = planEvent(documents, {.seed = 1, .workLimit = workLimit});
  EXPECT_TRUE(made.ok()) << made.status();
  if (!made.ok()) return {};
  const auto audited = auditPlan(documents, *made);
  EXPECT_TRUE(audited.ok()) << audited.status();
  if (audited.ok()) {
    EXPECT_EQ(audited->breaches.size(), static_cast<std::size_t>(made->breaches_size()));
  }
  return *std::move(made);
}

v1::Plan soundPlanOf(const v1::Bundle& bundle, std::int64_t workLimit) {
  v1::Plan plan = planOf(bundle, workLimit);
  for (const v1::Breach& breach : plan.breaches()) ADD_FAILURE() << breach.ShortDebugString();
  return plan;
}

const v1::PlannedStep& stepOf(const v1::Plan& plan, const std::string& id) {
  for (const auto& step : plan.steps())
    if (step.id() == id) return step;
  static const v1::PlannedStep none;
  ADD_FAILURE() << "no step " << id;
  return none;
}

v1::Step& stepOf(v1::Bundle& bundle, int recipe, const std::string& id) {
  for (v1::Step& step : *bundle.mutable_recipes(recipe)->mutable_steps())
    if (step.id() == id) return step;
  static v1::Step none;
  ADD_FAILURE() << "no step " << id;
  return none;
}

}  // namespace suppertide::compose
