// Who does what: the lists of one cook at a moment, as plan and reports make them.
#include <gtest/gtest.h>

#include <QtTest/qabstractitemmodeltester.h>
#include <QtTest/qsignalspy.h>

#include "client/tasks/tasks_controller.h"
#include "tests/window/moment.h"
#include "tests/window/sample.h"

namespace suppertide {
namespace {

v1::Report reported(const char* dish, const char* step, const char* time) {
  v1::Report report;
  report.set_id(std::string(dish) + step + time);
  report.set_dish_id(dish);
  report.set_step_id(step);
  report.set_member_id("ines");
  report.mutable_happen_time()->set_seconds(testing::secondsAt(time));
  return report;
}

std::shared_ptr<const link::Replica> sampleWith(const std::vector<v1::Report>& reports) {
  link::Replica replica = *testing::sampleReplica();
  v1::Progress& progress = replica.progresses[testing::kSampleEvent];
  for (const v1::Report& report : reports) *progress.add_reports() = report;
  return std::make_shared<link::Replica>(std::move(replica));
}

std::vector<std::string> titles(const std::vector<Record>& records) {
  std::vector<std::string> all;
  for (const Record& record : records)
    all.push_back(record.value(QStringLiteral("title")).toString().toStdString());
  return all;
}

std::string field(const Record& record, const char* name) {
  return record.value(QString::fromLatin1(name)).toString().toStdString();
}

using Titles = std::vector<std::string>;
// Saturday 15:10 in Lisbon: the rolls are to be shaped since 15:05.
constexpr char kSaturday[] = "2026-06-20T15:10:00+01:00";

TaskLists listsOf(const std::vector<v1::Report>& reports, const std::string& cook = "ines",
                  const std::string& time = kSaturday) {
  const PlanView view(sampleWith(reports), testing::kSampleEvent);
  return TaskReader(view, at(time)).read(cook);
}

std::vector<v1::Report> finishedBefore() {
  std::vector<v1::Report> reports;
  for (const auto& [dish, step] : std::vector<std::pair<const char*, const char*>>{{"loaf", "feed"},
                                                                                   {"loaf", "mix"},
                                                                                   {"loaf", "fold1"},
                                                                                   {"loaf", "fold2"},
                                                                                   {"loaf", "shape"},
                                                                                   {"loaf", "bake"},
                                                                                   {"rolls", "mix"}}) {
    reports.push_back(reported(dish, step, "2026-06-20T14:00:00+01:00"));
    reports.back().set_finished(true);
  }
  return reports;
}

TEST(TaskReaderTest, WhatIsDueComesFirstAndAsks) {
  const TaskLists lists = listsOf(finishedBefore());
  ASSERT_EQ(titles(lists.now), (Titles{"Shape the rolls"}));
  EXPECT_EQ(field(lists.now[0], "countdown"), "due 5 min ago");
  EXPECT_EQ(field(lists.now[0], "mainWord"), "Done");
  EXPECT_EQ(lists.askingCount, 1);
}

TEST(TaskReaderTest, WhatIsUnderWayCountsDownAndDoesNotAsk) {
  auto reports = finishedBefore();
  reports.push_back(reported("rolls", "shape", kSaturday));
  reports.back().set_started(true);
  const TaskLists lists = listsOf(reports);
  ASSERT_EQ(titles(lists.now), (Titles{"Shape the rolls"}));
  EXPECT_EQ(field(lists.now[0], "countdown"), "20 min left");
  EXPECT_EQ(lists.askingCount, 0);
}

TEST(TaskReaderTest, WhatWasTakenBackIsToBeDoneAgain) {
  auto reports = finishedBefore();
  reports.push_back(reported("rolls", "shape", kSaturday));
  reports.back().set_finished(true);
  EXPECT_TRUE(listsOf(reports).now.empty());
  v1::Report undo = reported("rolls", "shape", "2026-06-20T15:09:00+01:00");
  undo.set_undone_report_id(reports.back().id());
  reports.push_back(undo);
  EXPECT_EQ(titles(listsOf(reports).now), (Titles{"Shape the rolls"}));
}

TEST(TaskReaderTest, WhatIsHandedOverIsTheOthersTask) {
  auto reports = finishedBefore();
  reports.push_back(reported("rolls", "shape", kSaturday));
  reports.back().set_handed_to_member_id("noor");
  EXPECT_TRUE(listsOf(reports).now.empty());
  const Titles noor = titles(listsOf(reports, "noor").now);
  EXPECT_NE(std::find(noor.begin(), noor.end(), "Shape the rolls"), noor.end());
}

TEST(TaskReaderTest, FoodGoesInAndComesOutOfTheOven) {
  auto reports = finishedBefore();
  TaskLists lists = listsOf(reports, "tomas", "2026-06-20T15:45:00+01:00");
  const auto roast = [&] {
    for (const Record& record : lists.now)
      if (field(record, "taskId") == "chicken/roast") return record;
    return Record();
  };
  EXPECT_EQ(field(roast(), "mainWord"), "It's in");
  EXPECT_TRUE(roast().value(QStringLiteral("mainBegins")).toBool());
  reports.push_back(reported("chicken", "roast", "2026-06-20T15:45:00+01:00"));
  reports.back().set_started(true);
  lists = listsOf(reports, "tomas", "2026-06-20T15:50:00+01:00");
  EXPECT_EQ(field(roast(), "mainWord"), "It's out");
  EXPECT_FALSE(roast().value(QStringLiteral("mainBegins")).toBool());
}

TEST(TaskReaderTest, TheNextDaysAreToldByTheirFirstTask) {
  const TaskLists lists = listsOf({}, "ines", "2026-06-18T20:00:00+01:00");
  EXPECT_EQ(titles(lists.next), (Titles{"Feed the levain"})) << "today";
  ASSERT_EQ(lists.later.size(), 2U);
  EXPECT_EQ(field(lists.later[0], "day"), "Friday 19 June");
  EXPECT_EQ(lists.later[0].value(QStringLiteral("more")).toInt(), 3) << "two folds and the shaping";
}

TEST(TaskReaderTest, TellsWhatTheOthersDoNow) {
  const TaskLists lists = listsOf(finishedBefore());
  ASSERT_EQ(lists.others.size(), 2U);
  EXPECT_EQ(field(lists.others[0], "name"), "Tomás");
  EXPECT_FALSE(field(lists.others[1], "doing").empty());
}

class TasksControllerTest : public ::testing::Test {
 protected:
  TasksControllerTest() { session_.setMemberId("ines"); }

