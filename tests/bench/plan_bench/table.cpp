#include "tests/bench/plan_bench/table.h"

#include <algorithm>
#include <cmath>

namespace suppertide::planning {
namespace {

constexpr double kShares[] = {0.1, 1, 5, 10};
constexpr char kRow[] = "%-19s %-9s %3s %5s %8s %8s  %-19s %8s %6s %10s %8s %5s\n";

std::string perCent(int part, std::size_t whole) {
  return std::to_string(static_cast<int>(std::lround(100.0 * part / static_cast<double>(whole))));
}

std::string decimals(double value, int places) {
  char buffer[32];
  std::snprintf(buffer, sizeof buffer, "%.*f", places, value);
  return buffer;
}

double proofOf(const DinnerSet& set, const Run& run) {
  return set.twin ? run.unservedProof : run.proof;
}

// Median gap of the runs that are not proven; "-" when all are.
std::string gapText(const std::vector<Measured>& dinners, std::size_t place) {
  std::vector<double> gaps;
  for (const Measured& dinner : dinners)
    if (dinner.runs[place].provenTiers < kTierCount) gaps.push_back(dinner.runs[place].gap());
  return gaps.empty() ? "-" : decimals(100 * median(gaps), 1);
}

// How many runs have 1, 2, ... tiers proven, of those with not all: "3:2 4:1".
std::string openText(const std::vector<Measured>& dinners, std::size_t place) {
  std::string text;
  for (int proven = 0; proven < kTierCount; ++proven) {
    const auto count = std::count_if(dinners.begin(), dinners.end(), [&](const Measured& dinner) {
      return dinner.runs[place].provenTiers == proven;
    });
    if (count == 0) continue;
    if (!text.empty()) text += " ";
    text += std::to_string(proven) + ":" + std::to_string(count);
  }
  return text.empty() ? "-" : text;
}

}  // namespace

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t middle = values.size() / 2;
  return values.size() % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
}

std::string secondsText(double seconds) {
  return seconds == kNever ? "-" : decimals(seconds, seconds < 0.1 ? 4 : 2);
}

void printSetHead(bool twins) {
  std::printf(kRow, "set", "planner", "n", "steps", "first s", "max s",
              twins ? "unserved % by .1-10" : "proven % .1/1/5/10", "near s", "gap %", "open tiers",
              "breaches", "MB");
}

void printSetRow(const DinnerSet& set, const std::string& planner, std::size_t place,
                 const std::vector<Measured>& dinners) {
  std::vector<double> first, near, steps;
  double memory = 0;
  int breaches = 0;
  for (const Measured& dinner : dinners) {
    const Run& run = dinner.runs[place];
    first.push_back(run.firstPlan());
    near.push_back(run.firstNear(dinner.best));
    steps.push_back(static_cast<double>(dinner.steps));
    memory = std::max(memory, run.memoryMegabytes);
    breaches += run.breaches < 0 ? 1 : run.breaches;
  }
  std::string shares;
  for (const double share : kShares) {
    const auto proven = std::count_if(dinners.begin(), dinners.end(), [&](const Measured& dinner) {
      return proofOf(set, dinner.runs[place]) <= share;
    });
    shares += (shares.empty() ? "" : "/") + perCent(static_cast<int>(proven), dinners.size());
  }
  std::printf(kRow, set.name.c_str(), planner.c_str(), std::to_string(dinners.size()).c_str(),
              decimals(median(steps), 0).c_str(), secondsText(median(first)).c_str(),
              secondsText(*std::max_element(first.begin(), first.end())).c_str(), shares.c_str(),
              secondsText(median(near)).c_str(), gapText(dinners, place).c_str(),
              openText(dinners, place).c_str(), std::to_string(breaches).c_str(),
              decimals(memory, 0).c_str());
  std::fflush(stdout);
}

void printRun(const DinnerSet& set, const std::string& planner, const Measured& dinner, std::size_t place) {
  const Run& run = dinner.runs[place];
  std::printf("  %s seed %llu %s: first %s, near %s, proof %s, breaches %d, cost (bound)", set.name.c_str(),
              static_cast<unsigned long long>(dinner.seed), planner.c_str(),
              secondsText(run.firstPlan()).c_str(), secondsText(run.firstNear(dinner.best)).c_str(),
              secondsText(proofOf(set, run)).c_str(), run.breaches);
  for (std::size_t t = 0; t < run.cost.size(); ++t) {
    std::printf(" %lld", static_cast<long long>(run.cost[t]));
    if (static_cast<int>(t) >= run.provenTiers) std::printf("(%lld)", static_cast<long long>(run.bound[t]));
  }
  std::printf("\n");
  std::fflush(stdout);
}

void writeCsvHead(std::FILE* file) {
  std::fprintf(file,
               "set,seed,steps,planner,first_s,near_s,proof_s,proven_tiers,breaches,memory_mb,"
               "unserved,late,"
               "moves,quality,people,calm,ovens,gap\n");
}

void writeCsvRow(std::FILE* file, const DinnerSet& set, const std::string& planner, const Measured& dinner,
                 std::size_t place) {
  const Run& run = dinner.runs[place];
  std::fprintf(file, "%s,%llu,%zu,%s,%s,%s,%s,%d,%d,%.0f", set.name.c_str(),
               static_cast<unsigned long long>(dinner.seed), dinner.steps, planner.c_str(),
               secondsText(run.firstPlan()).c_str(), secondsText(run.firstNear(dinner.best)).c_str(),
               secondsText(proofOf(set, run)).c_str(), run.provenTiers, run.breaches, run.memoryMegabytes);
  for (const std::int64_t cost : run.cost) std::fprintf(file, ",%lld", static_cast<long long>(cost));
  std::fprintf(file, ",%.4f\n", run.gap());
  std::fflush(file);
}

}  // namespace suppertide::planning
