#include "client/link/assembler.h"

#include <gtest/gtest.h>

#include "tests/link/messages.h"

namespace suppertide::link {
namespace {

using namespace testing;

TEST(AssemblerTest, ShowsASnapshotOnlyWithItsBookmark) {
  Assembler assembler;
  EXPECT_FALSE(assembler.take(reset()).published);
  EXPECT_FALSE(assembler.take(snapshotOfEvent("e1", "Supper")).published);
  EXPECT_FALSE(assembler.take(snapshotOfEvent("e2", "Lunch")).published);
  EXPECT_TRUE(assembler.replica()->events.empty());
  const Assembler::Outcome done = assembler.take(bookmark(7));
  ASSERT_TRUE(done.published);
  EXPECT_TRUE(done.caughtUp);
  EXPECT_EQ(done.published->replica->revision, 7);
  EXPECT_EQ(done.published->replica->events.size(), 2U);
  EXPECT_EQ(assembler.resumeAfter(), 7);
}

TEST(AssemblerTest, JoinsThePartsOfACommitBeforeShowingIt) {
  Assembler assembler;
  assembler.take(bookmark(1));
  EXPECT_FALSE(assembler.take(eventWritten(2, "e1", "Supper", "ana", /*partial=*/true)).published);
  EXPECT_EQ(assembler.resumeAfter(), 1) << "half a commit is not applied";
  const Assembler::Outcome done = assembler.take(eventWritten(2, "e2", "Lunch", "ana"));
  ASSERT_TRUE(done.published);
  EXPECT_EQ(done.published->replica->events.size(), 2U);
  EXPECT_EQ(done.published->memberId, "ana");
}

TEST(AssemblerTest, DropsHalfACommitWhenTheStreamIsCut) {
  Assembler assembler;
  assembler.take(bookmark(1));
  assembler.take(eventWritten(2, "half", "Half", "ana", /*partial=*/true));
  assembler.restart();
  const Assembler::Outcome whole = assembler.take(eventWritten(2, "e2", "Lunch", "ana"));
  ASSERT_TRUE(whole.published);
  EXPECT_EQ(whole.published->replica->events.count("half"), 0U);
}

TEST(AssemblerTest, DropsHalfASnapshotWhenTheStreamIsCut) {
  Assembler assembler;
  assembler.take(reset());
  assembler.take(snapshotOfEvent("old", "Old"));
  assembler.restart();
  assembler.take(reset());
  assembler.take(snapshotOfEvent("e1", "Supper"));
  const Assembler::Outcome done = assembler.take(bookmark(3));
  ASSERT_TRUE(done.published);
  EXPECT_EQ(done.published->replica->events.size(), 1U);
}

TEST(AssemblerTest, ForgetsWhatASecondSnapshotDoesNotHave) {
  Assembler assembler;
  assembler.take(reset());
  assembler.take(snapshotOfEvent("e1", "Supper"));
  assembler.take(bookmark(3));
  assembler.take(reset());
  EXPECT_EQ(assembler.replica()->events.size(), 1U) << "the last known stays readable meanwhile";
  assembler.take(snapshotOfEvent("e2", "Lunch"));
  assembler.take(bookmark(9));
  EXPECT_EQ(assembler.replica()->events.count("e1"), 0U);
  EXPECT_EQ(assembler.replica()->events.count("e2"), 1U);
}

TEST(AssemblerTest, TakesACommitOnlyOnce) {
  Assembler assembler;
  assembler.take(bookmark(4));
  EXPECT_FALSE(assembler.take(eventWritten(4, "e1", "Supper", "ana")).published);
  EXPECT_TRUE(assembler.take(eventWritten(5, "e1", "Supper", "ana")).published);
}

TEST(AssemblerTest, ReplicasAlreadyHandedOutNeverChange) {
  Assembler assembler;
  const auto first = assembler.take(eventWritten(1, "e1", "Supper", "ana")).published->replica;
  assembler.take(eventWritten(2, "e1", "Feast", "ana"));
  EXPECT_EQ(first->events.at("e1").display_name(), "Supper");
  EXPECT_EQ(assembler.replica()->events.at("e1").display_name(), "Feast");
}

TEST(AssemblerTest, RemovesDeletedDocumentsOfEveryKind) {
  Assembler assembler;
  assembler.take(reset());
  v1::WatchResponse snapshot;
  auto* documents = snapshot.mutable_snapshot();
  documents->add_documents()->mutable_kitchen()->set_id("x");
  documents->add_documents()->mutable_starter()->set_id("x");
  documents->add_documents()->mutable_recipe()->set_id("x");
  documents->add_documents()->mutable_event()->set_id("x");
  documents->add_documents()->mutable_plan()->set_id("x");
  documents->add_documents()->mutable_progress()->set_id("x");
  documents->add_documents()->mutable_shopping()->set_id("x");
  assembler.take(snapshot);
  assembler.take(bookmark(1));
  std::int64_t revision = 1;
  for (const char* kind : {"kitchen", "starter", "recipe", "event", "plan", "progress", "shopping"}) {
    assembler.take(deleted(++revision, kind, "x"));
  }
  const Replica& replica = *assembler.replica();
  EXPECT_EQ(replica.kitchens.size() + replica.starters.size() + replica.recipes.size() +
                replica.events.size() + replica.plans.size() + replica.progresses.size() +
                replica.shoppings.size(),
            0U);
}

}  // namespace
}  // namespace suppertide::link
