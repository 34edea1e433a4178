// The window in another language, switched while it is open.
#include <gtest/gtest.h>

#include "tests/window/served_sample.h"
//
#include <QtTest/qtest.h>

#include "tests/window/find_item.h"
#include "tests/window/patience.h"

namespace suppertide::testing {
namespace {

TEST(LanguageTest, SwitchesAllWordsAtOnceAndBack) {
  ServedSample served;
  served.sync.addOpen(snapshotOf(*sampleReplica()));
  WindowApp app(served.options());
  ASSERT_NE(app.window(), nullptr);
  ASSERT_TRUE(QTest::qWaitFor([&] { return app.session().state() == HouseholdSession::Live; }, kPatienceMs));
  const auto pill = [&] {
    return findItem(app.window()->contentItem(), QStringLiteral("connection"))
        ->property("label")
        .toString()
        .toStdString();
  };
  EXPECT_EQ(pill(), "Live");
  const QString subtitle = app.timeline().subtitle();
  app.preferences().setLanguage(QStringLiteral("de"));
  EXPECT_EQ(pill(), "Verbunden");
  EXPECT_NE(app.timeline().subtitle(), subtitle) << "text made in C++ is made anew";
  app.preferences().setLanguage(QStringLiteral("en"));
  EXPECT_EQ(pill(), "Live");
  app.preferences().setLanguage({});
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
}

TEST(LanguageTest, IsChosenForOneStartOnTheCommandLine) {
  ServedSample served;
  served.sync.addOpen(snapshotOf(*sampleReplica()));
  WindowOptions options = served.options();
  options.language = QStringLiteral("de");
  {
    WindowApp app(options);
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return app.session().state() == HouseholdSession::Live; }, kPatienceMs));
    EXPECT_EQ(app.session().stateText().toStdString(), "Verbunden");
  }
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
}

}  // namespace
}  // namespace suppertide::testing
