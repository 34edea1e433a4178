// Doughs outside any plan, over the wire.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "suppertide/v1/bread_service.grpc.pb.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::int64_t kNoon = 1'800'000'000 / 86'400 * 86'400 + 12 * 3600;  // UTC
constexpr std::int64_t kHour = 3600;

void addLine(v1::BreadFormula& formula, const char* name, v1::FormulaRole role, double percent) {
  v1::FormulaLine& line = *formula.add_lines();
  line.set_name(name);
  line.set_role(role);
  line.set_percent(percent);
}

// Enriched rolls with 19 % of levain.
v1::BreadFormula rolls() {
  v1::BreadFormula formula;
  formula.set_dough_class(v1::DOUGH_CLASS_ENRICHED);
  addLine(formula, "flour", v1::FORMULA_ROLE_FLOUR, 100);
  addLine(formula, "water", v1::FORMULA_ROLE_WATER, 58);
  addLine(formula, "butter", v1::FORMULA_ROLE_FAT, 10);
  addLine(formula, "sugar", v1::FORMULA_ROLE_SUGAR, 8);
  addLine(formula, "salt", v1::FORMULA_ROLE_SALT, 2);
  formula.mutable_levain()->set_starter_id("rye");
  formula.mutable_levain()->set_dough_share_percent(19);
  formula.mutable_levain()->set_hydration_percent(100);
  formula.set_piece_count(20);
  formula.set_piece_mass_g(55);
  formula.set_dough_celsius(26);
  return formula;
}

v1::Starter rye() {
  v1::Starter starter;
  starter.set_id("rye");
  starter.set_display_name("Rye");
  return starter;
}

template <typename Stays>
void addPlace(Stays* stays, v1::PlaceKind kind, double celsius, std::int64_t hours) {
  v1::PlaceStay& stay = *stays->Add();
  stay.set_kind(kind);
  stay.mutable_temperature()->add_celsius(celsius);
  if (hours > 0) stay.mutable_duration()->set_seconds(hours * kHour);
}

class DoughServiceTest : public testing::Test {
 protected:
  DoughServiceTest() {
    served_.found();
    forecast_.set_time_zone("UTC");
    *forecast_.mutable_formula() = rolls();
    *forecast_.mutable_starter() = rye();
    forecast_.mutable_start_time()->set_seconds(kNoon);
    forecast_.set_stage(v1::FERMENT_STAGE_BULK);
    addPlace(forecast_.mutable_stays(), v1::PLACE_KIND_PROOFER, 28, 6);
    fit_.set_time_zone("UTC");
    *fit_.mutable_formula() = rolls();
    *fit_.mutable_starter() = rye();
    fit_.mutable_ready()->mutable_start()->set_seconds(kNoon + 5 * kHour);
    fit_.mutable_ready()->mutable_limit()->set_seconds(kNoon + 5 * kHour + kHour / 2);
    fit_.mutable_work()->set_start("06:30");
    fit_.mutable_work()->set_limit("23:00");
    addPlace(fit_.mutable_places(), v1::PLACE_KIND_COUNTER, 22, 0);
    addPlace(fit_.mutable_places(), v1::PLACE_KIND_PROOFER, 28, 0);
    addPlace(fit_.mutable_places(), v1::PLACE_KIND_FRIDGE, 4, 0);
  }

  grpc::Status forecast(v1::ForecastDoughResponse* answer) {
    context_ = with(served_.token);
    return stub_->ForecastDough(context_.get(), forecast_, answer);
  }
  grpc::Status fit(v1::FitDoughResponse* answer) {
    context_ = with(served_.token);
    return stub_->FitDough(context_.get(), fit_, answer);
  }
  std::vector<std::string> violations() const {
    const auto& trailers = context_->GetServerTrailingMetadata();
    const auto found = trailers.find("suppertide-error-bin");
    std::vector<std::string> paths;
    v1::ErrorDetail detail;
    if (found != trailers.end() &&
        detail.ParseFromString(std::string(found->second.data(), found->second.size())))
      for (const auto& violation : detail.violations()) paths.push_back(violation.field_path());
    return paths;
  }

  Served served_;
  std::unique_ptr<v1::BreadService::Stub> stub_ = v1::BreadService::NewStub(served_.channel());
  v1::ForecastDoughRequest forecast_;
  v1::FitDoughRequest fit_;
  std::unique_ptr<grpc::ClientContext> context_;
};

