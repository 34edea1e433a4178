// Every control of every screen, panel, dialog and list: large enough for a floury finger, named for the ear,
// reached by Tab. Panels and dialogs are opened by the keyboard alone.
#include <gtest/gtest.h>

#include "tests/window/demo_household.h"
//
#include <QtGui/qaccessible.h>
#include <QtTest/qtest.h>

#include <string>
#include <tuple>
#include <vector>

#include "client/kitchen/kitchen_desk.h"
#include "client/shell/window_app.h"
#include "tests/window/find_item.h"
#include "tests/window/patience.h"
#include "tests/window/sample.h"

namespace suppertide::testing {
namespace {

constexpr QSize kDesk{1280, 800};
constexpr QSize kPhone{390, 844};
constexpr double kTarget = 44;
constexpr int kMostTabs = 3000;

QString nameOf(QQuickItem* item) {
  QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(item);
  return spoken == nullptr ? QString() : spoken->text(QAccessible::Name).trimmed();
}

// For who mends it: "StepBar 'rolls/shape' (Shape the rolls)".
std::string describe(QQuickItem* item) {
  std::string text = item->metaObject()->className();
  text += " '" + item->objectName().toStdString() + "' (" + nameOf(item).toStdString() + ")";
  const QRectF at = item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
  const auto whole = [](double pixels) { return std::to_string(static_cast<int>(pixels)); };
  text += " " + whole(at.width()) + "x" + whole(at.height()) + " at " + whole(at.x()) + "," + whole(at.y());
  for (QQuickItem* parent = item->parentItem(); parent != nullptr; parent = parent->parentItem())
    if (!parent->objectName().isEmpty()) return text + " in " + parent->objectName().toStdString();
  return text;
}

bool isControl(QQuickItem* item) {
  for (const char* kind :
       {"QQuickAbstractButton", "QQuickTextField", "QQuickTextArea", "QQuickComboBox", "QQuickSlider"})
    if (item->inherits(kind)) return true;
  if (item->activeFocusOnTab()) return true;
  for (const QObject* child : item->children())
    if (child->inherits("QQuickTapHandler") || child->inherits("QQuickMouseArea")) return true;
  return false;
}

// A bar's place in time says how wide it is; it is tapped near it, and as high as any target.
bool isBar(QQuickItem* item) {
  return item->property("stepId").isValid() && item->property("roomAfter").isValid();
}

// Up and Down in their field do the same, as in every field for numbers.
bool isStepper(QQuickItem* item) {
  return item->objectName() == QLatin1String("less") || item->objectName() == QLatin1String("more");
}

void collect(QQuickItem* item, std::vector<QQuickItem*>& found, bool part = false) {
  if (!item->isVisible() || !item->isEnabled()) return;
  const bool isOne =
      isControl(item) && item->objectName() != QLatin1String("veil");  // of a dialog; Escape is its twin
  if (isOne && !part) found.push_back(item);
  // What is tapped within a chart that takes the focus and its keys is a part of it.
  const bool chart =
      isOne && item->activeFocusOnTab() && item->childItems().size() > 1 && !item->inherits("QQuickControl");
  for (QQuickItem* child : item->childItems()) collect(child, found, chart && !child->activeFocusOnTab());
}

// The first visible control below `root` of that name, or with a last "*" of one that begins so.
QQuickItem* findControl(QQuickItem* root, const QString& name) {
  if (!root->isVisible()) return nullptr;
  const bool fits = name.endsWith(QLatin1Char('*')) ? root->objectName().startsWith(name.chopped(1))
                                                    : root->objectName() == name;
  if (fits && isControl(root)) return root;
  for (QQuickItem* child : root->childItems())
    if (QQuickItem* found = findControl(child, name)) return found;
  return nullptr;
}

struct Place {
  const char* name;
  const char* screen;
  const char* open = "";  // a document of the kitchen; empty: none
  // Pressed by the keyboard one after the other, to open what is looked at; "?": where there is such a
  // button;
  // "=": only waited for.
  std::vector<const char*> presses = {};
  // The item that covers all else: nothing beside it may be reached. Empty: nothing does.
  const char* within = "";
};
void PrintTo(const Place& place, std::ostream* out) {
  *out << place.name;
}

using Visit = std::tuple<Place, bool>;  // phone

class ReachTest : public ::testing::TestWithParam<Visit> {
 protected:
  void SetUp() override {
    const auto& [place, phone] = GetParam();
    WindowOptions options;
    options.link = demo().options();
    options.at = Instant(std::chrono::seconds(secondsAt("2027-08-28T16:45:00+03:00")));
    options.screen = QString::fromUtf8(place.screen);
    options.document = QString::fromUtf8(place.open);
    options.size = phone ? kPhone : kDesk;
    app_ = std::make_unique<WindowApp>(options);
    ASSERT_NE(app_->window(), nullptr);
    bool shown = false;
    app_->whenShown([&] { shown = true; });
    ASSERT_TRUE(QTest::qWaitFor([&] { return shown; }, kPatienceMs));
    app_->picture();
    for (const char* name : place.presses) ASSERT_NO_FATAL_FAILURE(press(QString::fromUtf8(name)));
    if (*place.within == 0) return;
    cover_ = findItem(app_->window()->contentItem(), QString::fromUtf8(place.within));
    ASSERT_NE(cover_, nullptr) << place.within;
  }
  void press(QString name) {
    const bool maybe = name.startsWith(QLatin1Char('?'));
    const bool onlyWait = name.startsWith(QLatin1Char('='));
    if (maybe || onlyWait) name.remove(0, 1);
    QQuickItem* button = nullptr;
    const auto there = [&] {
      button = findControl(app_->window()->contentItem(), name);
      return button != nullptr && button->isEnabled();
    };
    if (!QTest::qWaitFor(there, maybe ? 0 : kPatienceMs)) {
      ASSERT_TRUE(maybe) << "there is no " << name.toStdString();
      return;
    }
    if (!onlyWait) {
      button->forceActiveFocus(Qt::TabFocusReason);
      QTest::keyClick(app_->window(), Qt::Key_Return);
    }
    app_->picture();
  }
  void tabThrough() {
    QQuickWindow* window = app_->window();
    reached_.clear();
    hidden_.clear();
    QQuickItem* first = nullptr;
    for (int i = 0; i < kMostTabs; ++i) {
      QTest::keyClick(window, Qt::Key_Tab);
      QQuickItem* item = window->activeFocusItem();
      if (item == nullptr || item == first) return;
      if (first == nullptr) first = item;
      const bool aside = cover_ != nullptr && !cover_->isAncestorOf(item);
      if (aside || !isSeen(item)) hidden_.push_back(describe(item));
      for (QQuickItem* around = item; around != nullptr; around = around->parentItem())
        reached_.insert(around);
    }
  }

