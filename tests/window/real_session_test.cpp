// Sessions on a real server: cuts, restarts, refusals, and two people who change the same thing.
#include <gtest/gtest.h>

#include <atomic>

#include <QtCore/qelapsedtimer.h>
#include <QtTest/qabstractitemmodeltester.h>
#include <QtTest/qsignalspy.h>
#include <QtTest/qtest.h>

#include "client/link/request_id.h"
#include "client/session/household_session.h"
#include "tests/window/patience.h"
#include "tests/window/real_household.h"

namespace suppertide::testing {
namespace {

HouseholdSession::Clock realClock() {
  return [] { return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()); };
}

class Person {
 public:
  Person(const link::LinkOptions& options, const std::string& memberId, const std::string& folder = {}) {
    session.setMemberId(memberId);
    session.start(options, "supper", folder);
  }
  bool isLive() {
    return QTest::qWaitFor([this] { return session.state() == HouseholdSession::Live; }, kPatienceMs);
  }
  bool isOffline() {
    return QTest::qWaitFor([this] { return session.state() == HouseholdSession::Offline; }, kPatienceMs);
  }
  bool hasSentAll() {
    return QTest::qWaitFor([this] { return session.waitingCount() == 0; }, kPatienceMs);
  }
  void finish(const char* dish, const char* step) {
    v1::Report report;
    report.set_dish_id(dish);
    report.set_step_id(step);
    report.set_finished(true);
    session.report(report);
  }
  bool seesDone(const char* dish, const char* step) const {
    const auto found = session.replica()->progresses.find("supper");
    if (found == session.replica()->progresses.end()) return false;
    for (const v1::Report& report : found->second.reports())
      if (report.dish_id() == dish && report.step_id() == step && report.finished()) return true;
    return false;
  }
  bool waitsToSeeDone(const char* dish, const char* step) {
    return QTest::qWaitFor([=, this] { return seesDone(dish, step); }, kPatienceMs);
  }
  const v1::Recipe& rolls() const { return session.replica()->recipes.at("rolls"); }
  void renameRolls(const std::string& name) {
    v1::UpdateRecipeRequest request;
    *request.mutable_recipe() = rolls();
    request.mutable_recipe()->set_display_name(name);
    request.mutable_update_mask()->add_paths("display_name");
    session.send(request);
  }
  bool waitsToSeeRolls(const std::string& name) {
    return QTest::qWaitFor([=, this] { return rolls().display_name() == name; }, kPatienceMs);
  }

  HouseholdSession session{realClock()};
};

class RealSessionTest : public ::testing::Test {
 protected:
  int reportsOnServer() {
    v1::ExportBundleRequest request;
    request.set_household_id(household_.id());
    const auto bundle = household_.calls().exportBundle(request);
    return bundle.ok() && bundle->progresses_size() > 0 ? bundle->progresses(0).reports_size() : 0;
  }

