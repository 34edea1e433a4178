#include "client/session/preferences.h"

#include <gtest/gtest.h>

#include <QtTest/qsignalspy.h>

#include "client/session/household_session.h"
#include "tests/support/temp_dir.h"
#include "tests/window/sample.h"

namespace suppertide::testing {
namespace {

TEST(PreferencesTest, AreKeptOnThisDevice) {
  const TempDir folder;
  const QString file = QString::fromStdString(folder.file("window.ini"));
  {
    Preferences preferences(file);
    EXPECT_EQ(preferences.scheme(), Preferences::AsDesktop);
    EXPECT_EQ(preferences.textScale(), 1.0);
    EXPECT_TRUE(preferences.sound());
    preferences.setScheme(Preferences::Dark);
    preferences.setTextScale(1.5);
    preferences.setLanguage(QStringLiteral("de"));
    preferences.setDegrees(Preferences::Fahrenheit);
    preferences.setMeasures(Preferences::UnitedStates);
    preferences.setSound(false);
  }
  const Preferences preferences(file);
  EXPECT_EQ(preferences.scheme(), Preferences::Dark);
  EXPECT_EQ(preferences.textScale(), 1.5);
  EXPECT_EQ(preferences.language().toStdString(), "de");
  EXPECT_EQ(preferences.temperatureUnit(), v1::TEMPERATURE_UNIT_FAHRENHEIT);
  EXPECT_EQ(preferences.measureSystem(), v1::MEASURE_SYSTEM_US);
  EXPECT_FALSE(preferences.sound());
}

TEST(PreferencesTest, AreToldOnceWhenTheyChange) {
  Preferences preferences;
  QSignalSpy changed(&preferences, &Preferences::changed);
  preferences.setTextScale(1.2);
  preferences.setTextScale(1.2);
  EXPECT_EQ(changed.count(), 1);
  preferences.setTextScale(50);
  EXPECT_EQ(preferences.textScale(), 1.8) << "no text that leaves no room for anything else";
}

TEST(PreferencesTest, AWordFromTheCommandLineIsNotKept) {
  const TempDir folder;
  const QString file = QString::fromStdString(folder.file("window.ini"));
  {
    Preferences preferences(file);
    preferences.setForNow(Preferences::Dark);
    EXPECT_EQ(preferences.scheme(), Preferences::Dark);
  }
  EXPECT_EQ(Preferences(file).scheme(), Preferences::AsDesktop);
}

TEST(PreferencesTest, UnitsSwitchWhileTheHouseholdIsShown) {
  HouseholdSession session([] { return Instant(std::chrono::seconds(0)); });
  session.adopt(sampleReplica());
  ASSERT_NE(session.view(), nullptr);
  EXPECT_EQ(session.view()->dial(220).toStdString(), "220 °C");
  QSignalSpy changed(&session, &HouseholdSession::householdChanged);
  session.setUnits(v1::TEMPERATURE_UNIT_FAHRENHEIT, std::nullopt);
  EXPECT_EQ(changed.count(), 1);
  EXPECT_EQ(session.view()->dial(220).toStdString(), "430 °F");
  session.setUnits(std::nullopt, std::nullopt);
  EXPECT_EQ(session.view()->dial(220).toStdString(), "220 °C");
}

}  // namespace
}  // namespace suppertide::testing
