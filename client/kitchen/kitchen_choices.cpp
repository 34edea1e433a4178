#include "client/kitchen/kitchen_choices.h"

#include "client/words/step_words.h"

namespace suppertide {

QStringList KitchenChoices::stepKinds() {
  QStringList names;
  for (int kind = v1::STEP_KIND_HANDS_ON; kind <= v1::STEP_KIND_HOLD; ++kind)
    names += StepWords::kind(static_cast<v1::StepKind>(kind));
  return names;
}

QList<int> KitchenChoices::stepSymbols() {
  QList<int> symbols;
  for (int kind = v1::STEP_KIND_HANDS_ON; kind <= v1::STEP_KIND_HOLD; ++kind)
    symbols += StepWords::symbol(static_cast<v1::StepKind>(kind));
  return symbols;
}

QStringList KitchenChoices::placeKinds() {
  return {tr("Counter"), tr("Proofing box"), tr("Oven, light on"), tr("Fridge"),
          tr("Freezer"), tr("Cellar"),       tr("Warming drawer")};
}

QStringList KitchenChoices::safetyClasses() {
  return {tr("No limits are known"),
          tr("Keeps at room temperature"),
          tr("Whole meat"),
          tr("Ground meat"),
          tr("Poultry"),
          tr("Ground poultry"),
          tr("Stuffing"),
          tr("Raw ham"),
          tr("Cooked ham in its pack"),
          tr("Other cooked ham"),
          tr("Egg dish"),
          tr("Cooked dishes, heated again"),
          tr("Fish"),
          tr("Vegetables, grains, legumes"),
          tr("Eaten cold and kept cold")};
}

QStringList KitchenChoices::foodClasses() {
  return {tr("Not said"), tr("Bread"),     tr("Custard"), tr("Sponge cake"),
          tr("Pastry"),   tr("Casserole"), tr("Roast"),   tr("Vegetables")};
}

QStringList KitchenChoices::holdings() {
  return {tr("Hot"), tr("Warm"), tr("Room temperature"), tr("Cold")};
}

QStringList KitchenChoices::conditions() {
  return {tr("Mature, at room temperature"), tr("Near its peak"), tr("From the fridge")};
}

QStringList KitchenChoices::thawWays() {
  return {tr("In the fridge"), tr("In cold water"), tr("Microwave")};
}

QStringList KitchenChoices::doughClasses() {
  return {tr("Lean"), tr("Enriched")};
}

QStringList KitchenChoices::formulaRoles() {
  return {tr("Flour"), tr("Water"),       tr("Milk"),      tr("Egg"),           tr("Fat"),  tr("Sugar"),
          tr("Salt"),  tr("Fresh yeast"), tr("Dry yeast"), tr("Instant yeast"), tr("Other")};
}

QStringList KitchenChoices::fermentStages() {
  return {tr("Levain"), tr("Bulk"), tr("Proof"), tr("Preferment")};
}

QStringList KitchenChoices::prefermentKinds() {
  return {tr("Poolish"), tr("Biga"), tr("Sponge"), tr("Old dough")};
}

QStringList KitchenChoices::amountUnits() {
  return {tr("to taste"), tr("g"), tr("ml"), tr("pieces")};
}

QString KitchenChoices::fieldName(const QString& field) {
  if (field == QStringLiteral("display_name")) return tr("Name");
  if (field == QStringLiteral("serving_count")) return tr("Guests");
  if (field == QStringLiteral("ingredients")) return tr("Ingredients");
  if (field == QStringLiteral("formula")) return tr("Dough");
  if (field == QStringLiteral("steps")) return tr("Steps");
  if (field == QStringLiteral("holding")) return tr("Waiting to be served");
  if (field == QStringLiteral("note")) return tr("Note");
  if (field == QStringLiteral("safety_class")) return tr("Food safety");
  if (field == QStringLiteral("ovens")) return tr("Ovens");
  if (field == QStringLiteral("burner_count")) return tr("Burners");
  if (field == QStringLiteral("equipment")) return tr("Things there are few of");
  if (field == QStringLiteral("places")) return tr("Places");
  if (field == QStringLiteral("hydration_percent")) return tr("Hydration");
  if (field == QStringLiteral("whole_grain_percent")) return tr("Whole grain");
  if (field == QStringLiteral("condition")) return tr("How it is kept");
  if (field == QStringLiteral("vigour")) return tr("Vigour");
  if (field == QStringLiteral("vigour_spread")) return tr("How unsure the vigour is");
  if (field == QStringLiteral("last_fed_time")) return tr("Last fed");
  if (field == QStringLiteral("observations")) return tr("What was seen");
  return tr("What was learned");
}

}  // namespace suppertide
