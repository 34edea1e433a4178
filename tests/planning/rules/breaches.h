// What the tests of single rules look at: breaches in words, and whole.
#pragma once

#include <string>
#include <vector>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/breach_text.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

inline std::vector<std::string> breaches(const Problem& problem, const ScheduleBuilder& schedule) {
  return breachTexts(problem, schedule.done());
}

// With the fields that words leave out.
inline std::vector<Breach> wholeBreaches(const Problem& problem, const ScheduleBuilder& schedule) {
  return audit(problem, schedule.done());
}

}  // namespace suppertide::planning
