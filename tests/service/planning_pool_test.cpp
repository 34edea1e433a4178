#include "server/service/planning_pool.h"

#include <gtest/gtest.h>

#include <thread>

namespace suppertide::service {
namespace {

class PlanningOfAnEvent : public testing::Test {
 protected:
  PlanningOfAnEvent() {
    pool_.setEnded([this](const std::string&, const std::string&) { ++ended_; });
  }

  PlanningPool pool_{1};
  int ended_ = 0;
};

TEST_F(PlanningOfAnEvent, OnePersonsPlanningOfAnEventAtATime) {
  const auto run = pool_.begin("home", "supper");
  ASSERT_NE(run, nullptr);
  EXPECT_EQ(pool_.begin("home", "supper"), nullptr);
  EXPECT_NE(pool_.begin("home", "breakfast"), nullptr);
  pool_.end(*run);
  EXPECT_EQ(ended_, 1);
  EXPECT_NE(pool_.begin("home", "supper"), nullptr);
}

TEST_F(PlanningOfAnEvent, ACorrectionWaitsForAPerson) {
  const auto run = pool_.begin("home", "supper");
  EXPECT_EQ(pool_.begin("home", "supper", PlannedFor::kCorrection), nullptr);
  EXPECT_FALSE(run->cancel);
}

TEST_F(PlanningOfAnEvent, APersonTakesTheCorrectionsPlace) {
  const auto correction = pool_.begin("home", "supper", PlannedFor::kCorrection);
  const auto run = pool_.begin("home", "supper");
  ASSERT_NE(run, nullptr);
  EXPECT_TRUE(correction->cancel);
  EXPECT_EQ(pool_.begin("home", "supper"), nullptr);

  std::thread ends([&] { pool_.end(*correction); });
  run->waitForEarlier();
  ends.join();
  EXPECT_EQ(ended_, 0) << "the event is still being planned";
  EXPECT_EQ(pool_.begin("home", "supper"), nullptr) << "the person's place is kept";
  pool_.end(*run);
  EXPECT_EQ(ended_, 1);
}

TEST_F(PlanningOfAnEvent, OnlyAPersonsPlanningIsStopped) {
  const auto correction = pool_.begin("home", "supper", PlannedFor::kCorrection);
  EXPECT_FALSE(pool_.stop("home", "supper"));
  EXPECT_FALSE(correction->stop);
  const auto run = pool_.begin("home", "supper");
  EXPECT_TRUE(pool_.stop("home", "supper"));
  EXPECT_TRUE(run->stop);
}

TEST_F(PlanningOfAnEvent, AllAreCancelledTogether) {
  const auto one = pool_.begin("home", "supper");
  const auto other = pool_.begin("home", "breakfast", PlannedFor::kCorrection);
  pool_.stopAll();
  EXPECT_TRUE(one->cancel);
  EXPECT_TRUE(other->cancel);
}

}  // namespace
}  // namespace suppertide::service
