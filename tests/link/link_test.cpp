#include "client/link/link.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>
#include <thread>

#include "tests/link/in_process_server.h"
#include "tests/link/messages.h"
#include "tests/link/scripted_sync.h"

namespace suppertide::link {
namespace {

using namespace testing;
using std::chrono::milliseconds;
using ::testing::ElementsAre;

class LinkTest : public ::testing::Test {
 protected:
  LinkOptions options() const {
    LinkOptions o;
    o.target = server_.target();
    o.householdId = "h1";
    o.deviceToken = "token";
    o.firstRetry = milliseconds(1);
    o.lastRetry = milliseconds(5);
    return o;
  }

  ScriptedSync sync_;
  InProcessServer server_{sync_};
  Recorder recorder_;
};

const grpc::Status kCut(grpc::StatusCode::UNAVAILABLE, "the server is stopping");

TEST_F(LinkTest, GivesTheSnapshotOnceAndThenIsLive) {
  sync_.addOpen({reset(), snapshotOfEvent("e1", "Supper"), snapshotOfEvent("e2", "Lunch"), bookmark(7)});
  Link link(options(), recorder_);
  EXPECT_EQ(link.replica()->revision, 0) << "never null, also before the start";
  link.start();
  ASSERT_TRUE(recorder_.waitForState(LinkState::kLive));
  ASSERT_EQ(recorder_.seen().size(), 1U);
  EXPECT_EQ(recorder_.seen()[0].replica->revision, 7);
  EXPECT_EQ(recorder_.seen()[0].memberId, "");
  EXPECT_EQ(link.replica()->events.at("e2").display_name(), "Lunch");
  EXPECT_THAT(sync_.asked(), ElementsAre(0));
  EXPECT_THAT(sync_.tokens(), ElementsAre("Bearer token"));
}

TEST_F(LinkTest, TellsEachLiveCommitWithWhoWroteIt) {
  sync_.addOpen({reset(), bookmark(1), eventWritten(2, "e1", "Supper", "ana"),
                 eventWritten(3, "e1", "Feast", "ben"), deleted(4, "event", "e1")});
  Link link(options(), recorder_);
  link.start();
  ASSERT_TRUE(recorder_.waitForReplicas(4));
  const auto seen = recorder_.seen();
  EXPECT_EQ(seen[1].memberId, "ana");
  EXPECT_EQ(seen[1].replica->events.at("e1").display_name(), "Supper");
  EXPECT_EQ(seen[2].memberId, "ben");
  EXPECT_EQ(seen[2].replica->events.at("e1").display_name(), "Feast");
  EXPECT_TRUE(seen[3].replica->events.empty());
}

TEST_F(LinkTest, ContinuesExactlyWhereACutStreamStopped) {
  sync_.addCut({reset(), bookmark(5), eventWritten(6, "e1", "Supper", "ana")}, kCut);
  sync_.addCut({eventWritten(7, "e2", "Half", "ana", /*partial=*/true)}, kCut);
  sync_.addOpen({eventWritten(7, "e3", "Lunch", "ben"), bookmark(7)});
  Link link(options(), recorder_);
  link.start();
  ASSERT_TRUE(recorder_.waitForState(LinkState::kLive, 2));
  EXPECT_THAT(sync_.asked(), ElementsAre(0, 6, 6));
  EXPECT_EQ(link.replica()->revision, 7);
  EXPECT_EQ(link.replica()->events.count("e2"), 0U) << "half a commit was shown";
  EXPECT_EQ(link.replica()->events.count("e1"), 1U) << "what was known before the cut is lost";
}

TEST_F(LinkTest, ABookmarkAloneMovesTheResumePoint) {
  sync_.addCut({reset(), bookmark(5), bookmark(9)}, kCut);
  sync_.addOpen({bookmark(9)});
  Link link(options(), recorder_);
  link.start();
  ASSERT_TRUE(recorder_.waitForState(LinkState::kLive, 2));
  EXPECT_THAT(sync_.asked(), ElementsAre(0, 9));
  EXPECT_EQ(recorder_.seen().size(), 1U) << "nothing changed";
}

TEST_F(LinkTest, AResetReplacesEverything) {
  sync_.addCut({reset(), snapshotOfEvent("e1", "Supper"), bookmark(5)}, kCut);
  sync_.addOpen({reset(), snapshotOfEvent("e2", "Lunch"), bookmark(90)});
  Link link(options(), recorder_);
  link.start();
  ASSERT_TRUE(recorder_.waitForState(LinkState::kLive, 2));
  EXPECT_EQ(link.replica()->events.count("e1"), 0U);
  EXPECT_EQ(link.replica()->revision, 90);
}

TEST_F(LinkTest, AsksForASnapshotWhenTheServerDoesNotKnowItsRevision) {
  sync_.addCut({reset(), bookmark(50)}, kCut);
  sync_.addCut({}, {grpc::StatusCode::INVALID_ARGUMENT, "revision 50 is in the future"});
  sync_.addOpen({reset(), snapshotOfEvent("e1", "Supper"), bookmark(3)});
  Link link(options(), recorder_);
  link.start();
  ASSERT_TRUE(recorder_.waitForState(LinkState::kLive, 2));
  EXPECT_THAT(sync_.asked(), ElementsAre(0, 50, 0));
  EXPECT_EQ(link.replica()->revision, 3);
}

TEST_F(LinkTest, StopsTryingWhenRefused) {
  for (const auto code : {grpc::StatusCode::UNAUTHENTICATED, grpc::StatusCode::PERMISSION_DENIED}) {
    SCOPED_TRACE(static_cast<int>(code));
    ScriptedSync sync;
    sync.addCut({}, {code, "this device was signed out"});
    const InProcessServer server(sync);
    Recorder recorder;
    LinkOptions refused = options();
    refused.target = server.target();
    Link link(refused, recorder);
    link.start();
    ASSERT_TRUE(recorder.waitForState(LinkState::kRefused));
    EXPECT_EQ(recorder.lastWhy(), "this device was signed out");
    link.stop();
    EXPECT_THAT(recorder.states(), ElementsAre(LinkState::kConnecting, LinkState::kRefused));
    EXPECT_EQ(sync.asked().size(), 1U);
  }
}

TEST_F(LinkTest, ComesBackWhenTheServerDoes) {
  sync_.addOpen({reset(), bookmark(4)});
  sync_.addOpen({bookmark(4)});
  Link link(options(), recorder_);
  link.start();
  ASSERT_TRUE(recorder_.waitForState(LinkState::kLive));
  const int port = server_.port();
  server_.stop();
  ASSERT_TRUE(recorder_.waitForState(LinkState::kConnecting, 3)) << "tries again while nobody listens";
  const InProcessServer again(sync_, port);
  ASSERT_TRUE(recorder_.waitForState(LinkState::kLive, 2));
  EXPECT_THAT(sync_.asked(), ElementsAre(0, 4));
}

TEST_F(LinkTest, TakesASilentStreamForCut) {
  sync_.addOpen({reset(), bookmark(4)});
  sync_.addOpen({bookmark(4)});
  LinkOptions impatient = options();
  impatient.longestSilence = milliseconds(100);
  Link link(impatient, recorder_);
  link.start();
  ASSERT_TRUE(recorder_.waitForState(LinkState::kLive, 2));
  EXPECT_GE(sync_.asked().size(), 2U);
}

TEST_F(LinkTest, StopsAtOnceWhileWaitingToTryAgain) {
  server_.stop();
  LinkOptions slow = options();
  slow.firstRetry = std::chrono::minutes(10);
  slow.lastRetry = std::chrono::minutes(10);
  Link link(slow, recorder_);
  link.start();
  ASSERT_TRUE(recorder_.waitForState(LinkState::kConnecting, 2));
  link.stop();
  EXPECT_EQ(recorder_.states().back(), LinkState::kStopped);
}

TEST_F(LinkTest, CanBeStartedAgainAndGoesOn) {
  sync_.addOpen({reset(), bookmark(4)});
  sync_.addOpen({bookmark(4)});
  Link link(options(), recorder_);
  link.start();
  ASSERT_TRUE(recorder_.waitForState(LinkState::kLive));
  link.stop();
  link.start();
  ASSERT_TRUE(recorder_.waitForState(LinkState::kLive, 2));
  EXPECT_THAT(sync_.asked(), ElementsAre(0, 4));
}

TEST_F(LinkTest, CallsNobodyOnceDestroyed) {
  sync_.addOpen({reset(), bookmark(1)});
  std::mutex mutex;
  std::vector<std::function<void()>> posted;
  Gate first;
  LinkOptions posting = options();
  posting.post = [&](std::function<void()> call) {
    const std::lock_guard<std::mutex> lock(mutex);
    posted.push_back(std::move(call));
    if (posted.size() == 3) first.open();  // connecting, replica, live
  };
  {
    Link link(posting, recorder_);
    link.start();
    ASSERT_TRUE(first.wait());
  }
  EXPECT_TRUE(recorder_.states().empty());
  ASSERT_GE(posted.size(), 3U);
  for (const auto& call : posted) call();
  EXPECT_TRUE(recorder_.states().empty());
  EXPECT_TRUE(recorder_.seen().empty());
}

TEST_F(LinkTest, DestructionWaitsForACallbackThatRuns) {
  class Slow : public LinkListener {
   public:
    void linkStateChanged(LinkState, const std::string&) override {
      entered.open();
      leave.wait();
      finished = true;
    }
    Gate entered;
    Gate leave;
    std::atomic<bool> finished{false};
  } slow;
  sync_.addOpen({reset(), bookmark(1)});
  auto link = std::make_unique<Link>(options(), slow);
  link->start();
  ASSERT_TRUE(slow.entered.wait());
  std::thread destroyer([&] {
    link.reset();
    EXPECT_TRUE(slow.finished);
  });
  slow.leave.open();
  destroyer.join();
}

TEST_F(LinkTest, MayBeDestroyedFromItsOwnCallback) {
  class Destroyer : public LinkListener {
   public:
    void linkStateChanged(LinkState state, const std::string&) override {
      if (state == LinkState::kLive) {
        link.reset();
        gone.open();
      } else if (state == LinkState::kStopped) {
        calledLater = true;
      }
    }
    std::unique_ptr<Link> link;
    Gate gone;
    std::atomic<bool> calledLater{false};
  } destroyer;
  sync_.addOpen({reset(), bookmark(1)});
  destroyer.link = std::make_unique<Link>(options(), destroyer);
  destroyer.link->start();
  ASSERT_TRUE(destroyer.gone.wait());
  server_.stop();
  EXPECT_FALSE(destroyer.calledLater);
}

}  // namespace
}  // namespace suppertide::link