  bool isSeen(QQuickItem* item) const {
    const QRectF at = item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
    return at.intersects(QRectF(QPointF(), app_->window()->size()));
  }
  void expectWithinReach();

  std::unique_ptr<WindowApp> app_;
  QQuickItem* cover_ = nullptr;  // what covers all else; null: nothing does
  QSet<QQuickItem*> reached_;
  std::vector<std::string> hidden_;
};

void ReachTest::expectWithinReach() {
  std::vector<QQuickItem*> controls;
  collect(cover_ == nullptr ? app_->window()->contentItem() : cover_, controls);
  ASSERT_GE(controls.size(), 4U);
  std::string small, nameless, unreached, hidden;
  for (QQuickItem* control : controls) {
    const bool wide = control->width() >= kTarget || isBar(control);
    if (!wide || control->height() < kTarget) small += "  " + describe(control) + "\n";
    if (nameOf(control).isEmpty()) nameless += "  " + describe(control) + "\n";
  }
  std::vector<std::pair<QQuickItem*, std::string>> wanted;
  for (QQuickItem* control : controls)
    if (!isBar(control) && !isStepper(control)) wanted.emplace_back(control, describe(control));
  tabThrough();
  for (const auto& [control, words] : wanted)
    // A lane hands the focus on to its steps at once.
    if (!reached_.contains(control) &&
        !(control->inherits("suppertide::LaneBars") && reached_.contains(control->parentItem())))
      unreached += "  " + words + "\n";
  for (const std::string& words : hidden_) hidden += "  " + words + "\n";
  EXPECT_EQ(small, "") << "smaller than a finger";
  EXPECT_EQ(nameless, "") << "without a name";
  EXPECT_EQ(unreached, "") << "not reached by Tab";
  EXPECT_EQ(hidden, "") << "out of sight while focused";
}

TEST_P(ReachTest, ControlsAreLargeNamedAndReachedByTab) {
  expectWithinReach();
}

std::string visitName(const ::testing::TestParamInfo<Visit>& info) {
  return std::string(std::get<0>(info.param).name) + (std::get<1>(info.param) ? "_phone" : "_desk");
}

INSTANTIATE_TEST_SUITE_P(
    Screens, ReachTest,
    ::testing::Combine(
        ::testing::Values(Place{"event", "event"}, Place{"timeline", "timeline"}, Place{"ovens", "ovens"},
                          Place{"doughs", "doughs"}, Place{"tasks", "tasks"}, Place{"shopping", "shopping"},
                          Place{"kitchen", "kitchen"}, Place{"recipe", "kitchen", "cured-trout"},
                          Place{"bread", "kitchen", "mill-loaf"},
                          Place{"kitchen_document", "kitchen", "mill-kitchen"},
                          Place{"starter", "kitchen", "mill-crock"}, Place{"household", "household"}),
        ::testing::Bool()),
    visitName);

INSTANTIATE_TEST_SUITE_P(
    Panels, ReachTest,
    ::testing::Combine(::testing::Values(Place{"changed_event", "event", "", {"changeEvent"}},
                                         Place{"guest", "event", "", {"changeEvent", "changeGuest"}},
                                         Place{"dish", "event", "", {"changeEvent", "changeDish"}},
                                         Place{"hand_over", "tasks", "", {"cook/*", "?others/*", "hand/*"}},
                                         Place{"note", "tasks", "", {"cook/*", "?others/*", "note/*"}},
                                         Place{"to_take_out", "shopping", "", {"pick1"}},
                                         Place{"shopping_line", "shopping", "", {"more/*"}},
                                         Place{"new_dish", "kitchen", "", {"begin"}},
                                         Place{"opened_line", "kitchen", "cured-trout", {"card"}},
                                         Place{"opened_oven", "kitchen", "mill-kitchen", {"card"}},
                                         Place{"scaling", "kitchen", "cured-trout", {"more"}},
                                         Place{"member", "household", "", {"change/*"}},
                                         Place{"invitation", "household", "", {"invite", "=invitationCode"}},
                                         Place{"print", "timeline", "", {"print"}, "printing"}),
                       ::testing::Bool()),
    visitName);

using StepReachTest = ReachTest;

INSTANTIATE_TEST_SUITE_P(Panels, StepReachTest,
                         ::testing::Combine(::testing::Values(Place{"step", "timeline"}), ::testing::Bool()),
                         visitName);

TEST_P(StepReachTest, ItsPanelAndWhatAMoveWouldMean) {
  QString next;
  for (const v1::PlannedStep& step : app_->session().view()->plan()->steps())
    if (next.isEmpty() && step.start_time().seconds() > secondsAt("2027-08-28T17:00:00+03:00"))
      next = QString::fromStdString(step.id());
  app_->timeline().choose(next);
  app_->picture();
  ASSERT_NE(findControl(app_->window()->contentItem(), QStringLiteral("closeDetails")), nullptr);
  expectWithinReach();
  press(QStringLiteral("moveLater"));
  press(QStringLiteral("askMove"));
  ASSERT_TRUE(QTest::qWaitFor(
      [&] {
        return findControl(app_->window()->contentItem(), QStringLiteral("leaveWhatIf")) != nullptr &&
               app_->planning().whatIf()->answered();
      },
      kPatienceMs));
  app_->picture();
  for (const char* name : {"applyWhatIf", "leaveWhatIf"}) {
    QQuickItem* button = findItem(app_->window()->contentItem(), QString::fromUtf8(name));
    ASSERT_NE(button, nullptr) << name;
    EXPECT_GE(std::min(button->width(), button->height()), kTarget) << describe(button);
    EXPECT_FALSE(nameOf(button).isEmpty()) << describe(button);
  }
  press(QStringLiteral("leaveWhatIf"));
  EXPECT_TRUE(app_->timeline().movingId().isEmpty());
}

TEST_P(StepReachTest, WhatWouldHelp) {
  app_->planning().remedies()->begin();
  ASSERT_TRUE(QTest::qWaitFor(
      [&] { return findControl(app_->window()->contentItem(), QStringLiteral("closeClash")) != nullptr; },
      kPatienceMs));
  app_->picture();
  expectWithinReach();
  press(QStringLiteral("closeClash"));
  EXPECT_FALSE(app_->planning().remedies()->isOpen());
}

using DialogReachTest = ReachTest;

INSTANTIATE_TEST_SUITE_P(Panels, DialogReachTest,
                         ::testing::Combine(::testing::Values(Place{"print", "timeline"}), ::testing::Bool()),
                         visitName);

TEST_P(DialogReachTest, EscapeClosesItAndGivesTheFocusBack) {
  press(QStringLiteral("print"));
  QQuickItem* print = findItem(app_->window()->contentItem(), QStringLiteral("print"));
  ASSERT_NE(findControl(app_->window()->contentItem(), QStringLiteral("closeSheet")), nullptr);
  EXPECT_FALSE(print->isEnabled());
  QTest::keyClick(app_->window(), Qt::Key_Escape);
  EXPECT_TRUE(QTest::qWaitFor([&] { return print->hasActiveFocus(); }, kPatienceMs));
  EXPECT_EQ(findControl(app_->window()->contentItem(), QStringLiteral("closeSheet")), nullptr);
}

class ListReachTest : public ReachTest {
 protected:
  // What the open list of a box offers; empty: it is closed.
  std::vector<QQuickItem*> entries(QQuickItem* box) {
    std::vector<QQuickItem*> found;
    const auto* list = box->property("popup").value<QObject*>();
    if (list != nullptr && list->property("visible").toBool())
      gather(list->property("contentItem").value<QQuickItem*>(), found);
    return found;
  }

