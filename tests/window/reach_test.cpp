// Every control of every screen: large enough for a floury finger, named for the ear, reached by Tab.
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
  text += " " + std::to_string(static_cast<int>(item->width())) + "x" +
          std::to_string(static_cast<int>(item->height()));
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
  const bool isOne = isControl(item);
  if (isOne && !part) found.push_back(item);
  // What is tapped within a chart that takes the focus and its keys is a part of it.
  const bool chart =
      isOne && item->activeFocusOnTab() && item->childItems().size() > 1 && !item->inherits("QQuickControl");
  for (QQuickItem* child : item->childItems()) collect(child, found, chart && !child->activeFocusOnTab());
}

struct Place {
  const char* name;
  const char* screen;
  const char* open;  // a document of the kitchen; empty: none
};

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
    collect(app_->window()->contentItem(), controls_);
    ASSERT_GT(controls_.size(), 5U);
  }
  void tabThrough() {
    QQuickWindow* window = app_->window();
    QQuickItem* first = nullptr;
    for (int i = 0; i < kMostTabs; ++i) {
      QTest::keyClick(window, Qt::Key_Tab);
      QQuickItem* item = window->activeFocusItem();
      if (item == nullptr || item == first) return;
      if (first == nullptr) first = item;
      const QRectF seen = item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
      if (!seen.intersects(QRectF(QPointF(), window->size()))) hidden_.push_back(describe(item));
      for (QQuickItem* around = item; around != nullptr; around = around->parentItem())
        reached_.insert(around);
    }
  }

  std::unique_ptr<WindowApp> app_;
  std::vector<QQuickItem*> controls_;
  QSet<QQuickItem*> reached_;
  std::vector<std::string> hidden_;
};

TEST_P(ReachTest, ControlsAreLargeNamedAndReachedByTab) {
  std::string small, nameless, unreached, hidden;
  for (QQuickItem* control : controls_) {
    const bool wide = control->width() >= kTarget || isBar(control);
    if (!wide || control->height() < kTarget) small += "  " + describe(control) + "\n";
    if (nameOf(control).isEmpty()) nameless += "  " + describe(control) + "\n";
  }
  std::vector<std::pair<QQuickItem*, std::string>> wanted;
  for (QQuickItem* control : controls_)
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

INSTANTIATE_TEST_SUITE_P(
    Screens, ReachTest,
    ::testing::Combine(::testing::Values(Place{"event", "event", ""}, Place{"timeline", "timeline", ""},
                                         Place{"ovens", "ovens", ""}, Place{"doughs", "doughs", ""},
                                         Place{"tasks", "tasks", ""}, Place{"shopping", "shopping", ""},
                                         Place{"kitchen", "kitchen", ""},
                                         Place{"recipe", "kitchen", "cured-trout"},
                                         Place{"bread", "kitchen", "mill-loaf"},
                                         Place{"kitchen_document", "kitchen", "mill-kitchen"},
                                         Place{"starter", "kitchen", "mill-crock"},
                                         Place{"household", "household", ""}),
                       ::testing::Bool()),
    [](const auto& info) {
      return std::string(std::get<0>(info.param).name) + (std::get<1>(info.param) ? "_phone" : "_desk");
    });

}  // namespace
}  // namespace suppertide::testing
