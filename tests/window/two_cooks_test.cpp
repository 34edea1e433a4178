// A real server and two real windows: what one cook does is on the other's screen.
#include <gtest/gtest.h>

#include <QtCore/qfile.h>
#include <QtTest/qtest.h>

#include <algorithm>
#include <ctime>

#include "client/link/request_id.h"
#include "client/link/session.h"
#include "client/shell/window_app.h"
#include "tests/window/find_item.h"
#include "tests/window/patience.h"
#include "tests/window/real_household.h"

namespace suppertide::testing {
namespace {

// One cook's window.
class Screen {
 public:
  Screen(const link::LinkOptions& device, const std::string& folder, const char* screen, Instant now) {
    options_.link = device;
    options_.store = folder;
    options_.screen = QString::fromUtf8(screen);
    options_.at = now;
    options_.view = WindowOptions::View::kNow;
    options_.scheme = WindowOptions::Scheme::kLight;
    open();
  }
  void open() { app_ = std::make_unique<WindowApp>(options_); }
  void close() { app_.reset(); }
  HouseholdSession& session() { return app_->session(); }
  bool becomes(HouseholdSession::State state) {
    return QTest::qWaitFor([=, this] { return session().state() == state; }, kPatienceMs);
  }
  bool isReady() {
    return becomes(HouseholdSession::Live) &&
           QTest::qWaitFor([this] { return app_->timeline().hasPlan() && !session().memberId().isEmpty(); },
                           kPatienceMs);
  }
  QQuickItem* item(const QString& name) { return findItem(app_->window()->contentItem(), name); }
  bool shows(const QString& name) {
    return QTest::qWaitFor([&] { return item(name) != nullptr; }, kPatienceMs);
  }
  QObject* find(const char* name) { return app_->window()->findChild<QObject*>(QString::fromUtf8(name)); }
  void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    app_->window()->requestActivate();
    ASSERT_TRUE(QTest::qWaitForWindowActive(app_->window(), kPatienceMs));
    QTest::keyClick(app_->window(), key, modifiers);
  }
  // As by the Return key, which every button answers to.
  void press(const QString& name) {
    ASSERT_TRUE(shows(name)) << name.toStdString();
    app_->window()->requestActivate();
    ASSERT_TRUE(QTest::qWaitForWindowActive(app_->window(), kPatienceMs));
    QQuickItem* button = item(name);
    button->forceActiveFocus(Qt::TabFocusReason);
    ASSERT_TRUE(QTest::qWaitFor([button] { return button->hasActiveFocus(); }, kPatienceMs));
    QTest::keyClick(app_->window(), Qt::Key_Return);
  }
  // The step's bar in that cook's lane is drawn as done.
  bool showsDone(const char* cook, const std::string& step) {
    return QTest::qWaitFor(
        [&] {
          QQuickItem* lane = item(QStringLiteral("cook/%1").arg(QString::fromUtf8(cook)));
          QQuickItem* bar = lane == nullptr ? nullptr : findItem(lane, QString::fromStdString(step));
          return bar != nullptr && bar->property("done").toBool();
        },
        kPatienceMs);
  }
  std::string connection() {
    QQuickItem* pill = item(QStringLiteral("connection"));
    return pill == nullptr ? std::string() : pill->property("label").toString().toStdString();
  }

 private:
  WindowOptions options_;
  std::unique_ptr<WindowApp> app_;
};

class TwoCooksTest : public ::testing::Test {
 protected:
  void SetUp() override {
    moveDinnerBeforeToday();
    household_.plan();
    v1::GetPlanRequest request;
    request.set_household_id(household_.id());
    request.set_event_id("supper");
    const auto plan = household_.calls().plan(request);
    ASSERT_TRUE(plan.ok()) << plan.status();
    for (const v1::PlannedStep& step : plan->steps()) {
      if (step.cook_member_id() != "rui" || step.kind() != v1::STEP_KIND_HANDS_ON) continue;
      rui_.push_back(step);
    }
    std::sort(rui_.begin(), rui_.end(), [](const auto& a, const auto& b) {
      return a.start_time().seconds() < b.start_time().seconds();
    });
    ASSERT_GE(rui_.size(), 1U) << "the plan leaves Rui without work";
  }
  // The server takes no reports of what is still to come, and its clock is the real one.
  void moveDinnerBeforeToday() {
    constexpr std::int64_t kWeek = 7 * 24 * 3600;
    const auto events = household_.calls().events(household_.id());
    ASSERT_TRUE(events.ok()) << events.status();
    v1::UpdateEventRequest request;
    request.set_household_id(household_.id());
    v1::Event& event = *request.mutable_event() = events->at(0);
    const std::int64_t ahead = event.courses(0).serving_time().seconds() - std::time(nullptr);
    const std::int64_t move = (ahead / kWeek + 1) * kWeek;
    const auto earlier = [=](google::protobuf::Timestamp& time) { time.set_seconds(time.seconds() - move); };
    earlier(*event.mutable_work_start_time());
    earlier(*event.mutable_courses(0)->mutable_serving_time());
    request.set_request_id(link::newRequestId());
    const absl::Status status = household_.calls().write(request);
    ASSERT_TRUE(status.ok()) << status;
  }
  Instant firstStart() const { return Instant(std::chrono::seconds(rui_[0].start_time().seconds())); }
  QString doneButton() const { return QStringLiteral("main/") + QString::fromStdString(rui_[0].id()); }

