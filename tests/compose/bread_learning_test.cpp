#include "server/compose/bread_learning.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "server/bread/calibration.h"
#include "server/compose/bread_recipe.h"

namespace suppertide::compose {
namespace {

constexpr std::int64_t kMorning = 1'790'000'000 / 86'400 * 86'400 + 8 * 3600;  // UTC

v1::Starter starter(const std::string& id) {
  v1::Starter made;
  made.set_id(id);
  made.set_display_name(id);
  return made;
}

v1::Place place(const std::string& id, double celsius) {
  v1::Place made;
  made.set_id(id);
  made.set_kind(v1::PLACE_KIND_COUNTER);
  made.mutable_temperature()->add_celsius(celsius);
  return made;
}

// Two starters and two places as they are stated; what they truly are is each test's own.
BreadDocuments kitchenOfTwo() {
  BreadDocuments documents;
  documents.starters = {starter("lively"), starter("usual")};
  v1::Kitchen kitchen;
  kitchen.set_id("k");
  *kitchen.add_places() = place("counter", 22);
  *kitchen.add_places() = place("box", 26);
  documents.kitchens = {kitchen};
  return documents;
}

// What a levain fed 1:parts:parts truly shows.
double trueRise(double vigour, double celsius, double parts, double hours) {
  const auto state = bread::mixLevain(bread::kLevainKind, {1, bread::kMatureStarterLag, vigour},
                                      {1, parts, parts}, BreadRecipe::fedCelsius(celsius), 0.2);
  const bread::Stay stay{bread::kOpenEnded, bread::TemperatureByHour(celsius), bread::kStillAir};
  return bread::riseOf(bread::kLevainKind,
                       bread::stateAfter(bread::kLevainKind, *state, 0, {&stay, 1}, hours));
}

void see(BreadDocuments& documents, int who, const std::string& where, double parts, double hours,
         double rise) {
  v1::StarterObservation& seen = *documents.starters[static_cast<std::size_t>(who)].add_observations();
  seen.mutable_feed_time()->set_seconds(kMorning);
  seen.mutable_observe_time()->set_seconds(kMorning + std::lround(hours * 3600));
  seen.set_flour_per_starter(parts);
  seen.set_water_per_starter(parts);
  seen.set_rise(rise);
  seen.set_kitchen_id("k");
  seen.set_place_id(where);
}

const v1::Place& placeOf(const BreadDocuments& documents, int index) {
  return documents.kitchens[0].places(index);
}

TEST(BreadLearningTest, StartersInEachOthersPlacesAreToldFromThePlaces) {
  BreadDocuments documents = kitchenOfTwo();
  const double vigour[] = {1.3, 1.0};
  const double celsius[] = {23.2, 26.0};  // the counter is warmer than stated
  for (int who = 0; who < 2; ++who)
    for (int where = 0; where < 2; ++where)
      for (const double parts : {1.0, 3.0})
        for (const double hours : {3.0, 5.0, 7.0})
          see(documents, who, where == 0 ? "counter" : "box", parts, hours,
              std::max(1.0, trueRise(vigour[who], celsius[where], parts, hours)));
  const auto lessons = learnFromDoughs(documents, absl::UTCTimeZone());
  ASSERT_TRUE(lessons.ok()) << lessons.status();
  EXPECT_EQ(lessons->used, 24);
  EXPECT_NEAR(documents.starters[0].learned_vigour().value(), 1.3, 0.13);
  EXPECT_NEAR(documents.starters[1].learned_vigour().value(), 1.0, 0.1);
  EXPECT_GT(documents.starters[0].learned_vigour().value(),
            documents.starters[1].learned_vigour().value() + 0.15);
  EXPECT_GT(placeOf(documents, 0).learned_warmth().value(), 0.4);
  EXPECT_LT(std::abs(placeOf(documents, 1).learned_warmth().value()), 0.5);
  EXPECT_EQ(documents.starters[0].learned_vigour().telling(), v1::EFFECT_TELLING_TOLD);
}

TEST(BreadLearningTest, OneStarterInOnePlaceIsNotToldFromIt) {
  BreadDocuments documents = kitchenOfTwo();
  for (const double hours : {4.0, 5.0}) see(documents, 0, "counter", 1, hours, trueRise(1.2, 22, 1, hours));
  const auto lessons = learnFromDoughs(documents, absl::UTCTimeZone());
  ASSERT_TRUE(lessons.ok()) << lessons.status();
  EXPECT_EQ(lessons->effects.size(), 3u);  // vigour, waking, warmth
  const v1::LearnedEffect& vigour = documents.starters[0].learned_vigour();
  EXPECT_NE(vigour.telling(), v1::EFFECT_TELLING_TOLD);
  EXPECT_GT(vigour.value(), 1);
  EXPECT_FALSE(documents.starters[1].has_learned_vigour());
  EXPECT_FALSE(placeOf(documents, 1).has_learned_warmth());
}

TEST(BreadLearningTest, TheOrderOfLessonsDoesNotMatterNorHowOften) {
  BreadDocuments documents = kitchenOfTwo();
  see(documents, 0, "counter", 1, 4, 2.0);
  see(documents, 1, "counter", 1, 5, 1.9);
  ASSERT_TRUE(learnFromDoughs(documents, absl::UTCTimeZone()).ok());
  const double once = documents.starters[0].learned_vigour().value();
  ASSERT_TRUE(learnFromDoughs(documents, absl::UTCTimeZone()).ok());
  EXPECT_EQ(documents.starters[0].learned_vigour().value(), once);
}

TEST(BreadLearningTest, WhatNamesSomethingThatIsGoneIsNotUsed) {
  BreadDocuments documents = kitchenOfTwo();
  see(documents, 0, "attic", 1, 4, 2.0);
  see(documents, 0, "counter", 1, 4, 2.0);
  const auto lessons = learnFromDoughs(documents, absl::UTCTimeZone());
  ASSERT_TRUE(lessons.ok());
  EXPECT_EQ(lessons->used, 1);
  EXPECT_EQ(lessons->unused, 1);
}

TEST(BreadLearningTest, AYeastedDoughTeachesOfItselfAndNotOfTheStarter) {
  BreadDocuments documents = kitchenOfTwo();
  v1::Recipe& loaf = documents.recipes.emplace_back();
  loaf.set_id("loaf");
  v1::BreadFormula& formula = *loaf.mutable_formula();
  formula.set_piece_count(1);
  formula.set_piece_mass_g(900);
  formula.set_dough_celsius(25);
  for (const auto& [name, role, percent] : {std::tuple{"flour", v1::FORMULA_ROLE_FLOUR, 100.0},
                                            {"water", v1::FORMULA_ROLE_WATER, 65.0},
                                            {"yeast", v1::FORMULA_ROLE_FRESH_YEAST, 1.0}}) {
    v1::FormulaLine& line = *formula.add_lines();
    line.set_name(name);
    line.set_role(role);
    line.set_percent(percent);
  }
  v1::StarterObservation& seen = *documents.starters[0].add_observations();
  seen.mutable_feed_time()->set_seconds(kMorning);
  seen.mutable_observe_time()->set_seconds(kMorning + 2 * 3600);
  seen.set_recipe_id("loaf");
  seen.set_stage(v1::FERMENT_STAGE_BULK);
  seen.set_rise(2.2);  // far sooner than the model has it
  seen.set_celsius(25);
  const auto lessons = learnFromDoughs(documents, absl::UTCTimeZone());
  ASSERT_TRUE(lessons.ok()) << lessons.status();
  ASSERT_EQ(lessons->effects.size(), 1u);
  EXPECT_GT(documents.recipes[0].formula().learned_pace().value(), 1.15);
  EXPECT_EQ(documents.recipes[0].formula().learned_pace().telling(), v1::EFFECT_TELLING_TOLD);
  EXPECT_FALSE(documents.starters[0].has_learned_vigour());
}

TEST(BreadLearningTest, ALearnedStarterMakesTheForecastSoonerAndSurer) {
  BreadDocuments documents = kitchenOfTwo();
  for (const double parts : {1.0, 2.0, 5.0})
    for (const double hours : {4.0, 6.0}) {
      const double rise = trueRise(1.3, 22, parts, hours);
      see(documents, 0, "counter", parts, hours, std::max(1.0, rise));
    }
  v1::BreadFormula formula;
  formula.set_piece_count(1);
  formula.set_piece_mass_g(900);
  for (const auto& [name, role, percent] :
       {std::tuple{"flour", v1::FORMULA_ROLE_FLOUR, 100.0}, {"water", v1::FORMULA_ROLE_WATER, 70.0}}) {
    v1::FormulaLine& line = *formula.add_lines();
    line.set_name(name);
    line.set_role(role);
    line.set_percent(percent);
  }
  formula.mutable_levain()->set_dough_share_percent(15);
  const auto before = BreadRecipe::of(formula, &documents.starters[1]);
  ASSERT_TRUE(learnFromDoughs(documents, absl::UTCTimeZone()).ok());
  const auto after = BreadRecipe::of(formula, &documents.starters[0]);
  ASSERT_TRUE(before.ok() && after.ok());
  EXPECT_GT(after->starterCulture().vigour, before->starterCulture().vigour * 1.1);
  EXPECT_LT(after->uncertainty().logVigour, before->uncertainty().logVigour);
}

}  // namespace
}  // namespace suppertide::compose
