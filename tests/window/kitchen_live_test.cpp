// The editors and the shopping list on a real server, with several people.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QtTest/qtest.h>

#include <chrono>

#include "client/kitchen/draft_field.h"
#include "client/kitchen/formula_lines.h"
#include "client/kitchen/ingredient_reader.h"
#include "client/kitchen/kitchen_desk.h"
#include "client/kitchen/oven_fit.h"
#include "client/kitchen/scaling.h"
#include "client/kitchen/step_controller.h"
#include "client/shopping/shopping_controller.h"
#include "tests/window/patience.h"
#include "tests/window/real_household.h"
#include "tests/window/sample.h"

namespace suppertide::testing {
namespace {

using ::testing::HasSubstr;

QString u(const char* text) {
  return QString::fromUtf8(text);
}

Instant clockNow() {
  return Instant(std::chrono::seconds(secondsAt("2026-06-20T15:20:00+01:00")));
}

// One person's device.
struct Device {
  HouseholdSession session{clockNow};
  KitchenDesk desk;

  explicit Device(link::LinkOptions options) {
    desk.setDraftFolder({});
    desk.setSession(&session);
    session.start(std::move(options), {});
  }
  bool ready() {
    return QTest::qWaitFor(
        [this] { return session.state() == HouseholdSession::Live && !session.memberId().isEmpty(); },
        kPatienceMs);
  }
};

class KitchenLiveTest : public ::testing::Test {
 protected:
  void SetUp() override { ASSERT_TRUE(host_.ready()); }
  void set(Draft* draft, const char* path, const char* value) {
    DraftField field;
    field.setDraft(draft);
    field.setPath(u(path));
    field.setText(u(value));
  }
  void set(Draft* draft, const char* path, double value) {
    DraftField field;
    field.setDraft(draft);
    field.setPath(u(path));
    field.setNumber(value);
  }
  bool saved(Draft* draft) {
    draft->save();
    return QTest::qWaitFor([this, draft] { return !draft->waiting() && host_.session.waitingCount() == 0; },
                           kPatienceMs) &&
           !draft->dirty();
  }
  const v1::Recipe& recipe(Draft* draft) { return static_cast<const v1::Recipe&>(draft->document()); }

  RealHousehold house_;
  Device host_{house_.host()};
};

TEST_F(KitchenLiveTest, AHostAddsADishWithThreeSteps) {
  host_.desk.begin();
  Draft* dish = host_.desk.draft();
  ASSERT_NE(dish, nullptr);
  set(dish, "displayName", "Toasted barley");
  ASSERT_TRUE(QTest::qWaitFor([&] { return dish->problemCount() > 0; }, kPatienceMs))
      << "a dish without steps is told to be wrong";
  EXPECT_FALSE(dish->problem(u("steps")).isEmpty());
  StepController::addStep(dish, u("Rinse the barley"), v1::STEP_KIND_HANDS_ON, 5);
  StepController::addStep(dish, u("Toast it"), v1::STEP_KIND_BURNER, 10);
  StepController::addStep(dish, u("Bake it slowly"), v1::STEP_KIND_OVEN, 40);
  ASSERT_TRUE(QTest::qWaitFor([&] { return dish->problemCount() == 0; }, kPatienceMs));
  ASSERT_TRUE(saved(dish)) << dish->trouble().toStdString();
  const auto& stored = host_.session.replica()->recipes.at(dish->documentId().toStdString());
  EXPECT_EQ(stored.display_name(), "Toasted barley");
  EXPECT_EQ(stored.steps_size(), 3);
  EXPECT_FALSE(dish->fresh());
}

TEST_F(KitchenLiveTest, WhatIsWrongIsToldAtItsField) {
  host_.desk.open(u("roast"));
  Draft* roast = host_.desk.draft();
  ASSERT_NE(roast, nullptr);
  set(roast, "servingCount", 900);
  ASSERT_TRUE(QTest::qWaitFor([&] { return !roast->problem(u("servingCount")).isEmpty(); }, kPatienceMs));
  EXPECT_THAT(roast->problem(u("servingCount")).toStdString(), HasSubstr("200"));
  set(roast, "servingCount", 12);
  EXPECT_TRUE(QTest::qWaitFor([&] { return roast->problem(u("servingCount")).isEmpty(); }, kPatienceMs));
}

TEST_F(KitchenLiveTest, TwoWhoChangeTheSameSeeBothVersions) {
  host_.desk.setKind(Document::Kitchen);
  host_.desk.open(u("k"));
  Draft* mine = host_.desk.draft();
  ASSERT_NE(mine, nullptr);
  set(mine, "displayName", "Quay galley");
  v1::UpdateKitchenRequest theirs;
  theirs.set_household_id(house_.id());
  theirs.mutable_kitchen()->set_id("k");
  theirs.mutable_kitchen()->set_display_name("Harbour kitchen");
  theirs.mutable_update_mask()->add_paths("display_name");
  theirs.set_request_id("r-theirs");
  ASSERT_TRUE(house_.calls().write(theirs).ok());
  // Before the news of it is here: the server refuses the older version.
  mine->save();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !mine->clashes().isEmpty(); }, kPatienceMs));
  EXPECT_EQ(host_.session.refused()->count(), 0) << "it is here, to be settled where it was written";
  EXPECT_EQ(mine->mineText(u("display_name")).toStdString(), "Quay galley");
  EXPECT_EQ(mine->theirText(u("display_name")).toStdString(), "Harbour kitchen");
  mine->keepMine(u("display_name"));
  ASSERT_TRUE(saved(mine)) << mine->trouble().toStdString();
  EXPECT_EQ(host_.session.replica()->kitchens.at("k").display_name(), "Quay galley");
}