  RealHousehold household_;
  std::vector<v1::PlannedStep> rui_;
};

TEST_F(TwoCooksTest, OneFinishesATaskAndTheOtherSeesIt) {
  Screen ana(household_.host(), household_.folder("ana"), "timeline", firstStart());
  Screen rui(household_.deviceOf("rui"), household_.folder("rui"), "tasks", firstStart());
  ASSERT_TRUE(ana.isReady() && rui.isReady());
  EXPECT_EQ(rui.connection(), "Live");
  rui.press(doneButton());
  EXPECT_TRUE(ana.showsDone("rui", rui_[0].id()));
  EXPECT_TRUE(QTest::qWaitFor([&] { return rui.item(doneButton()) == nullptr; }, kPatienceMs))
      << "what is done asks nobody any more";
}

TEST_F(TwoCooksTest, OneGoesOfflineReportsClosesTheWindowAndReturns) {
  Screen ana(household_.host(), household_.folder("ana"), "timeline", firstStart());
  Screen rui(household_.deviceOf("rui"), household_.folder("rui"), "tasks", firstStart());
  ASSERT_TRUE(ana.isReady() && rui.isReady());
  household_.stop();
  ASSERT_TRUE(rui.becomes(HouseholdSession::Offline) && ana.becomes(HouseholdSession::Offline));
  rui.press(doneButton());
  EXPECT_EQ(rui.connection(), "Offline, 1 waiting");
  EXPECT_EQ(rui.item(doneButton()), nullptr) << "done here already";
  rui.close();
  rui.open();
  ASSERT_TRUE(rui.shows(QStringLiteral("connection")));
  EXPECT_EQ(rui.session().waitingCount(), 1) << "from the disk, with no server";
  household_.start();
  EXPECT_TRUE(ana.showsDone("rui", rui_[0].id()));
  ASSERT_TRUE(rui.becomes(HouseholdSession::Live));
  EXPECT_TRUE(QTest::qWaitFor([&] { return rui.connection() == "Live"; }, kPatienceMs)) << rui.connection();
  EXPECT_EQ(rui.session().refused()->count(), 0);
}

TEST_F(TwoCooksTest, TheRunSheetIsMadeFromTheWindowByKeys) {
  Screen ana(household_.host(), household_.folder("ana"), "timeline", firstStart());
  ASSERT_TRUE(ana.isReady());
  ana.key(Qt::Key_P, Qt::ControlModifier);
  ASSERT_TRUE(ana.shows(QStringLiteral("makeSheet")));
  QObject* printer = ana.find("printer");
  ASSERT_NE(printer, nullptr);
  printer->setProperty("folder", QString::fromStdString(household_.folder("sheets")));
  ana.key(Qt::Key_Return);
  ASSERT_TRUE(QTest::qWaitFor([&] { return !printer->property("file").toString().isEmpty(); }, kPatienceMs))
      << printer->property("problem").toString().toStdString();
  QFile sheet(printer->property("file").toString());
  ASSERT_TRUE(sheet.open(QIODevice::ReadOnly));
  EXPECT_TRUE(sheet.read(4) == "%PDF");
  EXPECT_TRUE(ana.shows(QStringLiteral("sheetFile")));
  ana.key(Qt::Key_Escape);
  EXPECT_TRUE(QTest::qWaitFor([&] { return ana.item(QStringLiteral("makeSheet")) == nullptr; }, kPatienceMs));
}

}  // namespace
}  // namespace suppertide::testing
