// Doughs worked out, and what was seen of them, over the wire.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "suppertide/v1/bread_service.grpc.pb.h"
#include "suppertide/v1/kitchen_service.grpc.pb.h"
#include "suppertide/v1/starter_service.grpc.pb.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

using testing::Contains;
using testing::HasSubstr;

constexpr std::int64_t kMorning = 1'790'000'000 / 86'400 * 86'400 + 8 * 3600;  // UTC

// The small dinner's household: rolls ("rolls") from the starter "s" in the kitchen "k".
class BreadReadingsTest : public testing::Test {
 protected:
  BreadReadingsTest() {
    served_.found();
    served_.importDinner();
    asked_.set_household_id(served_.household);
    const v1::Bundle bundle = served_.exported();
    for (const v1::Recipe& recipe : bundle.recipes())
      if (recipe.has_formula()) bread_ = recipe;
    starter_ = bundle.starters(0).id();
    kitchen_ = bundle.kitchens(0).id();
  }

  // A levain fed 1:1:1 on the counter that has risen so far after so many hours, `day` days later.
  void rose(int day, double hours, double rise) {
    v1::StarterReading& reading = *asked_.add_observations();
    reading.set_starter_id(starter_);
    v1::StarterObservation& seen = *reading.mutable_observation();
    seen.mutable_feed_time()->set_seconds(kMorning + day * 86'400);
    seen.mutable_observe_time()->set_seconds(kMorning + day * 86'400 + std::lround(hours * 3600));
    seen.set_flour_per_starter(1);
    seen.set_water_per_starter(1);
    seen.set_rise(rise);
    seen.set_kitchen_id(kitchen_);
    seen.set_place_id("counter");
  }

  grpc::Status send(const std::string& token = "") {
    asked_.set_request_id(freshRequest());
    context_ = with(token.empty() ? served_.token : token);
    return stub_->AddBreadReadings(context_.get(), asked_, &answer_);
  }

  const v1::LearnedEffect* effect(v1::EffectKind kind) const {
    for (const v1::LearnedEffect& one : answer_.effects())
      if (one.kind() == kind) return &one;
    return nullptr;
  }

  std::int64_t levainBest() {
    v1::ForecastDoughRequest request;
    *request.mutable_formula() = bread_.formula();
    *request.mutable_starter() = served_.exported().starters(0);
    request.set_time_zone("UTC");
    request.mutable_start_time()->set_seconds(kMorning);
    request.set_stage(v1::FERMENT_STAGE_LEVAIN);
    request.set_flour_per_starter(1);
    v1::PlaceStay& stay = *request.add_stays();
    stay.set_kind(v1::PLACE_KIND_COUNTER);
    stay.mutable_temperature()->add_celsius(22);
    stay.mutable_duration()->set_seconds(24 * 3600);
    v1::ForecastDoughResponse forecast;
    context_ = with(served_.token);
    EXPECT_TRUE(stub_->ForecastDough(context_.get(), request, &forecast).ok());
    return forecast.forecast().best_time().seconds();
  }

  Served served_;
  std::unique_ptr<v1::BreadService::Stub> stub_ = v1::BreadService::NewStub(served_.channel());
  v1::Recipe bread_;
  std::string starter_, kitchen_;
  v1::AddBreadReadingsRequest asked_;
  v1::AddBreadReadingsResponse answer_;
  std::unique_ptr<grpc::ClientContext> context_;
};

TEST_F(BreadReadingsTest, WhatIsLearnedIsKeptAndTheNextForecastUsesIt) {
  const std::int64_t before = levainBest();
  for (int day = 0; day < 4; ++day) rose(day, 4, 2.2);  // far quicker than a usual starter at 22 degrees
  const grpc::Status status = send();
  ASSERT_TRUE(status.ok()) << status.error_message();
  EXPECT_EQ(answer_.used_count(), 4);
  EXPECT_GT(answer_.revision(), 0);
  ASSERT_NE(effect(v1::EFFECT_KIND_VIGOUR), nullptr);
  EXPECT_GT(effect(v1::EFFECT_KIND_VIGOUR)->value(), 1.05);
  const v1::Starter kept = served_.exported().starters(0);
  EXPECT_EQ(kept.observations_size(), 4);
  EXPECT_GT(kept.learned_vigour().value(), 1.05);
  EXPECT_LT(kept.learned_vigour().spread_share(), 1);
  EXPECT_EQ(kept.vigour(), 1);  // as stated
  bool warmer = false;
  const v1::Kitchen kitchen = served_.exported().kitchens(0);
  for (const v1::Place& place : kitchen.places()) warmer = warmer || place.learned_warmth().value() > 0.05;
  EXPECT_TRUE(warmer);
  EXPECT_LT(levainBest(), before - 1800);
}

TEST_F(BreadReadingsTest, SaysWhichEffectsOnePlaceAndOneStarterCannotTellApart) {
  for (int day = 0; day < 3; ++day) rose(day, 4, 2.2);
  ASSERT_TRUE(send().ok());
  int tied = 0;
  for (const v1::LearnedEffect& one : answer_.effects()) {
    if (one.telling() != v1::EFFECT_TELLING_TIED) continue;
    ++tied;
    EXPECT_FALSE(one.tied_subject_id().empty());
    EXPECT_NE(one.correlation(), 0);
  }
  EXPECT_GE(tied, 2);
}

TEST_F(BreadReadingsTest, TheSameReadingTwiceTeachesNothingMore) {
  rose(0, 4, 2.2);
  ASSERT_TRUE(send().ok());
  const double once = effect(v1::EFFECT_KIND_VIGOUR)->value();
  ASSERT_TRUE(send().ok());
  EXPECT_EQ(effect(v1::EFFECT_KIND_VIGOUR)->value(), once);
  EXPECT_EQ(served_.exported().starters(0).observations_size(), 1);
}

TEST_F(BreadReadingsTest, LearnsInPartsWhatItWouldLearnAtOnce) {
  rose(0, 4, 2.2);
  ASSERT_TRUE(send().ok());
  asked_.clear_observations();
  rose(1, 4.5, 2.3);
  ASSERT_TRUE(send().ok());
  const double inParts = effect(v1::EFFECT_KIND_VIGOUR)->value();
  Served other;
  other.found();
  other.importDinner();
  rose(0, 4, 2.2);
  asked_.set_household_id(other.household);
  asked_.set_request_id(freshRequest());
  const auto context = with(other.token);
  ASSERT_TRUE(
      v1::BreadService::NewStub(other.channel())->AddBreadReadings(context.get(), asked_, &answer_).ok());
  EXPECT_NEAR(effect(v1::EFFECT_KIND_VIGOUR)->value(), inParts, 1e-9);
}

TEST_F(BreadReadingsTest, TryingKeepsNothing) {
  rose(0, 4, 2.2);
  asked_.set_validate_only(true);
  ASSERT_TRUE(send().ok());
  EXPECT_NE(effect(v1::EFFECT_KIND_VIGOUR), nullptr);
  EXPECT_EQ(served_.exported().starters(0).observations_size(), 0);
  EXPECT_FALSE(served_.exported().starters(0).has_learned_vigour());
}

TEST_F(BreadReadingsTest, AReadingAfterMixingCorrectsTheWaterOfThatBread) {
  v1::RecipeReading& reading = *asked_.add_mixings();
  reading.set_recipe_id(bread_.id());
  v1::MixReading& mixed = *reading.mutable_reading();
  mixed.set_room_celsius(22);
  mixed.set_flour_celsius(22);
  mixed.set_water_celsius(30);
  mixed.set_dough_celsius(33);
  const grpc::Status status = send();
  ASSERT_TRUE(status.ok()) << status.error_message();
  ASSERT_EQ(answer_.waters_size(), 1);
  EXPECT_GT(answer_.waters(0).correction_k(), 0.5);
  EXPECT_EQ(answer_.waters(0).reading_count(), 1);
  const v1::Bundle now = served_.exported();
  for (const v1::Recipe& recipe : now.recipes()) {
    if (recipe.id() != bread_.id()) continue;
    ASSERT_EQ(recipe.formula().mix_readings_size(), 1);
    EXPECT_GT(recipe.formula().mix_readings(0).time().seconds(), 0);  // now, where none was told
  }
}

TEST_F(BreadReadingsTest, AnObservationOfADoughTeachesOfItsRecipe) {
  v1::StarterReading& reading = *asked_.add_observations();
  reading.set_starter_id(starter_);
  v1::StarterObservation& seen = *reading.mutable_observation();
  seen.mutable_feed_time()->set_seconds(kMorning);
  seen.mutable_observe_time()->set_seconds(kMorning + 2 * 3600);
  seen.set_recipe_id(bread_.id());
  seen.set_stage(v1::FERMENT_STAGE_BULK);
  seen.set_seen(v1::SEEN_KIND_READY);
  seen.set_celsius(25);
  const grpc::Status status = send();
  ASSERT_TRUE(status.ok()) << status.error_message();
  ASSERT_NE(effect(v1::EFFECT_KIND_PACE), nullptr);
  EXPECT_GT(effect(v1::EFFECT_KIND_PACE)->value(), 1);
  EXPECT_EQ(effect(v1::EFFECT_KIND_WARMTH), nullptr);  // measured, so nothing to learn of a place
}

TEST_F(BreadReadingsTest, NamesWhatIsNotThereAndEveryFieldAtFault) {
  rose(0, 4, 2.2);
  asked_.mutable_observations(0)->set_starter_id("nobody");
  EXPECT_EQ(send().error_code(), grpc::StatusCode::NOT_FOUND);
  asked_.mutable_observations(0)->set_starter_id(starter_);
  asked_.mutable_observations(0)->mutable_observation()->set_place_id("attic");
  EXPECT_EQ(send().error_code(), grpc::StatusCode::NOT_FOUND);
  asked_.mutable_observations(0)->mutable_observation()->set_rise(9);
  const grpc::Status wrong = send();
  EXPECT_EQ(wrong.error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(wrong.error_message(), HasSubstr("6"));
}

TEST_F(BreadReadingsTest, AReaderMayNotAdd) {
  rose(0, 4, 2.2);
  EXPECT_EQ(send(served_.invite(v1::ROLE_READER)).error_code(), grpc::StatusCode::PERMISSION_DENIED);
}

class WorkOutTest : public BreadReadingsTest {
 protected:
  WorkOutTest() { *work_.mutable_formula() = bread_.formula(); }
  grpc::Status workOut() {
    context_ = with(served_.token);
    return stub_->WorkOutDough(context_.get(), work_, &worked_);
  }
  double gramsOf(const std::string& part, const std::string& line) const {
    for (const v1::DoughPart& one : worked_.parts())
      if (one.id() == part)
        for (const v1::DoughPartLine& each : one.lines())
          if (each.name() == line) return each.mass_g();
    return -1;
  }

  v1::WorkOutDoughRequest work_;
  v1::WorkOutDoughResponse worked_;
};

TEST_F(WorkOutTest, TellsEachPartAndTheyMakeTheDough) {
  const grpc::Status status = workOut();
  ASSERT_TRUE(status.ok()) << status.error_message();
  ASSERT_EQ(worked_.parts_size(), 2);
  EXPECT_EQ(worked_.parts(0).id(), "levain");
  EXPECT_NEAR(worked_.parts(1).mass_g(), worked_.dough_mass_g(), 1e-6);
  EXPECT_NEAR(worked_.dough_mass_g(), 16 * 55, 1e-6);
  EXPECT_GT(worked_.parts(0).mass_g(), gramsOf("dough", "levain"));  // some sticks to the jar
  EXPECT_EQ(worked_.water().rule_factors(), 4);
  EXPECT_LT(worked_.bake().least_minutes(), worked_.bake().most_minutes());
}

TEST_F(WorkOutTest, ScalesByPiecesFlourDoughPansAndGuests) {
  work_.mutable_amount()->mutable_pieces()->set_count(8);
  ASSERT_TRUE(workOut().ok());
  EXPECT_NEAR(worked_.dough_mass_g(), 8 * 55, 1e-6);
  work_.mutable_amount()->set_flour_g(1000);
  ASSERT_TRUE(workOut().ok());
  EXPECT_NEAR(worked_.flour_mass_g(), 1000, 1e-6);
  work_.mutable_amount()->set_dough_g(1200);
  ASSERT_TRUE(workOut().ok());
  EXPECT_NEAR(worked_.dough_mass_g(), 1200, 1e-6);
  EXPECT_EQ(worked_.formula().piece_count(), 22);
  v1::PanAmount& pan = *work_.mutable_amount()->mutable_pans();
  pan.set_count(2);
  pan.set_length_mm(300);
  pan.set_width_mm(110);
  pan.set_height_mm(60);
  ASSERT_TRUE(workOut().ok());
  EXPECT_EQ(worked_.formula().piece_count(), 2);
  EXPECT_NEAR(worked_.pan_ml(), 1980, 1e-6);
  EXPECT_NEAR(worked_.formula().piece_mass_g() * worked_.ml_per_g(), 1980, 1e-6);
  work_.mutable_amount()->mutable_guests()->set_count(4);
  work_.mutable_amount()->mutable_guests()->set_serving_count(8);
  ASSERT_TRUE(workOut().ok());
  EXPECT_EQ(worked_.formula().piece_count(), 8);
}

TEST_F(WorkOutTest, EditsAndTheirUndoGiveTheVeryFormulaBack) {
  v1::FormulaEdit& more = *work_.add_edits();
  more.set_line_name("butter");
  more.set_percent(20);
  v1::FormulaEdit& milk = *work_.add_edits();
  milk.set_line_name("milk");
  milk.set_mass_g(300);
  v1::FormulaEdit& seeds = *work_.add_edits();
  seeds.mutable_add()->set_name("poppy");
  seeds.mutable_add()->set_role(v1::FORMULA_ROLE_OTHER);
  seeds.mutable_add()->set_percent(3);
  ASSERT_TRUE(workOut().ok());
  EXPECT_EQ(worked_.formula().lines_size(), bread_.formula().lines_size() + 1);
  EXPECT_NEAR(gramsOf("dough", "poppy") / worked_.flour_mass_g(), 0.03, 1e-9);
  *work_.mutable_formula() = worked_.formula();
  work_.clear_edits();
  const auto undo = worked_.undo();
  for (const v1::FormulaEdit& one : undo) *work_.add_edits() = one;
  ASSERT_TRUE(workOut().ok());
  EXPECT_EQ(worked_.formula().SerializeAsString(), bread_.formula().SerializeAsString());
}

TEST_F(WorkOutTest, AnImpossibleEditSaysWhichLineAndWhy) {
  v1::FormulaEdit& edit = *work_.add_edits();
  edit.set_line_name("water");
  edit.set_percent(70);
  grpc::Status status = workOut();
  EXPECT_EQ(status.error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(status.error_message(), HasSubstr("water: there is no such line"));
  work_.mutable_edits(0)->set_line_name("milk");
  work_.mutable_edits(0)->set_percent(200);
  status = workOut();
  EXPECT_EQ(status.error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(status.error_message(), HasSubstr("between 30 and 130 %"));
}

}  // namespace
}  // namespace suppertide::service
