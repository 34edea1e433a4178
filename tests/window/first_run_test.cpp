// The first start of a window on a device that belongs to no household.
#include <gtest/gtest.h>

#include "client/link/request_id.h"
#include "server/service/server.h"
#include "tests/support/temp_dir.h"
//
#include <QtTest/qsignalspy.h>
#include <QtTest/qtest.h>

#include "client/link/joining.h"
#include "client/link/private_file.h"
#include "client/shell/sample_event.h"
#include "client/shell/window_app.h"
#include "tests/window/find_item.h"
#include "tests/window/patience.h"
#include "tests/window/sample.h"

namespace suppertide::testing {
namespace {

// Programs keep nothing of this test's in the user's own folders.
class FirstRunTest : public ::testing::Test {
 protected:
  FirstRunTest() {
    qputenv("XDG_CONFIG_HOME", QByteArray::fromStdString(folder_.file("config")));
    qputenv("XDG_DATA_HOME", QByteArray::fromStdString(folder_.file("data")));
  }
  ~FirstRunTest() override {
    app_.reset();
    qunsetenv("XDG_CONFIG_HOME");
    qunsetenv("XDG_DATA_HOME");
  }
  void open() {
    ParsedOptions parsed = parseOptions({QStringLiteral("suppertide-window")});
    parsed.options.network = "127.0.0.1:0";
    ASSERT_EQ(parsed.exitCode, -1) << parsed.text.toStdString();
    app_ = std::make_unique<WindowApp>(parsed.options);
    ASSERT_NE(app_->window(), nullptr);
  }
  QQuickItem* item(const char* name) {
    return findItem(app_->window()->contentItem(), QString::fromUtf8(name));
  }
  QQuickItem* field(const char* name) {
    QQuickItem* entry = item(name);
    return entry == nullptr ? nullptr : findItem(entry, QStringLiteral("field"));
  }
  void type(const char* name, const QString& text) {
    QQuickItem* entry = item(name);
    ASSERT_NE(entry, nullptr) << name;
    ASSERT_TRUE(QMetaObject::invokeMethod(entry, "edited", Q_ARG(QString, text)));
  }
  void press(const char* name) {
    QQuickItem* button = item(name);
    ASSERT_NE(button, nullptr) << name;
    ASSERT_TRUE(QMetaObject::invokeMethod(button, "clicked"));
  }
  bool isLive() {
    return QTest::qWaitFor([this] { return app_->session().state() == HouseholdSession::Live; }, kPatienceMs);
  }
  std::string problem() {
    EXPECT_TRUE(QTest::qWaitFor([this] { return !app_->firstRun().busy(); }, kPatienceMs));
    return app_->firstRun().problem().toStdString();
  }

