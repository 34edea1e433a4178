// The demo's evening as its cooks do it: each at a tasks screen of their own, by clicks, against a real
// server.
#include "tests/window/party.h"
//
#include <google/protobuf/util/json_util.h>
#include <gtest/gtest.h>

#include <QtQml/qqmlcomponent.h>
#include <QtQml/qqmlengine.h>
#include <QtQml/qqmlextensionplugin.h>
#include <QtQuick/qquickwindow.h>
#include <QtTest/qtest.h>

#include <fstream>
#include <sstream>

#include "client/tasks/tasks_controller.h"
#include "tests/window/find_item.h"
#include "tests/window/patience.h"

Q_IMPORT_QML_PLUGIN(Suppertide_UiPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_SessionPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_TasksPlugin)

namespace suppertide::testing {
namespace {

constexpr std::int64_t kWork = 1000;

v1::Bundle feast() {
  std::ifstream file(SUPPERTIDE_DEMO);
  std::stringstream text;
  text << file.rdbuf();
  v1::Bundle bundle;
  const auto status = google::protobuf::util::JsonStringToMessage(text.str(), &bundle);
  EXPECT_TRUE(status.ok()) << status.message();
  return bundle;
}

// One cook's device: a tall window with their tasks.
class CookScreen {
 public:
  CookScreen(const Party& party, const std::string& memberId, const Instant& now)
      : memberId_(memberId), session_([&now] { return now; }) {
    session_.setMemberId(memberId);
    session_.start(party.deviceOf(memberId), party.eventId());
    tasks_.setSession(&session_);
    engine_.addImportPath(QStringLiteral("qrc:/qt/qml"));
    QQmlComponent component(&engine_, QUrl(QStringLiteral("qrc:/qt/qml/Suppertide/Tasks/TasksPage.qml")));
    page_.reset(qobject_cast<QQuickItem*>(
        component.createWithInitialProperties({{QStringLiteral("session"), QVariant::fromValue(&session_)},
                                               {QStringLiteral("tasks"), QVariant::fromValue(&tasks_)}})));
    EXPECT_NE(page_, nullptr) << component.errorString().toStdString();
    window_.resize(800, 6000);
    page_->setParentItem(window_.contentItem());
    page_->setSize(window_.size());
    window_.show();
  }

  HouseholdSession& session() { return session_; }
  TasksController& tasks() { return tasks_; }
  const PlanView& view() const { return *session_.view(); }
  bool waitFor(const std::function<bool()>& what) { return QTest::qWaitFor(what, kPatienceMs); }
  // The large button of a task, pressed by the pointer in its middle.
  bool click(const std::string& taskId) {
    const QString name = QStringLiteral("main/") + QString::fromStdString(taskId);
    if (!waitFor([&] { return findItem(page_.get(), name) != nullptr; })) return false;
    // Laid out before it is aimed at.
    window_.grabWindow();
    QQuickItem* button = findItem(page_.get(), name);
    if (button == nullptr || !button->isEnabled()) return false;
    const QPointF middle = button->mapToScene(QPointF(button->width() / 2, button->height() / 2));
    QTest::mouseClick(&window_, Qt::LeftButton, {}, middle.toPoint());
    return true;
  }
  const std::string& memberId() const { return memberId_; }

 private:
  std::string memberId_;
  HouseholdSession session_;
  TasksController tasks_;
  QQmlEngine engine_;
  QQuickWindow window_;
  std::unique_ptr<QQuickItem> page_;  // before the window and the engine
};

class EveningClicksTest : public ::testing::Test {
 protected:
  using State = StepProgress::State;

  State stateOf(const PlanView& view, const std::string& stepId) const {
    return view.progress().of(stepId).state;
  }
  // When something of a step is to be told next: begun as it stands to begin, else ended.
  static Instant momentOf(const PlanView& view, const v1::PlannedStep& step) {
    const bool underWay = view.progress().of(step.id()).state == State::kUnderWay;
    return toInstant(underWay || !begins(step) ? step.end_time() : step.start_time());
  }
  static bool begins(const v1::PlannedStep& step) {
    return step.kind() == v1::STEP_KIND_OVEN || step.kind() == v1::STEP_KIND_BURNER;
  }
  static const v1::PlannedStep* next(const PlanView& view) {
    const v1::PlannedStep* found = nullptr;
    for (const v1::PlannedStep& step : view.plan()->steps()) {
      if (step.left_out() || step.cook_member_id().empty() || view.progress().isOver(step.id())) continue;
      if (found == nullptr || momentOf(view, step) < momentOf(view, *found)) found = &step;
    }
    return found;
  }
  void setTime(Party& party, std::vector<std::unique_ptr<CookScreen>>& cooks, Instant time) {
    now_ = std::max(now_, time);
    party.clock().set(now_);
    for (const auto& cook : cooks) cook->session().tick();
  }

  Instant now_{};
};

TEST_F(EveningClicksTest, EveryTaskOfTheFeastIsDoneByItsCookAndSeenByTheOthers) {
  const v1::Bundle bundle = feast();
  now_ = toInstant(bundle.events(0).work_start_time());
  Party party(bundle, now_);
  party.plan(kWork);
  std::vector<std::unique_ptr<CookScreen>> cooks;
  for (const v1::EventCook& cook : bundle.events(0).cooks())
    cooks.push_back(std::make_unique<CookScreen>(party, cook.member_id(), now_));
  for (const auto& cook : cooks)
    ASSERT_TRUE(cook->waitFor([&] {
      return cook->session().state() == HouseholdSession::Live && cook->tasks().hasPlan();
    })) << cook->session().why().toStdString();

  std::map<std::string, int> clicks;
  for (int i = 0; i < 400; ++i) {
    const v1::PlannedStep* step = next(cooks.front()->view());
    if (step == nullptr) break;
    const std::string id = step->id();
    const std::string cookId = step->cook_member_id();
    const State before = stateOf(cooks.front()->view(), id);
    setTime(party, cooks, momentOf(cooks.front()->view(), *step));
    CookScreen* own = nullptr;
    for (const auto& cook : cooks)
      if (cook->memberId() == cookId) own = cook.get();
    ASSERT_NE(own, nullptr) << cookId;
    ASSERT_TRUE(own->click(id)) << id << " is not to be pressed on the screen of " << cookId;
    ++clicks[cookId];
    for (const auto& cook : cooks)
      ASSERT_TRUE(cook->waitFor([&] { return stateOf(cook->view(), id) != before; }))
          << id << " by " << cookId << " is not seen by " << cook->memberId();
    // What the server makes of it is waited for, so that every run takes the same way.
    ASSERT_TRUE(own->waitFor([&] { return own->session().waitingCount() == 0; }));
  }
  const PlanView& view = cooks.front()->view();
  EXPECT_EQ(next(view), nullptr) << "something is left to do";
  for (const auto& cook : cooks) {
    EXPECT_GT(clicks[cook->memberId()], 0) << cook->memberId();
    EXPECT_EQ(cook->tasks().calmText().toStdString(), "All your tasks are done. Thank you!")
        << cook->memberId();
    EXPECT_EQ(cook->session().refused()->count(), 0) << cook->memberId();
    std::printf("%s: %d clicks\n", cook->memberId().c_str(), clicks[cook->memberId()]);
  }
}

}  // namespace
}  // namespace suppertide::testing
