#include "tests/support/psplib/bounds.h"

#include <gtest/gtest.h>

#include <sstream>

namespace suppertide::planning::psplib {
namespace {

TEST(PsplibBoundsTest, ReadsOptimaRangesAndUnsats) {
  std::istringstream in("problem,optimum\npsp1.sch,26\npsp2.sch,unsat\r\npsp3.sch,30..34\n");
  const auto bounds = readBounds(in);
  ASSERT_TRUE(bounds.ok()) << bounds.status();
  EXPECT_EQ(bounds->at("psp1").lower, 26);
  EXPECT_EQ(bounds->at("psp1").upper, 26);
  EXPECT_FALSE(bounds->at("psp1").unsat);
  EXPECT_TRUE(bounds->at("psp2").unsat);
  EXPECT_EQ(bounds->at("psp3").lower, 30);
  EXPECT_EQ(bounds->at("psp3").upper, 34);
}

TEST(PsplibBoundsTest, TakesTheColumnsByTheirNames) {
  std::istringstream in("instance,status,upper,lower\nj1,Optimum,17,15\n");
  const auto bounds = readBounds(in);
  ASSERT_TRUE(bounds.ok()) << bounds.status();
  EXPECT_EQ(bounds->at("j1").lower, 15);
  EXPECT_EQ(bounds->at("j1").upper, 17);
}

TEST(PsplibBoundsTest, RefusesALineThatIsNoNumber) {
  std::istringstream in("instance,lower,upper\nj1,12,many\n");
  EXPECT_EQ(readBounds(in).status().code(), absl::StatusCode::kInvalidArgument);
}

}  // namespace
}  // namespace suppertide::planning::psplib
