// Many clients of a real server under random edits, and the six promises of a watch.
//
// The clients are cut off and come back, read slowly or start from nothing; the log
// is short, so that those who were long away need a snapshot; and the server itself
// is stopped and started on the same file again and again.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>
#include <thread>

#include "server/service/documents.h"
#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"
#include "tests/support/dice.h"
#include "tests/support/watch_recorder.h"

namespace suppertide::service {
namespace {

using ::testing::IsEmpty;

constexpr int kClients = 6;
constexpr int kWrites = 400;
constexpr int kWritesBetweenRestarts = 80;
constexpr int kKeptChanges = 12;

template <typename Message>
storage::Document documentOf(const Message& message) {
  storage::Document document;
  document.key = {kindOf(message), message.id()};
  Message stripped = message;
  stripped.clear_meta();
  document.bytes = stripped.SerializeAsString();
  document.etag = message.meta().etag();
  document.revision = message.meta().revision();
  return document;
}

// As a client sees it.
storage::Document documentOf(const v1::Change& change) {
  if (change.has_household()) return documentOf(change.household());
  if (change.has_recipe()) return documentOf(change.recipe());
  storage::Document document;
  document.key = {change.deleted().kind(), change.deleted().id()};
  document.deleted = true;
  return document;
}

// What was committed, as a client should see it.
std::shared_ptr<const storage::Change> seen(const storage::Change& committed) {
  auto change = std::make_shared<storage::Change>(committed);
  for (storage::Document& document : change->documents) document = documentOf(changeOf(document));
  return change;
}

// Turns a stream's messages into what the recorder takes.
class Reading {
 public:
  explicit Reading(WatchRecorder& recorder) : recorder_(recorder) {}

  void take(const v1::WatchResponse& message) {
    if (message.has_reset()) recorder_.take(sync::Reset{});
    if (message.has_bookmark()) recorder_.take(sync::Bookmark{message.bookmark().revision()});
    if (message.has_snapshot()) {
      sync::SnapshotPart part;
      for (const v1::Change& change : message.snapshot().documents())
        part.documents.push_back(documentOf(change));
      recorder_.take(part);
    }
    if (!message.has_changes()) return;
    if (parts_ == nullptr) parts_ = std::make_shared<storage::Change>();
    parts_->revision = message.changes().revision();
    parts_->memberId = message.changes().member_id();
    parts_->commitTime = Instant(std::chrono::seconds(message.changes().commit_time().seconds()));
    for (const v1::Change& change : message.changes().changes())
      parts_->documents.push_back(documentOf(change));
    if (message.changes().partial()) return;
    recorder_.take(std::shared_ptr<const storage::Change>(std::exchange(parts_, nullptr)));
  }

 private:
  WatchRecorder& recorder_;
  std::shared_ptr<storage::Change> parts_;
};

// A server that can be stopped and started on the same file and socket.
class Restarted {
 public:
  Restarted() { start(); }
  void start() {
    Server::Options options;
    options.dataFile = folder_.path() + "/h.sqlite";
    options.listen = "unix:" + folder_.path() + "/s";
    options.fullSync = false;
    options.keepChanges = kKeptChanges;
    options.backend.bookmarkInterval = std::chrono::milliseconds(50);
    auto started = Server::start(options, clock_);
    ASSERT_TRUE(started.ok()) << started.status();
    server_ = *std::move(started);
  }
  void restart() {
    server_.reset();
    start();
  }
  Server& server() { return *server_; }
  std::shared_ptr<grpc::Channel> channel() const {
    grpc::ChannelArguments arguments;
    arguments.SetInt(GRPC_ARG_USE_LOCAL_SUBCHANNEL_POOL, 1);
    arguments.SetInt(GRPC_ARG_INITIAL_RECONNECT_BACKOFF_MS, 10);
    arguments.SetInt(GRPC_ARG_MIN_RECONNECT_BACKOFF_MS, 10);
    arguments.SetInt(GRPC_ARG_MAX_RECONNECT_BACKOFF_MS, 50);
    return grpc::CreateCustomChannel("unix:" + folder_.path() + "/s", grpc::InsecureChannelCredentials(),
                                     arguments);
  }