  RealHousehold household_;
};

TEST_F(RealSessionTest, OneCookFinishesATaskAndTheOtherSeesIt) {
  Person ana(household_.host(), "ana");
  Person rui(household_.deviceOf("rui"), "rui");
  ASSERT_TRUE(ana.isLive() && rui.isLive());
  EXPECT_TRUE(rui.session.mayReport());
  EXPECT_FALSE(rui.session.mayHost());
  rui.finish("roast", "season");
  EXPECT_TRUE(rui.seesDone("roast", "season")) << "at once";
  ASSERT_TRUE(ana.waitsToSeeDone("roast", "season"));
  EXPECT_EQ(ana.session.replica()->progresses.at("supper").reports(0).member_id(), "rui");
  EXPECT_EQ(ana.session.changedBy().toStdString(), "Rui");
}

TEST_F(RealSessionTest, OneGoesOfflineReportsAndReturns) {
  Person ana(household_.host(), "ana", household_.folder("ana"));
  Person rui(household_.deviceOf("rui"), "rui", household_.folder("rui"));
  ASSERT_TRUE(ana.isLive() && rui.isLive());
  household_.stop();
  ASSERT_TRUE(rui.isOffline());
  rui.finish("roast", "season");
  rui.finish("gratin", "prepare");
  EXPECT_EQ(rui.session.stateText().toStdString(), "Offline, 2 waiting");
  EXPECT_TRUE(rui.seesDone("gratin", "prepare"));
  household_.start();
  ASSERT_TRUE(ana.waitsToSeeDone("roast", "season"));
  ASSERT_TRUE(ana.waitsToSeeDone("gratin", "prepare"));
  ASSERT_TRUE(rui.isLive() && rui.hasSentAll());
  const v1::Progress& progress = ana.session.replica()->progresses.at("supper");
  EXPECT_EQ(progress.reports(0).step_id(), "season") << "in the order they were done";
  EXPECT_EQ(progress.reports(1).step_id(), "prepare");
}

TEST_F(RealSessionTest, WhatWaitsIsSentAfterARestartOfTheWindowOnceOnly) {
  const link::LinkOptions device = household_.deviceOf("rui");
  {
    Person rui(device, "rui", household_.folder("rui"));
    ASSERT_TRUE(rui.isLive());
    household_.stop();
    ASSERT_TRUE(rui.isOffline());
    rui.finish("roast", "season");
  }
  {
    Person rui(device, "rui", household_.folder("rui"));
    EXPECT_TRUE(rui.seesDone("roast", "season")) << "from the disk, with no server";
    EXPECT_EQ(rui.session.waitingCount(), 1);
    household_.start();
    ASSERT_TRUE(rui.isLive() && rui.hasSentAll());
  }
  Person rui(device, "rui", household_.folder("rui"));
  ASSERT_TRUE(rui.isLive());
  EXPECT_EQ(rui.session.waitingCount(), 0);
  EXPECT_EQ(reportsOnServer(), 1);
}

TEST_F(RealSessionTest, ARepeatOfWhatTheServerTookCountsOnce) {
  const link::LinkOptions device = household_.deviceOf("rui");
  v1::AddReportsRequest request;
  request.set_household_id(household_.id());
  request.set_event_id("supper");
  request.set_request_id(link::newRequestId());
  v1::Report& report = *request.add_reports();
  report.set_id("told-before-the-cut");
  report.set_dish_id("roast");
  report.set_step_id("season");
  report.set_finished(true);
  std::filesystem::create_directories(household_.folder("rui"));
  {
    // As left by a program that ended between the server's answer and striking it out.
    const auto outbox = link::Outbox::open(household_.folder("rui") + "/outbox.sqlite");
    ASSERT_TRUE(outbox.ok() && (*outbox)->add(request, 0).ok());
  }
  link::Session before({.target = device.target, .deviceToken = device.deviceToken, .certificatePem = ""});
  ASSERT_TRUE(before.addReports(request).ok());
  Person rui(device, "rui", household_.folder("rui"));
  ASSERT_TRUE(rui.isLive() && rui.hasSentAll());
  EXPECT_EQ(rui.session.refused()->count(), 0);
  EXPECT_EQ(reportsOnServer(), 1);
}

TEST_F(RealSessionTest, EditsOnTopOfOwnEditsAreNoConflict) {
  Person ana(household_.host(), "ana");
  ASSERT_TRUE(ana.isLive());
  for (const char* name : {"One", "Two", "Three", "Four"}) ana.renameRolls(name);
  ASSERT_TRUE(ana.hasSentAll());
  ana.renameRolls("Five");
  ASSERT_TRUE(ana.hasSentAll());
  EXPECT_EQ(ana.session.refused()->count(), 0);
  EXPECT_EQ(ana.rolls().display_name(), "Five");
}

TEST_F(RealSessionTest, TwoWhoChangeTheSameThingSeeBothVersions) {
  Person ana(household_.host(), "ana");
  Person rui(household_.deviceOf("rui"), "rui", household_.folder("rui"));
  ASSERT_TRUE(ana.isLive() && rui.isLive());
  QAbstractItemModelTester tester(rui.session.refused());
  QSignalSpy conflicted(&rui.session, &HouseholdSession::conflicted);
  household_.stop();
  ASSERT_TRUE(ana.isOffline() && rui.isOffline());
  ana.renameRolls("Ana's rolls");
  household_.start();
  ASSERT_TRUE(ana.isLive() && ana.hasSentAll());
  // Made from a version that Rui could not know to be old: his window was not live yet or saw it before.
  v1::UpdateRecipeRequest old;
  *old.mutable_recipe() = rui.rolls();
  old.mutable_recipe()->mutable_meta()->set_etag("from-before");
  old.mutable_recipe()->set_display_name("Rui's rolls");
  rui.session.send(old);
  ASSERT_TRUE(QTest::qWaitFor([&] { return conflicted.count() == 1; }, kPatienceMs));
  ASSERT_TRUE(rui.waitsToSeeRolls("Ana's rolls"));
  ASSERT_EQ(rui.session.refused()->count(), 1);
  const qint64 number = conflicted.first().first().toLongLong();
  const auto both = rui.session.conflict(number);
  ASSERT_NE(both.mine, nullptr);
  ASSERT_NE(both.theirs, nullptr);
  EXPECT_EQ(static_cast<const v1::Recipe&>(*both.mine).display_name(), "Rui's rolls");
  EXPECT_EQ(static_cast<const v1::Recipe&>(*both.theirs).display_name(), "Ana's rolls");
  rui.session.sendAgain(number);
  EXPECT_EQ(rui.session.refused()->count(), 0);
  ASSERT_TRUE(ana.waitsToSeeRolls("Rui's rolls"));
}

TEST_F(RealSessionTest, WhatTheServerRefusesIsToldAndKeptAside) {
  const link::LinkOptions device = household_.deviceOf("rui");
  {
    Person rui(device, "rui", household_.folder("rui"));
    ASSERT_TRUE(rui.isLive());
    QSignalSpy refused(&rui.session, &HouseholdSession::refusedNow);
    v1::UpdateEventRequest request;
    *request.mutable_event() = rui.session.replica()->events.at("supper");
    request.mutable_event()->set_display_name("Rui's supper");
    rui.session.send(request);
    EXPECT_EQ(rui.session.replica()->events.at("supper").display_name(), "Rui's supper");
    rui.finish("roast", "season");
    ASSERT_TRUE(QTest::qWaitFor([&] { return refused.count() == 1; }, kPatienceMs));
    EXPECT_FALSE(refused.first().at(2).toString().isEmpty());
    EXPECT_EQ(rui.session.replica()->events.at("supper").display_name(), "Sunday supper")
        << "what was refused is not shown as if it were done";
    ASSERT_TRUE(rui.hasSentAll()) << "what is behind it gets on";
  }
  Person rui(device, "rui", household_.folder("rui"));
  ASSERT_EQ(rui.session.refused()->count(), 1) << "it outlives the window";
  const QModelIndex row = rui.session.refused()->index(0);
  rui.session.letGo(rui.session.refused()->data(row, RefusedModel::NumberRole).toLongLong());
  EXPECT_EQ(rui.session.refused()->count(), 0);
}

TEST_F(RealSessionTest, UndoIsOfferedUntilSomebodyElseChangedTheSame) {
  Person ana(household_.host(), "ana");
  Person rui(household_.deviceOf("rui"), "rui");
  ASSERT_TRUE(ana.isLive() && rui.isLive());
  ana.renameRolls("Ana's rolls");
  ASSERT_TRUE(ana.hasSentAll() && rui.waitsToSeeRolls("Ana's rolls"));
  ana.session.undo();
  ASSERT_TRUE(rui.waitsToSeeRolls("Butter rolls"));
  ana.renameRolls("Ana's rolls");
  ASSERT_TRUE(ana.hasSentAll() && rui.waitsToSeeRolls("Ana's rolls"));
  EXPECT_FALSE(ana.session.undoText().isEmpty());
  rui.renameRolls("Rui's rolls");
  ASSERT_TRUE(ana.waitsToSeeRolls("Rui's rolls"));
  EXPECT_TRUE(ana.session.undoText().isEmpty());
}

TEST_F(RealSessionTest, TheSessionGoesAtOnceDuringALongPlanning) {
  QElapsedTimer timer;
  {
    Person ana(household_.host(), "ana");
    ASSERT_TRUE(ana.isLive());
    std::atomic<bool> begun = false;
    ana.session.ask<v1::MakePlanResponse>(
        &ana.session,
        [&](link::Session& server) {
          v1::MakePlanRequest request;
          request.set_household_id(household_.id());
          request.set_event_id("supper");
          request.mutable_time_limit()->set_seconds(50);
          request.set_request_id(link::newRequestId());
          return server.makePlan(request, [&](const v1::MakePlanResponse&) { begun = true; });
        },
        [](absl::StatusOr<v1::MakePlanResponse>) {});
    ASSERT_TRUE(QTest::qWaitFor([&] { return begun.load(); }, kPatienceMs));
    timer.start();
  }
  EXPECT_LT(timer.elapsed(), 3000);
}

TEST_F(RealSessionTest, ARevokedDeviceKeepsWhatItCouldNotSend) {
  const link::LinkOptions device = household_.deviceOf("rui");
  Person rui(device, "rui", household_.folder("rui"));
  ASSERT_TRUE(rui.isLive());
  link::Session calls({.target = device.target, .deviceToken = device.deviceToken, .certificatePem = ""});
  v1::RevokeDeviceRequest revoke;
  revoke.set_household_id(household_.id());
  revoke.set_device_id(calls.whoAmI()->device_id());
  revoke.set_request_id(link::newRequestId());
  ASSERT_TRUE(household_.calls().revokeDevice(revoke).ok());
  ASSERT_TRUE(QTest::qWaitFor([&] { return rui.session.state() == HouseholdSession::Refused; }, kPatienceMs));
  rui.finish("roast", "season");
  EXPECT_EQ(rui.session.waitingCount(), 1);
  EXPECT_EQ(rui.session.stateText().toStdString(), "Not let in, 1 waiting");
}

}  // namespace
}  // namespace suppertide::testing
