// Lines read, doughs worked out and sizes scaled: what of the server's answers is shown, and what is taken.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QtTest/qabstractitemmodeltester.h>

#include "client/kitchen/amount_field.h"
#include "client/kitchen/draft_shelf.h"
#include "client/kitchen/formula_lines.h"
#include "client/kitchen/ingredient_reader.h"
#include "client/kitchen/levain_controller.h"
#include "client/kitchen/place_hours.h"
#include "client/kitchen/scaling.h"
#include "client/kitchen/starter_controller.h"
#include "client/kitchen/units.h"
#include "tests/window/kitchen_sample.h"

namespace suppertide {
namespace {

using testing::SampleHousehold;

QString word(const char* text) {
  return QString::fromUtf8(text);
}

class FiguresTest : public ::testing::Test {
 protected:
  const v1::Recipe& recipe() const { return static_cast<const v1::Recipe&>(draft_->document()); }

  SampleHousehold household_;
  DraftShelf shelf_{&household_.session, QString()};
  Draft* draft_ = shelf_.begin(Document::Recipe);
};

v1::ParsedIngredient parsed(const char* line, const char* name, double grams) {
  v1::ParsedIngredient one;
  one.set_line(line);
  one.set_name(name);
  one.set_ingredient(name);
  one.set_mass_g(grams);
  one.set_known_contents(true);
  return one;
}

class IngredientReaderTest : public FiguresTest {
 protected:
  IngredientReaderTest() { reader_.setProperty("draft", QVariant::fromValue(draft_)); }
  QString at(int row, int role) const { return reader_.data(reader_.index(row), role).toString(); }
  IngredientReader reader_;
  QAbstractItemModelTester tester_{&reader_, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(IngredientReaderTest, SaysWhatIsUnsureOfALineAndAddsNothingByItself) {
  reader_.setText(word("250 g butter\n1 cup sugar"));
  v1::ParsedIngredient sugar = parsed("1 cup sugar", "sugar", 200);
  sugar.set_unit("cup");
  sugar.add_doubts(v1::LINE_DOUBT_MEASURES_DIFFER);
  sugar.add_doubts(v1::LINE_DOUBT_USUAL_KIND_TAKEN);
  reader_.show(reader_.text(), {parsed("250 g butter", "butter", 250), sugar});
  EXPECT_EQ(reader_.count(), 2);
  EXPECT_EQ(reader_.doubtfulCount(), 1);
  EXPECT_EQ(at(0, IngredientReader::DoubtsRole), QString());
  EXPECT_THAT(at(1, IngredientReader::DoubtsRole).toStdString(),
              ::testing::HasSubstr("differs from country"));
  EXPECT_EQ(recipe().ingredients_size(), 0);
  reader_.addAll();
  ASSERT_EQ(recipe().ingredients_size(), 2);
  EXPECT_EQ(recipe().ingredients(1).mass_g(), 200);
  EXPECT_EQ(reader_.text(), QString());
  draft_->undo();
  EXPECT_EQ(recipe().ingredients_size(), 0) << "all lines come in one go, and go in one";
}

TEST_F(IngredientReaderTest, AnOldReadingIsNotAddedForANewText) {
  reader_.setText(word("250 g butter"));
  reader_.show(reader_.text(), {parsed("250 g butter", "butter", 250)});
  reader_.setText(word("250 g butter\n3 eggs"));
  EXPECT_FALSE(reader_.upToDate());
  reader_.addAll();
  EXPECT_EQ(recipe().ingredients_size(), 0);
}

TEST_F(IngredientReaderTest, PiecesStayPiecesAndAGuessIsNoMass) {
  v1::ParsedIngredient eggs = parsed("3 eggs", "egg", 150);
  eggs.set_count(3);
  EXPECT_EQ(ingredientOf(eggs).count(), 3);
  v1::ParsedIngredient vague;
  vague.set_name("salt");
  EXPECT_EQ(ingredientOf(vague).amount_case(), v1::Ingredient::AMOUNT_NOT_SET);
  EXPECT_FALSE(ingredientOf(vague).known_contents());
}

TEST_F(FiguresTest, AnAmountKeepsItsNumberInAnotherMeasure) {
  draft_->edit({}, [](google::protobuf::Message& document) {
    static_cast<v1::Recipe&>(document).add_ingredients()->set_mass_g(30);
  });
  AmountField amount;
  amount.setDraft(draft_);
  amount.setProperty("path", word("ingredients[0]"));
  EXPECT_EQ(amount.unit(), AmountField::Grams);
  amount.setUnit(AmountField::Millilitres);
  EXPECT_EQ(recipe().ingredients(0).volume_ml(), 30);
  amount.setUnit(AmountField::ToTaste);
  EXPECT_EQ(recipe().ingredients(0).amount_case(), v1::Ingredient::AMOUNT_NOT_SET);
}

class FormulaLinesTest : public FiguresTest {
 protected:
  FormulaLinesTest() { formula_.setDraft(draft_); }
  // As WorkOutDough answers: 1 000 g of flour in all.
  v1::WorkOutDoughResponse answer() const {
    v1::WorkOutDoughResponse answer;
    *answer.mutable_formula() = recipe().formula();
    answer.set_flour_mass_g(1000);
    answer.set_dough_mass_g(1685);
    answer.set_hydration_percent(66);
    answer.set_prefermented_flour_percent(12);
    return answer;
  }
  double at(int row, int role) const { return formula_.data(formula_.index(row), role).toDouble(); }
  FormulaLines formula_;
  QAbstractItemModelTester tester_{&formula_, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(FormulaLinesTest, ShowsGramsBesidePercentages) {
  EXPECT_FALSE(formula_.bread());
  formula_.beginBread();
  ASSERT_EQ(formula_.count(), 4);
  formula_.show(answer());
  EXPECT_EQ(at(1, FormulaLines::PercentRole), 66);
  EXPECT_EQ(at(1, FormulaLines::GramsRole), 660);
  EXPECT_EQ(formula_.prefermentedGrams(), 120);
}

TEST_F(FormulaLinesTest, TheAnswersFormulaBecomesTheDrafts) {
  formula_.beginBread();
  v1::WorkOutDoughResponse changed = answer();
  changed.mutable_formula()->mutable_lines(1)->set_percent(72);
  formula_.show(changed);
  EXPECT_EQ(recipe().formula().lines(1).percent(), 72);
  draft_->undo();
  EXPECT_EQ(recipe().formula().lines(1).percent(), 66);
}

TEST_F(FormulaLinesTest, WithoutAServerItSaysSoAndChangesNothing) {
  formula_.beginBread();
  formula_.setPercent(1, 80);
  EXPECT_EQ(recipe().formula().lines(1).percent(), 66);
  EXPECT_THAT(formula_.trouble().toStdString(), ::testing::HasSubstr("no connection"));
}

TEST_F(FormulaLinesTest, ALevainIsOfAStarterOfTheHousehold) {
  formula_.beginBread();
  v1::Starter jar;
  jar.set_id("jar");
  jar.set_display_name("Window jar");
  jar.set_whole_grain_percent(30);
  household_.write(jar, household_.replica.starters, "ines");
  LevainController levain;
  levain.setDraft(draft_);
  levain.setOn(true);
  EXPECT_EQ(recipe().formula().levain().starter_id(), "jar");
  EXPECT_EQ(recipe().formula().levain().whole_grain_percent(), 30);
  EXPECT_EQ(levain.starter(), 0);
  levain.setOn(false);
  EXPECT_FALSE(recipe().formula().has_levain());
}

TEST_F(FiguresTest, AScaledRecipeSaysWhatWasRounded) {
  ScaledLines lines;
  const QAbstractItemModelTester tester(&lines, QAbstractItemModelTester::FailureReportingMode::Fatal);
  lines.setDraft(draft_);
  v1::ScaledRecipe scaled;
  scaled.set_factor(1.5);
  v1::ScaledLine& eggs = *scaled.add_lines();
  eggs.set_name("egg");
  eggs.mutable_exact()->set_count(4.5);
  eggs.mutable_rounded()->set_count(5);
  eggs.set_shown("5");
  eggs.set_far_off(true);
  lines.show(scaled);
  EXPECT_EQ(lines.headline().toStdString(), "1.5 times the recipe");
  EXPECT_EQ(lines.data(lines.index(0), ScaledLines::ShownRole).toString().toStdString(), "5");
  EXPECT_THAT(lines.data(lines.index(0), ScaledLines::NoteRole).toString().toStdString(),
              ::testing::HasSubstr("by the numbers 4.5, far off"));
}

TEST(StarterControllerTest, FeedingsAreToldInTheHouseholdsTime) {
  SampleHousehold household;
  DraftShelf shelf(&household.session, {});
  StarterController starter;
  starter.setDraft(shelf.begin(Document::Starter));
  EXPECT_TRUE(starter.lastFed().isEmpty());
  starter.fedAgo(0);
  EXPECT_EQ(starter.lastFed().toStdString(), "Sat 20 June, 15:20");
  starter.fedEarlier(60);
  EXPECT_EQ(starter.lastFed().toStdString(), "Sat 20 June, 14:20");
}

TEST(PlaceHoursTest, OneTemperatureBecomesOneAnHourAndBack) {
  SampleHousehold household;
  DraftShelf shelf(&household.session, {});
  Draft* draft = shelf.open(Document::Kitchen, QStringLiteral("kitchen"));
  PlaceHours hours;
  hours.setDraft(draft);
  hours.setProperty("path", QStringLiteral("places[0]"));
  hours.spread(true);
  EXPECT_EQ(hours.count(), 24);
  hours.spread(false);
  EXPECT_EQ(hours.count(), 1);
  EXPECT_EQ(hours.ovens().size(), 2);
}

TEST(HouseholdUnitsTest, ReadsAndTypesInTheHouseholdsDegrees) {
  SampleHousehold household;
  HouseholdUnits units;
  units.setSession(&household.session);
  EXPECT_EQ(units.shown(180), 180);
  household.replica.household.set_temperature_unit(v1::TEMPERATURE_UNIT_FAHRENHEIT);
  household.session.adopt(std::make_shared<link::Replica>(household.replica));
  EXPECT_EQ(units.degreeUnit().toStdString(), "°F");
  EXPECT_EQ(units.shown(180), 356);
  EXPECT_NEAR(units.celsius(356), 180, 1e-9);
}

}  // namespace
}  // namespace suppertide
