// Renders the sample dinner to PNG files, and checks that there is something on them.
#include <gtest/gtest.h>

#include "tests/window/served_sample.h"
//
#include "tests/window/find_item.h"
//
#include <QtCore/qeventloop.h>
#include <QtGui/qfontmetrics.h>
#include <QtGui/qguiapplication.h>

#include <set>

namespace suppertide::testing {
namespace {

struct Shot {
  const char* name;
  QSize size;
  bool dark;
  WindowOptions::View view;
  const char* step;
};

void PrintTo(const Shot& shot, std::ostream* out) {
  *out << shot.name;
}

class ScreenshotTest : public ::testing::TestWithParam<Shot> {};

std::size_t colourCount(const QImage& image, const QRect& part) {
  std::set<QRgb> colours;
  for (int y = part.top(); y <= part.bottom(); ++y) {
    for (int x = part.left(); x <= part.right(); ++x) colours.insert(image.pixel(x, y));
  }
  return colours.size();
}

// Part of the pixels that are nearer to the colour of text than to the bar's fill.
double inkPart(const QImage& image, const QRect& part, bool dark) {
  int ink = 0;
  for (int y = part.top(); y <= part.bottom(); ++y) {
    for (int x = part.left(); x <= part.right(); ++x) {
      const int lightness = qGray(image.pixel(x, y));
      ink += dark ? lightness > 190 : lightness < 90;
    }
  }
  return static_cast<double>(ink) / (part.width() * part.height());
}

TEST_P(ScreenshotTest, ShowsThePlanWithItsWords) {
  const Shot& shot = GetParam();
  ServedSample served;
  served.sync.addOpen(snapshotOf(*sampleReplica()));
  WindowOptions options = served.options();
  options.size = shot.size;
  options.view = shot.view;
  options.step = QString::fromUtf8(shot.step);
  options.scheme = shot.dark ? WindowOptions::Scheme::kDark : WindowOptions::Scheme::kLight;
  WindowApp app(options);
  ASSERT_NE(app.window(), nullptr);
  QEventLoop loop;
  app.whenShown([&] { loop.quit(); });
  loop.exec();
  ASSERT_EQ(app.session().state(), HouseholdSession::Live) << app.session().why().toStdString();
  const QImage image = app.picture();
  ASSERT_TRUE(image.save(QStringLiteral(SUPPERTIDE_PICTURES "/%1.png").arg(QString::fromUtf8(shot.name))));
  ASSERT_EQ(image.size(), shot.size);
  EXPECT_GT(colourCount(image, image.rect()), 200U) << "next to nothing is drawn";

  // Without a font every glyph is the same box.
  const QFontMetrics metrics(QGuiApplication::font());
  ASSERT_NE(metrics.horizontalAdvance(QLatin1Char('i')), metrics.horizontalAdvance(QLatin1Char('W')));
  QQuickItem* serving = findItem(app.window()->contentItem(), QStringLiteral("showServing"));
  ASSERT_NE(serving, nullptr);
  const QRect button =
      serving->mapRectToScene(serving->boundingRect()).toAlignedRect().adjusted(4, 4, -4, -4);
  const double ink = inkPart(image, button, shot.dark);
  EXPECT_GT(ink, 0.02) << "no words on the button";
  EXPECT_LT(ink, 0.5) << "a box in place of words";
}

INSTANTIATE_TEST_SUITE_P(
    Sizes, ScreenshotTest,
    ::testing::Values(Shot{"desk_all_light", {1280, 800}, false, WindowOptions::View::kAll, ""},
                      Shot{"desk_all_dark", {1280, 800}, true, WindowOptions::View::kAll, ""},
                      Shot{"desk_now_light", {1280, 800}, false, WindowOptions::View::kNow, ""},
                      Shot{"desk_now_dark", {1280, 800}, true, WindowOptions::View::kNow, "chicken/roast"},
                      Shot{"desk_step_light", {1280, 800}, false, WindowOptions::View::kServing, "loaf/mix"},
                      Shot{"tall_now_light", {1280, 1500}, false, WindowOptions::View::kNow, ""},
                      Shot{"tall_all_light", {1280, 1500}, false, WindowOptions::View::kAll, ""},
                      Shot{"tall_all_dark", {1280, 1500}, true, WindowOptions::View::kAll, ""},
                      Shot{"phone_all_light", {390, 844}, false, WindowOptions::View::kAll, ""},
                      Shot{"phone_now_light", {390, 844}, false, WindowOptions::View::kNow, ""},
                      Shot{"phone_now_dark", {390, 844}, true, WindowOptions::View::kNow, ""},
                      Shot{"phone_step_light", {390, 844}, false, WindowOptions::View::kNow, "rolls/bake"}),
    [](const auto& info) { return std::string(info.param.name); });

}  // namespace
}  // namespace suppertide::testing