  TempDir folder_;
  std::unique_ptr<WindowApp> app_;
};

TEST_F(FirstRunTest, AsksWhereTheHouseholdLives) {
  open();
  EXPECT_TRUE(app_->firstRun().isOpen());
  EXPECT_NE(item("stayHere"), nullptr);
  EXPECT_NE(item("join"), nullptr);
}

TEST_F(FirstRunTest, OneClickMakesAHouseholdWithAFeastToLookAt) {
  open();
  type("person", QStringLiteral("Mira"));
  press("stayHere");
  ASSERT_TRUE(isLive()) << problem();
  EXPECT_FALSE(app_->firstRun().isOpen());
  EXPECT_EQ(item("stayHere"), nullptr);
  ASSERT_TRUE(QTest::qWaitFor([this] { return app_->session().known(); }, kPatienceMs));
  EXPECT_EQ(app_->session().memberName().toStdString(), "Mira");
  EXPECT_TRUE(app_->session().mayHost());
  EXPECT_EQ(app_->session().events()->count(), 1);
  ASSERT_TRUE(QTest::qWaitFor([this] { return app_->timeline().hasPlan(); }, kPatienceMs))
      << "it is planned, too";

  // The next start finds it again, serves it and needs no answer.
  app_.reset();
  open();
  EXPECT_FALSE(app_->firstRun().isOpen());
  EXPECT_TRUE(app_->timeline().hasPlan()) << "from the disk, before the server is up";
  ASSERT_TRUE(isLive());
  EXPECT_EQ(app_->session().memberName().toStdString(), "Mira");

  // A second window looks through the first one's server.
  const ParsedOptions parsed = parseOptions({QStringLiteral("suppertide-window")});
  WindowApp second(parsed.options);
  EXPECT_TRUE(
      QTest::qWaitFor([&] { return second.session().state() == HouseholdSession::Live; }, kPatienceMs));
}

TEST_F(FirstRunTest, OthersAreLetInOverTlsAndOutAgain) {
  open();
  press("stayHere");
  ASSERT_TRUE(isLive()) << problem();
  HouseholdController& household = app_->household();
  EXPECT_TRUE(household.onlyHere());
  const auto settled = [&] { return QTest::qWaitFor([&] { return !household.changingWho(); }, kPatienceMs); };
  household.letOthersIn(true);
  ASSERT_TRUE(settled());
  ASSERT_TRUE(household.othersIn());
  EXPECT_FALSE(household.onlyHere());
  ASSERT_TRUE(QTest::qWaitFor(
      [&] {
        if (!household.inviting() && household.invitationCode().isEmpty()) household.invite(1, {});
        return !household.invitationCode().isEmpty();
      },
      kPatienceMs))
      << household.invitationProblem().toStdString();

  link::Joining joining;
  joining.target = household.address().toStdString();
  joining.code = household.invitationCode().toStdString();
  joining.memberName = "Rui";
  const auto known = link::join(joining, folder_.file("theirs.json"));
  ASSERT_TRUE(known.ok()) << known.status();
  EXPECT_FALSE(known->fingerprint.empty());
  const auto lookIn = [&] {
    link::Session other({.target = known->target,
                         .deviceToken = known->deviceToken,
                         .certificatePem = "",
                         .fingerprint = known->fingerprint});
    return other.whoAmI().ok();
  };
  EXPECT_TRUE(lookIn());
  const auto saved = link::loadCredentials(link::credentialsPath());
  ASSERT_TRUE(saved.ok());
  EXPECT_EQ(saved->find("")->network, known->target) << "the next start is open at the same port";

  household.letOthersIn(false);
  ASSERT_TRUE(settled());
  EXPECT_TRUE(household.onlyHere());
  EXPECT_FALSE(lookIn());
  ASSERT_TRUE(isLive());
}

TEST_F(FirstRunTest, LeavingLeadsBackToTheChoice) {
  open();
  press("stayHere");
  ASSERT_TRUE(isLive()) << problem();
  const std::string kept = link::householdFolder(app_->firstRun().known().householdId).string();
  app_->household().leave();
  EXPECT_TRUE(app_->firstRun().isOpen());
  EXPECT_FALSE(app_->session().known());
  EXPECT_FALSE(std::filesystem::exists(kept));
  const auto saved = link::loadCredentials(link::credentialsPath());
  ASSERT_TRUE(saved.ok());
  EXPECT_TRUE(saved->servers.empty());
}

// A household of others, over TLS on loopback.
class JoinTest : public FirstRunTest {
 protected:
  JoinTest() {
    service::Server::Options options;
    options.dataFile = folder_.file("theirs.sqlite");
    options.listen = "127.0.0.1:0";
    auto server = service::Server::start(options, clock_);
    EXPECT_TRUE(server.ok()) << server.status();
    server_ = *std::move(server);
    link::Session founder({.target = server_->target(),
                           .deviceToken = "",
                           .certificatePem = "",
                           .fingerprint = server_->fingerprint()});
    v1::CreateHouseholdRequest request;
    request.set_host_code(server_->hostCode());
    request.mutable_household()->set_display_name("Harbour Lane");
    request.mutable_household()->set_time_zone("Europe/Lisbon");
    request.set_request_id(link::newRequestId());
    const auto founded = founder.createHousehold(request);
    EXPECT_TRUE(founded.ok()) << founded.status();
    host_ = std::make_unique<link::Session>(link::SessionOptions{.target = server_->target(),
                                                                 .deviceToken = founded->device_token(),
                                                                 .certificatePem = "",
                                                                 .fingerprint = server_->fingerprint()});
    householdId_ = founded->household().id();
  }
  QString newCode() {
    v1::CreateInvitationRequest request;
    request.set_household_id(householdId_);
    request.set_role(v1::ROLE_COOK);
    request.set_request_id(link::newRequestId());
    const auto invitation = host_->createInvitation(request);
    EXPECT_TRUE(invitation.ok()) << invitation.status();
    return QString::fromStdString(invitation->code() + "." + invitation->certificate_fingerprint());
  }
  QString address() const { return QString::fromStdString(server_->target()); }
  void tryToJoin(const QString& address, const QString& code) {
    type("person", QStringLiteral("Mira"));
    type("address", address);
    type("code", code);
    press("join");
  }

