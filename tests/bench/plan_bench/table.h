// The tables of plan_bench: a row for each set, a line for each run, CSV.
#pragma once

#include <cstdio>
#include <string>
#include <vector>

#include "tests/bench/plan_bench/run.h"
#include "tests/bench/plan_bench/sets.h"

namespace suppertide::planning {

// One dinner: a run of each planner, and the least cost that any of them found.
struct Measured {
  std::uint64_t seed = 0;
  std::size_t steps = 0;
  std::vector<Run> runs;  // as the planners
  TierCosts best{};
};

double median(std::vector<double> values);  // `values` not empty
std::string secondsText(double seconds);    // "-" for kNever

// `place`: of the planner's run among the runs.
void printSetHead(bool twins);
void printSetRow(const DinnerSet& set, const std::string& planner, std::size_t place,
                 const std::vector<Measured>& dinners);
void printRun(const DinnerSet& set, const std::string& planner, const Measured& dinner, std::size_t place);

void writeCsvHead(std::FILE* file);
void writeCsvRow(std::FILE* file, const DinnerSet& set, const std::string& planner, const Measured& dinner,
                 std::size_t place);

}  // namespace suppertide::planning
