// Documents read and written by the paths in which servers tell what is wrong.
#include <gtest/gtest.h>

#include "client/kitchen/field_path.h"
#include "suppertide/v1/kitchen.pb.h"
#include "suppertide/v1/recipe.pb.h"
#include "suppertide/v1/starter.pb.h"

namespace suppertide {
namespace {

QString path(const char* text) {
  return QString::fromUtf8(text);
}

TEST(FieldPathTest, ReadsAndWritesWhatIsDeepInside) {
  v1::Recipe recipe;
  recipe.add_steps();
  recipe.add_steps()->mutable_oven()->set_setpoint_celsius(220);
  EXPECT_EQ(FieldPath::in(recipe, path("steps[1].oven.setpointCelsius")).number(), 220);
  FieldPath::inOrMake(recipe, path("steps[1].oven.setpointCelsius")).setNumber(180);
  EXPECT_EQ(recipe.steps(1).oven().setpoint_celsius(), 180);
}

TEST(FieldPathTest, ReadingMakesNothing) {
  v1::Recipe recipe;
  recipe.add_steps();
  const std::string before = recipe.SerializeAsString();
  const FieldPath field = FieldPath::in(recipe, path("steps[0].duration.likely"));
  EXPECT_FALSE(field.present());
  EXPECT_EQ(field.number(), 0);
  EXPECT_EQ(recipe.SerializeAsString(), before);
}

TEST(FieldPathTest, LengthsAreMinutesAndTimesAreSeconds) {
  v1::Recipe recipe;
  recipe.add_steps();
  FieldPath::inOrMake(recipe, path("steps[0].duration.likely")).setNumber(25);
  EXPECT_EQ(recipe.steps(0).duration().likely().seconds(), 1500);
  v1::Starter starter;
  FieldPath::inOrMake(starter, path("lastFedTime")).setNumber(1'800'000'000);
  EXPECT_EQ(starter.last_fed_time().seconds(), 1'800'000'000);
  EXPECT_EQ(FieldPath::in(starter, path("lastFedTime")).number(), 1'800'000'000);
}

TEST(FieldPathTest, PathsThatLeadNowhereReadAsAbsentAndWriteNothing) {
  v1::Kitchen kitchen;
  kitchen.add_ovens();
  for (const char* nowhere :
       {"ovens[1].fan", "ovens[0].wings", "ovens.fan", "burnerCount.of", "", "ovens[-1].fan"}) {
    FieldPath field = FieldPath::inOrMake(kitchen, path(nowhere));
    EXPECT_FALSE(field.valid()) << nowhere;
    field.setNumber(3);
    EXPECT_EQ(field.number(), 0) << nowhere;
  }
}

TEST(FieldPathTest, ListsOfNumbersWordsAndChoices) {
  v1::Kitchen kitchen;
  v1::Oven& oven = *kitchen.add_ovens();
  oven.add_rack_clear_height_mm(90);
  FieldPath::inOrMake(kitchen, path("ovens[0].rackClearHeightMm")).appendNumber(110);
  FieldPath::inOrMake(kitchen, path("ovens[0].rackClearHeightMm[0]")).setNumber(95);
  EXPECT_EQ(oven.rack_clear_height_mm(0), 95);
  EXPECT_EQ(oven.rack_clear_height_mm(1), 110);
  v1::Recipe recipe;
  recipe.add_ingredients();
  FieldPath::inOrMake(recipe, path("ingredients[0].contains")).setText(path(" milk, wheat ,"));
  EXPECT_EQ(recipe.ingredients(0).contains_size(), 2);
  EXPECT_EQ(FieldPath::in(recipe, path("ingredients[0].contains")).text().toStdString(), "milk, wheat");
  recipe.add_steps();
  FieldPath::inOrMake(recipe, path("steps[0].placeKinds")).toggleMark(v1::PLACE_KIND_FRIDGE);
  FieldPath::inOrMake(recipe, path("steps[0].placeKinds")).toggleMark(v1::PLACE_KIND_COUNTER);
  FieldPath::inOrMake(recipe, path("steps[0].placeKinds")).toggleMark(v1::PLACE_KIND_FRIDGE);
  EXPECT_EQ(FieldPath::in(recipe, path("steps[0].placeKinds")).marks(), QList<int>({v1::PLACE_KIND_COUNTER}));
}

TEST(FieldPathTest, MembersMoveAndGo) {
  v1::Recipe recipe;
  for (const char* id : {"a", "b", "c"}) recipe.add_steps()->set_id(id);
  FieldPath::inOrMake(recipe, path("steps")).move(2, 0);
  EXPECT_EQ(recipe.steps(0).id(), "c");
  EXPECT_EQ(recipe.steps(2).id(), "b");
  FieldPath::inOrMake(recipe, path("steps")).remove(1);
  ASSERT_EQ(recipe.steps_size(), 2);
  EXPECT_EQ(recipe.steps(1).id(), "b");
}

TEST(FieldPathTest, AnAmountIsInOneMeasureOnly) {
  v1::Recipe recipe;
  recipe.add_ingredients()->set_mass_g(200);
  FieldPath::inOrMake(recipe, path("ingredients[0].count")).setNumber(3);
  EXPECT_FALSE(FieldPath::in(recipe, path("ingredients[0].massG")).present());
  EXPECT_EQ(FieldPath::in(recipe, path("ingredients[0].count")).number(), 3);
}

}  // namespace
}  // namespace suppertide
