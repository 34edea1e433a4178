// From documents to lanes.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "client/timeline/picture_builder.h"
#include "client/timeline/picture_difference.h"
#include "tests/window/sample.h"

namespace suppertide {
namespace {

Picture pictureOf(const std::shared_ptr<const link::Replica>& replica) {
  const PlanView view(replica, testing::kSampleEvent);
  return PictureBuilder(view, baseFor(view)).build();
}

const Lane* laneOf(const Picture& picture, const char* id) {
  const auto found = std::find_if(picture.lanes.begin(), picture.lanes.end(),
                                  [&](const Lane& lane) { return lane.id == QLatin1String(id); });
  return found == picture.lanes.end() ? nullptr : &*found;
}

const StepRow* stepOf(const Lane& lane, const char* id) {
  const auto found = std::find_if(lane.steps.begin(), lane.steps.end(),
                                  [&](const StepRow& step) { return step.id == QLatin1String(id); });
  return found == lane.steps.end() ? nullptr : &*found;
}

TEST(PictureTest, DrawsEveryStepOfThePlan) {
  const auto replica = testing::sampleReplica();
  const Picture picture = pictureOf(replica);
  std::set<std::string> drawn;
  for (const Lane& lane : picture.lanes) {
    for (const StepRow& step : lane.steps) drawn.insert(step.id.toStdString());
  }
  for (const v1::PlannedStep& step : replica->plans.at(testing::kSampleEvent).steps())
    EXPECT_EQ(drawn.count(step.id()), 1U) << step.id();
}

TEST(PictureTest, HasLanesForCooksOvensDoughsBurnersPlacesAndWhatWaits) {
  const Picture picture = pictureOf(testing::sampleReplica());
  std::vector<std::string> ids;
  for (const Lane& lane : picture.lanes) ids.push_back(lane.id.toStdString());
  EXPECT_EQ(ids, (std::vector<std::string>{"cook/ines", "cook/tomas", "cook/noor", "oven/large", "oven/small",
                                           "dough/loaf", "dough/rolls", "burners", "place/fridge",
                                           "place/warmer", "waiting"}));
}

TEST(PictureTest, ABakeStandsWithItsCookAndInItsOven) {
  const Picture picture = pictureOf(testing::sampleReplica());
  EXPECT_NE(stepOf(*laneOf(picture, "cook/tomas"), "chicken/roast"), nullptr);
  EXPECT_NE(stepOf(*laneOf(picture, "oven/large"), "chicken/roast"), nullptr);
  EXPECT_FALSE(stepOf(*laneOf(picture, "cook/tomas"), "chicken/roast")->handsOn)
      << "it needs a look now and then";
  EXPECT_TRUE(stepOf(*laneOf(picture, "cook/tomas"), "chicken/carve")->handsOn);
}

TEST(PictureTest, OvensHaveTheirCurveAndSetpoints) {
  const Picture picture = pictureOf(testing::sampleReplica());
  const Lane& large = *laneOf(picture, "oven/large");
  EXPECT_GT(large.curve.temperatures.size(), 20);
  ASSERT_EQ(large.curve.setpoints.size(), 3) << "heating and holding at one setpoint are one";
  EXPECT_EQ(large.curve.setpoints[0].label.toStdString(), "240 °C");
  EXPECT_EQ(large.subRowCount, 2) << "chickens and gratin share it";
  EXPECT_TRUE(large.spoken.contains(QStringLiteral("240 °C from 07:30 to 08:55")));
}

TEST(PictureTest, FermentsHaveTheirRiseAndWindow) {
  const Picture picture = pictureOf(testing::sampleReplica());
  const Lane& loaf = *laneOf(picture, "dough/loaf");
  const StepRow* bulk = stepOf(loaf, "loaf/bulk");
  ASSERT_NE(bulk, nullptr);
  EXPECT_TRUE(bulk->rise.known());
  EXPECT_EQ(bulk->rise.readyUntil - bulk->rise.readyFrom, 90);
  EXPECT_EQ(bulk->rise.best - bulk->start, 320);
  EXPECT_EQ(bulk->detail.toStdString(), "Counter by the window");
  EXPECT_EQ(stepOf(loaf, "loaf/bake"), nullptr);
}

TEST(PictureTest, AnEventWithoutAPlanStillHasItsCourses) {
  link::Replica replica = *testing::sampleReplica();
  replica.plans.clear();
  const Picture picture = pictureOf(std::make_shared<link::Replica>(replica));
  EXPECT_FALSE(picture.hasPlan);
  EXPECT_TRUE(picture.lanes.empty());
  EXPECT_EQ(picture.courses.size(), 3U);
  EXPECT_EQ(picture.title.toStdString(), "Midsummer supper");
}

TEST(PictureTest, TellsALateCourse) {
  const Picture picture = pictureOf(testing::sampleReplica());
  EXPECT_FALSE(picture.courses[0].late);
  EXPECT_TRUE(picture.courses[2].late);
  EXPECT_EQ(picture.courses[2].spoken.toStdString(), "Tart is served at 19:00, 5 min late");
}

TEST(PictureTest, UnknownIdsAreShownAsTheyAreAndLoseNothing) {
  link::Replica replica = *testing::sampleReplica();
  replica.kitchens.clear();
  replica.recipes.clear();
  replica.household.clear_members();
  const Picture picture = pictureOf(std::make_shared<link::Replica>(replica));
  EXPECT_EQ(laneOf(picture, "oven/large")->title.toStdString(), "large");
  EXPECT_EQ(laneOf(picture, "cook/ines")->title.toStdString(), "ines");
}

TEST(PictureTest, TellsWhatIsLeftOutAndDrawsNoWaitOfNoTime) {
  link::Replica replica = *testing::sampleReplica();
  v1::Plan& plan = replica.plans.at(testing::kSampleEvent);
  for (v1::PlannedStep& step : *plan.mutable_steps()) {
    if (step.id() == "rolls/proof") *step.mutable_end_time() = step.start_time();
    if (step.id() == "loaf/fold1") step.set_left_out(true);
    if (step.id() == "rolls/bake") {
      step.set_load(1);
      step.set_load_count(2);
    }
  }
  const Picture picture = pictureOf(std::make_shared<link::Replica>(replica));
  EXPECT_EQ(stepOf(*laneOf(picture, "dough/rolls"), "rolls/proof"), nullptr);
  for (const Lane& lane : picture.lanes) {
    for (const StepRow& step : lane.steps) {
      if (step.id != QLatin1String("rolls/bake")) continue;
      EXPECT_TRUE(step.title.endsWith(QStringLiteral("(load 1 of 2)"))) << step.title.toStdString();
    }
  }
  EXPECT_EQ(picture.leftOut.toStdString(), "Left out in this plan: “Fold the dough” (Seeded sourdough).");
}

TEST(CurvesTest, FewPointsMissNoneByMoreThanAllowed) {
  QPolygonF curve;
  for (int i = 0; i <= 400; ++i) curve << QPointF(i, 40 * std::exp(-i / 60.0) + (i > 300 ? 20 : 0));
  const QPolygonF line = straightened(curve, 0.25);
  EXPECT_LT(line.size(), 30);
  EXPECT_EQ(line.first(), curve.first());
  EXPECT_EQ(line.last(), curve.last());
  QList<CurvePoint> kept;
  for (const QPointF& point : line) kept.append({point.x(), point.y()});
  for (const QPointF& point : curve) EXPECT_NEAR(valueAt(kept, point.x()), point.y(), 0.25 + 1e-9);
}

TEST(CurvesTest, UprightLinesAndSinglePointsStay) {
  const QPolygonF step{{0, 0}, {5, 0}, {5, 30}, {9, 30}};
  EXPECT_EQ(straightened(step, 0.25), step);
  EXPECT_EQ(straightened(QPolygonF{{3, 4}}, 0.25), (QPolygonF{{3, 4}}));
  EXPECT_TRUE(straightened({}, 0.25).isEmpty());
}

TEST(PictureDifferenceTest, FindsTheStepsThatStandElsewhere) {
  const Picture before = pictureOf(testing::sampleReplica());
  const Picture after = pictureOf(testing::sampleWithStepLater("rolls/shape", 5));
  EXPECT_EQ(movedSteps(before, after), QSet<QString>{QStringLiteral("rolls/shape")});
  EXPECT_TRUE(movedSteps(before, before).isEmpty());
  EXPECT_EQ(goneSteps(before, after), 0);
}

}  // namespace
}  // namespace suppertide