 private:
  const TemporaryFolder folder_;
  ManualClock clock_{Instant(std::chrono::seconds(1'800'000'000))};
  std::unique_ptr<Server> server_;
};

class TrafficTest : public ::testing::Test {
 protected:
  void found() {
    v1::CreateHouseholdRequest asked;
    asked.set_host_code(server_.server().hostCode());
    asked.set_request_id(freshRequest());
    asked.mutable_household()->set_display_name("Harbour Lane");
    asked.mutable_household()->set_time_zone("UTC");
    v1::CreateHouseholdResponse answer;
    const auto context = with("");
    ASSERT_TRUE(v1::HouseholdService::NewStub(server_.channel())
                    ->CreateHousehold(context.get(), asked, &answer)
                    .ok());
    home_ = answer.household().id();
    token_ = answer.device_token();
    note(1);
  }

  // Asks until the server is there and has answered.
  template <typename Call>
  void persist(Call call) {
    grpc::Status status;
    do {
      const auto context = with(token_);
      context->set_wait_for_ready(true);
      status = call(context.get());
    } while (status.error_code() == grpc::StatusCode::UNAVAILABLE);
    ASSERT_TRUE(status.ok()) << status.error_message();
  }

  // One random edit through the wire.
  void write(v1::RecipeService::Stub& recipes, v1::HouseholdService::Stub& households, Dice& dice) {
    std::int64_t revision = 0;
    const int what = dice.between(1, 100);
    const std::string id = "r" + std::to_string(dice.between(0, 9));
    if (what <= 25) {
      v1::DeleteRecipeRequest asked;
      asked.set_household_id(home_);
      asked.set_recipe_id(id);
      asked.set_request_id(freshRequest());
      v1::DeleteRecipeResponse answer;
      persist([&](grpc::ClientContext* context) { return recipes.DeleteRecipe(context, asked, &answer); });
      revision = answer.revision();
    } else {
      // Several at once; now and then so much that it comes in parts.
      v1::ImportBundleRequest asked;
      asked.set_household_id(home_);
      asked.set_request_id(freshRequest());
      *asked.mutable_bundle()->mutable_household() = household_;
      const int count = what > 97 ? 150 : dice.between(1, 3);
      for (int i = 0; i < count; ++i) {
        v1::Recipe& recipe = *asked.mutable_bundle()->add_recipes();
        recipe = model_;
        recipe.set_id(i < 10 ? "r" + std::to_string((dice.between(0, 2) + i * 3) % 10) + (i > 2 ? "x" : "") +
                                   std::to_string(i)
                             : "many" + std::to_string(i));
        recipe.mutable_steps(0)->set_instructions(std::string(what > 97 ? 1900 : 20, 'i') +
                                                  std::to_string(dice.between(0, 999)));
      }
      v1::ImportBundleResponse answer;
      persist(
          [&](grpc::ClientContext* context) { return importBundle(households, *context, asked, &answer); });
      revision = answer.revision();
    }
    if (revision > static_cast<std::int64_t>(committed_.size())) note(revision);
  }

  // Takes a commit from the server's log before it is trimmed.
  void note(std::int64_t revision) {
    const auto page = server_.server().backend().store().changesAfter(home_, revision - 1, 1);
    ASSERT_TRUE(page.ok() && !page->trimmed && page->changes.size() == 1) << "revision " << revision;
    committed_.push_back(seen(page->changes.front()));
    last_ = revision;
    tick();
  }
  void tick() {
    ++ticks_;
    ticks_.notify_all();
  }

  // A client's life: watches until everything was written and has come.
  void live(WatchRecorder& recorder, std::uint64_t seed) {
    Dice dice(seed);
    const auto stub = v1::SyncService::NewStub(server_.channel());
    while (!(done_ && recorder.revision() == last_)) {
      const std::int64_t after = dice.chance(15) ? 0 : recorder.revision();
      recorder.begin(after);
      v1::WatchRequest asked;
      asked.set_household_id(home_);
      asked.set_after_revision(after);
      const auto context = with(token_);
      context->set_wait_for_ready(true);
      const auto stream = stub->Watch(context.get(), asked);
      Reading reading(recorder);
      const int most = dice.chance(60) ? dice.between(1, 30) : 1'000'000;  // messages before it is cut off
      v1::WatchResponse message;
      for (int i = 0; i < most && stream->Read(&message); ++i) {
        reading.take(message);
        if (done_ && recorder.revision() == last_ && message.has_bookmark()) break;
        // Slow, or away for a while: until the others have written some more.
        if (dice.chance(2)) awaitWrites(dice.between(5, 40));
      }
      context->TryCancel();
      while (stream->Read(&message)) {
      }
      stream->Finish();
    }
  }
  void awaitWrites(int count) {
    const std::int64_t until = last_ + count;
    for (int tick = ticks_; last_ < until && !done_; tick = ticks_) ticks_.wait(tick);
  }

  Restarted server_;
  std::string home_;
  std::string token_;
  v1::Household household_ = compose::smallDinner().household();
  v1::Recipe model_ = compose::smallDinner().recipes(1);
  Changes committed_;
  std::atomic<std::int64_t> last_ = 0;
  std::atomic<bool> done_ = false;
  std::atomic<int> ticks_ = 0;  // moves with the two above
};

TEST_F(TrafficTest, TheSixPromisesHoldThroughCutsSlownessTrimmingAndRestarts) {
  found();
  std::vector<WatchRecorder> recorders(kClients);
  std::vector<std::jthread> clients;
  for (std::size_t i = 0; i < recorders.size(); ++i)
    clients.emplace_back([&, i] { live(recorders[i], i + 1); });
  {
    Dice dice(77);
    const auto channel = server_.channel();
    const auto recipes = v1::RecipeService::NewStub(channel);
    const auto households = v1::HouseholdService::NewStub(channel);
    for (int i = 1; i <= kWrites && !HasFailure(); ++i) {
      write(*recipes, *households, dice);
      if (i % kWritesBetweenRestarts == 0) server_.restart();
    }
  }
  done_ = true;
  tick();
  clients.clear();
  int resets = 0;
  for (const WatchRecorder& recorder : recorders) {
    EXPECT_THAT(WatchValidator(recorder, committed_).all(), IsEmpty());
    EXPECT_EQ(recorder.revision(), last_);
    Replica truth;
    for (const auto& change : committed_) apply(*change, truth);
    EXPECT_EQ(recorder.replica().size(), truth.size());
    resets += recorder.sawReset() ? 1 : 0;
  }
  EXPECT_GT(committed_.size(), 200u);
  EXPECT_GT(resets, 0) << "nobody was ever away for longer than the log";
}

}  // namespace
}  // namespace suppertide::service