TEST_F(DoughServiceTest, ForecastsABulkWithItsWindowBandAndCurve) {
  v1::ForecastDoughResponse answer;
  const grpc::Status status = forecast(&answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  const v1::FermentForecast& told = answer.forecast();
  ASSERT_TRUE(told.has_best_time());
  const double hours = static_cast<double>(told.best_time().seconds() - kNoon) / 3600.0;
  EXPECT_GT(hours, 1.5);  // common practice: about 2.5 h at 28 degrees
  EXPECT_LT(hours, 4);
  EXPECT_LT(told.ready_from_time().seconds(), told.best_time().seconds());
  EXPECT_LT(told.fast_time().seconds(), told.best_time().seconds());
  EXPECT_GT(told.slow_time().seconds(), told.best_time().seconds());
  ASSERT_GT(told.samples_size(), 20);
  EXPECT_NEAR(told.samples(0).rise(), 1, 1e-9);
  EXPECT_GT(told.samples(20).fast_rise(), told.samples(20).slow_rise());
}

TEST_F(DoughServiceTest, WarmWaterMakesAWarmDough) {
  v1::ForecastDoughResponse cold;
  v1::ForecastDoughResponse warm;
  forecast_.set_water_celsius(5);
  ASSERT_TRUE(forecast(&cold).ok());
  forecast_.set_water_celsius(40);
  ASSERT_TRUE(forecast(&warm).ok());
  EXPECT_GT(warm.forecast().samples(0).celsius(), cold.forecast().samples(0).celsius() + 8);
}

TEST_F(DoughServiceTest, ADoughThatIsNeverReadyIsAnAnswer) {
  forecast_.mutable_stays(0)->mutable_temperature()->set_celsius(0, 5);
  v1::ForecastDoughResponse answer;
  ASSERT_TRUE(forecast(&answer).ok());
  EXPECT_FALSE(answer.forecast().has_ready_from_time());
  EXPECT_GT(answer.forecast().samples_size(), 0);
}

TEST_F(DoughServiceTest, NamesEveryFieldAtFault) {
  forecast_.mutable_formula()->mutable_lines(1)->set_percent(300);
  forecast_.mutable_formula()->mutable_levain()->set_dough_share_percent(0);
  forecast_.mutable_stays(0)->clear_duration();
  forecast_.set_water_celsius(-5);
  forecast_.set_time_zone("Nowhere/None");
  v1::ForecastDoughResponse answer;
  const grpc::Status status = forecast(&answer);
  EXPECT_EQ(status.error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(status.error_message(), HasSubstr("130 %"));
  EXPECT_THAT(violations(), Contains("formula.lines"));
  EXPECT_THAT(violations(), Contains("formula.levain.doughSharePercent"));
  EXPECT_THAT(violations(), Contains("stays[0].duration"));
  EXPECT_THAT(violations(), Contains("waterCelsius"));
  EXPECT_THAT(violations(), Contains("timeZone"));
}

TEST_F(DoughServiceTest, ALevainNeedsSomethingToGrowFrom) {
  forecast_.set_stage(v1::FERMENT_STAGE_LEVAIN);
  forecast_.set_flour_per_starter(0);
  v1::ForecastDoughResponse answer;
  EXPECT_EQ(forecast(&answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(), Contains("flourPerStarter"));
}

TEST_F(DoughServiceTest, EveryWayIsReadyInTheSpanAndAsksForWorkOnlyInItsHours) {
  v1::FitDoughResponse answer;
  const grpc::Status status = fit(&answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  ASSERT_GT(answer.ways_size(), 3);
  ASSERT_EQ(answer.reasons_size(), answer.ways_size());
  EXPECT_FALSE(answer.has_nearest());
  for (const v1::DoughForecast& way : answer.ways()) {
    ASSERT_EQ(way.stages_size(), 3);
    const std::int64_t end = way.stages(2).end_time().seconds();
    EXPECT_GE(end, fit_.ready().start().seconds() - 60);
    EXPECT_LE(end, fit_.ready().limit().seconds() + 60);
    for (const v1::FermentForecast& stage : way.stages()) {
      const std::int64_t minute = stage.start_time().seconds() / 60 % (24 * 60);
      EXPECT_GE(minute, 6 * 60 + 30 - 1) << way.ShortDebugString();
      EXPECT_LE(minute, 23 * 60 + 1) << way.ShortDebugString();
    }
  }
}

TEST_F(DoughServiceTest, ACoolKitchenNeedsLonger) {
  v1::FitDoughResponse usual;
  v1::FitDoughResponse cool;
  fit_.mutable_places()->DeleteSubrange(1, 2);  // only the counter
  ASSERT_TRUE(fit(&usual).ok());
  fit_.mutable_places(0)->mutable_temperature()->set_celsius(0, 18);
  ASSERT_TRUE(fit(&cool).ok());
  const auto shortest = [](const v1::FitDoughResponse& answer) {
    std::int64_t least = answer.nearest_reasons().whole().seconds();
    for (const auto& one : answer.reasons())
      least = least == 0 ? one.whole().seconds() : std::min(least, one.whole().seconds());
    return least;
  };
  EXPECT_GT(shortest(cool), shortest(usual));
}

TEST_F(DoughServiceTest, SaysTheNearestWhereThereIsNoWay) {
  *fit_.mutable_earliest_start_time() = fit_.ready().start();
  fit_.mutable_earliest_start_time()->set_seconds(fit_.ready().start().seconds() - 4 * kHour);
  v1::FitDoughResponse answer;
  ASSERT_TRUE(fit(&answer).ok());
  EXPECT_THAT(answer.ways(), IsEmpty());
  ASSERT_TRUE(answer.has_nearest());
  EXPECT_GT(answer.nearest_reasons().miss().seconds(), 0);  // too late
}

TEST_F(DoughServiceTest, AFridgeAloneIsNoPlaceToBegin) {
  fit_.mutable_places()->DeleteSubrange(0, 2);
  v1::FitDoughResponse answer;
  EXPECT_EQ(fit(&answer).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(), Contains("places"));
}

TEST_F(DoughServiceTest, TheModelStandsBesideItsSources) {
  context_ = with(served_.token);
  v1::CheckModelResponse answer;
  ASSERT_TRUE(stub_->CheckModel(context_.get(), {}, &answer).ok());
  ASSERT_GT(answer.checks_size(), 30);
  for (const v1::ModelCheck& row : answer.checks()) {
    EXPECT_FALSE(row.source().empty()) << row.claim();
    EXPECT_TRUE(row.passes() || !row.known_miss().empty()) << row.claim();
  }
}

}  // namespace
}  // namespace suppertide::service
