// What becomes of a document while somebody changes it here, and somebody else elsewhere.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QtCore/qtemporarydir.h>
#include <QtTest/qabstractitemmodeltester.h>
#include <QtTest/qsignalspy.h>

#include "client/kitchen/draft_field.h"
#include "client/kitchen/draft_rows.h"
#include "client/kitchen/draft_shelf.h"
#include "client/kitchen/kitchen_desk.h"
#include "client/kitchen/step_controller.h"
#include "suppertide/v1/recipe_service.pb.h"
#include "tests/window/kitchen_sample.h"

namespace suppertide {
namespace {

using testing::SampleHousehold;

QString u(const char* text) {
  return QString::fromUtf8(text);
}

class DraftTest : public ::testing::Test {
 protected:
  Draft& soup() { return *shelf_.open(Document::Recipe, u("r-soup")); }
  const v1::Recipe& recipe() { return static_cast<const v1::Recipe&>(soup().document()); }
  void setText(const char* path, const char* value) {
    DraftField field;
    field.setDraft(&soup());
    field.setPath(u(path));
    field.setText(u(value));
  }
  void otherWrites(const std::function<void(v1::Recipe&)>& change) {
    v1::Recipe theirs = household_.replica.recipes.at("r-soup");
    change(theirs);
    household_.write(theirs, household_.replica.recipes, "noor");
  }

