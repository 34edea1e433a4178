// What a cooking day's oven readings become: timed rises and falls, by the plan's own program.
#include "server/compose/oven_learning.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "server/compose/day/oven_lessons.h"
#include "server/compose/oven_curves.h"

namespace suppertide::compose {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

constexpr std::int64_t kBegin = 1'800'000'000;

// Heated to 200 from cold for 20 minutes, held for an hour, cooled to 150 for 15, held again.
class OvenLearningTest : public ::testing::Test {
 protected:
  OvenLearningTest() {
    oven_.set_id("large");
    oven_.set_display_name("Large oven");
    oven_.set_min_setpoint_celsius(50);
    oven_.set_max_setpoint_celsius(250);
    v1::OvenProgram& program = *plan_.add_oven_programs();
    program.set_oven_id("large");
    segment(program, v1::OVEN_SEGMENT_KIND_HEATING, 0, 20, 200);
    segment(program, v1::OVEN_SEGMENT_KIND_HOLDING, 20, 80, 200);
    segment(program, v1::OVEN_SEGMENT_KIND_COOLING, 80, 95, 150);
    segment(program, v1::OVEN_SEGMENT_KIND_HOLDING, 95, 160, 150);
    v1::PlannedStep& step = *plan_.add_steps();
    step.set_dish_id("roast");
    step.set_step_id("bake");
    step.set_oven_id("large");
  }

  static void segment(v1::OvenProgram& program, v1::OvenSegmentKind kind, int from, int to, int setpoint) {
    v1::OvenSegment& one = *program.add_segments();
    one.set_kind(kind);
    one.mutable_start_time()->set_seconds(kBegin + from * 60);
    one.mutable_end_time()->set_seconds(kBegin + to * 60);
    one.set_setpoint_celsius(setpoint);
  }
  v1::Report& read(int minute, double celsius) {
    v1::Report& report = *progress_.add_reports();
    report.set_id("r" + std::to_string(progress_.reports_size()));
    report.set_dish_id("roast");
    report.set_step_id("bake");
    report.mutable_happen_time()->set_seconds(kBegin + minute * 60);
    report.set_oven_celsius(celsius);
    return report;
  }
  std::vector<OvenFate> fates() {
    std::vector<OvenFate> fates;
    for (const DayReading& use : learnFromDay(oven_, plan_, progress_).uses) fates.push_back(use.fate);
    return fates;
  }

  v1::Oven oven_;
  v1::Plan plan_;
  v1::Progress progress_;
};

TEST_F(OvenLearningTest, ASlowOvenIsLearnedAsSlow) {
  for (const int minute : {6, 12, 18}) read(minute, 360 - 338 * std::exp(-minute / 30.0));
  const OvenLearning learned = learnFromDay(oven_, plan_, progress_);
  EXPECT_TRUE(learned.told);
  ASSERT_EQ(learned.oven.heat_curve().rises_size(), 3);
  EXPECT_EQ(learned.oven.heat_curve().rises(0).from_celsius(), 22) << "timed from the switching on";
  const double before = fitOven(oven_).after.heatMinutes;
  const double after = fitOven(learned.oven).after.heatMinutes;
  EXPECT_GT(after, before * 1.3);
  EXPECT_LT(after, 30);
  EXPECT_FALSE(oven_.has_heat_curve()) << "nothing is applied to what was given";
}

TEST_F(OvenLearningTest, ASlowOvenIsOfferedAsALessonAndWrittenWhenTaken) {
  for (const int minute : {6, 12, 18}) read(minute, 360 - 338 * std::exp(-minute / 30.0));
  Documents documents;
  documents.kitchen.set_id("barn");
  *documents.kitchen.add_ovens() = oven_;
  const PastEvent past{documents, plan_, progress_};
  v1::Review review;
  addOvenLessons(past, review);
  ASSERT_EQ(review.lessons_size(), 1);
  const v1::Lesson& lesson = review.lessons(0);
  EXPECT_EQ(lesson.kind(), v1::LESSON_KIND_OVEN_HEATING);
  EXPECT_EQ(lesson.celsius(), 200);
  EXPECT_EQ(lesson.observation_count(), 3);
  EXPECT_GT(lesson.value_after(), lesson.value_before() * 1.2);
  // 22 to 200 of an oven that tends to 360 in 30 minutes.
  EXPECT_NEAR(lesson.value_after(), 30 * std::log(338.0 / 160), 3);
  BreadDocuments household;
  household.kitchens.push_back(documents.kitchen);
  useOvenLesson(past, lesson, household);
  EXPECT_EQ(household.kitchens[0].ovens(0).heat_curve().rises_size(), 3);
  documents.kitchen = household.kitchens[0];
  v1::Review again;
  addOvenLessons(past, again);
  EXPECT_THAT(again.lessons(), IsEmpty()) << "it is known now";
}

TEST_F(OvenLearningTest, HeldReadingsTellOfTheDialOnly) {
  for (const int minute : {30, 50, 70}) read(minute, minute == 50 ? 188 : 191);
  const OvenLearning learned = learnFromDay(oven_, plan_, progress_);
  EXPECT_FALSE(learned.told);
  EXPECT_FALSE(learned.oven.has_heat_curve());
  ASSERT_TRUE(learned.dialOffset.has_value());
  EXPECT_NEAR(*learned.dialOffset, -9, 1e-9);
}

TEST_F(OvenLearningTest, AFallIsTimedBetweenTwoReadings) {
  read(81, 190);
  read(91, 22 + 168 * std::exp(-10 / 24.0));
  const OvenLearning learned = learnFromDay(oven_, plan_, progress_);
  ASSERT_EQ(learned.oven.heat_curve().falls_ajar_size(), 1);
  EXPECT_GT(fitOven(learned.oven).after.ajarMinutes, fitOven(oven_).after.ajarMinutes);
}

TEST_F(OvenLearningTest, RefusesWhatNoOvenCanDoAndWhatWasNotOn) {
  read(5, 100);
  read(10, 90);    // colder while it heats
  read(15, 520);   // hotter than it gets
  read(200, 150);  // long off
  EXPECT_THAT(fates(),
              ElementsAre(OvenFate::kUsed, OvenFate::kImpossible, OvenFate::kImpossible, OvenFate::kNotOn));
}

TEST_F(OvenLearningTest, OneReadingFarFromTheOthersIsLeftOut) {
  for (const int minute : {4, 8, 12, 16}) read(minute, 360 - 338 * std::exp(-minute / 20.0));
  progress_.mutable_reports(1)->set_oven_celsius(progress_.reports(0).oven_celsius() + 4);
  const auto all = fates();
  EXPECT_EQ(std::count(all.begin(), all.end(), OvenFate::kLeftOut), 1);
}

TEST_F(OvenLearningTest, TheSameDayIsNotLearnedTwiceAndUndoneReportsNotAtAll) {
  read(10, 150);
  const OvenLearning first = learnFromDay(oven_, plan_, progress_);
  EXPECT_TRUE(first.told);
  EXPECT_FALSE(learnFromDay(first.oven, plan_, progress_).told);
  v1::Report& undone = *progress_.add_reports();
  undone.set_id("undo");
  undone.set_undone_report_id("r1");
  EXPECT_THAT(learnFromDay(oven_, plan_, progress_).uses, IsEmpty());
}

TEST_F(OvenLearningTest, AReadingOfAnotherOvenIsNotThisOnes) {
  read(10, 150).set_oven_id("small");
  EXPECT_THAT(fates(), IsEmpty());
}

}  // namespace
}  // namespace suppertide::compose