TEST_F(KitchenLiveTest, WhatWasDeletedComesBackWhole) {
  host_.desk.begin();
  Draft* dish = host_.desk.draft();
  set(dish, "displayName", "Plum jam");
  StepController::addStep(dish, u("Boil it"), v1::STEP_KIND_BURNER, 30);
  ASSERT_TRUE(saved(dish)) << dish->trouble().toStdString();
  const std::string id = dish->documentId().toStdString();
  host_.desk.remove();
  ASSERT_TRUE(QTest::qWaitFor(
      [&] { return host_.session.replica()->recipes.count(id) == 0 && !host_.desk.removedName().isEmpty(); },
      kPatienceMs));
  EXPECT_EQ(host_.desk.removedName().toStdString(), "Plum jam");
  host_.desk.undoRemove();
  ASSERT_TRUE(QTest::qWaitFor([&] { return host_.session.replica()->recipes.count(id) == 1; }, kPatienceMs));
  EXPECT_EQ(host_.session.replica()->recipes.at(id).steps_size(), 1);
}

TEST_F(KitchenLiveTest, GramsMakePercentagesAndPercentagesMakeGrams) {
  host_.desk.begin();
  Draft* bread = host_.desk.draft();
  FormulaLines formula;
  formula.setDraft(bread);
  formula.beginBread();
  ASSERT_TRUE(QTest::qWaitFor([&] { return formula.flourGrams() > 0; }, kPatienceMs));
  const double flour = formula.flourGrams();
  const auto start = std::chrono::steady_clock::now();
  formula.setPercent(1, 72);
  ASSERT_TRUE(QTest::qWaitFor([&] { return std::abs(formula.hydration() - 72) < 0.01; }, kPatienceMs));
  const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
  RecordProperty("workOutMs", std::to_string(took.count()));
  EXPECT_NEAR(formula.flourGrams(), flour, 0.01) << "percentages hold on to the flour";
  EXPECT_NEAR(formula.data(formula.index(1), FormulaLines::GramsRole).toDouble(), flour * 0.72, 0.01);
  formula.setGrams(0, 2 * flour);
  ASSERT_TRUE(QTest::qWaitFor([&] { return std::abs(formula.hydration() - 36) < 0.01; }, kPatienceMs))
      << "grams hold on to the other grams";
  formula.setPercent(7, 10);
  EXPECT_TRUE(QTest::qWaitFor([&] { return !formula.trouble().isEmpty(); }, kPatienceMs));
  EXPECT_NEAR(formula.hydration(), 36, 0.01) << "the last good figures stay";
}

TEST_F(KitchenLiveTest, TypingOnWhileAnAnswerIsOnItsWayLosesNothing) {
  host_.desk.begin();
  FormulaLines formula;
  formula.setDraft(host_.desk.draft());
  formula.beginBread();
  for (const double percent : {7.0, 70.0, 70.5}) formula.setPercent(1, percent);
  formula.setPercent(2, 1.8);
  ASSERT_TRUE(QTest::qWaitFor(
      [&] { return std::abs(formula.salt() - 1.8) < 0.001 && std::abs(formula.hydration() - 70.5) < 0.01; },
      kPatienceMs));
}

