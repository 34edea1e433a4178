#include <gtest/gtest.h>

#include <QtGui/qpainter.h>
#include <QtTest/qabstractitemmodeltester.h>
#include <QtTest/qsignalspy.h>
#include <QtTest/qtest.h>

#include "client/household/household_controller.h"
#include "client/household/qr_code.h"
#include "tests/window/patience.h"
#include "tests/window/real_household.h"
#include "tests/window/sample.h"

namespace suppertide::testing {
namespace {

HouseholdSession::Clock anyClock() {
  return [] { return Instant(std::chrono::seconds(secondsAt("2026-06-20T12:00:00+01:00"))); };
}

class HouseholdControllerTest : public ::testing::Test {
 protected:
  HouseholdControllerTest() {
    session_.setMemberId("ines");
    session_.adopt(sampleReplica());
  }
  QVariant of(const char* id, const char* field) const {
    return household_.people()->value(household_.people()->rowOf(QString::fromUtf8(id)),
                                      QString::fromUtf8(field));
  }

  HouseholdSession session_{anyClock()};
  HouseholdController household_{&session_};
};

TEST_F(HouseholdControllerTest, ListsPeopleWithRoleAndHours) {
  QAbstractItemModelTester tester(household_.people());
  session_.adopt(sampleReplica());
  EXPECT_EQ(household_.people()->count(), 3);
  EXPECT_EQ(of("ines", "roleName").toString().toStdString(), "Host");
  EXPECT_TRUE(of("ines", "me").toBool());
  EXPECT_EQ(of("noor", "hours").toString().toStdString(), "07:00–22:30")
      << "what counts when nothing is stated";
}

TEST_F(HouseholdControllerTest, AChangeIsShownAtOnceAndCanBeTakenBack) {
  household_.setAwake(QStringLiteral("noor"), 6 * 60, 23 * 60);
  EXPECT_EQ(of("noor", "hours").toString().toStdString(), "06:00–23:00");
  EXPECT_EQ(of("noor", "name").toString().toStdString(), "Noor");
  household_.setName(QStringLiteral("noor"), QStringLiteral(" Noor B. "));
  household_.setRole(QStringLiteral("noor"), 2);
  household_.setSkills(QStringLiteral("noor"), QStringLiteral("shaping, carving,"));
  EXPECT_EQ(of("noor", "name").toString().toStdString(), "Noor B.");
  EXPECT_EQ(of("noor", "roleName").toString().toStdString(), "Host");
  EXPECT_EQ(of("noor", "skills").toString().toStdString(), "shaping, carving");
  for (int i = 0; i < 4; ++i) session_.undo();
  EXPECT_EQ(of("noor", "hours").toString().toStdString(), "07:00–22:30");
  EXPECT_EQ(of("noor", "roleName").toString().toStdString(), "Cook");
}

TEST_F(HouseholdControllerTest, QuietHoursAreTheNightUntilStated) {
  EXPECT_EQ(of("noor", "quietStart").toInt(), 22 * 60 + 30);
  EXPECT_EQ(of("noor", "quietLimit").toInt(), 7 * 60);
  EXPECT_EQ(of("noor", "soonMinutes").toInt(), 10);
  household_.setQuiet(QStringLiteral("noor"), 13 * 60, 15 * 60);
  household_.setSoon(QStringLiteral("noor"), 0);
  EXPECT_EQ(of("noor", "quietStart").toInt(), 13 * 60);
  EXPECT_EQ(of("noor", "quietLimit").toInt(), 15 * 60);
  EXPECT_EQ(of("noor", "soonMinutes").toInt(), 0);
}

TEST_F(HouseholdControllerTest, WhatHoldsForTheWholeHouseholdIsChangedAndTakenBack) {
  EXPECT_EQ(household_.degrees(), 0);
  EXPECT_EQ(household_.measures(), 0);
  household_.setDegrees(1);
  household_.setMeasures(1);
  household_.setSafetyRules(2);
  EXPECT_EQ(household_.degrees(), 1);
  EXPECT_EQ(household_.measures(), 1);
  EXPECT_EQ(household_.safetyRules(), 2);
  session_.undo();
  EXPECT_EQ(household_.safetyRules(), 0);
}

TEST_F(HouseholdControllerTest, OnlyATimeZoneThatThereIsIsTaken) {
  household_.setZone(QStringLiteral(" Europe/Tallinn "));
  EXPECT_EQ(household_.zone().toStdString(), "Europe/Tallinn");
  household_.setZone(QStringLiteral("Europe/Atlantis"));
  EXPECT_EQ(household_.zone().toStdString(), "Europe/Tallinn");
}

TEST_F(HouseholdControllerTest, PeopleComeAndGo) {
  household_.addPerson(QStringLiteral("Ada"), 1);
  EXPECT_EQ(household_.people()->count(), 4);
  household_.removePerson(QStringLiteral("tomas"));
  EXPECT_EQ(household_.people()->count(), 3);
  household_.removePerson(QStringLiteral("ines"));
  EXPECT_EQ(household_.people()->count(), 3) << "nobody takes themselves out";
  household_.addPerson(QStringLiteral("  "), 1);
  EXPECT_EQ(household_.people()->count(), 3);
}

TEST(HouseholdOnAServerTest, InvitesListsDevicesAndTakesOneOff) {
  RealHousehold real;
  const link::LinkOptions host = real.host();
  HouseholdSession session(
      [] { return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()); });
  HouseholdController household(&session);
  link::KnownServer known;
  known.target = host.target;
  known.householdId = host.householdId;
  household.setKnown(known);
  session.setMemberId("ana");
  session.start(host, "");
  ASSERT_TRUE(QTest::qWaitFor([&] { return session.state() == HouseholdSession::Live; }, kPatienceMs));
  EXPECT_TRUE(household.onlyHere());

