#include "client/link/outbox.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>

#include "client/link/error_detail.h"
#include "suppertide/v1/progress_service.pb.h"
#include "suppertide/v1/recipe_service.pb.h"
#include "tests/support/temp_dir.h"

namespace suppertide::link {
namespace {

using ::testing::IsEmpty;
using ::testing::SizeIs;

v1::AddReportsRequest finishedReport(const std::string& reportId) {
  v1::AddReportsRequest request;
  request.set_event_id("e1");
  request.set_request_id("r-" + reportId);
  v1::Report& report = *request.add_reports();
  report.set_id(reportId);
  report.set_finished(true);
  return request;
}

v1::UpdateRecipeRequest named(const std::string& name, const std::string& etag) {
  v1::UpdateRecipeRequest request;
  request.mutable_recipe()->set_id("rolls");
  request.mutable_recipe()->set_display_name(name);
  request.mutable_recipe()->mutable_meta()->set_etag(etag);
  request.set_request_id("r-" + name);
  return request;
}

v1::WriteRecipeResponse answered(const std::string& etag) {
  v1::WriteRecipeResponse answer;
  answer.mutable_recipe()->set_id("rolls");
  answer.mutable_recipe()->mutable_meta()->set_etag(etag);
  return answer;
}

std::string etagOfEntry(const Outbox& outbox, std::int64_t number) {
  return static_cast<const v1::UpdateRecipeRequest&>(*outbox.entry(number)->request).recipe().meta().etag();
}

class OutboxTest : public ::testing::Test {
 protected:
  std::unique_ptr<Outbox> open() {
    auto outbox = Outbox::open(file_);
    EXPECT_TRUE(outbox.ok()) << outbox.status();
    return outbox.ok() ? *std::move(outbox) : Outbox::inMemory();
  }