TEST_F(KitchenLiveTest, LinesAreReadAndWhatIsUnsureIsSaid) {
  host_.desk.begin();
  IngredientReader reader;
  reader.setProperty("draft", QVariant::fromValue(host_.desk.draft()));
  reader.setText(u("250 g unsalted butter\n2 cups flour\na pinch of salt\n3 eggs"));
  ASSERT_TRUE(QTest::qWaitFor([&] { return reader.upToDate() && reader.count() == 4; }, kPatienceMs));
  EXPECT_EQ(reader.data(reader.index(0), IngredientReader::AmountRole).toString().toStdString(), "250 g");
  EXPECT_EQ(reader.data(reader.index(0), IngredientReader::DoubtsRole).toString().toStdString(), "");
  EXPECT_NE(reader.data(reader.index(1), IngredientReader::DoubtsRole).toString(), QString());
  EXPECT_EQ(reader.data(reader.index(2), IngredientReader::AmountRole).toString().toStdString(), "to taste");
  reader.addAll();
  EXPECT_EQ(recipe(host_.desk.draft()).ingredients_size(), 4);
}

TEST_F(KitchenLiveTest, AnOvensReadingsGiveItsCurve) {
  host_.desk.setKind(Document::Kitchen);
  host_.desk.open(u("k"));
  host_.desk.draft()->edit({}, [](google::protobuf::Message& document) {
    auto& curve = *static_cast<v1::Kitchen&>(document).mutable_ovens(0)->mutable_heat_curve();
    for (const auto& [minutes, celsius] :
         {std::pair{0, 21.0}, {5, 95.0}, {10, 150.0}, {15, 190.0}, {20, 215.0}}) {
      v1::HeatReading& reading = *curve.add_heating();
      reading.mutable_after()->set_seconds(minutes * 60);
      reading.set_celsius(celsius);
    }
  });
  OvenFit fit;
  fit.setDraft(host_.desk.draft());
  fit.setPath(u("ovens[0]"));
  ASSERT_TRUE(QTest::qWaitFor([&] { return fit.answered() && !fit.words().isEmpty(); }, kPatienceMs));
  EXPECT_THAT(fit.words().join(u(" ")).toStdString(), HasSubstr("misses the readings by"));
}

TEST_F(KitchenLiveTest, ADishIsScaledForMoreGuests) {
  host_.desk.begin();
  Draft* dish = host_.desk.draft();
  set(dish, "displayName", "Omelette");
  set(dish, "servingCount", 4);
  dish->edit({}, [](google::protobuf::Message& document) {
    v1::Ingredient& eggs = *static_cast<v1::Recipe&>(document).add_ingredients();
    eggs.set_name("eggs");
    eggs.set_count(6);
  });
  StepController::addStep(dish, u("Fry it"), v1::STEP_KIND_BURNER, 10);
  ScaledLines scaled;
  scaled.setDraft(dish);
  scaled.setServings(8);
  ASSERT_TRUE(QTest::qWaitFor([&] { return scaled.count() == 1; }, kPatienceMs))
      << scaled.trouble().toStdString();
  EXPECT_THAT(scaled.data(scaled.index(0), ScaledLines::ShownRole).toString().toStdString(), HasSubstr("12"));
}

TEST_F(KitchenLiveTest, OnePersonTicksAndTheOtherSeesIt) {
  host_.desk.open(u("roast"));
  Draft* roast = host_.desk.draft();
  roast->edit({}, [](google::protobuf::Message& document) {
    auto& recipe = static_cast<v1::Recipe&>(document);
    v1::Ingredient& fennel = *recipe.add_ingredients();
    fennel.set_name("fennel");
    fennel.set_mass_g(1200);
  });
  ASSERT_TRUE(saved(roast)) << roast->firstProblem().toStdString();
  Device rui(house_.deviceOf("rui"));
  ASSERT_TRUE(rui.ready());
  ShoppingController hers, his;
  for (ShoppingController* one : {&hers, &his}) one->setFolder({});
  hers.setSession(&rui.session);
  his.setSession(&host_.session);
  ASSERT_TRUE(
      QTest::qWaitFor([&] { return hers.allCount() > 0 && his.allCount() == hers.allCount(); }, kPatienceMs));
  const QString id = hers.items()->rows()[0].itemId;
  hers.toggle(id);
  EXPECT_TRUE(QTest::qWaitFor([&] { return his.items()->rows()[0].ticked; }, kPatienceMs));
  EXPECT_EQ(his.items()->rows()[0].tickedBy.toStdString(), "Rui");
  his.toggle(id);
  EXPECT_TRUE(QTest::qWaitFor([&] { return !hers.items()->rows()[0].ticked; }, kPatienceMs));
  hers.addOwn(u("12 candles"));
  EXPECT_TRUE(
      QTest::qWaitFor([&] { return his.items()->rows().back().name == u("12 candles"); }, kPatienceMs));
}

}  // namespace
}  // namespace suppertide::testing
