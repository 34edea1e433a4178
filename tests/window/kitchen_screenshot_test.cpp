// Renders shopping and the editors of the demo's household, on a real server, to PNG files.
#include <gtest/gtest.h>

#include "tests/window/demo_household.h"
//
#include <QtTest/qtest.h>

#include <set>

#include "client/kitchen/kitchen_desk.h"
#include "client/shell/window_app.h"
#include "client/shopping/shopping_controller.h"
#include "tests/window/find_item.h"
#include "tests/window/patience.h"
#include "tests/window/sample.h"

namespace suppertide::testing {
namespace {

constexpr QSize kDesk{1280, 800};
constexpr QSize kPhone{390, 844};

struct Picture {
  const char* name;
  const char* screen;
  int kind;          // of the document that is open
  const char* open;  // empty: none
};

using Shot = std::tuple<Picture, bool, bool>;  // phone, dark

std::string nameOf(const Shot& shot) {
  const auto& [picture, phone, dark] = shot;
  return std::string(phone ? "phone_" : "desk_") + picture.name + (dark ? "_dark" : "_light");
}

class KitchenScreenshotTest : public ::testing::TestWithParam<Shot> {
 protected:
  void show(const Picture& picture, bool phone, bool dark) {
    WindowOptions options;
    options.link = demo().options();
    options.at = Instant(std::chrono::seconds(secondsAt("2027-08-26T10:00:00+03:00")));
    options.screen = QString::fromUtf8(picture.screen);
    options.size = phone ? kPhone : kDesk;
    options.scheme = dark ? WindowOptions::Scheme::kDark : WindowOptions::Scheme::kLight;
    app_ = std::make_unique<WindowApp>(options);
    ASSERT_TRUE(QTest::qWaitFor(
        [this] {
          return app_->session().state() == HouseholdSession::Live && !app_->session().memberId().isEmpty();
        },
        kPatienceMs));
  }
  QObject* page(const char* name, const char* property) {
    QQuickItem* item = findItem(app_->window()->contentItem(), QString::fromUtf8(name));
    return item == nullptr ? nullptr : item->property(property).value<QObject*>();
  }
  std::unique_ptr<WindowApp> app_;
};

TEST_P(KitchenScreenshotTest, ShowsTheDemosHousehold) {
  const auto& [picture, phone, dark] = GetParam();
  show(picture, phone, dark);
  if (auto* desk = qobject_cast<KitchenDesk*>(page("kitchenPage", "desk"))) {
    desk->setDraftFolder({});
    desk->setKind(static_cast<Document::Kind>(picture.kind));
    if (*picture.open != '\0') desk->open(QString::fromUtf8(picture.open));
    ASSERT_TRUE(*picture.open == '\0' || desk->draft() != nullptr);
  }
  if (auto* list = qobject_cast<ShoppingController*>(page("shoppingPage", "list"))) {
    ASSERT_TRUE(QTest::qWaitFor([list] { return list->known() && list->allCount() > 0; }, kPatienceMs));
  }
  app_->picture();
  QTest::qWait(300);  // What the server works out for it, and the scrolling.
  const QImage image = app_->picture();
  ASSERT_TRUE(image.save(
      QStringLiteral(SUPPERTIDE_PICTURES "/%1.png").arg(QString::fromStdString(nameOf(GetParam())))));
  std::set<QRgb> colours;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) colours.insert(image.pixel(x, y));
  EXPECT_GT(colours.size(), 60U) << "next to nothing is drawn";
}

// What is opened on a screen by a tap or two.
class PanelScreenshotTest : public KitchenScreenshotTest {
 protected:
  bool press(const QString& name) {
    const auto button = [&] { return findItem(app_->window()->contentItem(), name); };
    return QTest::qWaitFor([&] { return button() != nullptr; }, kPatienceMs) &&
           QMetaObject::invokeMethod(button(), "clicked");
  }
  bool shows(const char* name) {
    return QTest::qWaitFor(
        [&] { return findItem(app_->window()->contentItem(), QString::fromUtf8(name)) != nullptr; },
        kPatienceMs);
  }
  void open(const std::string& name) {
    if (name == "person") {
      ASSERT_TRUE(press(QStringLiteral("change/liisi")) && shows("quietStart"));
    } else if (name == "invitation") {
      link::KnownServer known;
      known.target = "192.168.1.4:50710";
      known.householdId = demo().options().householdId;
      app_->household().setKnown(known);
      ASSERT_TRUE(press(QStringLiteral("invite")) && shows("invitationPicture"));
      QQuickItem* picture = findItem(app_->window()->contentItem(), QStringLiteral("invitationCode"));
      picture->forceActiveFocus(Qt::TabFocusReason);
    } else if (name == "line") {
      auto* list = qobject_cast<ShoppingController*>(page("shoppingPage", "list"));
      ASSERT_TRUE(QTest::qWaitFor([list] { return list->allCount() > 0; }, kPatienceMs));
      list->toggle(list->items()->rows()[1].itemId);
      list->setBuyer(list->items()->rows()[0].itemId, 1);
      ASSERT_TRUE(press(QStringLiteral("more/") + list->items()->rows()[0].itemId));
    } else {
      // The sheet itself is left there, too.
      ASSERT_TRUE(press(QStringLiteral("print")) && shows("makeSheet"));
      auto* printer = app_->window()->findChild<QObject*>(QStringLiteral("printer"));
      ASSERT_NE(printer, nullptr);
      printer->setProperty("folder", QStringLiteral(SUPPERTIDE_PICTURES));
      ASSERT_TRUE(press(QStringLiteral("makeSheet")) && shows("sheetFile"));
    }
  }
};

TEST_P(PanelScreenshotTest, ShowsWhatATapOpens) {
  const auto& [picture, phone, dark] = GetParam();
  show(picture, phone, dark);
  open(picture.name);
  app_->picture();
  QTest::qWait(300);
  EXPECT_TRUE(app_->picture().save(
      QStringLiteral(SUPPERTIDE_PICTURES "/%1.png").arg(QString::fromStdString(nameOf(GetParam())))));
}

INSTANTIATE_TEST_SUITE_P(Panels, PanelScreenshotTest,
                         ::testing::Combine(::testing::Values(Picture{"person", "household", 0, ""},
                                                              Picture{"invitation", "household", 0, ""},
                                                              Picture{"line", "shopping", 0, ""},
                                                              Picture{"print", "timeline", 0, ""}),
                                            ::testing::Bool(), ::testing::Bool()),
                         [](const auto& info) { return nameOf(info.param); });

INSTANTIATE_TEST_SUITE_P(
    Screens, KitchenScreenshotTest,
    ::testing::Combine(::testing::Values(Picture{"shopping", "shopping", 0, ""},
                                         Picture{"recipes", "kitchen", Document::Recipe, ""},
                                         Picture{"dish", "kitchen", Document::Recipe, "cured-trout"},
                                         Picture{"bread", "kitchen", Document::Recipe, "mill-loaf"},
                                         Picture{"ovens", "kitchen", Document::Kitchen, "mill-kitchen"},
                                         Picture{"starter", "kitchen", Document::Starter, "mill-crock"}),
                       ::testing::Bool(), ::testing::Bool()),
    [](const auto& info) { return nameOf(info.param); });

}  // namespace
}  // namespace suppertide::testing
