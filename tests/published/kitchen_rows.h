// Rows of published kitchen values: a claim, its source and how it was read.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

#include "server/kitchen/safety.h"
#include "server/kitchen/units.h"

namespace suppertide::kitchen {

struct Row {
  const char* claim;
  const char* source;
  const char* mark;
  double expected;
  double tolerance;  // 0: exact but for double precision
  std::function<double()> value;
};

inline void checkRows(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    EXPECT_NEAR(row.value(), row.expected, std::max(row.tolerance, 1e-9 * std::abs(row.expected)))
        << row.claim << "\n  source: " << row.source << " (" << row.mark << ")";
  }
}

constexpr RuleSet kHome = RuleSet::kConsumer;
constexpr RuleSet kTrade = RuleSet::kFoodService;
constexpr const char* kThawing = "USDA FSIS, Let's Talk Turkey; Turkey Basics: Safe Thawing";

inline double celsius(double fahrenheit) {
  return celsiusFromFahrenheit(fahrenheit);
}

}  // namespace suppertide::kitchen