  TempDir folder_;
  const std::string file_ = folder_.file("kept/outbox.sqlite");
};

TEST_F(OutboxTest, KeepsWhatWaitsInOrderWithItsRequestIds) {
  {
    const auto outbox = open();
    ASSERT_TRUE(outbox->add(finishedReport("a"), 100).ok());
    ASSERT_TRUE(outbox->add(named("Rolls", "1"), 200).ok());
  }
  const auto outbox = open();
  const auto entries = outbox->entries();
  ASSERT_THAT(entries, SizeIs(2));
  EXPECT_EQ(entries[0].request->SerializeAsString(), finishedReport("a").SerializeAsString());
  EXPECT_EQ(entries[0].madeSeconds, 100);
  EXPECT_EQ(entries[1].request->SerializeAsString(), named("Rolls", "1").SerializeAsString());
  EXPECT_EQ(outbox->next()->number, entries[0].number);
  EXPECT_GT(*outbox->add(finishedReport("b"), 300), entries[1].number) << "numbers go on after a restart";
}

TEST_F(OutboxTest, NothingAddedIsLostWhenTheProgramIsKilledRightAfterwards) {
  int pipe[2];
  ASSERT_EQ(::pipe(pipe), 0);
  const pid_t child = ::fork();
  if (child == 0) {
    const auto outbox = Outbox::open(file_);
    const bool kept = outbox.ok() && (*outbox)->add(finishedReport("a"), 100).ok();
    const char said = kept ? 'y' : 'n';
    if (::write(pipe[1], &said, 1) != 1) ::_exit(1);
    ::pause();
  }
  char said = 0;
  ASSERT_EQ(::read(pipe[0], &said, 1), 1);
  ::kill(child, SIGKILL);
  ::waitpid(child, nullptr, 0);
  ::close(pipe[0]);
  ::close(pipe[1]);
  ASSERT_EQ(said, 'y');
  EXPECT_THAT(open()->entries(), SizeIs(1));
}

TEST_F(OutboxTest, WhatWasTakenIsGone) {
  {
    const auto outbox = open();
    const auto first = outbox->add(finishedReport("a"), 100);
    ASSERT_TRUE(outbox->add(finishedReport("b"), 100).ok());
    ASSERT_TRUE(outbox->taken(*first, v1::AddReportsResponse()).ok());
  }
  const auto entries = open()->entries();
  ASSERT_THAT(entries, SizeIs(1));
  EXPECT_EQ(entries[0].request->SerializeAsString(), finishedReport("b").SerializeAsString());
}

TEST_F(OutboxTest, WhatWasRefusedIsKeptAsideWithTheServersWords) {
  v1::ErrorDetail detail;
  detail.set_reason("STALE_ETAG");
  {
    const auto outbox = open();
    const auto first = outbox->add(named("Rolls", "1"), 100);
    const auto second = outbox->add(finishedReport("b"), 100);
    ASSERT_TRUE(outbox
                    ->refused(*first, statusWithDetail(absl::StatusCode::kAborted, "changed meanwhile",
                                                       detail.SerializeAsString()))
                    .ok());
    EXPECT_EQ(outbox->next()->number, *second) << "it does not hold up what is behind it";
  }
  const auto outbox = open();
  const auto entries = outbox->entries();
  ASSERT_THAT(entries, SizeIs(2));
  EXPECT_TRUE(entries[0].refused);
  EXPECT_EQ(entries[0].refusal.message(), "changed meanwhile");
  EXPECT_EQ(errorDetail(entries[0].refusal)->reason(), "STALE_ETAG");
  ASSERT_TRUE(outbox->drop(entries[0].number).ok());
  EXPECT_THAT(outbox->entries(), SizeIs(1));
}

TEST_F(OutboxTest, EditsMadeOnTopOfAnOwnEditAreAimedAtItsVersion) {
  {
    const auto outbox = open();
    const auto first = outbox->add(named("Rolls", "1"), 100);
    const auto second = outbox->add(named("Buns", "1"), 100);
    ASSERT_TRUE(outbox->taken(*first, answered("2")).ok());
    EXPECT_EQ(etagOfEntry(*outbox, *second), "2");
    const auto third = outbox->add(named("Knots", "1"), 100);
    EXPECT_EQ(etagOfEntry(*outbox, *third), "2") << "made before the answer was seen";
  }
  for (const auto& entry : open()->entries())
    EXPECT_EQ(static_cast<const v1::UpdateRecipeRequest&>(*entry.request).recipe().meta().etag(), "2");
}

TEST_F(OutboxTest, AnEditOfAnotherVersionIsLeftAsItIs) {
  const auto outbox = open();
  const auto first = outbox->add(named("Rolls", "1"), 100);
  const auto other = outbox->add(named("Buns", "7"), 100);
  ASSERT_TRUE(outbox->taken(*first, answered("2")).ok());
  EXPECT_EQ(etagOfEntry(*outbox, *other), "7");
}

TEST_F(OutboxTest, BelongsToOneProgramAtATime) {
  const auto outbox = open();
  const auto second = Outbox::open(file_);
  EXPECT_EQ(second.status().code(), absl::StatusCode::kFailedPrecondition) << second.status();
}

TEST_F(OutboxTest, ADamagedFileIsSetAside) {
  std::filesystem::create_directories(folder_.file("kept"));
  std::ofstream(file_) << std::string(5000, 'x');
  const auto outbox = open();
  EXPECT_THAT(outbox->entries(), IsEmpty());
  EXPECT_TRUE(outbox->add(finishedReport("a"), 100).ok());
  int aside = 0;
  for (const auto& entry : std::filesystem::directory_iterator(folder_.file("kept")))
    aside += entry.path().extension() == ".damaged";
  EXPECT_EQ(aside, 1);
}

TEST_F(OutboxTest, OnlyItsOwnerCanReadIt) {
  const auto outbox = open();
  using std::filesystem::perms;
  EXPECT_EQ(std::filesystem::status(file_).permissions(), perms::owner_read | perms::owner_write);
  EXPECT_EQ(std::filesystem::status(folder_.file("kept")).permissions(), perms::owner_all);
}

TEST(OutboxInMemoryTest, WorksWithoutAFile) {
  const auto outbox = Outbox::inMemory();
  const auto first = outbox->add(finishedReport("a"), 100);
  ASSERT_TRUE(first.ok());
  EXPECT_THAT(outbox->entries(), SizeIs(1));
  ASSERT_TRUE(outbox->taken(*first, v1::AddReportsResponse()).ok());
  EXPECT_THAT(outbox->entries(), IsEmpty());
}

}  // namespace
}  // namespace suppertide::link