  HouseholdSession session_{[] { return at(kSaturday); }};
  TasksController tasks_;
  QAbstractItemModelTester now_{tasks_.now(), QAbstractItemModelTester::FailureReportingMode::Fatal};
  QAbstractItemModelTester next_{tasks_.next(), QAbstractItemModelTester::FailureReportingMode::Fatal};
  QAbstractItemModelTester later_{tasks_.later(), QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(TasksControllerTest, ShowsThePersonsOwnTasksAndOthersOnDemand) {
  tasks_.setSession(&session_);
  EXPECT_FALSE(tasks_.hasPlan());
  session_.adopt(sampleWith(finishedBefore()));
  EXPECT_EQ(tasks_.cookId().toStdString(), "ines");
  EXPECT_EQ(tasks_.askingCount(), 1);
  tasks_.setCookId(QStringLiteral("tomas"));
  EXPECT_EQ(tasks_.cookName().toStdString(), "Tomás");
}

TEST_F(TasksControllerTest, ADeviceWithoutACookChoosesWhose) {
  session_.setMemberId("somebody");
  session_.adopt(sampleWith({}));
  tasks_.setSession(&session_);
  EXPECT_TRUE(tasks_.cookId().isEmpty());
  EXPECT_EQ(tasks_.now()->count(), 0);
  EXPECT_EQ(tasks_.cooks()->count(), 3);
  EXPECT_EQ(tasks_.others()->count(), 3);
}

TEST_F(TasksControllerTest, AFinishedTaskLeavesTheOthersInPlace) {
  tasks_.setSession(&session_);
  auto reports = finishedBefore();
  session_.adopt(sampleWith(reports));
  ASSERT_EQ(tasks_.now()->count(), 1);
  QSignalSpy reset(tasks_.now(), &QAbstractItemModel::modelReset);
  reports.push_back(reported("rolls", "shape", kSaturday));
  reports.back().set_finished(true);
  session_.adopt(sampleWith(reports));
  EXPECT_EQ(tasks_.now()->count(), 0);
  EXPECT_EQ(reset.size(), 0);
  EXPECT_EQ(session_.undoText().toStdString(), "“Shape the rolls” done");
  EXPECT_FALSE(tasks_.calmText().isEmpty());
}

}  // namespace
}  // namespace suppertide