  SystemClock clock_;
  std::unique_ptr<service::Server> server_;
  std::unique_ptr<link::Session> host_;
  std::string householdId_;
};

TEST_F(JoinTest, ACodeWithItsFingerprintLetsTheDeviceInOverTls) {
  open();
  tryToJoin(address(), newCode());
  ASSERT_TRUE(isLive()) << problem();
  ASSERT_TRUE(QTest::qWaitFor([this] { return app_->session().known(); }, kPatienceMs));
  EXPECT_EQ(app_->session().householdName().toStdString(), "Harbour Lane");
  EXPECT_EQ(app_->session().memberName().toStdString(), "Mira");
  EXPECT_FALSE(app_->session().mayHost());
  const auto saved = link::loadCredentials(link::credentialsPath());
  ASSERT_TRUE(saved.ok() && saved->servers.size() == 1);
  EXPECT_EQ(saved->servers[0].fingerprint, server_->fingerprint());
  app_.reset();
  open();
  EXPECT_TRUE(isLive()) << "the next start needs no code";
}

TEST_F(JoinTest, ACookSetsTheirOwnHours) {
  open();
  tryToJoin(address(), newCode());
  ASSERT_TRUE(isLive()) << problem();
  ASSERT_TRUE(QTest::qWaitFor([this] { return app_->session().known(); }, kPatienceMs));
  const QString id = app_->session().memberId();
  app_->household().setAwake(id, 9 * 60, 23 * 60);
  const auto hours = [&]() -> std::string {
    v1::GetHouseholdRequest request;
    request.set_household_id(householdId_);
    const auto household = host_->household(request);
    if (!household.ok()) return "";
    for (const v1::Member& member : household->members())
      if (member.id() == id.toStdString()) return member.awake().start();
    return "";
  };
  EXPECT_TRUE(QTest::qWaitFor([&] { return hours() == "09:00"; }, kPatienceMs));
}

TEST_F(JoinTest, TheLineOfAnInvitationsPictureIsEnough) {
  open();
  tryToJoin({}, QStringLiteral("suppertide:join?at=%1&code=%2").arg(address(), newCode()));
  EXPECT_TRUE(isLive()) << problem();
}

TEST_F(JoinTest, WhatGoesWrongIsToldWithWhatToDo) {
  open();
  tryToJoin(address(), {});
  EXPECT_EQ(problem().rfind("Type the invitation code.", 0), 0U) << problem();
  tryToJoin({}, newCode());
  EXPECT_EQ(problem().rfind("Type the address", 0), 0U) << problem();
  const QString code = newCode();
  tryToJoin(address(), code.chopped(5));
  EXPECT_EQ(problem().rfind("This code cannot be right: the code's second "
                            "part, after the dot, is cut off",
                            0),
            0U)
      << problem();
  tryToJoin(address(), QStringLiteral("AAAA-BBBB-CCCC.") + QString::fromStdString(server_->fingerprint()));
  EXPECT_EQ(problem().rfind("The server does not know this code.", 0), 0U) << problem();
  tryToJoin(address(), code.left(code.indexOf(QLatin1Char('.')) + 1) + QString(64, QLatin1Char('a')));
  EXPECT_EQ(problem().rfind("At " + address().toStdString() + " answers another server", 0), 0U) << problem();
  tryToJoin(QStringLiteral("127.0.0.1:1"), code);
  EXPECT_EQ(problem().rfind("No server answers at 127.0.0.1:1.", 0), 0U) << problem();
  EXPECT_TRUE(app_->firstRun().isOpen());
  tryToJoin(address(), code);
  EXPECT_TRUE(isLive()) << "none of these used the code up";
}

QByteArray feastJson() {
  QFile file(QStringLiteral(":/suppertide/feast.json"));
  EXPECT_TRUE(file.open(QIODevice::ReadOnly));
  return file.readAll();
}

TEST(SampleEventTest, TheDinnerLiesAheadAtItsOwnHoursAndWeekday) {
  const SampleHome home{.householdName = "Ours", .timeZone = "America/New_York", .personName = "Mira"};
  const QTimeZone there("America/New_York");
  const auto original =
      sampleEvent(feastJson(), {.householdName = "", .timeZone = "Europe/Tallinn", .personName = ""},
                  Instant(std::chrono::seconds(secondsAt("2027-08-01T12:00:00+03:00"))));
  ASSERT_TRUE(original.ok()) << original.status();
  for (const char* today : {"2026-11-30T12:00:00Z", "2027-03-10T12:00:00Z", "2029-01-01T00:00:00Z"}) {
    const auto moved = sampleEvent(feastJson(), home, Instant(std::chrono::seconds(secondsAt(today))));
    ASSERT_TRUE(moved.ok()) << moved.status();
    const auto dinner = [](const v1::Bundle& bundle, const QTimeZone& zone) {
      return QDateTime::fromSecsSinceEpoch(bundle.events(0).courses(0).serving_time().seconds(), zone);
    };
    const QDateTime then = dinner(*moved, there);
    const QDateTime before = dinner(*original, QTimeZone("Europe/Tallinn"));
    EXPECT_EQ(then.time(), before.time());
    EXPECT_EQ(then.date().dayOfWeek(), before.date().dayOfWeek());
    const auto days = QDateTime::fromSecsSinceEpoch(secondsAt(today), there).date().daysTo(then.date());
    EXPECT_GE(days, 4);
    EXPECT_LT(days, 11);
    EXPECT_EQ(moved->household().time_zone(), "America/New_York");
    EXPECT_EQ(moved->household().members(0).display_name(), "Mira");
  }
}

}  // namespace
}  // namespace suppertide::testing