  SampleHousehold household_;
  DraftShelf shelf_{&household_.session, QString()};
};

TEST_F(DraftTest, AChangeMakesItDirtyAndUndoTakesItBack) {
  EXPECT_FALSE(soup().dirty());
  setText("displayName", "Fennel and leek soup");
  EXPECT_TRUE(soup().dirty());
  EXPECT_EQ(soup().name().toStdString(), "Fennel and leek soup");
  soup().undo();
  EXPECT_EQ(soup().name().toStdString(), "Fennel soup");
  EXPECT_FALSE(soup().dirty());
  EXPECT_FALSE(soup().undoable());
}

TEST_F(DraftTest, TypingInOneFieldIsUndoneTogether) {
  for (const char* typed : {"L", "Le", "Leek", "Leek soup"}) setText("displayName", typed);
  setText("note", "Serve hot");
  soup().undo();
  EXPECT_EQ(soup().name().toStdString(), "Leek soup");
  soup().undo();
  EXPECT_EQ(soup().name().toStdString(), "Fennel soup");
}

TEST_F(DraftTest, WhatOnlyTheOtherChangedIsTakenOver) {
  setText("displayName", "Leek soup");
  otherWrites([](v1::Recipe& theirs) { theirs.set_serving_count(14); });
  EXPECT_EQ(recipe().serving_count(), 14);
  EXPECT_EQ(soup().name().toStdString(), "Leek soup");
  EXPECT_TRUE(soup().clashes().isEmpty());
  EXPECT_TRUE(soup().dirty());
}

TEST_F(DraftTest, WhatBothChangedShowsBothVersions) {
  setText("displayName", "Leek soup");
  otherWrites([](v1::Recipe& theirs) { theirs.set_display_name("Green soup"); });
  EXPECT_EQ(soup().clashes(), QStringList(u("display_name")));
  EXPECT_EQ(soup().mineText(u("display_name")).toStdString(), "Leek soup");
  EXPECT_EQ(soup().theirText(u("display_name")).toStdString(), "Green soup");
  EXPECT_EQ(soup().otherWriter().toStdString(), "Noor");
  soup().save();
  EXPECT_EQ(soup().trouble().toStdString(), "First choose which version holds.");
  soup().keepMine(u("display_name"));
  EXPECT_TRUE(soup().clashes().isEmpty());
  EXPECT_EQ(soup().name().toStdString(), "Leek soup");
}

TEST_F(DraftTest, TheOthersVersionCanBeTakenAndHadBackByUndo) {
  setText("displayName", "Leek soup");
  otherWrites([](v1::Recipe& theirs) { theirs.set_display_name("Green soup"); });
  soup().takeTheirs(u("display_name"));
  EXPECT_EQ(soup().name().toStdString(), "Green soup");
  EXPECT_FALSE(soup().dirty());
  soup().undo();
  EXPECT_EQ(soup().name().toStdString(), "Leek soup");
}

TEST_F(DraftTest, TheSameChangeByBothIsNoClash) {
  setText("displayName", "Green soup");
  otherWrites([](v1::Recipe& theirs) { theirs.set_display_name("Green soup"); });
  EXPECT_TRUE(soup().clashes().isEmpty());
  EXPECT_FALSE(soup().dirty());
}

TEST_F(DraftTest, WhatSomebodyDeletedIsKeptAsANewOne) {
  setText("displayName", "Leek soup");
  Draft* draft = &soup();
  household_.replica.recipes.erase("r-soup");
  household_.session.adopt(std::make_shared<link::Replica>(household_.replica), "noor");
  EXPECT_TRUE(draft->fresh());
  EXPECT_TRUE(draft->dirty());
  EXPECT_TRUE(draft->trouble().startsWith(u("Somebody deleted this")));
}

TEST_F(DraftTest, WithoutAConnectionSavingWaitsAndCanBeTakenBack) {
  setText("displayName", "Leek soup");
  soup().save();
  EXPECT_FALSE(soup().dirty());
  EXPECT_TRUE(soup().waiting());
  EXPECT_EQ(household_.session.replica()->recipes.at("r-soup").display_name(), "Leek soup");
  setText("displayName", "Leek and potato soup");
  soup().save();
  EXPECT_EQ(household_.session.waitingCount(), 2);
  household_.session.undo();
  EXPECT_EQ(soup().name().toStdString(), "Leek soup");
  household_.session.undo();
  EXPECT_EQ(soup().name().toStdString(), "Fennel soup");
}

TEST_F(DraftTest, WhatTheServerRefusesIsADraftAgainWithWhatIsWrongAtItsField) {
  setText("displayName", "Leek soup");
  v1::UpdateRecipeRequest request;
  *request.mutable_recipe() = recipe();
  request.mutable_update_mask()->add_paths("display_name");
  soup().revert();
  ASSERT_FALSE(soup().dirty());
  soup().takeBack(request, absl::AbortedError("somebody else"));
  EXPECT_TRUE(soup().dirty());
  EXPECT_EQ(soup().name().toStdString(), "Leek soup");
  EXPECT_EQ(soup().clashes(), QStringList(u("display_name")));
}

TEST_F(DraftTest, WhatIsDeletedElsewhereAndUnchangedHereIsGone) {
  QSignalSpy gone(&shelf_, &DraftShelf::gone);
  soup();
  household_.replica.recipes.erase("r-soup");
  household_.session.adopt(std::make_shared<link::Replica>(household_.replica), "noor");
  EXPECT_EQ(gone.count(), 1);
  EXPECT_EQ(shelf_.open(Document::Recipe, u("r-soup")), nullptr);
}

TEST_F(DraftTest, OnlyHostsEdit) {
  EXPECT_TRUE(soup().editable());
  household_.session.setMemberId("noor");
  EXPECT_FALSE(soup().editable());
}

TEST(DraftShelfTest, ChangedDraftsOutliveTheProgram) {
  const QTemporaryDir folder;
  SampleHousehold household;
  {
    DraftShelf shelf(&household.session, folder.path());
    DraftField field;
    field.setDraft(shelf.open(Document::Recipe, u("r-soup")));
    field.setPath(u("displayName"));
    field.setText(u("Leek soup"));
    DraftField fresh;
    fresh.setDraft(shelf.begin(Document::Starter));
    fresh.setPath(u("displayName"));
    fresh.setText(u("Window jar"));
  }
  DraftShelf again(&household.session, folder.path());
  ASSERT_EQ(again.changed(Document::Recipe).size(), 1U);
  EXPECT_EQ(again.changed(Document::Recipe)[0]->name().toStdString(), "Leek soup");
  ASSERT_EQ(again.changed(Document::Starter).size(), 1U);
  EXPECT_TRUE(again.changed(Document::Starter)[0]->fresh());
  again.changed(Document::Recipe)[0]->revert();
  again.drop(again.changed(Document::Starter)[0]);
  DraftShelf third(&household.session, folder.path());
  EXPECT_TRUE(third.changed(Document::Recipe).empty()) << "what is as it was is not kept";
  EXPECT_TRUE(third.changed(Document::Starter).empty());
}

TEST(DraftShelfTest, AFileThatIsNoDraftIsPassedOver) {
  const QTemporaryDir folder;
  SampleHousehold household;
  QDir(folder.path()).mkpath(u("quay"));
  QFile file(folder.path() + u("/quay/0-r-soup.draft"));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("not a draft at all");
  file.close();
  DraftShelf shelf(&household.session, folder.path());
  EXPECT_TRUE(shelf.changed(Document::Recipe).empty());
}

class DraftRowsTest : public DraftTest {
 protected:
  DraftRowsTest() {
    rows_.setDraft(&soup());
    rows_.setPath(u("steps"));
  }
  DraftRows rows_;
  QAbstractItemModelTester tester_{&rows_, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(DraftRowsTest, RowsComeAndGoOneByOne) {
  const int before = rows_.count();
  ASSERT_GT(before, 1);
  QSignalSpy inserted(&rows_, &QAbstractItemModel::rowsInserted);
  QSignalSpy removed(&rows_, &QAbstractItemModel::rowsRemoved);
  QSignalSpy reset(&rows_, &QAbstractItemModel::modelReset);
  EXPECT_EQ(rows_.add(), before);
  EXPECT_EQ(inserted.count(), 1);
  rows_.remove(0);
  EXPECT_EQ(removed.count(), 1);
  EXPECT_EQ(removed.first()[1].toInt(), 0) << "the row itself goes, not the last one";
  EXPECT_EQ(reset.count(), 0);
  soup().undo();
  EXPECT_EQ(rows_.count(), before + 1);
}

TEST_F(DraftRowsTest, MovingAStepMovesItsRow) {
  QSignalSpy moved(&rows_, &QAbstractItemModel::rowsMoved);
  const QVariant first = rows_.data(rows_.index(0), DraftRows::TitleRole);
  rows_.moveBy(0, 1);
  EXPECT_EQ(moved.count(), 1);
  EXPECT_EQ(rows_.data(rows_.index(1), DraftRows::TitleRole), first);
  EXPECT_EQ(rows_.data(rows_.index(1), DraftRows::RowPathRole).toString().toStdString(), "steps[1]");
}

class StepControllerTest : public DraftTest {
 protected:
  StepControllerTest() {
    step_.setDraft(&soup());
    step_.setPath(u("steps[1]"));
  }
  const v1::Step& step() { return recipe().steps(1); }
  StepController step_;
  QAbstractItemModelTester tester_{&step_, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(StepControllerTest, AKindBringsWhatItNeedsAndTakesTheRestAway) {
  step_.setKind(v1::STEP_KIND_OVEN);
  EXPECT_TRUE(step().has_oven());
  EXPECT_FALSE(step().has_duration());
  EXPECT_GT(step().oven().duration().likely().seconds(), 0);
  step_.setKind(v1::STEP_KIND_REST);
  EXPECT_FALSE(step().has_oven());
  EXPECT_GT(step().duration().likely().seconds(), 0) << "the length stays";
}

TEST_F(StepControllerTest, OrderIsToldByMarkingSteps) {
  ASSERT_GT(step_.rowCount(), 0);
  const bool before = step_.data(step_.index(0), StepController::MarkedRole).toBool();
  step_.toggleAfter(0);
  EXPECT_EQ(step_.data(step_.index(0), StepController::MarkedRole).toBool(), !before);
  if (before) step_.toggleAfter(0);
  step_.setGaps(0, 30, 60);
  ASSERT_GT(step().after_size(), 0);
  const v1::After& after = step().after(step().after_size() - 1);
  EXPECT_EQ(after.least_gap().seconds(), 1800);
  EXPECT_EQ(after.most_gap().seconds(), 3600);
  step_.setGaps(0, 30, -1);
  EXPECT_FALSE(step().after(step().after_size() - 1).has_most_gap());
}

TEST_F(StepControllerTest, AStepIsAddedWithTitleKindAndLength) {
  const int row = StepController::addStep(&soup(), u(" Toast the seeds "), v1::STEP_KIND_BURNER, 8);
  ASSERT_EQ(row, recipe().steps_size() - 1);
  const v1::Step& added = recipe().steps(row);
  EXPECT_EQ(added.title(), "Toast the seeds");
  EXPECT_EQ(added.kind(), v1::STEP_KIND_BURNER);
  EXPECT_EQ(added.duration().likely().seconds(), 480);
  EXPECT_FALSE(added.id().empty());
}

class KitchenDeskTest : public ::testing::Test {
 protected:
  KitchenDeskTest() {
    desk_.setDraftFolder({});
    desk_.setSession(&household_.session);
  }
  QString nameAt(int row) const {
    return desk_.library()->data(desk_.library()->index(row), LibraryModel::NameRole).toString();
  }
  SampleHousehold household_;
  KitchenDesk desk_;
};

TEST_F(KitchenDeskTest, ListsByNameAndSearches) {
  const QAbstractItemModelTester tester(desk_.library(),
                                        QAbstractItemModelTester::FailureReportingMode::Fatal);
  ASSERT_EQ(desk_.library()->count(), 7);
  for (int row = 1; row < 7; ++row) EXPECT_LT(nameAt(row - 1).toLower(), nameAt(row).toLower());
  desk_.setFilter(u("SOUP"));
  ASSERT_EQ(desk_.library()->count(), 1);
  EXPECT_EQ(nameAt(0).toStdString(), "Fennel soup");
  desk_.setKind(Document::Kitchen);
  EXPECT_EQ(desk_.library()->count(), 1) << "another kind begins without the search";
}

TEST_F(KitchenDeskTest, ANewDishIsListedAtOnceAndGoneWhenThrownAway) {
  desk_.begin();
  ASSERT_NE(desk_.draft(), nullptr);
  EXPECT_EQ(desk_.library()->count(), 8);
  EXPECT_EQ(desk_.changedCount(), 1);
  desk_.discard();
  EXPECT_EQ(desk_.draft(), nullptr);
  EXPECT_EQ(desk_.library()->count(), 7);
}

TEST_F(KitchenDeskTest, ADraftWaitsWhileSomethingElseIsOpen) {
  desk_.open(u("r-soup"));
  DraftField field;
  field.setDraft(desk_.draft());
  field.setPath(u("displayName"));
  field.setText(u("Leek soup"));
  desk_.setKind(Document::Kitchen);
  desk_.setKind(Document::Recipe);
  EXPECT_EQ(desk_.draft(), nullptr);
  desk_.open(u("r-soup"));
  EXPECT_EQ(desk_.draft()->name().toStdString(), "Leek soup");
}

TEST_F(KitchenDeskTest, CooksReadAndBeginNothing) {
  household_.session.setMemberId("noor");
  EXPECT_FALSE(desk_.mayEdit());
  desk_.begin();
  EXPECT_EQ(desk_.draft(), nullptr);
  desk_.open(u("r-soup"));
  EXPECT_NE(desk_.draft(), nullptr);
}

}  // namespace
}  // namespace suppertide
