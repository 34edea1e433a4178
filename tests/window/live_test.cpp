// A real window on a real gRPC stream: what another client changes moves on this screen.
#include <gtest/gtest.h>

#include "tests/window/served_sample.h"
//
#include <QtTest/qsignalspy.h>
#include <QtTest/qtest.h>

#include "tests/window/find_item.h"
#include "tests/window/patience.h"

namespace suppertide::testing {
namespace {

class LiveTest : public ::testing::Test {
 protected:
  // The snapshot; `message` once `gate_` opens; then nothing.
  void serveWithChange(const v1::WatchResponse& message) {
    served_.sync.add(
        [this, message](link::testing::ScriptedSync::Writer& writer, grpc::ServerContext& context) {
          for (const v1::WatchResponse& part : snapshotOf(*sampleReplica())) writer.Write(part);
          gate_.wait();
          writer.Write(message);
          return link::testing::ScriptedSync::stayOpen(context);
        });
  }
  void open() {
    app_ = std::make_unique<WindowApp>(served_.options());
    ASSERT_NE(app_->window(), nullptr);
    ASSERT_TRUE(QTest::qWaitFor([this] { return app_->timeline().hasPlan(); }, kPatienceMs));
    app_->picture();
  }
  QQuickItem* bar(const char* lane, const char* step) {
    QQuickItem* row = findItem(app_->window()->contentItem(), QString::fromUtf8(lane));
    return row == nullptr ? nullptr : findItem(row, QString::fromUtf8(step));
  }

  link::testing::Gate gate_;
  ServedSample served_;
  std::unique_ptr<WindowApp> app_;
};

TEST_F(LiveTest, AnotherClientsChangeMovesTheBarAndSaysWho) {
  serveWithChange(planWritten(*sampleWithStepLater("rolls/shape", 15), 2, "noor"));
  open();
  QQuickItem* shape = bar("cook/ines", "rolls/shape");
  ASSERT_NE(shape, nullptr);
  const double before = shape->mapToScene({0, 0}).x();
  const QImage pictureBefore = app_->picture();
  gate_.open();
  ASSERT_TRUE(QTest::qWaitFor([&] { return shape->property("moved").toBool(); }, kPatienceMs));
  const double scale = app_->timeline().pixelsPerMinute();
  EXPECT_TRUE(QTest::qWaitFor(
      [&] {
        return std::abs(shape->mapToScene({0, 0}).x() - before - 15 * scale) < 0.5;
      },
      kPatienceMs))
      << "the bar slides to its new place";
  EXPECT_EQ(bar("cook/ines", "rolls/shape"), shape) << "the same bar, not a new one";
  QQuickItem* notice = nullptr;
  ASSERT_TRUE(QTest::qWaitFor(
      [&] {
        notice = findItem(app_->window()->contentItem(), QStringLiteral("notice"));
        return notice != nullptr;
      },
      kPatienceMs));
  EXPECT_EQ(notice->property("text").toString().toStdString(),
            "Noor changed the plan: “Shape the rolls” moved");
  EXPECT_NE(app_->picture(), pictureBefore);
}

TEST_F(LiveTest, FocusStaysOnABarThatIsMoved) {
  serveWithChange(planWritten(*sampleWithStepLater("rolls/shape", 15), 2, "noor"));
  open();
  QQuickItem* shape = bar("cook/ines", "rolls/shape");
  ASSERT_NE(shape, nullptr);
  shape->forceActiveFocus(Qt::TabFocusReason);
  gate_.open();
  ASSERT_TRUE(QTest::qWaitFor([&] { return shape->property("moved").toBool(); }, kPatienceMs));
  EXPECT_TRUE(shape->hasActiveFocus());
}

TEST_F(LiveTest, ALostServerLeavesTheLastPlanOnTheScreen) {
  served_.sync.addOpen(snapshotOf(*sampleReplica()));
  open();
  served_.server.stop();
  ASSERT_TRUE(
      QTest::qWaitFor([&] { return app_->session().state() == HouseholdSession::Offline; }, kPatienceMs));
  EXPECT_TRUE(app_->timeline().hasPlan());
  EXPECT_NE(bar("cook/ines", "rolls/shape"), nullptr);
  QQuickItem* pill = findItem(app_->window()->contentItem(), QStringLiteral("connection"));
  EXPECT_EQ(pill->property("label").toString().toStdString(), "Offline");
}

TEST_F(LiveTest, ARefusedDeviceIsToldSo) {
  served_.sync.addCut({}, grpc::Status(grpc::StatusCode::UNAUTHENTICATED, "this device was signed out"));
  app_ = std::make_unique<WindowApp>(served_.options());
  ASSERT_TRUE(
      QTest::qWaitFor([&] { return app_->session().state() == HouseholdSession::Refused; }, kPatienceMs));
  EXPECT_EQ(app_->session().why().toStdString(), "this device was signed out");
}

TEST_F(LiveTest, AHouseholdWithoutEventsHasNoTimelineYet) {
  link::Replica empty;
  empty.revision = 1;
  empty.household.set_id("quay");
  empty.household.set_display_name("Quay House");
  served_.sync.addOpen(snapshotOf(empty));
  app_ = std::make_unique<WindowApp>(served_.options());
  ASSERT_TRUE(
      QTest::qWaitFor([&] { return app_->session().state() == HouseholdSession::Live; }, kPatienceMs));
  EXPECT_FALSE(app_->timeline().hasPlan());
  EXPECT_EQ(app_->session().householdName().toStdString(), "Quay House");
}

}  // namespace
}  // namespace suppertide::testing
