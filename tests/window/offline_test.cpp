// A household without a server: what is done is shown at once and waits.
#include <gtest/gtest.h>

#include <QtTest/qabstractitemmodeltester.h>
#include <QtTest/qsignalspy.h>

#include "client/link/session.h"
#include "client/session/household_session.h"
#include "tests/support/temp_dir.h"
#include "tests/window/sample.h"

namespace suppertide::testing {
namespace {

HouseholdSession::Clock noon() {
  return [] { return Instant(std::chrono::seconds(secondsAt("2026-06-20T12:00:00+01:00"))); };
}

v1::Report finished(const char* dish, const char* step) {
  v1::Report report;
  report.set_dish_id(dish);
  report.set_step_id(step);
  report.set_finished(true);
  return report;
}

v1::UpdateRecipeRequest renamed(const link::Replica& replica, const std::string& name) {
  v1::UpdateRecipeRequest request;
  *request.mutable_recipe() = replica.recipes.begin()->second;
  request.mutable_recipe()->set_display_name(name);
  return request;
}

class OfflineTest : public ::testing::Test {
 protected:
  OfflineTest() {
    session_.setMemberId("noor");
    session_.adopt(sampleReplica());
  }
  const v1::Progress& progress() const { return session_.replica()->progresses.at(kSampleEvent); }
  std::string recipeName() const { return session_.replica()->recipes.begin()->second.display_name(); }

  HouseholdSession session_{noon()};
};

TEST_F(OfflineTest, AReportIsOnTheScreenAtOnceAndWaits) {
  QSignalSpy changed(&session_, &HouseholdSession::householdChanged);
  session_.report(finished("rolls", "shape"));
  EXPECT_EQ(changed.count(), 1);
  ASSERT_EQ(progress().reports_size(), 1);
  const v1::Report& report = progress().reports(0);
  EXPECT_EQ(report.member_id(), "noor");
  EXPECT_EQ(report.happen_time().seconds(), secondsAt("2026-06-20T12:00:00+01:00"));
  EXPECT_TRUE(session_.view()->isDone(*session_.view()->step("rolls/shape")));
  EXPECT_TRUE(session_.waits(QString::fromStdString(report.id())));
  EXPECT_EQ(session_.waitingCount(), 1);
  EXPECT_EQ(session_.stateText().toStdString(), "Connecting, 1 waiting");
}

TEST_F(OfflineTest, AnEditIsOnTheScreenAtOnce) {
  session_.send(renamed(*session_.replica(), "Cloud rolls"));
  EXPECT_EQ(recipeName(), "Cloud rolls");
  EXPECT_TRUE(session_.waits(QString::fromStdString(session_.replica()->recipes.begin()->first)));
}

TEST_F(OfflineTest, TheLastChangesAreTakenBackOneByOne) {
  const std::string before = recipeName();
  EXPECT_TRUE(session_.undoText().isEmpty());
  session_.send(renamed(*session_.replica(), "Cloud rolls"));
  session_.report(finished("rolls", "shape"));
  EXPECT_EQ(session_.undoText().toStdString(), "“Shape the rolls” done");
  session_.undo();
  EXPECT_FALSE(session_.view()->isDone(*session_.view()->step("rolls/shape")));
  EXPECT_EQ(session_.undoText().toStdString(), "Change of the recipe “Cloud rolls”");
  session_.undo();
  EXPECT_EQ(recipeName(), before);
  EXPECT_TRUE(session_.undoText().isEmpty());
}

TEST_F(OfflineTest, ARestartKeepsTheHouseholdAndWhatWaits) {
  const TempDir folder;
  link::LinkOptions nowhere;
  nowhere.target = "unix:" + folder.file("none.sock");
  nowhere.householdId = "quay";
  {
    HouseholdSession session(noon());
    session.setMemberId("noor");
    session.start(nowhere, kSampleEvent, folder.file("kept"));
    session.adopt(sampleReplica());
    session.report(finished("rolls", "shape"));
  }
  HouseholdSession session(noon());
  session.start(nowhere, kSampleEvent, folder.file("kept"));
  ASSERT_TRUE(session.known()) << "there before any server answered";
  EXPECT_EQ(session.waitingCount(), 1);
  ASSERT_NE(session.view(), nullptr);
  EXPECT_TRUE(session.view()->isDone(*session.view()->step("rolls/shape")));
}

TEST_F(OfflineTest, ASecondWindowOnTheSameHouseholdSaysWhatItCannotKeep) {
  const TempDir folder;
  link::LinkOptions nowhere;
  nowhere.target = "unix:" + folder.file("none.sock");
  HouseholdSession first(noon());
  first.start(nowhere, kSampleEvent, folder.file("kept"));
  HouseholdSession second(noon());
  QSignalSpy failed(&second, &HouseholdSession::failed);
  second.start(nowhere, kSampleEvent, folder.file("kept"));
  ASSERT_TRUE(failed.wait());
  EXPECT_TRUE(failed.first().first().toString().startsWith(QStringLiteral("What you do now is lost if")));
}

TEST_F(OfflineTest, StopForgetsTheHousehold) {
  session_.report(finished("rolls", "shape"));
  session_.stop();
  EXPECT_FALSE(session_.known());
  EXPECT_EQ(session_.view(), nullptr);
  EXPECT_EQ(session_.waitingCount(), 0);
  EXPECT_TRUE(session_.undoText().isEmpty());
  EXPECT_EQ(session_.events()->count(), 0);
}

}  // namespace
}  // namespace suppertide::testing
