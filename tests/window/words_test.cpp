// What is said about steps and times.
#include <gtest/gtest.h>

#include "client/words/step_words.h"
#include "client/words/time_words.h"
#include "tests/window/moment.h"
#include "tests/window/sample.h"

namespace suppertide {
namespace {

TEST(TimeWordsTest, SaysTimesInTheEventsZone) {
  const TimeWords lisbon("Europe/Lisbon", QLocale(QLocale::English, QLocale::UnitedKingdom));
  const TimeWords tokyo("Asia/Tokyo", QLocale(QLocale::English, QLocale::UnitedStates));
  const Instant time = at("2026-06-20T17:40:00+01:00");
  EXPECT_EQ(lisbon.clock(time).toStdString(), "17:40");
  EXPECT_EQ(tokyo.dayClock(time).toStdString(), "Sun 1:40 AM");
  EXPECT_EQ(TimeWords("No/Where", QLocale::c()).clock(time).toStdString(), "16:40") << "read as UTC";
}

TEST(TimeWordsTest, NamesTheDaysOnlyWhenASpanRunsOverMidnight) {
  const TimeWords words("Europe/Lisbon", QLocale(QLocale::English, QLocale::UnitedKingdom));
  EXPECT_EQ(words.span(at("2026-06-20T17:40:00+01:00"), at("2026-06-20T18:05:00+01:00")).toStdString(),
            "17:40–18:05");
  EXPECT_EQ(words.span(at("2026-06-19T22:30:00+01:00"), at("2026-06-20T07:00:00+01:00")).toStdString(),
            "Fri 22:30–Sat 07:00");
}

TEST(TimeWordsTest, SaysLengthsRounded) {
  const TimeWords words;
  EXPECT_EQ(words.length(25.2).toStdString(), "25 min");
  EXPECT_EQ(words.length(-80).toStdString(), "1 h 20 min");
  EXPECT_EQ(words.length(120).toStdString(), "2 h");
  EXPECT_EQ(words.length(51 * 60).toStdString(), "2 days 3 h");
}

class StepWordsTest : public ::testing::Test {
 protected:
  StepDetails details(const std::string& id) const { return StepWords(view_).details(*view_.step(id)); }
  PlanView view_{testing::sampleReplica(), testing::kSampleEvent};
};

TEST_F(StepWordsTest, SpeaksABarAsAPersonWould) {
  const StepWords words(view_);
  EXPECT_EQ(words.spoken(*view_.step("rolls/shape")).toStdString(), "Shape the rolls, 15:05 to 15:30, Ines");
  EXPECT_EQ(words.spoken(*view_.step("chicken/roast")).toStdString(),
            "Roast the chickens, 15:40 to 17:10, Tomás, Large oven at 195 °C instead of 200 °C");
  EXPECT_EQ(words.spoken(*view_.step("loaf/levain")).toStdString(),
            "Let the levain ripen, Thu 20:45 to Fri 07:30");
}

TEST_F(StepWordsTest, TellsWhyAStepStandsWhereItDoes) {
  EXPECT_EQ(details("rolls/bake").why.toStdString(), "In time for “Chicken”.");
  EXPECT_EQ(details("chicken/roast").why.toStdString(),
            "Beside “Bake the root gratin” (Root gratin), which needs 195 °C in Large oven.");
  EXPECT_EQ(details("loaf/bake").why.toStdString(), "Ines is away or asleep otherwise.");
  EXPECT_EQ(details("loaf/shape").why.toStdString(), "“Bulk fermentation” is ready then.");
}

TEST_F(StepWordsTest, TellsWhatToWeighWhereAndHowMuchSlackThereIs) {
  const StepDetails mix = details("loaf/mix");
  EXPECT_EQ(mix.when.toStdString(), "Friday 19 June, 07:30–07:55 (25 min)");
  EXPECT_TRUE(mix.weighings.contains(QStringLiteral("820 g bread flour")));
  EXPECT_TRUE(mix.weighings.contains(QStringLiteral("Water at 27 °C")));
  EXPECT_EQ(mix.where.toStdString(), "Stand mixer");
  EXPECT_EQ(mix.slack.toStdString(), "May end 30 min later without moving a serving time");
  EXPECT_TRUE(mix.cautions.startsWith(QStringLiteral("Don't taste raw dough")));
  EXPECT_EQ(details("soup/warm").slack.toStdString(), "None: a later end moves a serving time");
  EXPECT_EQ(details("loaf/bulk").dough.toStdString().substr(0, 37), "Ready 12:35–14:05, best at 13:15. R");
}

TEST_F(StepWordsTest, OnlyWhatHoldsALateDishUpIsLate) {
  const StepWords words(view_);
  EXPECT_TRUE(words.isLate(*view_.step("tart/cream")));
  EXPECT_FALSE(words.isLate(*view_.step("tart/fill"))) << "it has slack";
  EXPECT_FALSE(words.isLate(*view_.step("soup/warm"))) << "its dish is in time";
  EXPECT_EQ(words.state(*view_.step("tart/cream")).toStdString(),
            "Late: its dish is ready 5 min after its time.");
}

TEST_F(StepWordsTest, AReportOfTheEndMakesAStepDoneUntilItIsTakenBack) {
  link::Replica replica = *testing::sampleReplica();
  v1::Progress& progress = replica.progresses[testing::kSampleEvent];
  v1::Report& report = *progress.add_reports();
  report.set_id("r1");
  report.set_dish_id("loaf");
  report.set_step_id("mix");
  report.set_finished(true);
  const PlanView done(std::make_shared<link::Replica>(replica), testing::kSampleEvent);
  EXPECT_TRUE(done.isDone(*done.step("loaf/mix")));
  EXPECT_FALSE(done.isDone(*done.step("loaf/feed")));
  v1::Report& undo = *progress.add_reports();
  undo.set_id("r2");
  undo.set_undone_report_id("r1");
  const PlanView undone(std::make_shared<link::Replica>(replica), testing::kSampleEvent);
  EXPECT_FALSE(undone.isDone(*undone.step("loaf/mix")));
}

TEST_F(StepWordsTest, ReadsDialsInTheHouseholdsUnit) {
  link::Replica replica = *testing::sampleReplica();
  replica.household.set_temperature_unit(v1::TEMPERATURE_UNIT_FAHRENHEIT);
  const PlanView view(std::make_shared<link::Replica>(replica), testing::kSampleEvent);
  EXPECT_EQ(view.dial(240).toStdString(), "465 °F");
  EXPECT_EQ(view.degrees(24).toStdString(), "75 °F");
}

}  // namespace
}  // namespace suppertide
