#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <string>

#include "server/compose/remedies/find_remedies.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

using testing::Contains;
using testing::Not;

// The small dinner as it is cooked; twenty minutes before the roast is due in it, its only oven breaks.
class RunningRemediesTest : public testing::Test {
 protected:
  RunningRemediesTest() : documents_(documentsOf(smallDinner())) {
    documents_.event.mutable_courses(0)->mutable_late_limit()->set_seconds(0);
    auto made = planEvent(documents_, {.seed = 1, .workLimit = 3'000});
    EXPECT_TRUE(made.ok());
    running_.plan = *made;
    for (const v1::PlannedStep& step : running_.plan.steps())
      if (step.id() == "roast/roast") now_ = step.start_time().seconds() - 20 * 60;
    running_.now.set_seconds(now_);
  }

  void breakOvenFor(int minutes) {
    v1::Unavailable& away = *documents_.event.add_unavailable();
    away.set_thing_id("large");
    away.mutable_when()->mutable_start()->set_seconds(now_);
    away.mutable_when()->mutable_limit()->set_seconds(now_ + minutes * 60);
  }

  RemedySearch search() const {
    auto search = findRemedies(documents_, {}, nullptr, &running_);
    EXPECT_TRUE(search.ok()) << search.status();
    return search.ok() ? *std::move(search) : RemedySearch{};
  }

  bool hasBegun(const v1::PlannedStep& step) const { return step.start_time().seconds() < now_; }

  Documents documents_;
  RunningPlan running_;
  std::int64_t now_ = 0;
};

std::map<std::string, v1::PlannedStep> byId(const v1::Plan& plan) {
  std::map<std::string, v1::PlannedStep> steps;
  for (const v1::PlannedStep& step : plan.steps()) steps[step.id()] = step;
  return steps;
}

std::vector<int> kindsFound(const RemedySearch& search) {
  std::vector<int> kinds;
  for (const FoundRemedy& remedy : search.remedies)
    for (const v1::Remedy& change : remedy.changes) kinds.push_back(change.kind());
  return kinds;
}

TEST_F(RunningRemediesTest, WhatHasHappenedStaysAndTheRestIsToCome) {
  breakOvenFor(90);
  const RemedySearch found = search();
  EXPECT_FALSE(found.fits);
  EXPECT_FALSE(found.clashes.empty());
  ASSERT_FALSE(found.remedies.empty());
  for (const FoundRemedy& remedy : found.remedies) {
    SCOPED_TRACE(remedy.changes.front().ShortDebugString());
    EXPECT_EQ(remedy.plan.breaches_size(), 0);
    EXPECT_EQ(remedy.plan.unserved_size(), 0);
    const auto now = byId(remedy.plan);
    int begun = 0;
    for (const auto& [id, was] : byId(running_.plan)) {
      ASSERT_TRUE(now.contains(id)) << id;
      const v1::PlannedStep& is = now.at(id);
      if (!hasBegun(was)) {
        EXPECT_GE(is.start_time().seconds(), now_) << id;
        continue;
      }
      ++begun;
      EXPECT_EQ(is.start_time().seconds(), was.start_time().seconds()) << id;
      EXPECT_EQ(is.cook_member_id(), was.cook_member_id()) << id;
    }
    EXPECT_GT(begun, 3);
  }
}

TEST_F(RunningRemediesTest, NoChangeTouchesADishThatIsBeingMade) {
  breakOvenFor(24 * 60);
  const RemedySearch found = search();
  ASSERT_FALSE(found.remedies.empty());
  EXPECT_THAT(kindsFound(found), Contains(v1::REMEDY_KIND_BORROW));
  // The rolls have been rising since yesterday: their levain is built, and they are not left out.
  for (const FoundRemedy& remedy : found.remedies)
    for (const v1::Remedy& change : remedy.changes) {
      EXPECT_NE(change.kind(), v1::REMEDY_KIND_LEVAIN_RATIO);
      EXPECT_FALSE(change.kind() == v1::REMEDY_KIND_DROP_DISH && change.dish_id() == "rolls");
    }
}

TEST_F(RunningRemediesTest, TellsWhatMovesAgainstThePlanThatRuns) {
  breakOvenFor(90);
  const RemedySearch found = search();
  ASSERT_FALSE(found.remedies.empty());
  for (const FoundRemedy& remedy : found.remedies) EXPECT_GT(remedy.plan.moved_steps_size(), 0);
}

TEST_F(RunningRemediesTest, WhatHasBegunIsNoWishThatCouldBeTakenBack) {
  breakOvenFor(90);
  const auto replanned = replanEvent(documents_, running_, {.seed = 1, .workLimit = 2'000});
  ASSERT_TRUE(replanned.ok()) << replanned.status();
  ASSERT_GT(replanned->plan.clashes_size(), 0);
  std::vector<v1::Clash> clashes(replanned->plan.clashes().begin(), replanned->plan.clashes().end());
  for (const v1::Clash& clash : search().clashes) clashes.push_back(clash);
  for (const v1::Clash& clash : clashes)
    for (const v1::Wish& wish : clash.wishes()) EXPECT_NE(wish.kind(), v1::WISH_KIND_PINNED);
}

TEST_F(RunningRemediesTest, AnEveningThatGoesAsPlannedNeedsNone) {
  EXPECT_TRUE(search().fits);
}

}  // namespace
}  // namespace suppertide::compose
