// Where doughs stand, and their rise as curves.
#include <gtest/gtest.h>

#include <QtTest/qabstractitemmodeltester.h>

#include "client/doughs/doughs_controller.h"
#include "tests/window/moment.h"
#include "tests/window/sample.h"

namespace suppertide {
namespace {

v1::FermentForecast threeHours() {
  v1::FermentForecast stage;
  const std::int64_t start = testing::secondsAt("2026-06-20T12:00:00Z");
  stage.mutable_start_time()->set_seconds(start);
  stage.mutable_end_time()->set_seconds(start + 3 * 3600);
  stage.set_wanted_rise(1.8);
  stage.set_high_rise(2.0);
  for (int hour = 0; hour <= 3; ++hour) {
    v1::RiseSample* sample = stage.add_samples();
    sample->mutable_time()->set_seconds(start + hour * 3600);
    sample->set_rise(1 + 0.3 * hour);
    sample->set_slow_rise(1 + 0.2 * hour);
    sample->set_fast_rise(1 + 0.4 * hour);
    sample->set_celsius(24 + hour);
  }
  stage.mutable_ready_from_time()->set_seconds(start + 2 * 3600);
  return stage;
}

TEST(RiseCurveTest, LiesOnTheChartFromEdgeToEdge) {
  const v1::FermentForecast stage = threeHours();
  const RiseAxis axis = axisOf(stage, nullptr);
  const RiseCurve curve = curveOf(stage, axis);
  ASSERT_EQ(curve.rise.size(), 4);
  EXPECT_DOUBLE_EQ(curve.rise.first().x(), 0);
  EXPECT_DOUBLE_EQ(curve.rise.last().x(), 1);
  for (int i = 1; i < 4; ++i) {
    EXPECT_LT(curve.slow[i].y(), curve.rise[i].y());
    EXPECT_GT(curve.fast[i].y(), curve.rise[i].y());
    EXPECT_LE(curve.fast[i].y(), 1);
  }
  EXPECT_NEAR(curve.readyFrom, 2.0 / 3, 1e-9);
  EXPECT_DOUBLE_EQ(curve.readyUntil, 1) << "open at its end";
  EXPECT_NEAR(axis.riseAt(axis.y(1.4)), 1.4, 1e-9);
}

TEST(RiseCurveTest, ReadsValuesBetweenSamplesAndNoneOutside) {
  const v1::FermentForecast stage = threeHours();
  EXPECT_NEAR(riseAt(stage, at("2026-06-20T13:30:00Z")).value(), 1.45, 1e-9);
  EXPECT_NEAR(celsiusAt(stage, at("2026-06-20T12:15:00Z")).value(), 24.25, 1e-9);
  EXPECT_FALSE(riseAt(stage, at("2026-06-20T11:59:00Z")).has_value());
  EXPECT_FALSE(riseAt(stage, at("2026-06-20T15:01:00Z")).has_value());
}

class DoughReaderTest : public ::testing::Test {
 protected:
  const v1::FermentForecast& stage(const std::string& stepId) const {
    for (const v1::DoughForecast& dough : view_.plan()->doughs())
      for (const v1::FermentForecast& stage : dough.stages())
        if (stage.step_id() == stepId) return stage;
    ADD_FAILURE() << stepId << " has no forecast";
    return view_.plan()->doughs(0).stages(0);
  }
  std::string state(const std::string& stepId, const std::string& time) const {
    return DoughReader(view_, at(time)).state(stage(stepId)).toStdString();
  }

  PlanView view_{testing::sampleReplica(), testing::kSampleEvent};
};

TEST_F(DoughReaderTest, SaysWhereAStageStands) {
  EXPECT_EQ(state("rolls/proof", "2026-06-20T15:00:00+01:00"), "Begins at 15:30, in 30 min");
  EXPECT_TRUE(QString::fromStdString(state("rolls/proof", "2026-06-20T15:40:00+01:00"))
                  .startsWith(QStringLiteral("Now about 1.")));
  EXPECT_EQ(state("rolls/proof", "2026-06-20T17:40:00+01:00"), "Over since 16:40");
}

TEST_F(DoughReaderTest, KnowsTheStageOfTheMoment) {
  const v1::DoughForecast& loaf = view_.plan()->doughs(0);
  EXPECT_EQ(DoughReader(view_, at("2026-06-18T10:00:00Z")).stageNow(loaf)->step_id(), "loaf/levain");
  EXPECT_EQ(DoughReader(view_, at("2026-06-19T10:00:00Z")).stageNow(loaf)->step_id(), "loaf/bulk");
  EXPECT_EQ(DoughReader(view_, at("2026-06-21T10:00:00Z")).stageNow(loaf)->step_id(), "loaf/proof");
}

TEST_F(DoughReaderTest, NamesTheNextActAndWho) {
  const DoughReader reader(view_, at("2026-06-19T10:00:00Z"));
  EXPECT_EQ(reader.nextAct(view_.plan()->doughs(0)).toStdString(), "Shape the loaves at 13:20, Ines");
}

class DoughsControllerTest : public ::testing::Test {
 protected:
  DoughsControllerTest() {
    session_.adopt(testing::sampleReplica());
    session_.setMemberId("ines");
    doughs_.setSession(&session_);
  }
  HouseholdSession session_{[] { return at("2026-06-20T15:45:00+01:00"); }};
  DoughsController doughs_;
  QAbstractItemModelTester list_{doughs_.doughs(), QAbstractItemModelTester::FailureReportingMode::Fatal};
  QAbstractItemModelTester ticks_{doughs_.ticks(), QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(DoughsControllerTest, BeginsWithTheDoughThatStandsNow) {
  EXPECT_EQ(doughs_.doughs()->count(), 2);
  EXPECT_EQ(doughs_.stageId().toStdString(), "rolls/proof");
  EXPECT_TRUE(doughs_.curve().known);
  EXPECT_GT(doughs_.nowX(), 0);
  EXPECT_LT(doughs_.nowX(), 1);
  EXPECT_TRUE(doughs_.mayTell());
  EXPECT_GE(doughs_.ticks()->count(), 2);
}

TEST_F(DoughsControllerTest, TheFirstTapTakesTheForecastTheNextOnesChangeIt) {
  doughs_.nudgeRise(1);
  const double first = doughs_.toldRise();
  doughs_.nudgeRise(1);
  EXPECT_NEAR(doughs_.toldRise(), first + 0.1, 1e-9);
  EXPECT_TRUE(doughs_.telling());
  doughs_.dent(v1::DENT_TEST_STAYS);
  EXPECT_EQ(doughs_.toldRise(), 0) << "one thing at a time";
  EXPECT_EQ(doughs_.toldDent(), static_cast<int>(v1::DENT_TEST_STAYS));
  doughs_.forget();
  EXPECT_FALSE(doughs_.telling());
  EXPECT_FALSE(doughs_.working());
}

TEST_F(DoughsControllerTest, AStageThatDoesNotStandCannotBeToldOf) {
  doughs_.setDoughId(QStringLiteral("loaf"));
  EXPECT_FALSE(doughs_.mayTell());
  doughs_.nudgeRise(1);
  doughs_.dent(1);
  EXPECT_FALSE(doughs_.telling());
}

}  // namespace
}  // namespace suppertide
