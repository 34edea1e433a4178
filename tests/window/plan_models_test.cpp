// What planning shows without a server: models, previews, answers that come too late.
#include <gtest/gtest.h>

#include <QtTest/qabstractitemmodeltester.h>
#include <QtTest/qsignalspy.h>

#include "client/planning/plan_difference.h"
#include "client/planning/planning.h"
#include "tests/window/sample.h"

namespace suppertide {
namespace {

using Mode = QAbstractItemModelTester::FailureReportingMode;

const v1::Plan& planOf(const link::Replica& replica) {
  return replica.plans.at(testing::kSampleEvent);
}

v1::MakePlanResponse moved(const std::string& stepId, int minutes) {
  const auto after = testing::sampleWithStepLater(stepId, minutes);
  v1::MakePlanResponse answer;
  *answer.mutable_plan() = planOf(*after);
  *answer.mutable_plan()->mutable_moved_steps() =
      movedBetween(planOf(*testing::sampleReplica()), planOf(*after));
  answer.set_final(true);
  return answer;
}

class PlanningTest : public ::testing::Test {
 protected:
  PlanningTest() {
    session_.setMemberId("ines");
    session_.adopt(testing::sampleReplica());
  }
  HouseholdSession session_{
      [] { return Instant(std::chrono::seconds(testing::secondsAt("2026-06-20T15:20:00+01:00"))); }};
  Planning planning_{session_};
  WhatIf& whatIf_ = *planning_.whatIf();
};

TEST_F(PlanningTest, AnAnswerTellsWhatMovesAndIsPreviewed) {
  const QAbstractItemModelTester tester(whatIf_.moves(), Mode::Fatal);
  whatIf_.ask(QStringLiteral("rolls/shape"), 10);
  EXPECT_EQ(whatIf_.question().toStdString(), "“Shape the rolls” at Sat 15:15 instead of Sat 15:05");
  whatIf_.take(whatIf_.number(), moved("rolls/shape", 10));
  EXPECT_TRUE(whatIf_.answered());
  EXPECT_EQ(whatIf_.summary().toStdString(), "Nothing else has to move.");
  ASSERT_EQ(whatIf_.moves()->count(), 1);
  EXPECT_EQ(
      whatIf_.moves()->data(whatIf_.moves()->index(0, 0), MoveModel::ChangesRole).toString().toStdString(),
      "10 min later");
  EXPECT_EQ(planning_.preview(), whatIf_.preview());
  EXPECT_TRUE(planning_.comparing());
  EXPECT_TRUE(whatIf_.mayApply());
}

TEST_F(PlanningTest, AnAnswerToAnOlderQuestionIsDropped) {
  whatIf_.ask(QStringLiteral("rolls/shape"), 10);
  const int first = whatIf_.number();
  whatIf_.ask(QStringLiteral("rolls/shape"), 20);
  whatIf_.take(first, moved("rolls/shape", 10));
  EXPECT_FALSE(whatIf_.answered());
  EXPECT_FALSE(planning_.previewing());
  whatIf_.take(whatIf_.number(), moved("rolls/shape", 20));
  EXPECT_TRUE(whatIf_.answered());
}

TEST_F(PlanningTest, LeavingChangesNothingAndDropsWhatStillComes) {
  whatIf_.ask(QStringLiteral("rolls/shape"), 10);
  const int asked = whatIf_.number();
  QSignalSpy left(&whatIf_, &WhatIf::left);
  whatIf_.leave();
  EXPECT_EQ(left.size(), 1);
  whatIf_.take(asked, moved("rolls/shape", 10));
  EXPECT_FALSE(whatIf_.isOpen());
  EXPECT_EQ(planning_.preview(), nullptr);
}

TEST_F(PlanningTest, WhatGetsWorseIsNamed) {
  whatIf_.ask(QStringLiteral("rolls/shape"), 90);
  v1::MakePlanResponse answer = moved("rolls/shape", 90);
  answer.mutable_plan()->mutable_quality()->mutable_costs()->set_lateness(
      planOf(*testing::sampleReplica()).quality().costs().lateness() + 30);
  answer.mutable_plan()->add_unserved()->set_dish_id("gratin");
  whatIf_.take(whatIf_.number(), answer);
  EXPECT_TRUE(whatIf_.worse().startsWith(QStringLiteral("Root gratin does not fit any more.")));
  EXPECT_TRUE(whatIf_.worse().contains(QStringLiteral("30 min later in all.")));
}

TEST_F(PlanningTest, ACookSeesTheAnswerButOnlyAHostAppliesIt) {
  session_.setMemberId("noor");
  whatIf_.ask(QStringLiteral("rolls/shape"), 10);
  whatIf_.take(whatIf_.number(), moved("rolls/shape", 10));
  EXPECT_FALSE(whatIf_.mayApply());
  EXPECT_FALSE(whatIf_.obstacle().isEmpty());
}

TEST_F(PlanningTest, WithoutTheServerTheQuestionSaysSo) {
  whatIf_.ask(QStringLiteral("rolls/shape"), 10);
  EXPECT_FALSE(whatIf_.asking());
  EXPECT_TRUE(whatIf_.obstacle().contains(QStringLiteral("server")));
  planning_.run()->begin();
  EXPECT_FALSE(planning_.run()->running());
  EXPECT_TRUE(planning_.run()->trouble().contains(QStringLiteral("server")));
}

v1::FindRemediesResponse remedy(int number, int minutes) {
  v1::FindRemediesResponse message;
  message.set_number(number);
  message.mutable_remedy()->set_kind(v1::REMEDY_KIND_LATER_COURSE);
  message.mutable_remedy()->set_course_id("main");
  message.mutable_remedy()->mutable_duration()->set_seconds(minutes * 60);
  *message.mutable_event() = testing::sampleReplica()->events.at(testing::kSampleEvent);
  *message.mutable_plan() = planOf(*testing::sampleWithStepLater("rolls/shape", minutes));
  message.set_candidate_count(9);
  message.set_tried_count(number);
  return message;
}

TEST_F(PlanningTest, RemediesStreamInAndEndCheapestFirst) {
  RemedySearch& search = *planning_.remedies();
  const QAbstractItemModelTester tester(search.remedies(), Mode::Fatal);
  const QAbstractItemModelTester clashTester(search.clashes(), Mode::Fatal);
  search.begin();
  search.take(remedy(1, 30));
  search.take(remedy(2, 10));
  EXPECT_EQ(search.progress().toStdString(), "2 of 9 changes tried, 2 help");
  search.choose(1);
  EXPECT_NE(planning_.preview(), nullptr);
  EXPECT_EQ(search.moves()->count(), 1);
  v1::FindRemediesResponse last;
  last.set_final(true);
  last.add_ranking(2);
  last.add_ranking(1);
  search.take(last);
  const auto title = [&](int row) {
    return search.remedies()->data(search.remedies()->index(row, 0), RemedyModel::TitleRole).toString();
  };
  EXPECT_TRUE(title(0).contains(QStringLiteral("10 min later")));
  EXPECT_TRUE(title(1).contains(QStringLiteral("30 min later")));
  EXPECT_EQ(search.chosen(), 1);
  search.close();
  EXPECT_EQ(planning_.preview(), nullptr);
}

TEST_F(PlanningTest, ARemedyForAnEventThatChangedMeanwhileIsNotApplied) {
  RemedySearch& search = *planning_.remedies();
  search.begin();
  search.take(remedy(1, 30));
  search.choose(1);
  EXPECT_TRUE(search.obstacle().isEmpty());
  link::Replica other = *testing::sampleReplica();
  other.recipes.at("r-tart").mutable_meta()->set_etag("another");
  session_.adopt(std::make_shared<link::Replica>(other));
  EXPECT_FALSE(search.obstacle().isEmpty());
}

TEST(PlanDocumentsTest, APlanIsOutOfDateWhenItsRecipesAreAndNotWhenItWasStoredWithThem) {
  link::Replica replica = *testing::sampleReplica();
  v1::Plan& plan = replica.plans.at(testing::kSampleEvent);
  plan.set_input_revision(5);
  plan.mutable_meta()->set_revision(7);
  auto note = [&](const std::string& kind, const auto& document) {
    (*plan.mutable_input_etags())[kind + "/" + document.id()] = document.meta().etag();
  };
  note("event", replica.events.at(testing::kSampleEvent));
  note("kitchen", replica.kitchens.at("kitchen"));
  for (const auto& [id, recipe] : replica.recipes) note("recipe", recipe);
  EXPECT_TRUE(changedSincePlanned(replica, testing::kSampleEvent).empty());
  v1::DocumentMeta& soup = *replica.recipes.at("r-soup").mutable_meta();
  soup.set_etag("new");
  soup.set_revision(9);
  EXPECT_EQ(changedSincePlanned(replica, testing::kSampleEvent), std::vector<std::string>{"Fennel soup"});
  soup.set_revision(7);
  EXPECT_TRUE(changedSincePlanned(replica, testing::kSampleEvent).empty());
}

TEST(PlanDocumentsTest, TakingBackLeavesWhatOthersWroteSince) {
  const link::Replica before = *testing::sampleReplica();
  link::Replica after = before;
  after.events.at(testing::kSampleEvent).set_location("elsewhere");
  after.kitchens.at("kitchen").set_burner_count(5);
  link::Replica now = after;
  now.recipes.at("r-soup").set_display_name("Leek soup");
  const Household back = takenBack(now, before, after, testing::kSampleEvent);
  EXPECT_EQ(back->events.at(testing::kSampleEvent).location(), "the long table");
  EXPECT_EQ(back->kitchens.at("kitchen").burner_count(), 4);
  EXPECT_EQ(back->recipes.at("r-soup").display_name(), "Leek soup");
}

TEST(PlanDifferenceTest, ListsWhatMovedWhatIsNewAndWhatIsGone) {
  const v1::Plan before = planOf(*testing::sampleReplica());
  v1::Plan after = planOf(*testing::sampleWithStepLater("rolls/shape", 10));
  for (int i = after.steps_size() - 1; i >= 0; --i)
    if (after.steps(i).dish_id() == "tart") after.mutable_steps()->DeleteSubrange(i, 1);
  const auto moves = movedBetween(before, after);
  EXPECT_TRUE(std::any_of(moves.begin(), moves.end(), [](const v1::MovedStep& m) {
    return m.step_id() == "rolls/shape" && m.has_old_start_time() && m.has_new_start_time();
  }));
  EXPECT_TRUE(std::any_of(moves.begin(), moves.end(), [](const v1::MovedStep& m) {
    return m.step_id().rfind("tart/", 0) == 0 && !m.has_new_start_time();
  }));
  EXPECT_TRUE(movedBetween(before, before).empty());
}

}  // namespace
}  // namespace suppertide
