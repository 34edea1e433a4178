// Notifications on a session bus of the test's own, with a service that the test plays.
#include <gtest/gtest.h>

#include <QtCore/qprocess.h>
#include <QtCore/qstandardpaths.h>
#include <QtDBus/qdbusconnection.h>
#include <QtDBus/qdbuserror.h>
#include <QtDBus/qdbusmessage.h>
#include <QtTest/qsignalspy.h>
#include <QtTest/qtest.h>

#include "client/session/notifier.h"
#include "tests/window/played_desktop.h"

namespace suppertide::testing {
namespace {

class NotifierTest : public ::testing::Test {
 protected:
  void SetUp() override {
    const QString daemon = QStandardPaths::findExecutable(QStringLiteral("dbus-daemon"));
    if (daemon.isEmpty()) GTEST_SKIP() << "there is no dbus-daemon on this machine";
    bus_.start(daemon,
               {QStringLiteral("--session"), QStringLiteral("--nofork"), QStringLiteral("--print-address")});
    ASSERT_TRUE(bus_.waitForStarted() && bus_.waitForReadyRead());
    address_ = QString::fromUtf8(bus_.readLine()).trimmed();
    client_ = QDBusConnection::connectToBus(address_, QStringLiteral("client"));
    ASSERT_TRUE(client_.isConnected());
  }
  void TearDown() override {
    QDBusConnection::disconnectFromBus(QStringLiteral("client"));
    QDBusConnection::disconnectFromBus(QStringLiteral("desktop"));
    bus_.kill();
    bus_.waitForFinished();
  }
  void playDesktop() {
    QDBusConnection own = QDBusConnection::connectToBus(address_, QStringLiteral("desktop"));
    ASSERT_TRUE(own.registerObject(QStringLiteral("/org/freedesktop/Notifications"), &desktop_,
                                   QDBusConnection::ExportAllSlots | QDBusConnection::ExportAllSignals));
    ASSERT_TRUE(own.registerService(QStringLiteral("org.freedesktop.Notifications")));
  }

  QProcess bus_;
  QString address_;
  QDBusConnection client_{QString()};
  PlayedDesktop desktop_;
};

TEST_F(NotifierTest, TellsTheDesktopAndTakesItBack) {
  playDesktop();
  Notifier notifier(client_);
  QSignalSpy here(&notifier, &Notifier::shownHere);
  notifier.tell(QStringLiteral("r1"), QStringLiteral("Shape the rolls"), QStringLiteral("in <10> min"), true);
  ASSERT_TRUE(QTest::qWaitFor([&] { return desktop_.shown.size() == 1; }));
  EXPECT_EQ(desktop_.shown[0].title.toStdString(), "Shape the rolls");
  EXPECT_EQ(desktop_.shown[0].text.toStdString(), "in &lt;10&gt; min");
  EXPECT_FALSE(desktop_.shown[0].hints.value(QStringLiteral("suppress-sound")).toBool());
  // The answer has come when the same news replaces the first.
  ASSERT_TRUE(QTest::qWaitFor([&] {
    notifier.tell(QStringLiteral("r1"), QStringLiteral("Shape the rolls"), QStringLiteral("now"), false);
    return desktop_.shown.back().replaces == 1;
  }));
  EXPECT_TRUE(desktop_.shown.back().hints.value(QStringLiteral("suppress-sound")).toBool());
  notifier.takeBack(QStringLiteral("r1"));
  ASSERT_TRUE(QTest::qWaitFor([&] { return desktop_.closed.contains(1U); }));
  EXPECT_EQ(here.count(), 0);
}

TEST_F(NotifierTest, ATapOnItIsPassedOn) {
  playDesktop();
  Notifier notifier(client_);
  QSignalSpy opened(&notifier, &Notifier::opened);
  notifier.tell(QStringLiteral("r1"), QStringLiteral("Shape"), {}, false);
  ASSERT_TRUE(QTest::qWaitFor([&] {
    if (!desktop_.shown.isEmpty()) Q_EMIT desktop_.ActionInvoked(1, QStringLiteral("default"));
    return opened.count() > 0;
  }));
  EXPECT_EQ(opened.first().first().toString().toStdString(), "r1");
}

TEST_F(NotifierTest, ItsAnswersSettleAndPutOff) {
  playDesktop();
  Notifier notifier(client_);
  QSignalSpy settled(&notifier, &Notifier::settled);
  QSignalSpy snoozed(&notifier, &Notifier::snoozed);
  notifier.tell(QStringLiteral("r1"), QStringLiteral("Shape"), {}, false);
  ASSERT_TRUE(QTest::qWaitFor([&] {
    if (!desktop_.shown.isEmpty()) Q_EMIT desktop_.ActionInvoked(1, QStringLiteral("snooze"));
    return snoozed.count() > 0;
  }));
  EXPECT_EQ(settled.count(), 0);
  Q_EMIT desktop_.ActionInvoked(1, QStringLiteral("settle"));
  EXPECT_TRUE(settled.count() > 0 || settled.wait());
}

TEST_F(NotifierTest, WithoutAServiceTheWindowShowsIt) {
  Notifier notifier(client_);
  QSignalSpy here(&notifier, &Notifier::shownHere);
  QSignalSpy rings(&notifier, &Notifier::ringsHere);
  notifier.tell(QStringLiteral("r1"), QStringLiteral("Shape the rolls"), QStringLiteral("now"), true);
  ASSERT_TRUE(here.count() > 0 || here.wait());
  EXPECT_EQ(here.first().at(1).toString().toStdString(), "Shape the rolls");
  EXPECT_EQ(rings.count(), 1);
}

TEST_F(NotifierTest, NoSoundWhereThePersonWantsNone) {
  playDesktop();
  Notifier notifier(client_);
  notifier.setSound(false);
  notifier.tell(QStringLiteral("r1"), QStringLiteral("Shape"), {}, true);
  ASSERT_TRUE(QTest::qWaitFor([&] { return desktop_.shown.size() == 1; }));
  EXPECT_TRUE(desktop_.shown[0].hints.value(QStringLiteral("suppress-sound")).toBool());
}

TEST(NotifierWithoutBusTest, TheWindowShowsItAtOnce) {
  Notifier notifier{QDBusConnection(QStringLiteral("no such bus"))};
  QSignalSpy here(&notifier, &Notifier::shownHere);
  notifier.tell(QStringLiteral("r1"), QStringLiteral("Shape the rolls"), {}, false);
  EXPECT_EQ(here.count(), 1);
}

}  // namespace
}  // namespace suppertide::testing