 private:
  void gather(QQuickItem* item, std::vector<QQuickItem*>& found) {
    if (!item->isVisible()) return;
    if (item->inherits("QQuickItemDelegate")) found.push_back(item);
    for (QQuickItem* child : item->childItems()) gather(child, found);
  }
};

INSTANTIATE_TEST_SUITE_P(Lists, ListReachTest,
                         ::testing::Combine(::testing::Values(Place{"dough_line", "kitchen", "mill-loaf"}),
                                            ::testing::Bool()),
                         visitName);

TEST_P(ListReachTest, OpensGoesAndPicksByKeys) {
  QQuickWindow* window = app_->window();
  QQuickItem* box = nullptr;
  std::vector<QQuickItem*> controls;
  collect(window->contentItem(), controls);
  for (QQuickItem* control : controls)
    if (box == nullptr && control->inherits("QQuickComboBox")) box = control;
  ASSERT_NE(box, nullptr);
  ASSERT_GT(box->property("count").toInt(), 1);
  const int before = box->property("currentIndex").toInt();
  ASSERT_TRUE(entries(box).empty());
  box->forceActiveFocus(Qt::TabFocusReason);
  QTest::keyClick(window, Qt::Key_Space);
  ASSERT_TRUE(QTest::qWaitFor([&] { return entries(box).size() > 1; }, kPatienceMs));
  for (QQuickItem* entry : entries(box)) {
    EXPECT_GE(std::min(entry->width(), entry->height()), kTarget) << describe(entry);
    EXPECT_FALSE(nameOf(entry).isEmpty()) << describe(entry);
  }
  QTest::keyClick(window, before == 0 ? Qt::Key_Down : Qt::Key_Up);
  QTest::keyClick(window, Qt::Key_Return);
  EXPECT_NE(box->property("currentIndex").toInt(), before);
  EXPECT_TRUE(QTest::qWaitFor([&] { return entries(box).empty(); }, kPatienceMs)) << "stays open";
  EXPECT_TRUE(box->hasActiveFocus());
}

}  // namespace
}  // namespace suppertide::testing
