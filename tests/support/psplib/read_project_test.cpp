#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>
#include <string>

#include "tests/support/psplib/project.h"
#include "tests/support/psplib/samples.h"

namespace suppertide::planning::psplib {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(PsplibReadTest, ReadsJobsOfOneMode) {
  std::istringstream in(kOneMode);
  const auto project = readProject(in);
  ASSERT_TRUE(project.ok()) << project.status();
  ASSERT_EQ(project->jobs.size(), 5u);
  EXPECT_THAT(project->capacities, ElementsAre(1));
  EXPECT_THAT(project->stocks, IsEmpty());
  EXPECT_EQ(project->jobs[2].modes[0].length, 4);
  EXPECT_THAT(project->jobs[2].modes[0].uses, ElementsAre(1));
  ASSERT_EQ(project->jobs[0].lags.size(), 2u);
  EXPECT_EQ(project->jobs[0].lags[1].to, 2);
  EXPECT_EQ(project->jobs[0].lags[1].from, Edge::kEnd);
}

TEST(PsplibReadTest, ReadsModesAndWhatTheyUseUp) {
  std::istringstream in(kTwoModes);
  const auto project = readProject(in);
  ASSERT_TRUE(project.ok()) << project.status();
  EXPECT_THAT(project->stocks, ElementsAre(4));
  ASSERT_EQ(project->jobs[2].modes.size(), 2u);
  EXPECT_EQ(project->jobs[2].modes[1].length, 5);
  EXPECT_THAT(project->jobs[2].modes[1].uses, ElementsAre(0));
  EXPECT_THAT(project->jobs[2].modes[1].consumes, ElementsAre(1));
}

TEST(PsplibReadTest, ReadsLagsBetweenStarts) {
  std::istringstream in(kLags);
  const auto project = readLagProject(in);
  ASSERT_TRUE(project.ok()) << project.status();
  ASSERT_EQ(project->jobs.size(), 4u);
  ASSERT_EQ(project->jobs[2].lags.size(), 2u);
  EXPECT_EQ(project->jobs[2].lags[0].to, 1);
  EXPECT_EQ(project->jobs[2].lags[0].from, Edge::kStart);
  EXPECT_EQ(project->jobs[2].lags[0].least, -3);
  EXPECT_EQ(project->jobs[2].modes[0].length, 2);
  EXPECT_THAT(project->capacities, ElementsAre(1));
}

TEST(PsplibReadTest, NamesThePartThatIsCutOff) {
  const std::string whole = kTwoModes;
  std::istringstream noEnd(whole.substr(0, whole.find("RESOURCEAVAIL")));
  EXPECT_THAT(std::string(readProject(noEnd).status().message()), testing::HasSubstr("availabilities"));
  std::istringstream noRequests(whole.substr(0, whole.find("  3      1     1 ")));
  EXPECT_THAT(std::string(readProject(noRequests).status().message()), testing::HasSubstr("requests"));
  const std::string lags = kLags;
  std::istringstream noLags(lags.substr(0, lags.find("[-3]")));
  EXPECT_THAT(std::string(readLagProject(noLags).status().message()), testing::HasSubstr("lags"));
}

}  // namespace
}  // namespace suppertide::planning::psplib
