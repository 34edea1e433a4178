#include "server/storage/write_queue.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <future>
#include <mutex>
#include <thread>

#include "tests/support/stored_household.h"

namespace suppertide::storage {
namespace {

using ::testing::ElementsAre;

class WriteQueueTest : public ::testing::Test {
 protected:
  WriteQueueTest() { store_ = storeWithHome(":memory:", {}, clock_); }

  WriteQueue::Committed noting() {
    return [this](const std::string& householdId, std::shared_ptr<const Change> change) {
      EXPECT_EQ(householdId, kHome);
      told_.push_back("change " + std::to_string(change->revision));
      changes_.push_back(std::move(change));
    };
  }

  WriteQueue::Done done(const std::string& name) {
    return [this, name](const absl::StatusOr<WriteResult>& result) {
      told_.push_back(name + (result.ok() ? " ok" : " refused"));
    };
  }

  ManualClock clock_{kNoon};
  std::unique_ptr<Store> store_;
  // Written by the queue's thread only; read once the queue is gone.
  std::vector<std::string> told_;
  std::vector<std::shared_ptr<const Change>> changes_;
};

TEST_F(WriteQueueTest, TellsWatchersBeforeTheWriter) {
  {
    WriteQueue queue(*store_, noting());
    queue.submit(writeOf({put("recipe", "a", "1")}), done("first"));
    queue.submit(writeOf({put("recipe", "b", "1")}), done("second"));
  }
  EXPECT_THAT(told_, ElementsAre("change 2", "first ok", "change 3", "second ok"));
}

TEST_F(WriteQueueTest, TellsNobodyOfWhatChangedNothing) {
  ASSERT_TRUE(store_->write(writeOf({put("recipe", "a", "1")}, "r1")).ok());
  ASSERT_TRUE(store_->write(writeOf({removal("recipe", "a")})).ok());
  WriteRequest validating = writeOf({put("recipe", "a", "2")});
  validating.validateOnly = true;
  Put refused = put("recipe", "a", "3");
  refused.expect = Expect::kPresent;
  {
    WriteQueue queue(*store_, noting());
    queue.submit(writeOf({put("recipe", "a", "1")}, "r1"), done("repeat"));
    queue.submit(writeOf({removal("recipe", "a")}), done("removal"));
    queue.submit(validating, done("validating"));
    queue.submit(writeOf({refused}), done("change"));
  }
  EXPECT_THAT(told_, ElementsAre("repeat ok", "removal ok", "validating ok", "change refused"));
}

TEST_F(WriteQueueTest, TellsAChangeAsTheLogHasIt) {
  {
    WriteQueue queue(*store_, noting());
    WriteRequest request =
        writeOf({put("recipe", "b", "1"), removal("recipe", "never"), put("recipe", "a", "2")});
    request.memberId = "ben";
    queue.submit(request, done("it"));
  }
  const Change logged = store_->changesAfter(kHome, 1, 1)->changes.front();
  ASSERT_EQ(changes_.size(), 1u);
  EXPECT_EQ(changes_[0]->revision, logged.revision);
  EXPECT_EQ(changes_[0]->memberId, logged.memberId);
  EXPECT_EQ(changes_[0]->commitTime, logged.commitTime);
  ASSERT_EQ(changes_[0]->documents.size(), logged.documents.size());
  for (std::size_t i = 0; i < logged.documents.size(); ++i) {
    EXPECT_EQ(changes_[0]->documents[i].key, logged.documents[i].key);
    EXPECT_EQ(changes_[0]->documents[i].etag, logged.documents[i].etag);
    EXPECT_EQ(changes_[0]->documents[i].memberId, "ben");
  }
}

TEST_F(WriteQueueTest, RunsTasksInTurn) {
  {
    WriteQueue queue(*store_, noting());
    queue.submit(writeOf({put("recipe", "a", "1")}), done("write"));
    queue.run([this](Store& store) {
      told_.push_back("task sees " + store.get(kHome, {"recipe", "a"})->bytes);
    });
    queue.submit(writeOf({put("recipe", "a", "2")}), done("later write"));
  }
  EXPECT_THAT(told_, ElementsAre("change 2", "write ok", "task sees 1", "change 3", "later write ok"));
}

TEST_F(WriteQueueTest, TakesMoreWorkFromInsideAnAnswer) {
  WriteQueue queue(*store_, noting());
  std::promise<std::int64_t> second;
  queue.submit(writeOf({put("recipe", "a", "1")}), [&](const absl::StatusOr<WriteResult>&) {
    queue.submit(writeOf({put("recipe", "a", "2")}),
                 [&](const absl::StatusOr<WriteResult>& result) { second.set_value(result->revision); });
  });
  EXPECT_EQ(second.get_future().get(), 3);
}

TEST_F(WriteQueueTest, TheCallerWritesWhenNobodyElseDoes) {
  WriteQueue queue(*store_, noting());
  std::thread::id writer;
  queue.writeNow(writeOf({put("recipe", "a", "1")}),
                 [&](const absl::StatusOr<WriteResult>&) { writer = std::this_thread::get_id(); });
  EXPECT_EQ(writer, std::this_thread::get_id());
  EXPECT_THAT(told_, ElementsAre("change 2"));
}

TEST_F(WriteQueueTest, TheCallerWaitsForNobodyWhoWrites) {
  std::thread::id writer;
  {
    WriteQueue queue(*store_, noting());
    std::promise<void> begun;
    std::promise<void> goOn;
    queue.run([&](Store&) {
      begun.set_value();
      goOn.get_future().wait();
    });
    begun.get_future().wait();
    queue.writeNow(writeOf({put("recipe", "a", "1")}),
                   [&](const absl::StatusOr<WriteResult>&) { writer = std::this_thread::get_id(); });
    goOn.set_value();
  }
  EXPECT_NE(writer, std::this_thread::get_id());
  EXPECT_NE(writer, std::thread::id());
}

TEST_F(WriteQueueTest, AnswersEveryWriterOnce) {
  constexpr int kThreads = 4;
  constexpr int kWrites = 100;
  int answers = 0;
  {
    WriteQueue queue(*store_, noting());
    std::vector<std::jthread> writers;
    for (int writer = 0; writer < kThreads; ++writer) {
      writers.emplace_back([&queue, &answers, writer] {
        for (int i = 0; i < kWrites; ++i) {
          const std::string id = std::to_string(writer) + "-" + std::to_string(i);
          const auto count = [&answers](const absl::StatusOr<WriteResult>& result) {
            answers += result.ok() ? 1 : 0;
          };
          WriteRequest request = writeOf({put("recipe", id, id)}, id);
          i % 3 == 0 ? queue.writeNow(std::move(request), count) : queue.submit(std::move(request), count);
        }
      });
    }
  }
  EXPECT_EQ(answers, kThreads * kWrites);
  ASSERT_EQ(changes_.size(), static_cast<std::size_t>(kThreads * kWrites));
  for (std::size_t i = 0; i < changes_.size(); ++i) {
    EXPECT_EQ(changes_[i]->revision, static_cast<std::int64_t>(i) + 2);
  }
}

}  // namespace
}  // namespace suppertide::storage
