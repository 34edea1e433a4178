#include <gtest/gtest.h>

#include <future>
#include <set>

#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

std::int64_t writeRecipe(Served& served, const std::string& id) {
  v1::CreateRecipeRequest asked;
  asked.set_household_id(served.household);
  *asked.mutable_recipe() = compose::smallDinner().recipes(1);
  asked.mutable_recipe()->set_id(id);
  asked.set_request_id(freshRequest());
  v1::WriteRecipeResponse answer;
  const auto context = with(served.token);
  EXPECT_TRUE(v1::RecipeService::NewStub(served.channel())->CreateRecipe(context.get(), asked, &answer).ok());
  return answer.revision();
}

class Watching {
 public:
  Watching(Served& served, std::int64_t after) : context_(with(served.token)) {
    v1::WatchRequest asked;
    asked.set_household_id(served.household);
    asked.set_after_revision(after);
    stub_ = v1::SyncService::NewStub(served.channel());
    stream_ = stub_->Watch(context_.get(), asked);
  }
  // False when the stream has ended.
  bool read(v1::WatchResponse* message) { return stream_->Read(message); }
  grpc::Status finish() { return stream_->Finish(); }
  void cancel() { context_->TryCancel(); }

 private:
  std::unique_ptr<grpc::ClientContext> context_;
  std::unique_ptr<v1::SyncService::Stub> stub_;
  std::unique_ptr<grpc::ClientReader<v1::WatchResponse>> stream_;
};

TEST(WatchTest, StartsWithResetSnapshotAndBookmark) {
  Served served;
  served.found();
  const std::int64_t revision = writeRecipe(served, "a");
  Watching watching(served, 0);
  v1::WatchResponse message;
  ASSERT_TRUE(watching.read(&message));
  EXPECT_TRUE(message.has_reset());
  std::set<std::string> kinds;
  while (watching.read(&message) && message.has_snapshot())
    for (const auto& change : message.snapshot().documents())
      kinds.insert(change.has_household() ? "household" : "recipe");
  ASSERT_TRUE(message.has_bookmark());
  EXPECT_EQ(message.bookmark().revision(), revision);
  EXPECT_EQ(kinds, (std::set<std::string>{"household", "recipe"}));
}

TEST(WatchTest, BringsEachLaterWriteOnceInOrder) {
  Served served;
  served.found();
  const std::int64_t before = writeRecipe(served, "a");
  Watching watching(served, before);
  v1::WatchResponse message;
  ASSERT_TRUE(watching.read(&message));
  ASSERT_TRUE(message.has_bookmark());
  for (const char* id : {"b", "c", "d"}) writeRecipe(served, id);
  std::int64_t last = before;
  while (last < before + 3 && watching.read(&message)) {
    if (!message.has_changes()) continue;
    EXPECT_EQ(message.changes().revision(), last + 1);
    EXPECT_EQ(message.changes().member_id(), "ana");
    last = message.changes().revision();
  }
  EXPECT_EQ(last, before + 3);
}

TEST(WatchTest, ContinuesExactlyAfterARevision) {
  Served served;
  served.found();
  const std::int64_t first = writeRecipe(served, "a");
  writeRecipe(served, "b");
  Watching watching(served, first);
  v1::WatchResponse message;
  ASSERT_TRUE(watching.read(&message));
  ASSERT_TRUE(message.has_changes());
  EXPECT_EQ(message.changes().changes(0).recipe().id(), "b");
}

TEST(WatchTest, RefusesARevisionInTheFuture) {
  Served served;
  served.found();
  Watching watching(served, 1000);
  v1::WatchResponse message;
  EXPECT_FALSE(watching.read(&message));
  EXPECT_EQ(watching.finish().error_code(), grpc::StatusCode::INVALID_ARGUMENT);
}

TEST(WatchTest, SendsABookmarkInASilence) {
  Backend::Options options;
  options.bookmarkInterval = std::chrono::milliseconds(20);
  Served served(options);
  served.found();
  Watching watching(served, 0);
  v1::WatchResponse message;
  int bookmarks = 0;
  while (bookmarks < 3 && watching.read(&message)) bookmarks += message.has_bookmark() ? 1 : 0;
  EXPECT_EQ(bookmarks, 3);
}

TEST(WatchTest, MarksThePartsOfALargeWrite) {
  Served served;
  served.found();
  v1::Bundle bundle = compose::smallDinner();
  const v1::Recipe model = bundle.recipes(1);
  for (int i = 0; i < 300; ++i) {
    v1::Recipe& recipe = *bundle.add_recipes();
    recipe = model;
    recipe.set_id("copy" + std::to_string(i));
    recipe.mutable_steps(0)->set_instructions(std::string(1500, 'x'));
  }
  Watching watching(served, 1);
  v1::ImportBundleResponse answer;
  const grpc::Status status = served.import(bundle, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  v1::WatchResponse message;
  int parts = 0;
  int documents = 0;
  while (watching.read(&message)) {
    if (!message.has_changes()) continue;
    ++parts;
    documents += message.changes().changes_size();
    EXPECT_EQ(message.changes().revision(), answer.revision());
    if (!message.changes().partial()) break;
  }
  EXPECT_GT(parts, 1);
  EXPECT_EQ(documents, 1 + 1 + 1 + 303 + 1);
}

TEST(WatchTest, EndsWithUnavailableWhenTheServerStops) {
  Served served;
  served.found();
  Watching watching(served, 0);
  v1::WatchResponse message;
  while (watching.read(&message) && !message.has_bookmark()) {
  }
  auto draining = std::async(std::launch::async, [&] { served.server().drain(); });
  while (watching.read(&message)) {
  }
  EXPECT_EQ(watching.finish().error_code(), grpc::StatusCode::UNAVAILABLE);
  draining.get();
}

TEST(WatchTest, ManyWatchersComeAndGo) {
  Served served;
  served.found();
  for (int round = 0; round < 20; ++round) {
    Watching one(served, 0);
    Watching two(served, 0);
    v1::WatchResponse message;
    EXPECT_TRUE(one.read(&message));
    one.cancel();
    two.cancel();
    while (one.read(&message)) {
    }
    while (two.read(&message)) {
    }
    EXPECT_EQ(one.finish().error_code(), grpc::StatusCode::CANCELLED);
    EXPECT_EQ(two.finish().error_code(), grpc::StatusCode::CANCELLED);
  }
}

TEST(WatchTest, AFileKeepsEverythingOverARestart) {
  const TemporaryFolder folder;
  const std::string file = folder.path() + "/h.sqlite";
  std::string household;
  std::string token;
  std::int64_t revision = 0;
  {
    Served served({}, file);
    served.found();
    household = served.household;
    token = served.token;
    revision = writeRecipe(served, "a");
  }
  Served served({}, file);
  EXPECT_TRUE(served.server().hostCode().empty());
  served.household = household;
  served.token = token;
  Watching watching(served, revision - 1);
  v1::WatchResponse message;
  ASSERT_TRUE(watching.read(&message));
  ASSERT_TRUE(message.has_changes());
  EXPECT_EQ(message.changes().revision(), revision);
}

}  // namespace
}  // namespace suppertide::service
