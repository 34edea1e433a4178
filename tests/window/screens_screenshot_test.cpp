// Renders the screens of the sample dinner to PNG files, and checks that there is something on them.
#include <gtest/gtest.h>

#include "tests/window/served_sample.h"
//
#include <QtCore/qeventloop.h>

#include <algorithm>
#include <map>
#include <string>
#include <vector>

namespace suppertide::testing {
namespace {

constexpr QSize kDesk{1280, 800};
constexpr QSize kPhone{390, 844};

struct ScreenShot {
  const char* screen;
  const char* time;
  QSize size;
  bool dark;
  bool reminded = false;
};

std::string nameOf(const ScreenShot& shot) {
  return std::string(shot.size == kDesk ? "desk" : "phone") + "_" + shot.screen +
         (shot.reminded ? "_reminded" : "") + (shot.dark ? "_dark" : "_light");
}

void PrintTo(const ScreenShot& shot, std::ostream* out) {
  *out << nameOf(shot);
}

void tellReminder(Reminders& reminders, const std::string& step) {
  v1::WatchRemindersResponse message;
  v1::Reminder& reminder = *message.mutable_due()->mutable_reminder();
  reminder.set_id("reminder of " + step);
  reminder.set_event_id(kSampleEvent);
  reminder.set_kind(step == "chicken/roast" ? v1::REMINDER_KIND_PREHEAT : v1::REMINDER_KIND_STEP_DUE);
  reminder.set_step_id(step);
  reminder.set_oven_id("large");
  reminder.set_setpoint_celsius(220);
  reminder.mutable_remind_time()->set_seconds(secondsAt("2026-06-20T15:10:00+01:00"));
  *reminder.mutable_due_time() = reminder.remind_time();
  reminders.reminderTold(message);
}

// How much of the picture is not its commonest colour.
double drawnPart(const QImage& image) {
  std::map<QRgb, int> counts;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) ++counts[image.pixel(x, y)];
  int most = 0;
  for (const auto& [colour, count] : counts) most = std::max(most, count);
  return 1 - static_cast<double>(most) / (image.width() * image.height());
}

class ScreensScreenshotTest : public ::testing::TestWithParam<ScreenShot> {};

TEST_P(ScreensScreenshotTest, ShowsTheDinner) {
  const ScreenShot& shot = GetParam();
  ServedSample served;
  served.sync.addOpen(snapshotOf(*sampleReplica()));
  WindowOptions options = served.options();
  options.size = shot.size;
  options.screen = QString::fromUtf8(shot.screen);
  options.at = Instant(std::chrono::seconds(secondsAt(shot.time)));
  options.scheme = shot.dark ? WindowOptions::Scheme::kDark : WindowOptions::Scheme::kLight;
  WindowApp app(options);
  ASSERT_NE(app.window(), nullptr);
  app.session().setMemberId("ines");
  QEventLoop loop;
  app.whenShown([&] { loop.quit(); });
  loop.exec();
  ASSERT_EQ(app.session().state(), HouseholdSession::Live) << app.session().why().toStdString();
  if (shot.reminded)
    for (const char* step : {"rolls/shape", "chicken/roast", "loaf/mix"}) tellReminder(app.reminders(), step);
  const QImage image = app.picture();
  ASSERT_EQ(image.size(), shot.size);
  ASSERT_TRUE(
      image.save(QStringLiteral(SUPPERTIDE_PICTURES "/%1.png").arg(QString::fromStdString(nameOf(shot)))));
  EXPECT_GT(drawnPart(image), 0.1) << "next to nothing is drawn";
}

std::vector<ScreenShot> shots() {
  std::vector<ScreenShot> all;
  for (const auto& [screen, time] :
       std::vector<std::pair<const char*, const char*>>{{"event", "2026-06-17T12:00:00+01:00"},
                                                        {"ovens", "2026-06-20T16:50:00+01:00"},
                                                        {"doughs", "2026-06-20T16:05:00+01:00"},
                                                        {"tasks", "2026-06-20T15:10:00+01:00"}}) {
    for (const QSize& size : {kDesk, kPhone})
      for (const bool dark : {false, true}) all.push_back({screen, time, size, dark});
  }
  for (const QSize& size : {kDesk, kPhone})
    all.push_back({"tasks", "2026-06-20T15:10:00+01:00", size, size == kPhone, true});
  return all;
}

INSTANTIATE_TEST_SUITE_P(Screens, ScreensScreenshotTest, ::testing::ValuesIn(shots()),
                         [](const auto& info) { return nameOf(info.param); });

}  // namespace
}  // namespace suppertide::testing