  household.invite(1, QStringLiteral("rui"));
  ASSERT_TRUE(QTest::qWaitFor([&] { return !household.inviting(); }, kPatienceMs));
  ASSERT_TRUE(household.invitationProblem().isEmpty()) << household.invitationProblem().toStdString();
  EXPECT_EQ(household.invitationFor().toStdString(), "For Rui, as Cook");
  EXPECT_TRUE(household.invitationLine().endsWith(household.invitationCode()));
  EXPECT_FALSE(household.invitationUntil().isEmpty());

  v1::JoinHouseholdRequest join;
  join.set_code(household.invitationCode().toStdString());
  join.set_device_name("Rui's phone");
  join.set_request_id("join-1");
  link::Session stranger({.target = host.target, .deviceToken = "", .certificatePem = ""});
  const auto joined = stranger.joinHousehold(join);
  ASSERT_TRUE(joined.ok()) << joined.status();

  QAbstractItemModelTester tester(household.devices());
  household.refreshDevices();
  ASSERT_TRUE(QTest::qWaitFor([&] { return household.devices()->count() == 2; }, kPatienceMs));
  const int row = household.devices()->rowOf(QString::fromStdString(joined->device_id()));
  EXPECT_EQ(household.devices()->value(row, QStringLiteral("whose")).toString().toStdString(), "Rui");
  EXPECT_FALSE(household.devices()->value(row, QStringLiteral("here")).toBool());
  EXPECT_TRUE(household.devices()->value(1 - row, QStringLiteral("here")).toBool());
  household.revoke(QString::fromStdString(joined->device_id()));
  ASSERT_TRUE(QTest::qWaitFor(
      [&] { return household.devices()->value(row, QStringLiteral("revoked")).toBool(); }, kPatienceMs));
}

TEST(QrCodeTest, DrawsTheCodesModulesDarkOnWhite) {
  QrCode code;
  code.setText(QStringLiteral("suppertide:join?at=192.168.1.4:50710&code=ABCD-EFGH-JKLM"));
  ASSERT_GE(code.modules(), 21);
  // The ring of a finder pattern: dark, then light, then a dark square.
  for (const auto& [x, y] :
       {std::pair{0, 0}, std::pair{code.modules() - 7, 0}, std::pair{0, code.modules() - 7}}) {
    EXPECT_TRUE(code.isDark(x, y));
    EXPECT_FALSE(code.isDark(x + 1, y + 1));
    EXPECT_TRUE(code.isDark(x + 3, y + 3));
  }
  code.setSize({300, 300});
  QImage image(300, 300, QImage::Format_RGB32);
  QPainter painter(&image);
  code.paint(&painter);
  painter.end();
  EXPECT_EQ(image.pixelColor(2, 2), QColor(Qt::white)) << "a margin around";
  const int cell = 300 / (code.modules() + 8);
  const int corner = (300 - cell * code.modules()) / 2;
  EXPECT_EQ(image.pixelColor(corner + cell / 2, corner + cell / 2), QColor(Qt::black));
  code.setText({});
  EXPECT_EQ(code.modules(), 0);
}

}  // namespace
}  // namespace suppertide::testing
